// How much the train gives between its levels, and what settles in it.

#include "core/study/duty.h"

#include <algorithm>

namespace sump {

namespace {

double sillOf(const Passage& passage) {
  return passage.run == nullptr ? passage.opening.sill
                                : *std::ranges::max_element(passage.way.inverts);
}

/// The lowest way on.
double sillAfter(const TrainMap& map, const MapChamber& chamber) {
  double sill = 1e300;
  for (std::size_t way : chamber.ways)
    sill = std::min(sill, sillOf(map.passages[way]));
  return sill;
}

double restOf(const MapChamber& chamber) {
  return inMetres(chamber.vault->floor + chamber.chamber->waterDepth);
}

/// m, of each chamber: what is left in it when the last one has fallen to there.
std::vector<double> keptLevels(Length low, const TrainMap& map) {
  std::vector<double> bottoms(map.chambers.size()), kept(map.chambers.size());
  for (std::size_t i = map.chambers.size(); i-- > 0;) {
    const MapChamber& chamber = map.chambers[i];
    double bottom = inMetres(low);
    if (chamber.next) bottom = std::max(bottoms[*chamber.next], sillAfter(map, chamber));
    bottoms[i] = bottom;
    kept[i] = std::clamp(bottom, inMetres(chamber.vault->floor), restOf(chamber));
  }
  return kept;
}

Volume above(Length low, const TrainMap& map) {
  Volume sum;
  const std::vector<double> kept = keptLevels(low, map);
  for (std::size_t i = map.chambers.size(); i-- > 0;)
    sum += map.chambers[i].chamber->area * metres(restOf(map.chambers[i]) - kept[i]);
  return sum;
}

Decided<Volume> vehicleSediment(const WashDemand& demand) {
  if (demand.vehicles.empty()) return undecided<Volume>({"sediment that the vehicles bring"});
  Volume sum;
  Needs needs;
  for (const VehicleTraffic& vehicle : demand.vehicles) {
    if (!vehicle.perDay) addNeeds(needs, {"vehicles a day"});
    if (!vehicle.sediment) addNeeds(needs, {"sediment that the vehicles bring"});
    if (vehicle.perDay && vehicle.sediment) sum += *vehicle.perDay * *vehicle.sediment;
  }
  if (!needs.empty()) return undecided<Volume>(std::move(needs));
  return sum;
}

Decided<Volume> dailyWash(const WashDemand& demand) {
  if (demand.vehicles.empty()) return undecided<Volume>({"vehicles a day"});
  Volume sum;
  Needs needs;
  for (const VehicleTraffic& vehicle : demand.vehicles) {
    if (!vehicle.perDay) addNeeds(needs, {"vehicles a day"});
    if (!vehicle.water) addNeeds(needs, {"water for one wash"});
    if (vehicle.perDay && vehicle.water) sum += *vehicle.perDay * *vehicle.water;
  }
  if (!needs.empty()) return undecided<Volume>(std::move(needs));
  return sum;
}

} // namespace

Decided<Volume> usableVolume(const StudyContext& context, const Study&,
                             const Decided<TrainMap>& map) {
  return decide([](const TrainMap& train,
                   Length low) { return above(train.chambers.back().vault->floor + low, train); },
                map, given(context.plan.basis.water.lowLevel, "height of the low-level float"));
}

Decided<std::vector<ChamberLow>> lowWaterLevels(const StudyContext& context,
                                                const Decided<TrainMap>& map) {
  return decide(
      [](const TrainMap& train, Length low) {
        std::vector<ChamberLow> levels;
        const auto kept = keptLevels(train.chambers.back().vault->floor + low, train);
        for (std::size_t i = 0; i < kept.size(); ++i)
          levels.push_back(
              {train.chambers[i].vault->id, train.chambers[i].chamber->number, metres(kept[i])});
        return levels;
      },
      map, given(context.plan.basis.water.lowLevel, "height of the low-level float"));
}

Decided<Volume> sludgePerDay(const StudyContext& context, const Study&) {
  const Basis& basis = context.plan.basis;
  const double trap = context.limits.number("duty.trap-share");
  const double solids = context.limits.number("duty.sludge-solids");
  const auto byVehicles =
      decide([&](Volume sediment) { return trap * sediment; }, vehicleSediment(basis.demand));
  const auto bySolids =
      decide([&](Volume wash, double load) { return trap * load / solids * wash; },
             dailyWash(basis.demand), given(basis.water.suspendedSolids, "suspended solids"));
  if (byVehicles && bySolids) return std::max(*byVehicles, *bySolids);
  if (!byVehicles && !bySolids) {
    Needs needs = byVehicles.needs;
    addNeeds(needs, bySolids.needs);
    return undecided<Volume>(std::move(needs));
  }
  return byVehicles ? byVehicles : bySolids;
}

Decided<Duration> pumpOut(const StudyContext& context, const Decided<Volume>& perDay, Area area,
                          Length waterDepth) {
  const double share = context.limits.number("duty.sludge-share");
  return decide(
      [&](Volume daily, Length oil) -> Decided<Duration> {
        if (!(daily.value() > 0)) return undecided<Duration>({"sediment above 0"});
        const Length room = std::max(share * waterDepth - oil, metres(0));
        return seconds(kSecondsPerDay * (area * room / daily).value());
      },
      perDay, given(context.plan.basis.water.oilDepth, "oil allowance"));
}

} // namespace sump
