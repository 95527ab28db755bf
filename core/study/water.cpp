// Rest levels from the overflow backward: water stands at the lowest way out of each vault, and a
// way out through a link is no lower than the water of the vault it leads to.

#include "core/study/context.h"

#include <algorithm>

namespace sump {

namespace {

/// A run that water leaves a vault by. Its control is the highest invert along it: water must
/// stand that high before any flows.
struct WayOut {
  const RunStudy* run = nullptr;
  double control = 0;
  int to = -1; ///< index of the vault it leads to; -1: out of the train
};

double controlInvert(const RunStudy& run) {
  return std::ranges::max_element(run.points, {}, [](const RunPoint& p) { return p.at.z; })->at.z;
}

std::vector<std::vector<WayOut>> waysOut(const StudyContext& context,
                                         const std::vector<RunStudy>& runs) {
  std::vector<std::vector<WayOut>> ways(context.plan.vaults.size());
  for (std::size_t i = 0; i < runs.size(); ++i) {
    const Run& run = context.plan.runs[i];
    const bool leaves = run.service == Service::Overflow || run.service == Service::Link;
    if (!leaves || !runs[i].resolved || run.from.kind != EndKind::Chamber) continue;
    const auto from = context.locator.find(run.from.target);
    if (!from || from->kind != ObjectKind::Vault) continue;
    WayOut way{&runs[i], controlInvert(runs[i]), -1};
    if (run.service == Service::Link) {
      const auto to = context.locator.find(run.to.target);
      // Only a link that leads on to a later vault carries the flow.
      if (run.to.kind != EndKind::Chamber || !to || to->index <= from->index) continue;
      way.to = static_cast<int>(to->index);
    }
    ways[from->index].push_back(way);
  }
  return ways;
}

void fillVault(const std::vector<WayOut>& ways, const std::vector<VaultStudy>& vaults,
               VaultStudy& vault) {
  std::optional<double> level;
  for (const WayOut& way : ways) {
    double reached = way.control;
    if (way.to >= 0) {
      const auto& next = vaults[static_cast<std::size_t>(way.to)].waterLevel;
      if (!next) continue;
      reached = std::max(reached, inMetres(*next));
    }
    if (level && reached >= *level) continue;
    level = reached;
    vault.overflowInvert = metres(way.control);
    vault.overflowRun = way.run->id;
  }
  if (level) vault.waterLevel = metres(*level);
}

void fillVolumes(Length insideHeight, VaultStudy& vault) {
  if (!vault.waterLevel) return;
  const Length depth = std::clamp(*vault.waterLevel - vault.floor, metres(0), insideHeight);
  for (ChamberStudy& chamber : vault.chambers) {
    chamber.waterDepth = depth;
    chamber.volume = chamber.area * depth;
    vault.workingVolume += chamber.volume;
  }
}

} // namespace

void fillWater(const StudyContext& context, const std::vector<RunStudy>& runs,
               std::vector<VaultStudy>& vaults) {
  const auto ways = waysOut(context, runs);
  for (std::size_t i = vaults.size(); i-- > 0;) {
    fillVault(ways[i], vaults, vaults[i]);
    fillVolumes(context.plan.vaults[i].insideHeight, vaults[i]);
  }
}

} // namespace sump
