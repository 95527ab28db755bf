#include "core/sheet/labels.h"

#include "core/geometry/polygon.h"
#include "core/plan/ends.h"
#include "core/sheet/continuations.h"
#include "core/sheet/label_board.h"
#include "core/sheet/note_marks.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"
#include "core/units/print.h"

#include <algorithm>

namespace sump {

namespace {

constexpr double kReach = 130;     // mm; the longest leader
constexpr double kLevelReach = 15; // of a ground level

struct Scene {
  const SheetView& view;
  const LabelRequest& request;
  LabelBoard& board;
  UnitSystem units;
  /// Shown here, and not left to the enlarged view.
  bool names(Point2 site) const {
    const bool elsewhere = request.enlarged != nullptr && request.enlarged->shows(site);
    return view.shows(site) && !elsewhere;
  }
};

/// A vault or a room is drawn over what lies under it: a level there would read as its own.
bool isCovered(const Scene& scene, Point2 at) {
  const Review& review = scene.request.review;
  for (const VaultStudy& vault : review.study.vaults) {
    if (contains(vault.outline, at)) return true;
  }
  for (const EquipmentRoom& room : review.plan.rooms) {
    if (contains(outline(room), at)) return true;
  }
  return false;
}

/// At a building a bare level would read as that of its floor.
bool isAtBuilding(const Plan& plan, Point2 at) {
  constexpr double kNear = 0.3; // m
  for (const Building& building : plan.buildings) {
    if (distance(at, building.outline) < kNear) return true;
  }
  return false;
}

void labelGround(const Scene& scene) {
  const Plan& plan = scene.request.review.plan;
  for (const SpotElevation& spot : plan.spots) {
    if (!scene.names(spot.at) || isCovered(scene, spot.at)) continue;
    const std::string level = printElevation(spot.elevation, scene.units);
    SheetLabel label{{level + (isAtBuilding(plan, spot.at) ? " ground" : "")}};
    scene.board.atPoint(label, spot.at, 1.2, kLevelReach);
  }
  for (const Well& well : plan.wells) {
    if (scene.names(well.at)) scene.board.atPoint({{called(well)}}, well.at, 3, 40);
  }
}

/// Where the grit stays; a trench drain needs no place of its own for it.
std::optional<std::string> sumpText(const Basin& basin, UnitSystem units) {
  if (const auto low = bottom(basin))
    return "Bottom " + printElevation(*low, units) + ", sump " + printLength(*basin.sump, units);
  if (basin.kind == BasinKind::TrenchDrain) return std::nullopt;
  return "Sump depth: not given";
}

void labelDrains(const Scene& scene) {
  const Plan& plan = scene.request.review.plan;
  const auto level = [&](Length v) { return printElevation(v, scene.units); };
  for (const Basin& basin : plan.basins) {
    if (!scene.names(basin.at)) continue;
    SheetLabel label{{called(basin)}};
    if (scene.request.levels) {
      label.lines.push_back("Rim " + level(basin.rim) + "  Inv. " + level(basin.outletInvert));
      if (const auto sump = sumpText(basin, scene.units)) label.lines.push_back(*sump);
    }
    scene.board.besideOutline(label, outline(basin));
  }
  for (const SewerConnection& sewer : plan.sewers) {
    if (!scene.names(sewer.at)) continue;
    SheetLabel label{{called(sewer)}};
    if (scene.request.levels) label.lines.push_back("Inv. " + level(sewer.invert));
    scene.board.atPoint(label, sewer.at, 4, 60);
  }
  for (const WashEquipment& wash : plan.washes) {
    if (scene.names(wash.at)) scene.board.besideOutline({{called(wash)}}, outline(wash));
  }
}

/// One rim, or the range of them.
std::string rimText(const VaultStudy& vault, UnitSystem units) {
  std::vector<double> rims;
  for (const ManwayStudy& manway : vault.manways) {
    if (manway.rim) rims.push_back(inMetres(*manway.rim));
  }
  if (rims.empty()) return "-";
  const auto [low, high] = std::minmax_element(rims.begin(), rims.end());
  const std::string from = printElevation(metres(*low), units);
  const std::string to = printElevation(metres(*high), units);
  return from == to ? from : from + " to " + to;
}

/// Those of the other vaults, which a leader had better not cross.
std::vector<Ring> outlinesBut(const Review& review, const Id& vault) {
  std::vector<Ring> rings;
  for (const VaultStudy& other : review.study.vaults) {
    if (other.id != vault) rings.push_back(other.outline);
  }
  return rings;
}

void labelVaults(const Scene& scene) {
  const Review& review = scene.request.review;
  for (const VaultStudy& vault : review.study.vaults) {
    const Vault& given = *review.plan.vaults.find(vault.id);
    if (!scene.view.shows(given.centre)) continue;
    const bool named = scene.names(given.centre);
    // The name of one that is enlarged elsewhere is told where it hides no more than it says.
    constexpr double kSmall = 15; // mm
    const double length = inMetres(given.length) * 1000 / scene.view.scale;
    if (!named && length < kSmall) continue;
    SheetLabel label{{called(given)}, true, true, Ink::Black};
    if (named && scene.request.levels) {
      label.lines.push_back("Rim " + rimText(vault, scene.units));
      label.lines.push_back(outletName(vault, review.plan) + " " +
                            levelText(vault.overflowInvert, scene.units));
      label.lines.push_back("Water level " + levelText(vault.waterLevel, scene.units));
      label.lines.push_back("Floor " + printElevation(vault.floor, scene.units));
    }
    scene.board.besideOutline(label, vault.outline, outlinesBut(review, vault.id));
  }
}

SheetLabel fullLabel(const Scene& scene, const Run& run, const std::string& tag) {
  const RunStudy* studied = scene.request.review.study.run(run.id);
  SheetLabel label{{tag + "  " + sizeAndMaterial(run, scene.request.catalog)}};
  if (studied != nullptr) {
    const std::string slope = slopeText(*studied, scene.units);
    label.lines.push_back(lengthText(*studied, scene.units) + (slope.empty() ? "" : ", ") + slope);
  }
  label.ink = ink(facts(run.service).color);
  return label;
}

/// Named in full by the enlarged view: a mark where the other names leave room.
bool isMarkOnly(const Scene& scene, RunLabel kind) {
  return kind == RunLabel::Tag && scene.request.enlarged != nullptr;
}

/// `marks`: those only, else the others.
std::vector<std::string> labelRuns(const Scene& scene, bool marks) {
  const Plan& plan = scene.request.review.plan;
  const auto tags = runTags(plan);
  const Locator locator(plan);
  struct Waiting {
    const Run* run;
    Polyline line;
    double length;
    RunLabel kind;
  };
  std::vector<Waiting> waiting;
  for (const Run& run : plan.runs) {
    const RunLabel kind = scene.request.runs(run);
    auto line = locator.centreline(run);
    if (kind == RunLabel::None || !line) continue;
    if (isMarkOnly(scene, kind) != marks) continue;
    if (marks) line = longestBeside(*line, *scene.request.enlarged);
    const double length = scene.view.shownLength(*line);
    if (isStub(scene.view, *line)) continue;
    if (length > 0) waiting.push_back({&run, std::move(*line), length, kind});
  }
  // The shortest first: the long ones have more places to go.
  std::stable_sort(waiting.begin(), waiting.end(),
                   [](const Waiting& a, const Waiting& b) { return a.length < b.length; });
  std::vector<std::string> unplaced;
  for (const Waiting& w : waiting) {
    const std::string& tag = tags.at(w.run->id);
    SheetLabel label{{tag}, false, false, ink(facts(w.run->service).color)};
    if (w.kind == RunLabel::Full) label = fullLabel(scene, *w.run, tag);
    label.boldFirst = true;
    if (scene.board.alongLine(label, w.line, kReach)) continue;
    label.lines = {tag};
    if (!scene.board.alongLine(label, w.line, kReach) && !marks) unplaced.push_back(tag);
  }
  return unplaced;
}

/// Dimensions stay at their lines; what is enlarged elsewhere is measured in both views. Other
/// words are told once, where they cover nothing, with a leader to their place.
void labelNotes(const Scene& scene) {
  constexpr double kNoteReach = 90; // mm
  for (const NoteDrawing& note : noteDrawings(scene.request.review.plan)) {
    if (!note.lettered && scene.view.shows(note.textAt)) {
      scene.board.onLine(note.text, note.textAt, note.along);
    } else if (note.lettered && scene.names(note.from)) {
      scene.board.withLeader({{note.text}}, note.from, 4, kNoteReach);
    }
  }
}

bool namedAsRoom(const Scene& scene, const std::string& name) {
  for (const EquipmentRoom& room : scene.request.review.plan.rooms) {
    if (called(room) == name && scene.names(centroid(outline(room)))) return true;
  }
  return false;
}

/// Where only the ground matters, the building's name tells where the room is, too.
bool isToldByItsBuilding(const Scene& scene, const Ring& room) {
  if (scene.request.levels || scene.request.references) return false;
  for (const Building& building : scene.request.review.plan.buildings) {
    if (contains(building.outline, centroid(room))) return true;
  }
  return false;
}

void labelPlaces(const Scene& scene) {
  const Plan& plan = scene.request.review.plan;
  for (const EquipmentRoom& room : plan.rooms) {
    const Ring ring = outline(room);
    if (!scene.names(centroid(ring)) || isToldByItsBuilding(scene, ring)) continue;
    SheetLabel label{{called(room)}, false, true};
    if (scene.request.levels)
      label.lines.push_back("Floor " + printElevation(room.floor, scene.units));
    if (scene.request.references)
      label.lines.push_back("See " + viewAndSheet(roomAnchor(plan, room.id)));
    scene.board.inOutline(label, ring);
  }
  for (const Utility& utility : plan.utilities) {
    std::string text = "EX " + called(utility);
    // Pipe sizes are told in inches, also of a foot or more.
    const bool metric = scene.units == UnitSystem::Metric;
    if (utility.diameter)
      text += ", " +
              (metric ? printShort(*utility.diameter, scene.units) : inchesOnly(*utility.diameter));
    SheetLabel label{{text}};
    scene.board.alongLine(label, utility.path, 30);
  }
  for (const Building& building : plan.buildings) {
    const bool named = namedAsRoom(scene, called(building));
    if (named) continue; // a hut that is the room
    SheetLabel label{{called(building)}, false, true};
    if (building.floor && scene.request.levels)
      label.lines.push_back("Floor " + printElevation(*building.floor, scene.units));
    scene.board.inOutline(label, building.outline);
  }
  for (const Pavement& pavement : plan.pavements) {
    scene.board.inOutline({{called(pavement) + (pavement.traffic ? " (traffic)" : "")}},
                          pavement.outline);
  }
  if (plan.site.boundary.size() >= 3) {
    Polyline edge = plan.site.boundary;
    edge.push_back(edge.front());
    scene.board.alongLine({{"PROPERTY LINE"}}, edge, 0);
  }
}

} // namespace

RunLabel noRuns(const Run& /*run*/) {
  return RunLabel::None;
}

bool isStub(const SheetView& view, const Polyline& line) {
  constexpr double kStub = 8, kShare = 0.3; // mm on the paper, of the whole
  const double length = view.shownLength(line);
  return length * 1000 / view.scale < kStub && length < kShare * planLength(line);
}

void labelSurroundings(const SheetView& view, const LabelRequest& request, LabelBoard& board) {
  const Scene scene{view, request, board, request.review.plan.project.units};
  labelDrains(scene);
  labelPlaces(scene);
}

namespace {

/// A place in an outline at which a leader hides least.
Point2 clearestIn(const Ring& site, const SheetView& view, LabelBoard& board) {
  constexpr double kSteps = 8, kHalf = 0.8; // mm about the leader's end
  Point2 best = lerp(site[0], site[2], 0.5);
  double least = 1e9;
  for (int i = 1; i < kSteps; ++i) {
    for (int k = 1; k < kSteps; ++k) {
      const Point2 p =
          lerp(lerp(site[0], site[1], i / kSteps), lerp(site[3], site[2], i / kSteps), k / kSteps);
      const Point2 at = view.toPaper(p), half{kHalf, kHalf};
      const double cost = board.costOf({{at - half, at + half}, {}, 0, false});
      if (cost >= least) continue;
      least = cost;
      best = p;
    }
  }
  return best;
}

} // namespace

void labelChambers(const Plan& plan, const SheetView& view, LabelBoard& board) {
  for (const Vault& vault : plan.vaults) {
    int number = 0;
    for (const ChamberBox& box : chambers(vault)) {
      ++number;
      const Ring site = vault.frame().rectangle(box.low, box.high);
      if (!view.shows(lerp(site[0], site[2], 0.5))) continue;
      Ring ring;
      for (Point2 p : site)
        ring.push_back(view.toPaper(p));
      const SheetLabel label{{"ch. " + std::to_string(number)}};
      if (board.whereFree(label, board.placesIn(label, ring))) continue;
      constexpr double kNear = 4, kChamberReach = 60; // mm
      constexpr double kWorthIt = 24; // mm of its side; leaders to smaller ones would be a thicket
      if (std::max(distance(ring[0], ring[1]), distance(ring[1], ring[2])) < kWorthIt) continue;
      board.withLeader(label, clearestIn(site, view, board), kNear, kChamberReach);
    }
  }
}

std::vector<std::string> drawLabels(const SheetView& view, const LabelRequest& request,
                                    Page& page) {
  LabelBoard board(view, request.marks, page);
  const Scene scene{view, request, board, request.review.plan.project.units};
  if (scene.request.notes) labelNotes(scene); // their texts have one place only
  if (request.first) request.first(board);
  labelGround(scene);
  if (request.enlarged != nullptr) {
    const PaperBox e = request.enlarged->site();
    board.atPoint({{"See view " + request.enlarged->number}, true, true}, {e.low.x, e.low.y}, 1,
                  30);
  }
  for (const EquipmentRoom& room : request.review.plan.rooms)
    board.keepClear(centroid(outline(room))); // its name may have to point there
  labelVaults(scene);
  std::vector<std::string> unplaced = labelRuns(scene, false);
  labelDrains(scene);
  labelPlaces(scene);
  labelRuns(scene, true);
  if (request.last) request.last(board);
  board.finish();
  return unplaced;
}

} // namespace sump
