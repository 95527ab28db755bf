#include "core/sheet/schedules.h"
#include "core/study/manway_way.h"

#include "core/sheet/end_names.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"
#include "core/study/exposed_pipe.h"
#include "core/study/floor_cover.h"
#include "core/study/part_place.h"
#include "core/units/print.h"
#include "core/units/print_levels.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <set>

namespace sump {

namespace {

/// Its upright legs in their order, as the section tells them.
std::string riseText(const RunStudy& run, UnitSystem units) {
  constexpr std::size_t kMost = 2; // more of them only the section tells
  std::string text;
  std::size_t count = 0;
  for (std::size_t i = 0; i < run.legs.size(); ++i) {
    if (!run.legs[i].vertical) continue;
    const Length rise =
        heightBetween(metres(run.points[i].at.z), metres(run.points[i + 1].at.z), units);
    const bool up = rise > metres(0);
    text += (count++ == 0 ? "" : ", ") + std::string(up ? "rises " : "drops ") +
            printLength(up ? rise : -rise, units);
  }
  return count > kMost ? "with risers" : text;
}

/// As the section tells it leg by leg, of lines under pressure and conduits too. A line that is
/// level between upright legs says what these make.
std::string scheduledSlope(const RunStudy& run, UnitSystem units) {
  if (!run.resolved) return "?";
  if (const std::string mean = slopeText(run, units); !mean.empty()) return mean;
  std::set<std::string> slopes;
  for (const Leg& leg : run.legs) {
    if (leg.vertical) continue;
    slopes.insert(isLevel(leg.slope)
                      ? "level"
                      : printSlope(std::abs(leg.slope), units) + (leg.slope > 0 ? "" : " rising"));
  }
  if (slopes.empty()) return "upright, " + riseText(run, units);
  if (slopes.size() > 1) return "by section";
  const bool upright = std::ranges::any_of(run.legs, &Leg::vertical);
  return *slopes.begin() + (upright && slopes.contains("level") ? ", " + riseText(run, units) : "");
}

/// Of a line that lies nowhere in open ground, under the floors over it.
struct ScheduledCover {
  std::optional<CoverCheck> least;
  bool underFloor = false;
};
ScheduledCover scheduledCover(const Review& review, const BuildingParts& parts,
                              const RunStudy& run) {
  if (run.leastCover) return {run.leastCover, false};
  const auto under = coverUnderFloors(review.plan, parts, run);
  return {under, under.has_value()};
}

/// The least cover, and where along the run it is.
std::vector<std::string> coverCells(const ScheduledCover& cover, const RunStudy& run,
                                    UnitSystem units) {
  if (!cover.least) return {"-", "-"};
  return {printShort(cover.least->cover, units) + (cover.underFloor ? " (1)" : ""),
          printRunLength(metres(stationOf(run, cover.least->at)), units)};
}

constexpr const char* kUnderFloorNote =
    "(1) Under floors only: from the top of the pipe to the top of the floor. The slab's thickness "
    "is not in the plan, and no least cover is set under floors.";

/// The runs whose pipe is to be marked.
std::string nonpotableNote(const Review& review) {
  const auto tags = runTags(review.plan);
  std::string runs;
  for (const Run& run : review.plan.runs) {
    if (isTaped(run, *review.study.run(run.id)))
      runs += (runs.empty() ? "" : ", ") + tags.at(run.id);
  }
  return runs.empty() ? runs : runs + ": " + kNonpotableMarking + ".";
}

} // namespace

Block runSchedule(const Review& review, const Catalog& catalog, double width) {
  const UnitSystem units = review.plan.project.units;
  const auto tags = runTags(review.plan);
  const BuildingParts parts = buildingParts(review.plan);
  bool underFloor = false;
  std::vector<std::vector<std::string>> rows;
  for (const RunStudy& run : review.study.runs) {
    const Run& given = *review.plan.runs.find(run.id);
    const PipeProduct* product = catalog.pipe(given.pipe);
    std::vector<std::string> row = {
        tags.at(run.id), runName(given.name, given.service), sizeText(given.size),
        product != nullptr ? product->name : given.pipe, lengthText(run, units)};
    row.push_back(scheduledSlope(run, units));
    row.push_back(run.resolved ? printElevation(run.startInvert, units) : "?");
    row.push_back(run.resolved ? printElevation(run.endInvert, units) : "?");
    const ScheduledCover cover = scheduledCover(review, parts, run);
    underFloor = underFloor || cover.underFloor;
    std::ranges::move(coverCells(cover, run, units), std::back_inserter(row));
    row.push_back(viewAndSheet(sectionAnchor(review.plan, run.id)));
    row.push_back(viewAndSheet(detailAnchor(review.plan, review.study, run.id)));
    row.push_back(runEndText(review.plan, review.study, given, true) + " to " +
                  runEndText(review.plan, review.study, given, false));
    rows.push_back(std::move(row));
  }
  Block block = table("RUN SCHEDULE",
                      {{"Run"},
                       {"Name"},
                       {"Size", Align::Centre},
                       {"Material"},
                       {"Length of pipe|with drops", Align::Right},
                       {"Slope", Align::Right},
                       {"Start|invert", Align::Right},
                       {"End|invert", Align::Right},
                       {"Least|cover", Align::Right},
                       {"At|station", Align::Right},
                       {"Section,|view/sheet"},
                       {"Detail,|view/sheet"},
                       {"From - to"}},
                      rows, width);
  if (underFloor) addNote(block, kUnderFloorNote);
  addNote(block,
          "Slopes of lines that are not level leave out upright legs: the run's section tells "
          "how far these rise or drop.");
  if (const std::string note = nonpotableNote(review); !note.empty()) addNote(block, note);
  return block;
}

Block chamberSchedule(const Review& review, double width) {
  const UnitSystem units = review.plan.project.units;
  std::vector<std::vector<std::string>> rows;
  for (const VaultStudy& vault : review.study.vaults) {
    bool first = true;
    for (const ChamberStudy& chamber : vault.chambers) {
      std::vector<std::string> row(6, "");
      if (first) {
        row = {called(*review.plan.vaults.find(vault.id)),
               printElevation(vault.lidTop, units),
               levelText(vault.overflowInvert, units),
               levelText(vault.waterLevel, units),
               printElevation(vault.floor, units),
               vault.cover ? printShort(*vault.cover, units) : "-"};
      }
      first = false;
      row.push_back(std::to_string(chamber.number));
      row.push_back(printLength(chamber.length, units) + " x " + printLength(chamber.width, units));
      row.push_back(vault.waterLevel ? printLength(chamber.waterDepth, units) : "?");
      row.push_back(vault.waterLevel ? printPartVolume(chamber.volume, units) : "?");
      rows.push_back(std::move(row));
    }
  }
  std::vector<std::string> total(10);
  total[0] = "Total";
  total[9] = printVolume(review.study.workingVolume, units);
  rows.push_back(total);
  return table("VAULT SCHEDULE",
               {{"Vault"},
                {"Top|of lid", Align::Right},
                {"Outlet or|overflow invert", Align::Right},
                {"Water|level", Align::Right},
                {"Inside|floor", Align::Right},
                {"Least cover|over lid", Align::Right},
                {"Ch.", Align::Centre},
                {"Inside clear", Align::Right},
                {"Water|depth", Align::Right},
                {"Working|volume", Align::Right}},
               rows, width);
}

namespace {

std::string riserText(const ManwayStudy& manway, UnitSystem units) {
  return manway.riser ? printSize(*manway.riser, units) : "-";
}

/// What is left of an opening for who goes in: the largest round way beside the pipes.
std::string clearWayText(const Manway& manway, const std::vector<ManwayLine>& lines,
                         UnitSystem units) {
  std::vector<ShaftPipe> pipes;
  for (const ManwayLine& line : lines)
    pipes.insert(pipes.end(), line.pipes.begin(), line.pipes.end());
  return pipes.empty() ? "-" : printShort(clearWay(manway.diameter, pipes), units);
}

/// Who goes in has less room beside these.
std::string standingIn(const Review& review, const std::vector<ManwayLine>& lines) {
  const auto tags = runTags(review.plan);
  std::string names;
  for (const ManwayLine& line : lines)
    names += (names.empty() ? "" : ", ") + tags.at(line.run);
  return names.empty() ? "-" : names;
}

} // namespace

Block manwaySchedule(const Review& review, double width) {
  const UnitSystem units = review.plan.project.units;
  const ManwayWays ways(review.plan, review.study);
  std::vector<std::vector<std::string>> rows;
  for (const VaultStudy& vault : review.study.vaults) {
    const Vault& given = *review.plan.vaults.find(vault.id);
    for (std::size_t i = 0; i < vault.manways.size(); ++i) {
      const ManwayStudy& manway = vault.manways[i];
      const std::vector<ManwayLine> lines = ways.lines(vault, i);
      rows.push_back({called(given), std::to_string(manway.chamber),
                      printShort(given.manways[i].diameter, units), levelText(manway.rim, units),
                      riserText(manway, units),
                      given.manways[i].trafficCover ? "traffic" : "pedestrian",
                      standingIn(review, lines), clearWayText(given.manways[i], lines, units)});
    }
  }
  return table("MANWAY SCHEDULE",
               {{"Vault"},
                {"Ch.", Align::Centre},
                {"Clear|opening", Align::Right},
                {"Rim", Align::Right},
                {"Riser with|its frame", Align::Right},
                {"Cover"},
                {"Pipe in|its opening"},
                {"Clear way|beside it", Align::Right}},
               rows, width);
}

} // namespace sump
