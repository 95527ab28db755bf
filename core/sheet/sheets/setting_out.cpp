// C-1: the points of the runs and drains, and where manways and baffles stand in the vaults.

#include "core/sheet/flow.h"
#include "core/sheet/schedules.h"
#include "core/sheet/tags.h"
#include "core/study/stake_points.h"
#include "core/units/print.h"

#include <cmath>

namespace sump {

namespace {

using Rows = std::vector<std::vector<std::string>>;

/// Inside the vaults nothing is staked out.
bool isStaked(const SheetJob& job, const Id& object) {
  const Run* run = job.plan().runs.find(object);
  return !object.empty() && (run == nullptr || run->service != Service::Interconnect);
}

Block runPointTable(const SheetJob& job, double width) {
  const UnitSystem units = job.units();
  const auto level = [&](double v) { return printElevation(metres(v), units); };
  Rows rows;
  const std::vector<StakePoint> points = stakePoints(job.plan(), job.study());
  for (std::size_t i = 0; i < points.size(); ++i) {
    const StakePoint& p = points[i];
    if (!isStaked(job, p.object)) continue;
    rows.push_back({objectName(p.object, job.plan()), p.place, std::to_string(i + 1), level(p.at.y),
                    level(p.at.x), levelText(p.elevation, units)});
  }
  for (const WashEquipment& wash : job.plan().washes) {
    rows.push_back({called(wash), "middle, inlet", "-", level(wash.at.y), level(wash.at.x),
                    printElevation(wash.inletElevation, units)});
  }
  return table("RUN POINTS",
               {{"Mark"},
                {"Point"},
                {"No. in the|stake-out list", Align::Right},
                {"North", Align::Right},
                {"East", Align::Right},
                {"Invert", Align::Right}},
               rows, width);
}

/// From inside corner 1, which is the low corner of the vault's own frame.
Block insideTable(const SheetJob& job, double width) {
  const UnitSystem units = job.units();
  Rows rows;
  for (const VaultStudy& studied : job.study().vaults) {
    const Vault& vault = *job.plan().vaults.find(studied.id);
    const Length alongFrom = vault.length / 2.0 - vault.wall;
    const Length acrossFrom = vault.width / 2.0 - vault.wall;
    for (std::size_t i = 0; i < studied.manways.size(); ++i) {
      const ManwayStudy& manway = studied.manways[i];
      rows.push_back({called(vault), "manway, ch. " + std::to_string(manway.chamber),
                      printLength(metres(vault.manways[i].at.x) + alongFrom, units),
                      printLength(metres(vault.manways[i].at.y) + acrossFrom, units),
                      printElevation(metres(manway.at.y), units),
                      printElevation(metres(manway.at.x), units), levelText(manway.rim, units)});
    }
    for (const Baffle& baffle : vault.baffles) {
      rows.push_back({called(vault), "baffle " + baffle.id + ", near face",
                      printLength(baffle.offset, units), "-", "-", "-",
                      printElevation(vault.floor + vault.insideHeight - baffle.topGap, units)});
    }
  }
  return table("MANWAYS AND BAFFLES",
               {{"Vault"},
                {"What"},
                {"Along, from|inside corner 1", Align::Right},
                {"Across, from|inside corner 1", Align::Right},
                {"North", Align::Right},
                {"East", Align::Right},
                {"Rim or|top", Align::Right}},
               rows, width);
}

} // namespace

void settingOutSheet(const SheetJob& job, PageFlow& flow) {
  if (job.study().vaults.empty()) return;
  const double width = flow.columnWidth();
  flow.add(paragraphs(
      "SETTING OUT",
      {"North and east are on the axes of the plan file, from its origin, in " +
           std::string(job.units() == UnitSystem::Metric ? "metres" : "feet") +
           "; numbers are those of the stake-out list that is written with the sheets. Numbers "
           "that "
           "are not tabled here are in that list: corners and centres of vaults, rooms, buildings "
           "and paving, and pipes inside vaults." +
           northStatement(job.plan()),
       "Run points are on the pipe's centreline; levels are inverts, of drains the rim. Two points "
       "in one place with two levels are a drop.",
       "Manways are told by their centres. Corners are numbered as on the vault placement sheet."},
      width, true));
  flow.add(insideTable(job, width));
  flow.add(runPointTable(job, width));
}

} // namespace sump
