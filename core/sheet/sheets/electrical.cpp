// E-1: conduits, disconnects and the working space at the panel.

#include "core/geometry/polygon.h"
#include "core/sheet/continuations.h"
#include "core/sheet/electrical_room.h"
#include "core/sheet/fitted_symbols.h"
#include "core/sheet/label_board.h"
#include "core/sheet/mark_pen.h"
#include "core/sheet/plan_views.h"
#include "core/sheet/room_figure.h"
#include "core/sheet/sample_strip.h"
#include "core/sheet/schedules.h"
#include "core/sheet/set_tables.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"
#include "core/study/disconnect_space.h"
#include "core/study/part_place.h"
#include "core/units/print.h"

#include <algorithm>
#include <iterator>
#include <set>

namespace sump {

namespace {

void labelSpaces(const SheetJob& job, const SheetView& view, LabelBoard& board) {
  constexpr double kArm = 2, kCover = 60, kLeader = 7; // mm; of a spot level's cross
  for (const SpotElevation& spot : job.plan().spots) {
    const Point2 at = view.toPaper(spot.at);
    board.keepOff(at - Point2{kArm, 0}, at + Point2{kArm, 0}, kCover, kLeader);
  }
  for (const WorkingSpaceStudy& space : job.study().wiring.spaces) {
    board.besideOutline({{"WORKING SPACE, KEEP CLEAR",
                          "See " + viewAndSheet(powerRoomAnchor(job.plan(), space.room))},
                         true,
                         true},
                        space.zone);
  }
  for (const Supply& supply : job.plan().basis.wiring.supplies) {
    if (!supply.disconnect || !view.shows(*supply.disconnect)) continue;
    board.withLeader({disconnectLines(supply)}, *supply.disconnect, 3, 90);
  }
}

/// Where a float's conduit ends in a vault.
void labelFloats(const SheetJob& job, const SheetView& view, LabelBoard& board) {
  constexpr double kNear = 3, kReach = 60; // mm
  for (const RunStudy& run : job.study().runs) {
    if (run.service != Service::FloatConduit || !run.resolved) continue;
    const Run& given = *job.plan().runs.find(run.id);
    for (bool atStart : {true, false}) {
      const RunEnd& end = atStart ? given.from : given.to;
      const Point2 at = flat((atStart ? run.points.front() : run.points.back()).at);
      if (end.kind == EndKind::Chamber && view.shows(at))
        board.withLeader({{"Float, ch. " + std::to_string(end.chamber)}}, at, kNear, kReach);
    }
  }
}

/// Crossings are told on the long sections.
std::string crossingsNote(const SheetJob& job) {
  const auto tags = runTags(job.plan());
  std::string text;
  for (const Run& run : job.plan().runs) {
    if (isConduit(run.service))
      text += (text.empty() ? "" : ", ") + tags.at(run.id) + " " +
              viewAndSheet(sectionAnchor(job.plan(), run.id));
  }
  return "Where conduits cross other buried lines: levels on their long sections, " + text + ".";
}

/// Which conduits wait for their wires. A float's takes the float's own cable.
std::string spareNote(const Plan& plan) {
  const auto tags = runTags(plan);
  std::string spare;
  for (const Run& run : plan.runs) {
    if (isConduit(run.service) && run.service != Service::FloatConduit && run.conductors.empty())
      spare += (spare.empty() ? "" : ", ") + tags.at(run.id);
  }
  return spare.empty()
             ? "No conduit of this set is spare. One that is added gets a pull cord and a "
               "cap on each end."
             : spare + ": no conductors given. Until they are pulled each has a pull cord "
                       "and a cap on each end.";
}

std::string pullNote(const Plan& plan) {
  bool boxes = false;
  for (const Run& run : plan.runs) {
    for (const InlinePart& part : run.parts)
      boxes = boxes || part.kind == PartKind::PullBox;
  }
  return std::string("No more bends between pull points than the code allows") +
         (boxes ? "; pull boxes stay within reach." : ". No pull boxes are drawn.");
}

/// What the plan knows of the space; the enclosures are the electrician's.
Block spaceTable(const SheetJob& job, double width) {
  const UnitSystem units = job.units();
  const Limits& limits = job.review.limits;
  const auto print = [&](Length v) { return printLength(v, units); };
  std::vector<std::vector<std::string>> rows;
  const auto add = [&](const std::string& at, const WorkingSpaceStudy& space) {
    rows.push_back({at, decidedText(space.depthNeeded, print), print(space.depthClear),
                    print(space.widthNeeded), print(space.widthClear), print(space.heightNeeded),
                    std::to_string(space.intrusions.size())});
  };
  for (const WorkingSpaceStudy& space : job.study().wiring.spaces)
    add("Panel, " + called(*job.plan().rooms.find(space.room)), space);
  const auto disconnects = disconnectSpaces(job.plan(), limits, job.study().runs);
  for (const DisconnectSpace& space : disconnects) {
    const auto& supplies = job.plan().basis.wiring.supplies;
    const auto supply = std::ranges::find(supplies, space.supply, &Supply::id);
    add("Disconnect, " + supplyName(*supply), space);
  }
  Block block = table("WORKING SPACE AT PANEL AND DISCONNECTS",
                      {{"At"},
                       {"Depth|needed"},
                       {"Depth|clear", Align::Right},
                       {"Width|needed", Align::Right},
                       {"Width|clear", Align::Right},
                       {"Height|needed", Align::Right},
                       {"Things|in it", Align::Right}},
                      rows, width);
  addNote(block, "Spaces may overlap. Depth counts from the front of panel or enclosure; walls, "
                 "skid, plumbing area, panel and disconnects on other walls are counted.");
  if (!disconnects.empty()) {
    addNote(block,
            "A disconnect's enclosure is taken to reach " +
                print(limits.length("wiring.enclosure")) +
                " from its place all round. The electrician chooses it; one that is larger "
                "takes the difference off the clear depth: ______. How high disconnects hang, and "
                "the raceways' way clear of these spaces, by the electrician.");
  }
  return block;
}

bool isSeen(const Polyline& line, const std::vector<SheetView>& views) {
  return std::ranges::any_of(views,
                             [&](const SheetView& view) { return view.shownLength(line) > 0; });
}

/// The plan with those existing lines, vaults and wash equipment only that the views show.
Plan drawnIn(const std::vector<SheetView>& views, const Plan& plan) {
  Plan drawn = plan;
  drawn.utilities = {};
  for (const Utility& utility : plan.utilities)
    if (isSeen(utility.path, views)) drawn.utilities.append(utility);
  drawn.vaults = {};
  for (const Vault& vault : plan.vaults)
    if (isSeen(outline(vault), views)) drawn.vaults.append(vault);
  drawn.washes = {};
  for (const WashEquipment& wash : plan.washes)
    if (isSeen(outline(wash), views)) drawn.washes.append(wash);
  return drawn;
}

/// What the edge of the view cuts is named in the part that shows.
void labelCutWashes(const SheetJob& job, const SheetView& view, LabelBoard& board) {
  for (const WashEquipment& wash : job.plan().washes)
    if (!view.shows(wash.at)) board.inOutline({{called(wash)}}, outline(wash));
}

/// Only what the plan has.
Block electricalLegend(const SheetJob& job, const std::vector<SheetView>& views, double width) {
  Block block = paragraphs("LEGEND: ELECTRICAL", {}, width, false);
  std::set<Service> conduits;
  bool pulled = false;
  for (const Run& run : job.plan().runs) {
    if (!isConduit(run.service)) continue;
    conduits.insert(run.service);
    for (const InlinePart& part : run.parts)
      pulled = pulled || part.kind == PartKind::PullBox;
  }
  for (Service service : conduits) {
    const PageShape line{{{1, 2.8}, {16, 2.8}}, false, false, serviceLine(service), {}};
    block.body.push_back(sampleStrip({line}, std::string(facts(service).code) + "  " +
                                                 std::string(facts(service).name)));
  }
  const LineStyle red{Ink::ServiceRed, 0.35, {}};
  if (pulled) {
    const PageShape box{
        {{6, 0.8}, {10, 0.8}, {10, 4.8}, {6, 4.8}}, true, false, red, FillStyle{Ink::White}};
    block.body.push_back(sampleStrip({box, PageShape{{{6, 0.8}, {10, 4.8}}, false, false, red, {}},
                                      PageShape{{{6, 4.8}, {10, 0.8}}, false, false, red, {}}},
                                     "Pull box"));
  }
  if (!conduits.empty()) {
    const PageShape arrow{{{11, 2.8}, {6, 1.4}, {6, 4.2}}, true, false, red, FillStyle{Ink::White}};
    block.body.push_back(sampleStrip({arrow}, "Pull of a conduit"));
  }
  const auto& supplies = job.plan().basis.wiring.supplies;
  if (std::ranges::any_of(supplies, [](const Supply& s) { return s.disconnect.has_value(); })) {
    const PageShape square{
        {{6, 0.8}, {10, 0.8}, {10, 4.8}, {6, 4.8}}, true, false, red, FillStyle{Ink::White}};
    const PageShape stroke{{{6, 4.8}, {10, 0.8}}, false, false, red, {}};
    block.body.push_back(sampleStrip({square, stroke}, "Disconnect"));
  }
  if (!job.study().wiring.spaces.empty())
    block.body.push_back(sampleStrip(sampleBox(LineStyle{Ink::ServiceRed, 0.5, {4, 1.5}},
                                               FillStyle{Ink::ServiceRed, Hatch::Diagonal}),
                                     "Working space, keep clear"));
  std::ranges::move(roomSamples(job.plan()), std::back_inserter(block.body));
  addElectricalSigns(drawnIn(views, job.plan()), job.study(), block);
  return block;
}

PaperBox electricalExtent(const SheetJob& job) {
  std::vector<Point2> points;
  for (const RunStudy& run : job.study().runs) {
    if (!isConduit(run.service)) continue;
    const Polyline line = planLine(run);
    points.insert(points.end(), line.begin(), line.end());
    // A vault that one ends in is seen whole.
    const Run& given = *job.plan().runs.find(run.id);
    for (const VaultStudy& vault : job.study().vaults) {
      if (given.from.target == vault.id || given.to.target == vault.id)
        points.insert(points.end(), vault.outline.begin(), vault.outline.end());
    }
  }
  for (const EquipmentRoom& room : job.plan().rooms) {
    const Ring ring = outline(room);
    points.insert(points.end(), ring.begin(), ring.end());
  }
  return around(points);
}

} // namespace

void electricalSheet(const SheetJob& job, PageFlow& flow) {
  const PaperBox shown = electricalExtent(job);
  if (shown.width() <= 0 && shown.height() <= 0) return;
  const std::vector<Mark> marks = electricalMarks(job, pipeIds(job.plan()));
  const auto kind = [](const Run& run) {
    return isConduit(run.service) ? RunLabel::Full : RunLabel::None;
  };
  std::vector<std::string> unplaced;
  const std::vector<SheetView> views = drawTiledView(
      job, "ELECTRICAL PLAN", shown, marks,
      [&](const SheetView& view, const std::vector<Mark>& seen, Page& page) {
        LabelRequest request{job.review, job.catalog, seen, kind};
        request.notes = false; // their marks are left out
        request.references = true;
        request.first = [&](LabelBoard& board) {
          labelSpaces(job, view, board);
          labelFloats(job, view, board);
          labelConduitStarts(job.review, view, board);
          labelCutWashes(job, view, board);
        };
        const auto missing = drawLabels(view, request, page);
        unplaced.insert(unplaced.end(), missing.begin(), missing.end());
      },
      flow);
  const double width = flow.columnWidth();
  flow.add(paragraphs(
      "ELECTRICAL NOTES AND CAUTIONS",
      {"ELECTRICAL: all work by licensed electricians under the adopted electrical code, locked "
       "out "
       "and tested dead. Conductors, overcurrent protection, grounding and bonding are the "
       "electrician's to size; what stands here is for coordination.",
       "Seal conduits that come from a vault inside, round the wires, at their end at the panel, "
       "where "
       "the seal can be reached, and round them in the vault's wall by the connector: water and "
       "gas "
       "must not reach the panel.",
       "Keep power apart from Class 2 and signal circuits, in trenches that meet by ______ "
       "(electrician).",
       spareNote(job.plan()), pullNote(job.plan()),
       "Check rotation before coupling the pump; the disconnect stays in sight of the motor.",
       "Float and wash signal: volts as scheduled. Signal and other limited-energy circuits (24 V) "
       "never share a conduit or box with power conductors unless the code in force allows it; the "
       "electrician decides what may share.",
       crossingsNote(job)},
      width, true));
  flow.add(electricalLegend(job, views, width));
  flow.add(spaceTable(job, width));
  if (!unplaced.empty()) {
    std::string text = "For lack of room these conduits are only in the schedule:";
    for (const std::string& tag : unplaced)
      text += " " + tag;
    flow.add(paragraphs("NOT LABELLED", {text}, width, false));
  }
  const Point2 most = flow.figureSize({500, 470}, true);
  for (const EquipmentRoom& room : job.plan().rooms) {
    if (!room.panel) continue;
    flow.add(electricalRoom(job, room, most));
    if (!isSmallPaper(job.paper)) flow.add(panelPlan(job, room, most));
  }
}

} // namespace sump
