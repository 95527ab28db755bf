// C-1: the digs: bottoms, edges, trenches, spoil, ladders and what they come near.

#include "core/geometry/outline_union.h"
#include "core/geometry/polygon.h"
#include "core/sheet/dig_measures.h"
#include "core/sheet/dig_notes.h"
#include "core/sheet/fitted_symbols.h"
#include "core/sheet/footing_lines.h"
#include "core/sheet/label_board.h"
#include "core/sheet/mark_pen.h"
#include "core/sheet/plan_views.h"
#include "core/sheet/sample_strip.h"
#include "core/sheet/schedules.h"
#include "core/sheet/set_tables.h"
#include "core/sheet/tags.h"
#include "core/sheet/trench_figure.h"
#include "core/sheet/trench_pairs.h"
#include "core/study/trench_outline.h"
#include "core/units/earth.h"
#include "core/units/print.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>

namespace sump {

namespace {

const LineStyle kEdge{Ink::Black, 0.7, {8, 2}};
const LineStyle kToe{Ink::Black, 0.35, {3, 1.5}};
const LineStyle kFootingPlane{Ink::Black, 0.5, {0.6, 1.2}};
const LineStyle kTrench{Ink::Grey, 0.25, {2, 1}};

void markPits(const EarthStudy& earth, std::vector<Mark>& marks) {
  for (const PitStudy& pit : earth.pits) {
    MarkPen pen(marks, pit.vaults.empty() ? Id() : pit.vaults.front(), Layer::Ground);
    if (pit.top) pen.ring(*pit.top, kEdge, FillStyle{Ink::PaleGrey, Hatch::Dots});
    // Vaults side by side stand on one bottom.
    for (const Ring& bottom : unionOutlines(pit.bottoms))
      pen.ring(bottom, kToe);
  }
}

/// Those that are dug together have one outline.
void markTrenches(const EarthStudy& earth, const TrenchPairs& pairs, std::vector<Mark>& marks) {
  std::vector<bool> drawn(earth.trenches.size(), false);
  for (std::size_t i = 0; i < earth.trenches.size(); ++i) {
    if (drawn[i]) continue;
    MarkPen pen(marks, earth.trenches[i].run, Layer::Ground);
    std::vector<Ring> parts;
    for (const std::size_t k : dugWith(pairs, i)) {
      drawn[k] = true;
      const std::vector<Ring> outlines = trenchOutlines(earth.trenches[k]);
      parts.insert(parts.end(), outlines.begin(), outlines.end());
    }
    for (const Ring& outline : unionEdges(parts)) {
      constexpr double kSliver = 0.1; // m2; so little ground between trenches is dug away
      if (area(outline) > kSliver) pen.ring(outline, kTrench);
    }
  }
}

/// Its sides stand square to the nearest edge of the digs.
Frame ladderFrame(const EarthStudy& earth, Point2 at) {
  Frame frame{at, {}};
  double nearest = std::numeric_limits<double>::max();
  for (const PitStudy& pit : earth.pits) {
    const Ring edge = pit.top ? *pit.top : Ring{};
    for (std::size_t i = 0; i < edge.size(); ++i) {
      const Point2 a = edge[i], b = edge[(i + 1) % edge.size()];
      const double off = nearestOnSegment(at, a, b).distance;
      if (off >= nearest) continue;
      nearest = off;
      frame.angle = radians(std::atan2(b.y - a.y, b.x - a.x));
    }
  }
  return frame;
}

void markLadder(const Frame& frame, MarkPen pen) {
  constexpr double kLength = 0.5, kWidth = 0.25; // m, half
  pen.beginSymbol(frame.origin, kLength);
  pen.ring(frame.rectangle({-kWidth, -kLength}, {kWidth, kLength}), LineStyle{Ink::Black, 0.5, {}},
           FillStyle{Ink::White});
  for (double y : {-0.25, 0.0, 0.25})
    pen.path({frame.toSite({-kWidth, y}), frame.toSite({kWidth, y})},
             LineStyle{Ink::Black, 0.25, {}});
}

void markSpoilAndLadders(const SheetJob& job, std::vector<Mark>& marks) {
  const EarthBasis& basis = job.plan().basis.earth;
  MarkPen pen(marks, {}, Layer::Ground);
  if (basis.spoil.size() >= 3) {
    pen.ring(basis.spoil, LineStyle{Ink::Black, 0.35, {}}, FillStyle{Ink::Grey, Hatch::Cross});
  }
  std::vector<Mark> ladders;
  for (Point2 at : basis.ladders)
    markLadder(ladderFrame(job.study().earth, at), MarkPen(ladders, {}, Layer::Symbol));
  addSymbols(std::move(ladders), marks);
}

void markFootings(const std::vector<FootingLine>& planes, std::vector<Mark>& marks) {
  for (const FootingLine& plane : planes)
    MarkPen(marks, plane.building, Layer::Ground).path(plane.line, kFootingPlane);
}

std::vector<Mark> excavationMarks(const SheetJob& job, const TrenchPairs& pairs,
                                  const std::vector<FootingLine>& planes) {
  std::vector<Mark> marks = marksOf(job.marks, [](const Mark& mark) {
    return mark.layer <= Layer::Utility || mark.layer == Layer::Room || mark.layer == Layer::Basin;
  });
  markTrenches(job.study().earth, pairs, marks);
  markPits(job.study().earth, marks);
  const auto vaults =
      marksOf(job.marks, [](const Mark& mark) { return mark.layer == Layer::Vault; });
  marks.insert(marks.end(), vaults.begin(), vaults.end());
  markFootings(planes, marks);
  markSpoilAndLadders(job, marks);
  return marks;
}

const char* soilName(SoilClass soil) {
  static constexpr const char* kNames[] = {"stable rock", "type A", "type B", "type C"};
  return kNames[static_cast<std::size_t>(soil)];
}

/// Leaders to the trenches below them would end among what stands on the floor.
std::vector<Ring> roofsOf(const Plan& plan) {
  std::vector<Ring> roofs;
  for (const Building& building : plan.buildings)
    roofs.push_back(building.outline);
  for (const EquipmentRoom& room : plan.rooms)
    roofs.push_back(outline(room));
  return roofs;
}

/// `1.166 m below the floor inside`, where that is the ground's level there.
std::string trenchDepth(const SheetJob& job, const TrenchStudy& trench) {
  return printLength(trench.depth, job.units()) + (!trench.deepestUnderFloor() ? " deep"
                                                   : isSmallPaper(job.paper)
                                                       ? " from floor"
                                                       : " below the floor inside");
}

void labelTrenches(const SheetJob& job, const TrenchPairs& pairs, const SheetView& view,
                   LabelBoard& board) {
  const auto tags = runTags(job.plan());
  const std::vector<Ring> roofs = roofsOf(job.plan());
  for (std::size_t i = 0; i < job.study().earth.trenches.size(); ++i) {
    const TrenchStudy& trench = job.study().earth.trenches[i];
    const Polyline line = lineAlone(trench, job.study().earth.trenches, roofs);
    constexpr double kStub = 8, kShare = 0.3; // mm on the paper, of the whole
    const double shown = view.shownLength(line);
    if (line.size() < 2 || shown <= 0) continue;
    if (shown * 1000 / view.scale < kStub && shown < kShare * planLength(line)) continue;
    SheetLabel label{{tags.at(trench.run)}, false, true};
    const bool small = isSmallPaper(job.paper), alone = pairs[i].empty();
    // Small paper has no room for both; all depths, and which are dug as one, stand in the table.
    if (!small || alone) label.lines.push_back("to " + trenchDepth(job, trench));
    if (!alone && small) label.lines.emplace_back("dig as one, see table");
    if (!alone && !small) {
      label.lines.push_back("dig as one with " + trenchNames(job, pairs[i]));
      label.lines.emplace_back("where they meet");
    }
    board.alongLine(label, line, small ? 60 : 90);
  }
}

std::string digName(std::size_t index) {
  return "Dig " + std::to_string(index + 1);
}

/// `Ladder 3, dig 1, trench of WW-1`: where it is a way out of.
std::string ladderText(const SheetJob& job, int number) {
  const EarthStudy& earth = job.study().earth;
  const auto serves = [&](const Egress& egress) {
    return std::ranges::find(egress.ladders, number) != egress.ladders.end();
  };
  std::string text = "Ladder " + std::to_string(number);
  for (std::size_t i = 0; i < earth.pits.size(); ++i) {
    if (serves(earth.pits[i].egress)) text += ", dig " + std::to_string(i + 1);
  }
  const auto tags = runTags(job.plan());
  for (const TrenchStudy& trench : earth.trenches) {
    if (serves(trench.egress)) text += ", trench of " + tags.at(trench.run);
  }
  return text;
}

/// What stands on the ground once the rest is hauled off.
SheetLabel spoilLabel(const SheetJob& job) {
  const EarthStudy& earth = job.study().earth;
  const UnitSystem units = job.units();
  return {{"SPOIL HEAP, kept for backfill",
           decidedText(earth.kept, [&](Volume v) { return earthText(v, units); }) +
               " loose, no higher than " +
               decidedText(earth.heapHeight, [&](Length v) { return printLength(v, units); })},
          false,
          true};
}

void labelLadders(const SheetJob& job, const SheetView& view, LabelBoard& board) {
  constexpr double kNear = 3, kReach = 60; // mm
  const std::vector<Point2>& ladders = job.plan().basis.earth.ladders;
  for (std::size_t i = 0; i < ladders.size(); ++i) {
    if (view.shows(ladders[i]))
      board.withLeader({{ladderText(job, static_cast<int>(i) + 1)}}, ladders[i], kNear, kReach);
  }
}

void labelFootings(const SheetJob& job, const std::vector<FootingLine>& planes, LabelBoard& board) {
  constexpr double kReach = 60; // mm
  for (const FootingLine& plane : planes) {
    const bool isTold = std::ranges::any_of(planes, [&](const FootingLine& other) {
      return other.building == plane.building && other.bottom == plane.bottom &&
             planLength(other.line) > planLength(plane.line);
    });
    if (isTold) continue; // at the longest part of it
    board.alongLine({{"45 degree plane from footing " + printElevation(plane.footing, job.units()),
                      "at the bottom " + printElevation(plane.bottom, job.units())}},
                    plane.line, kReach);
  }
}

void labelExcavation(const SheetJob& job, const TrenchPairs& pairs,
                     const std::vector<FootingLine>& planes, const SheetView& view,
                     const std::vector<Mark>& marks, Page& page) {
  LabelBoard board(view, marks, page);
  const UnitSystem units = job.units();
  constexpr double kThroughWall = 40; // mm that a leader through a building's outline is disliked
  for (const Ring& roof : roofsOf(job.plan())) {
    for (std::size_t i = 0; i < roof.size(); ++i)
      board.keepOff(view.toPaper(roof[i]), view.toPaper(roof[(i + 1) % roof.size()]), 0,
                    kThroughWall);
  }
  keepOffTrenches(job.study().earth, view, board);
  measureDigs(job, view, board);
  for (std::size_t i = 0; i < job.study().earth.pits.size(); ++i) {
    const PitStudy& pit = job.study().earth.pits[i];
    SheetLabel label{{digName(i) + ", to " + printElevation(pit.bottom, units),
                      decidedText(pit.depth, [&](Length v) { return printLength(v, units); }) +
                          " at the deepest"},
                     true,
                     true};
    board.besideOutline(label, pit.top ? *pit.top : pit.bottoms.front());
  }
  for (const VaultStudy& vault : job.study().vaults)
    board.inOutline({{called(*job.plan().vaults.find(vault.id))}}, vault.outline);
  const EarthBasis& basis = job.plan().basis.earth;
  if (basis.spoil.size() >= 3) board.inOutline(spoilLabel(job), basis.spoil);
  labelLadders(job, view, board);
  labelTrenches(job, pairs, view, board);
  labelFootings(job, planes, board);
  labelChambers(job.plan(), view, board);
  LabelRequest request{job.review, job.catalog, marks, noRuns};
  request.levels = false; // the plan of the tankage tells them
  labelSurroundings(view, request, board);
  board.finish();
}

std::string sidesText(const SheetJob& job) {
  const EarthStudy& earth = job.study().earth;
  std::string text = std::string("Soil taken as ") + soilName(earth.soil) +
                     (earth.soilAssumed ? " because it is not classified" : "") + ". ";
  const auto& protection = job.plan().basis.earth.protection;
  static constexpr const char* kWays[] = {"nothing", "sloping", "shoring", "shields",
                                          "an engineer's design"};
  text += protection
              ? std::string("Sides held by ") + kWays[static_cast<std::size_t>(*protection)] + ". "
              : "No protective system is chosen: drawn as sloped. ";
  if (earth.sideSlope > 0) {
    text += "Sides are drawn " + fixed(earth.sideSlope, 2) +
            " to 1 (run to rise) where deeper than " +
            printShort(earth.figures.protectionFrom, job.units()) + ".";
  } else {
    text += "Sides are drawn upright.";
  }
  return text;
}

Block digLegend(const SheetJob& job, bool planes, double width) {
  Block block = paragraphs("LEGEND: DIGS", {}, width, false);
  std::vector<PaperStrip> strips;
  const auto add = [&](const char* text, const LineStyle& line, std::optional<FillStyle> fill) {
    strips.push_back(sampleStrip(sampleBox(line, fill), text));
  };
  add("Edge of the dig at the ground", kEdge, FillStyle{Ink::PaleGrey, Hatch::Dots});
  add("Bottom of the dig", kToe, std::nullopt);
  add("Trench, at the ground", kTrench, std::nullopt);
  add("Vault", LineStyle{Ink::Black, 0.5, {}}, FillStyle{Ink::Concrete});
  const EarthBasis& basis = job.plan().basis.earth;
  if (basis.spoil.size() >= 3)
    add("Spoil heap", LineStyle{Ink::Black, 0.35, {}}, FillStyle{Ink::Grey, Hatch::Cross});
  if (!basis.ladders.empty()) {
    std::vector<PageItem> ladder = {PageShape{{{7, 0.8}, {9, 0.8}, {9, 4.8}, {7, 4.8}},
                                              true,
                                              false,
                                              LineStyle{Ink::Black, 0.5, {}},
                                              FillStyle{Ink::White}}};
    for (double y : {1.8, 2.8, 3.8})
      ladder.push_back(rule({7, y}, {9, y}, 0.25));
    strips.push_back(sampleStrip(std::move(ladder), "Ladder"));
  }
  constexpr double kTwoWide = 130; // mm
  if (width < kTwoWide) {
    std::ranges::move(strips, std::back_inserter(block.body));
  } else {
    addInPairs(std::move(strips), width, block);
  }
  if (planes)
    block.body.push_back(
        sampleStrip({PageShape{{{2, 2.8}, {14, 2.8}}, false, false, kFootingPlane, {}}},
                    "45 degree plane down and out from a footing, at the bottom of the dig"));
  return block;
}

/// The heap's size as drawn, along and across its first side, and what is to go on it.
std::string heapText(const SheetJob& job) {
  const EarthStudy& earth = job.study().earth;
  const Ring& heap = job.plan().basis.earth.spoil;
  if (heap.size() < 3) return "No place for the spoil heap is chosen.";
  const Point2 along = (heap[1] - heap[0]) * (1 / std::max(distance(heap[0], heap[1]), 1e-9));
  std::vector<Point2> square;
  for (Point2 p : heap)
    square.push_back({dot(p - heap[0], along), cross(along, p - heap[0])});
  const PaperBox size = around(square);
  const auto length = [&](Length v) { return printLength(v, job.units()); };
  const auto volume = [&](Volume v) { return earthText(v, job.units()); };
  return "SPOIL HEAP: " + length(metres(size.width())) + " x " + length(metres(size.height())) +
         " overall as drawn, for what is kept for backfill, " + decidedText(earth.kept, volume) +
         " loose. With sides at " + fixed(earth.figures.heapSlope, 1) +
         " to 1 (run to rise) it holds at most " + decidedText(earth.heapHolds, volume) + ", " +
         decidedText(earth.heapHeight, length) + " high. Haul the rest off as it is dug, " +
         decidedText(earth.surplus, volume) + " loose.";
}

} // namespace

void excavationSheet(const SheetJob& job, PageFlow& flow) {
  if (job.study().vaults.empty()) return;
  const std::vector<FootingLine> planes = footingLines(job);
  const TrenchPairs pairs = trenchPairs(job.study().earth.trenches);
  const std::vector<Mark> marks = excavationMarks(job, pairs, planes);
  std::vector<Point2> shown = job.plan().basis.earth.ladders;
  shown.insert(shown.end(), job.plan().basis.earth.spoil.begin(),
               job.plan().basis.earth.spoil.end());
  for (const PitStudy& pit : job.study().earth.pits) {
    for (const Ring& bottom : pit.bottoms)
      shown.insert(shown.end(), bottom.begin(), bottom.end());
    if (pit.top) shown.insert(shown.end(), pit.top->begin(), pit.top->end());
  }
  for (const TrenchStudy& trench : job.study().earth.trenches) {
    for (const TrenchStretch& stretch : trench.stretches) {
      for (const TrenchPoint& p : stretch)
        shown.push_back(p.at);
    }
  }
  if (shown.empty()) return;
  drawTiledView(
      job, "EXCAVATION", around(shown), marks,
      [&](const SheetView& view, const std::vector<Mark>& seen, Page& page) {
        labelExcavation(job, pairs, planes, view, seen, page);
      },
      flow);
  const double width = flow.columnWidth();
  flow.add(paragraphs(
      "EXCAVATION",
      {sidesText(job),
       "EXCAVATION: shore, slope or shield as the soil asks for; keep spoil, loads and vehicles "
       "off "
       "the edge; a competent person classifies the soil and inspects daily and after rain. "
       "29 CFR 1926 Subpart P or the local rules govern. Trenches that are not named as dug as one "
       "only cross.",
       "LADDERS: as 29 CFR 1926 Subpart P asks for. Digs that run into each other are one: a "
       "ladder counts in each that it stands in.",
       "CONFINED SPACE: nobody enters a vault, even briefly, without permit, gas test, "
       "ventilation, "
       "attendant and a rescue plan.",
       "LIFTING: nobody under a load or between a vault and the side of the dig.",
       "FOOTINGS: levels of buildings' footings are as told to the designer. Find them before the "
       "dig comes near; where they stand higher, stop and ask the engineer. Distances are to the "
       "walls: where a footing projects, its plane comes as much nearer. No footing is "
       "undermined "
       "or cut: under one, dig only as the structural engineer has said, by hand, in short "
       "stretches, shored.",
       heapText(job)},
      width, true));
  flow.add(digLegend(job, !planes.empty(), width));
  flow.add(trenchFigure(job, width));
  flow.add(pitTable(job, width));
  flow.add(earthTable(job, width));
  flow.add(paragraphs("NEAR THE DIGS", digNeighbours(job), width, false));
  flow.add(paragraphs("FINDINGS ABOUT THE DIGS", digFindings(job), width, false));
  flow.add(trenchTable(job, isSmallPaper(job.paper) ? std::min(flow.fullWidth(), 270.0) : width));
}

} // namespace sump
