#include "core/study/study.h"

#include "core/study/context.h"

namespace sump {

const VaultStudy* Study::vault(const Id& id) const {
  const auto found = vaultIndex.find(id);
  return found == vaultIndex.end() ? nullptr : &vaults[found->second];
}

const RunStudy* Study::run(const Id& id) const {
  const auto found = runIndex.find(id);
  return found == runIndex.end() ? nullptr : &runs[found->second];
}

namespace {

void fillRun(const StudyContext& context, const Run& run, RunStudy& study) {
  if (!study.resolved) return;
  study.penetrations = penetrations(context, run, study);
  fillCover(context, study);
  if (facts(run.service).drive == Drive::Suction) {
    study.pocket = highPocket(study.points, context.limits.length("suction.tolerance"));
  }
  study.bends = bends(context, run, study);
}

} // namespace

Study study(const Plan& plan, const Catalog& catalog, const Limits& limits) {
  const StudyContext context(plan, catalog, limits);
  Study result;
  result.ground = context.ground;
  result.vaults = vaultShells(context);
  result.runs = runPaths(context);
  for (std::size_t i = 0; i < result.runs.size(); ++i) {
    fillRun(context, plan.runs[i], result.runs[i]);
  }
  for (std::size_t i = 0; i < result.vaults.size(); ++i) {
    result.vaultIndex.emplace(result.vaults[i].id, i);
  }
  for (std::size_t i = 0; i < result.runs.size(); ++i) {
    result.runIndex.emplace(result.runs[i].id, i);
  }
  fillWater(context, result.runs, result.vaults);
  for (const VaultStudy& vault : result.vaults)
    result.workingVolume += vault.workingVolume;
  const std::vector<Joints> joined = joints(context, result.runs);
  for (std::size_t i = 0; i < result.runs.size(); ++i) {
    result.runs[i].downLegs = downLegs(context, plan.runs[i], result.runs[i], result.vaults);
    fillPieces(context, plan.runs[i], joined[i], result.runs[i]);
  }
  result.takeOff = takeOff(context, result);
  fillHydraulics(context, result);
  fillTrain(context, result);
  fillEarth(context, result);
  fillWiring(context, result);
  return result;
}

std::vector<Calculation> calculations(const Plan& plan, const Study& study) {
  std::vector<Calculation> all = hydraulicsCalculations(plan, study);
  for (auto* part : {trainCalculations, earthCalculations, wiringCalculations}) {
    std::vector<Calculation> more = part(plan, study);
    all.insert(all.end(), std::make_move_iterator(more.begin()),
               std::make_move_iterator(more.end()));
  }
  return all;
}

} // namespace sump
