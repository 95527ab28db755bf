#include "core/study/duty.h"

#include "core/study/water_air.h"

#include <algorithm>

namespace sump {

namespace {

/// Water of the plan's temperature and a particle of this density.
Decided<Settling> settlingOf(const StudyContext& context, std::string_view density) {
  return decide(
      [&](Temperature t) -> Decided<Settling> {
        const auto rho = waterDensity(t);
        const auto mu = waterViscosity(t);
        if (!rho || !mu) return undecided<Settling>({"a water temperature above freezing"});
        return Settling{kilogramsPerCubicMetre(context.limits.number(density)), *rho, *mu};
      },
      given(context.plan.basis.water.temperature, "water temperature"));
}

/// Inflow of each chamber: what flows on from those that lead to it, and what enters there.
std::vector<double> enteringFlows(const TrainMap& map, const TrainLoad& load) {
  const std::vector<double> leaving = throughflows(map, load);
  std::vector<double> entering = leaving;
  if (!map.suction) return entering;
  // The draw leaves the chamber of the suction only after having passed through it.
  entering[*map.suction] = throughflows(map, load, false)[*map.suction];
  return entering;
}

Decided<std::vector<double>> dutyFlows(const Decided<TrainMap>& map, const PeakFlows& peak) {
  return decide(
      [](const TrainMap& train, Flow in, Flow drawn, Flow back) {
        const Flow none = cubicMetresPerSecond(0);
        std::vector<double> flows = enteringFlows(train, {in, none, none});
        const std::vector<double> running = enteringFlows(train, {in, drawn, back});
        for (std::size_t i = 0; i < flows.size(); ++i)
          flows[i] = std::max(flows[i], running[i]);
        return flows;
      },
      map, peak.inflow, peak.drawn, peak.recirculated);
}

Decided<Length> activeDepth(const WaterBasis& water, const VaultStudy& vault,
                            const ChamberStudy& chamber) {
  const auto rest = given(vault.waterLevel, "an overflow that every vault's water gets to");
  return decide([&](Length, Length sludge,
                    Length oil) { return std::max(chamber.waterDepth - sludge - oil, metres(0)); },
                rest, given(water.sludgeDepth, "sludge allowance"),
                given(water.oilDepth, "oil allowance"));
}

void fillFlow(const ChamberStudy& chamber, const Decided<Flow>& flow, ChamberDuty& duty) {
  duty.activeVolume = decide([&](Length depth) { return chamber.area * depth; }, duty.activeDepth);
  duty.detention = decide(
      [](Volume volume, Flow q) -> Decided<Duration> {
        if (!(q.value() > 0)) return undecided<Duration>({"a flow through the chamber"});
        return volume / q;
      },
      duty.activeVolume, flow);
  duty.overflowRate = decide([&](Flow q) { return Velocity(q / chamber.area); }, flow);
  duty.forward = decide(
      [&](Length depth, Flow q) -> Decided<Velocity> {
        if (!(depth.value() > 0)) return undecided<Velocity>({"water above the sludge allowance"});
        return Velocity(q / (depth * chamber.width));
      },
      duty.activeDepth, flow);
}

/// Grit against the overflow rate over the share of the area that counts, oil after API 421.
void fillKept(const StudyContext& context, const Decided<Settling>& grit,
              const Decided<Settling>& oil, ChamberDuty& duty) {
  const double share = context.limits.number("duty.settling-share");
  duty.particle = decide(
      [&](Velocity rate, Velocity, const Settling& in) { return smallestKept(rate / share, in); },
      duty.overflowRate, duty.forward, grit);
  duty.droplet = decide(
      [&](Velocity rate, Velocity forward, const Settling& in) -> Decided<Length> {
        const auto rise = slowestRiseKept(rate, forward);
        duty.oilGuideHolds = rise.has_value();
        if (!rise) return undecided<Length>({"a slower flow: the guide ends at 3 ft/min"});
        return smallestKept(*rise, in);
      },
      duty.overflowRate, duty.forward, oil);
}

/// The smaller of what is decided so far.
Decided<Length> smaller(const Decided<Length>& soFar, const Decided<Length>& here) {
  if (!here) return soFar ? soFar : here;
  return soFar ? std::min(*soFar, *here) : here;
}

} // namespace

std::vector<ChamberDuty> chamberDuties(const StudyContext& context, const Study& study,
                                       const Decided<TrainMap>& map, const PeakFlows& peak) {
  const auto flows = dutyFlows(map, peak);
  const auto grit = settlingOf(context, "duty.grit-density");
  const auto oil = settlingOf(context, "duty.oil-density");
  const auto daily = sludgePerDay(context, study);
  std::vector<ChamberDuty> duties;
  for (const VaultStudy& vault : study.vaults) {
    for (const ChamberStudy& chamber : vault.chambers) {
      ChamberDuty duty;
      duty.vault = vault.id;
      duty.chamber = chamber.number;
      const std::size_t index = duties.size();
      duty.throughflow = decide(
          [&](const std::vector<double>& all) { return cubicMetresPerSecond(all[index]); }, flows);
      duty.activeDepth = activeDepth(context.plan.basis.water, vault, chamber);
      fillFlow(chamber, duty.throughflow, duty);
      fillKept(context, grit, oil, duty);
      const ChamberDuty* before = duties.empty() ? nullptr : &duties.back();
      duty.particleSoFar = before ? smaller(before->particleSoFar, duty.particle) : duty.particle;
      duty.dropletSoFar = before ? smaller(before->dropletSoFar, duty.droplet) : duty.droplet;
      duty.sludgeFull = pumpOut(context, daily, chamber.area, chamber.waterDepth);
      duties.push_back(std::move(duty));
    }
  }
  return duties;
}

} // namespace sump
