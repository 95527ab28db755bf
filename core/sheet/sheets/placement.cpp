// C-1: where the vaults stand: coordinates, taped distances from building corners, gaps, levels.

#include "core/geometry/polygon.h"
#include "core/sheet/fitted_symbols.h"
#include "core/sheet/label_board.h"
#include "core/sheet/mark_pen.h"
#include "core/sheet/plan_measures.h"
#include "core/sheet/plan_views.h"
#include "core/sheet/schedules.h"
#include "core/sheet/set_tables.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/survey_notes.h"
#include "core/sheet/tags.h"
#include "core/units/print.h"

#include <algorithm>

namespace sump {

namespace {

/// A corner that distances are taped from.
struct Base {
  std::string letter;
  Point2 at;
  std::string building;
};

/// True when a tape from the corner to `to` runs through or along no building.
bool isFree(const Plan& plan, Point2 corner, Point2 to) {
  constexpr double kOff = 0.02; // m along the tape, so that the corner itself does not count
  const Point2 start = lerp(corner, to, std::min(0.5, kOff / std::max(distance(corner, to), kOff)));
  for (const Building& building : plan.buildings) {
    if (contains(building.outline, start)) return false;
    if (!crossings({start, to}, building.outline).empty()) return false;
  }
  return true;
}

/// Two corners of buildings from which the vaults can be taped: the nearest that sees their middle,
/// and of the others the one that crosses the first tape best and is not far.
std::vector<Base> tapeBases(const SheetJob& job) {
  std::vector<Point2> centres;
  for (const VaultStudy& vault : job.study().vaults)
    centres.push_back(centroid(vault.outline));
  const Point2 middle = around(centres).centre();
  std::vector<Base> seen;
  for (const Building& building : job.plan().buildings) {
    for (Point2 at : building.outline) {
      if (isFree(job.plan(), at, middle)) seen.push_back({"", at, called(building)});
    }
  }
  std::stable_sort(seen.begin(), seen.end(), [&](const Base& a, const Base& b) {
    return distance(a.at, middle) < distance(b.at, middle);
  });
  if (seen.empty()) return seen;
  const auto worth = [&](const Base& base) {
    const Point2 a = seen.front().at - middle, b = base.at - middle;
    const double sine = std::abs(cross(a, b)) / std::max(norm(a) * norm(b), 1e-9);
    constexpr double kPerMetre = 0.03; // of a right crossing that a metre of tape is worth
    return sine - kPerMetre * norm(b);
  };
  std::vector<Base> bases{seen.front()};
  bases.front().letter = "A";
  const auto second =
      std::max_element(seen.begin() + 1, seen.end(),
                       [&](const Base& a, const Base& b) { return worth(a) < worth(b) - 1e-9; });
  if (second != seen.end()) {
    bases.push_back(*second);
    bases.back().letter = "B";
  }
  return bases;
}

Block cornerTable(const SheetJob& job, const std::vector<Base>& bases, double width) {
  const UnitSystem units = job.units();
  std::vector<Column> columns = {{"Corner"}, {"North", Align::Right}, {"East", Align::Right}};
  for (const Base& base : bases)
    columns.push_back({"Taped|from " + base.letter, Align::Right});
  columns.push_back({"Vault"});
  std::vector<std::vector<std::string>> rows;
  for (const VaultStudy& vault : job.study().vaults) {
    for (std::size_t i = 0; i < vault.outline.size(); ++i) {
      const Point2 p = vault.outline[i];
      std::vector<std::string> row = {cornerName(vault.id, i), printElevation(metres(p.y), units),
                                      printElevation(metres(p.x), units)};
      for (const Base& base : bases)
        row.push_back(printLength(metres(distance(base.at, p)), units));
      row.push_back(called(*job.plan().vaults.find(vault.id)));
      rows.push_back(std::move(row));
    }
  }
  return table("OUTSIDE CORNERS OF THE VAULTS", columns, rows, width);
}

Block baseTable(const SheetJob& job, const std::vector<Base>& bases, double width) {
  std::vector<std::vector<std::string>> rows;
  for (const Base& base : bases) {
    rows.push_back({base.letter, printElevation(metres(base.at.y), job.units()),
                    printElevation(metres(base.at.x), job.units()), base.building});
  }
  return table("BUILDING CORNERS TO TAPE FROM",
               {{"Mark"}, {"North", Align::Right}, {"East", Align::Right}, {"Corner of"}}, rows,
               width);
}

/// Square to the nearest wall that a side of the vault is parallel to: how far off it stands, and
/// how far along from the wall's corner. Two rules and a square set it out without a tape's swing.
void addWallOffsets(const SheetJob& job, const VaultStudy& vault, std::vector<PlanMeasure>& found) {
  std::vector<Ring> walls;
  for (const EquipmentRoom& room : job.plan().rooms)
    walls.push_back(outline(room));
  for (const Building& building : job.plan().buildings)
    walls.push_back(building.outline);
  constexpr double kParallel = 0.002, kFar = 25; // radians, m
  double best = kFar;
  PlanMeasure off, along;
  for (const Ring& wall : walls) {
    for (std::size_t i = 0; i < wall.size(); ++i) {
      const Point2 a = wall[i], b = wall[(i + 1) % wall.size()];
      const Point2 d = (b - a) * (1 / std::max(distance(a, b), 1e-9));
      for (std::size_t k = 0; k < vault.outline.size(); ++k) {
        const Point2 p = vault.outline[k], q = vault.outline[(k + 1) % vault.outline.size()];
        if (std::abs(cross(d, q - p)) > kParallel * distance(p, q)) continue;
        const Point2 foot = a + d * dot(p - a, d);
        // The wall must face the vault, and the vault stand beside it.
        const double away = -cross(d, p - a), length = distance(a, b);
        const bool beside = dot(p - a, d) > -1e-6 && dot(p - a, d) < length + 1e-6;
        if (away < 0.05 || away >= best - 1e-9 || !beside) continue;
        best = away;
        off = {foot, p, 0, {}};
        along = {dot(p - a, d) < length / 2 ? a : b, foot, 0, {}};
      }
    }
  }
  if (best >= kFar) return;
  found.push_back(off);
  if (distance(along.from, along.to) > 0.05) found.push_back(along);
}

/// Would the tape lie beside one of the measures to the same corner, so that two figures stood on
/// what reads as one line?
bool liesBeside(Point2 from, Point2 corner, const std::vector<PlanMeasure>& measures) {
  constexpr double kNarrow = 0.1, kSame = 1e-6; // radians, m
  return std::ranges::any_of(measures, [&](const PlanMeasure& m) {
    if (distance(m.to, corner) > kSame) return false;
    const Point2 tape = from - corner, other = m.from - m.to;
    return std::abs(cross(tape, other)) < kNarrow * norm(tape) * norm(other) &&
           dot(tape, other) > 0;
  });
}

/// The nearest corner of the outline that a tape reaches past no side of it, and not along one of
/// the measures; else the nearest.
Point2 tapedCorner(Point2 base, const Ring& outline, const std::vector<PlanMeasure>& measures) {
  Ring corners = outline;
  std::ranges::sort(corners, {}, [&](Point2 p) { return distance(p, base); });
  const auto free = std::ranges::find_if(corners, [&](Point2 corner) {
    constexpr double kShort = 0.999; // of the tape, so that its own corner does not count
    constexpr double kOff = 0.1;     // of the tape that its middle stands off the outline
    const Polyline tape{base, lerp(base, corner, kShort)};
    return crossings(tape, outline).empty() && !liesBeside(base, corner, measures) &&
           distance(lerp(base, corner, 0.5), outline) > kOff * distance(base, corner);
  });
  return free == corners.end() ? corners.front() : *free;
}

/// From a wall to the nearest corner, and between neighbours.
std::vector<PlanMeasure> measures(const SheetJob& job, const std::vector<Base>& bases) {
  std::vector<PlanMeasure> found;
  const auto& vaults = job.study().vaults;
  for (std::size_t i = 0; i + 1 < vaults.size(); ++i)
    found.push_back(nearestPair(vaults[i].outline, vaults[i + 1].outline));
  // Two tapes to the vault nearest to the corners fix it.
  const VaultStudy* first = nullptr;
  for (const VaultStudy& vault : vaults) {
    if (bases.empty()) break;
    if (first == nullptr ||
        distance(bases[0].at, vault.outline) < distance(bases[0].at, first->outline)) {
      first = &vault;
    }
  }
  if (first == nullptr) return found;
  addWallOffsets(job, *first, found);
  for (const Base& base : bases)
    found.push_back({base.at, tapedCorner(base.at, first->outline, found), 0, {}});
  return found;
}

/// Length and width of each vault, beside it.
std::vector<PlanMeasure> sideMeasures(const SheetJob& job, const std::vector<SectionCut>& cuts,
                                      double scale) {
  constexpr double kNear = 8, kFar = 21; // mm; the marks of cuts reach up to 18 mm
  std::vector<Point2> cutEnds;
  for (const SectionCut& cut : cuts) {
    cutEnds.push_back(cut.line.front());
    cutEnds.push_back(cut.line.back());
  }
  std::vector<PlanMeasure> found;
  std::vector<Polyline> taken;
  for (const VaultStudy& vault : job.study().vaults) {
    std::vector<Ring> others;
    for (const VaultStudy& other : job.study().vaults) {
      if (other.id != vault.id) others.push_back(other.outline);
    }
    for (const EquipmentRoom& room : job.plan().rooms)
      others.push_back(outline(room));
    const SideRoom room{others, cutEnds, kNear * scale / 1000, kFar * scale / 1000, taken};
    for (std::size_t side : {0u, 1u}) {
      found.push_back(clearestSide(vault.outline, side, room));
      taken.push_back(lineOf(found.back()));
    }
  }
  return found;
}

void drawMeasures(const SheetJob& job, std::vector<PlanMeasure> list, const LineStyle& line,
                  const SheetView& view, LabelBoard& board) {
  for (PlanMeasure& m : list)
    m.text = printLength(metres(distance(m.from, m.to)), job.units());
  drawPlanMeasures(list, line, view, board);
}

void labelVaultsPlaced(const SheetJob& job, const SheetView& view, LabelBoard& board) {
  std::vector<Ring> outlines;
  for (const VaultStudy& vault : job.study().vaults)
    outlines.push_back(vault.outline);
  for (const VaultStudy& vault : job.study().vaults) {
    for (std::size_t i = 0; i < vault.outline.size(); ++i) {
      if (view.shows(vault.outline[i]))
        board.atPointOutside({{cornerName(vault.id, i)}}, vault.outline[i], 1.5, 50, outlines);
    }
    if (view.shows(centroid(vault.outline))) {
      board.besideOutline({{called(*job.plan().vaults.find(vault.id)),
                            "Inside floor " + printElevation(vault.floor, job.units())},
                           true,
                           true},
                          vault.outline, outlines);
    }
  }
}

/// Beside the inlet wall's middle, in the chamber.
Point2 inletPlace(const Vault& vault) {
  constexpr double kIn = 0.25; // m off the wall
  return vault.frame().toSite({inMetres(vault.wall) - inMetres(vault.length) / 2 + kIn,
                               inMetres(vault.wall) + 0.15 - inMetres(vault.width) / 2});
}

/// With the flow, from the wall that the water enters by.
void markInletEnds(const Plan& plan, std::vector<Mark>& marks) {
  constexpr double kHalf = 0.15; // m
  std::vector<Mark> added;
  for (const Vault& vault : plan.vaults) {
    SymbolPen pen(MarkPen(added, vault.id, Layer::Symbol), Frame{inletPlace(vault), vault.angle},
                  kHalf, LineStyle{Ink::Black, 0.35, {}});
    pen.solid({{1, 0}, {-1, 0.55}, {-1, -0.55}});
  }
  addSymbols(std::move(added), marks);
}

/// The first arrow is named; the note under the table tells what all of them mean.
void labelInletEnd(const Plan& plan, const SheetView& view, LabelBoard& board) {
  for (const Vault& vault : plan.vaults) {
    const Point2 at = inletPlace(vault);
    if (!view.shows(at)) continue;
    board.atPoint({{"inlet end"}}, at, 3, 20);
    return;
  }
}

/// So that the building's name is not taken for theirs.
void labelEquipment(const Plan& plan, const SheetView& view, LabelBoard& board) {
  for (const EquipmentRoom& room : plan.rooms) {
    const auto name = [&](const std::optional<RoomBox>& box, const char* text) {
      if (!box) return;
      const Ring ring = outline(room, *box);
      if (view.shows(centroid(ring))) board.inOutline({{text}}, ring);
    };
    name(room.skid, "Equipment skid");
    name(room.panel, "Panel");
  }
}

/// Halfway from the building's corners to those of a room in it, where one is near.
Ring middleOfWalls(const Building& building, const Plan& plan) {
  constexpr double kThick = 1; // m, more than a wall's thickness over its corner
  Ring middle = building.outline;
  for (Point2& corner : middle) {
    const Point2 outside = corner;
    double least = kThick;
    for (const EquipmentRoom& room : plan.rooms) {
      for (const Point2 inside : outline(room)) {
        if (distance(outside, inside) >= least) continue;
        least = distance(outside, inside);
        corner = lerp(outside, inside, 0.5);
      }
    }
  }
  return middle;
}

/// A leader through a vault's corner reads as one to it, and a figure on a wall as its thickness.
void keepOffWalls(const SheetJob& job, LabelBoard& board, const SheetView& view) {
  constexpr double kLeader = 12, kOnWall = 40; // mm that such a place is disliked
  const auto keepOff = [&](const Ring& ring, double cover, double leader) {
    for (std::size_t i = 0; i < ring.size(); ++i)
      board.keepOff(view.toPaper(ring[i]), view.toPaper(ring[(i + 1) % ring.size()]), cover,
                    leader);
  };
  for (const VaultStudy& vault : job.study().vaults)
    keepOff(vault.outline, 0, kLeader);
  for (const Building& building : job.plan().buildings)
    keepOff(middleOfWalls(building, job.plan()), kOnWall, 0);
}

void labelPlacement(const SheetJob& job, const std::vector<Base>& bases,
                    const std::vector<SectionCut>& cuts, const SheetView& view,
                    const std::vector<Mark>& marks, Page& page) {
  LabelBoard board(view, marks, page);
  keepOffWalls(job, board, view);
  labelCuts(cuts, view, board);
  const LineStyle chain{Ink::Black, 0.25, {6, 1.2, 0.8, 1.2}}, thin{Ink::Black, 0.25, {}};
  drawMeasures(job, measures(job, bases), chain, view, board);
  drawMeasures(job, sideMeasures(job, cuts, view.scale), thin, view, board);
  for (const Base& base : bases) {
    if (view.shows(base.at)) board.atPoint({{base.letter}, true, true}, base.at, 2, 30);
  }
  labelVaultsPlaced(job, view, board);
  labelChambers(job.plan(), view, board);
  labelInletEnd(job.plan(), view, board);
  labelEquipment(job.plan(), view, board);
  labelOrigin(view, board);
  LabelRequest request{job.review, job.catalog, marks, noRuns};
  request.levels = false; // the plan of the tankage tells them
  labelSurroundings(view, request, board);
  board.finish();
}

/// Only the tapes to the vault nearest to the corners are drawn.
std::string tapeText(const std::vector<Base>& bases) {
  if (bases.empty()) return "No building's corner sees the vaults: set them out by coordinates.";
  std::string from;
  for (const Base& base : bases)
    from += (from.empty() ? "" : " and ") + base.letter;
  return "TAPES from " + from +
         ": those to the nearest vault are drawn; those to every corner of "
         "all vaults are in the table of outside corners" +
         (bases.size() > 1 ? ", two to each." : ", with the coordinates for a second way.");
}

} // namespace

void placementSheet(const SheetJob& job, PageFlow& flow) {
  if (job.study().vaults.empty()) return;
  std::vector<Mark> marks = marksOf(job.marks, [](const Mark& mark) {
    return mark.layer != Layer::Run && mark.layer != Layer::Part && mark.layer != Layer::Symbol &&
           mark.layer != Layer::Note && mark.layer != Layer::Ground;
  });
  markOrigin(marks);
  markInletEnds(job.plan(), marks);
  const std::vector<Base> bases = tapeBases(job);
  std::vector<Point2> shown;
  for (const VaultStudy& vault : job.study().vaults)
    shown.insert(shown.end(), vault.outline.begin(), vault.outline.end());
  for (const Base& base : bases)
    shown.push_back(base.at);
  const std::vector<SectionCut> cuts = vaultCuts(job);
  flow.announce(placementAnchor());
  drawTiledView(
      job, "VAULT PLACEMENT", around(shown), marks,
      [&](const SheetView& view, const std::vector<Mark>& seen, Page& page) {
        labelPlacement(job, bases, cuts, view, seen, page);
      },
      flow, cuts);
  const double width = flow.columnWidth();
  flow.addAll({cornerTable(job, bases, width), baseTable(job, bases, width)});
  flow.addAll({settingTable(job, width), weightTable(job, width)});
  flow.add(paragraphs(
      "PLACEMENT NOTES",
      {axesText(job) + " Taped distances are level and to the outside of the concrete.",
       benchmarkText(job), tapeText(bases),
       "Set vaults to the elevations, not to depth. Check all four corners before releasing the "
       "crane.",
       "Vaults are numbered in flow order; turn each with its inlet end, where the arrow starts, "
       "as drawn.",
       "LIFTING: rated gear and the maker's lifting points, to a lift plan; nobody under the load. "
       "Weights are for planning; the maker's certified weights govern."},
      width, true));
}

} // namespace sump
