// Wash demand: what is drawn at the peak, over a wash and over a day, and what comes back.

#include "core/study/hydraulics_parts.h"

namespace sump {

namespace {

using Share = double (*)(const WashDevice&);

/// Of all devices on product (or fresh) water: flow x count x share.
Flow sum(const std::vector<WashDevice>& devices, bool fresh, Share share) {
  Flow total = cubicMetresPerSecond(0);
  for (const WashDevice& device : devices) {
    if (device.freshWater == fresh)
      total += device.flow * (static_cast<double>(device.count) * share(device));
  }
  return total;
}

/// Sum of `each` over all kinds of vehicle.
template <class T, class Each>
Decided<T> overVehicles(const std::vector<VehicleTraffic>& vehicles, T zero, Each each) {
  if (vehicles.empty()) return undecided<T>({"vehicles"});
  Decided<T> total(zero);
  for (const VehicleTraffic& kind : vehicles)
    total = decide([](T a, T b) { return a + b; }, total, each(kind));
  return total;
}

Decided<double> perDay(const VehicleTraffic& kind) {
  return given(kind.perDay, "vehicles a day of " + kind.name);
}
Decided<double> perHour(const VehicleTraffic& kind) {
  return given(kind.perHour, "vehicles in the busiest hour of " + kind.name);
}
Decided<Volume> water(const VehicleTraffic& kind, const Decided<double>& count) {
  return decide([](Volume each, double n) { return each * n; },
                given(kind.water, "water for one wash of " + kind.name), count);
}

void fillFlows(const WashDemand& wash, DemandStudy& study) {
  const Share all = [](const WashDevice&) { return 1.0; };
  const Share duty = [](const WashDevice& d) { return d.duty; };
  const Decided<bool> some = wash.devices.empty() ? undecided<bool>({"wash devices"}) : true;
  const auto drawn = given(wash.simultaneity, "simultaneity of the wash devices");
  const auto peak = [&](bool fresh) {
    return decide([&](bool, double share) { return sum(wash.devices, fresh, all) * share; }, some,
                  drawn);
  };
  const auto average = [&](bool fresh) {
    return decide([&](bool) { return sum(wash.devices, fresh, duty); }, some);
  };
  study.peakProduct = peak(false);
  study.peakFresh = peak(true);
  study.averageProduct = average(false);
  study.averageFresh = average(true);
  study.peakToVaults = decide([](Flow product, Flow fresh, double lost,
                                 Flow other) { return (product + fresh) * (1 - lost) + other; },
                              study.peakProduct, study.peakFresh,
                              given(wash.lostFraction, "share of wash water lost"),
                              given(wash.otherInflow, "other inflow to the drains"));
}

/// Reclaimed water that is short is made up; what comes back beyond it leaves by the overflow, so
/// that fresh + make-up = lost + surplus.
void fillDay(const WashDemand& wash, DemandStudy& study) {
  const auto& kinds = wash.vehicles;
  const auto lost = given(wash.lostFraction, "share of wash water lost");
  study.vehiclesPerDay = overVehicles(kinds, 0.0, perDay);
  study.vehiclesPerHour = overVehicles(kinds, 0.0, perHour);
  study.dailyWash = overVehicles(
      kinds, cubicMetres(0), [](const VehicleTraffic& kind) { return water(kind, perDay(kind)); });
  study.busyHourWash = overVehicles(
      kinds, cubicMetres(0), [](const VehicleTraffic& kind) { return water(kind, perHour(kind)); });
  const Decided<double> freshShare = decide(
      [](Flow product, Flow fresh) -> Decided<double> {
        const double all = (product + fresh).value();
        if (!(all > 0)) return undecided<double>({"flow of the wash devices"});
        return fresh.value() / all;
      },
      study.averageProduct, study.averageFresh);
  study.dailyFresh =
      decide([](Volume all, double share) { return all * share; }, study.dailyWash, freshShare);
  study.dailyProduct = decide([](Volume all, double share) { return all * (1 - share); },
                              study.dailyWash, freshShare);
  study.dailyToVaults =
      decide([](Volume all, double gone) { return all * (1 - gone); }, study.dailyWash, lost);
  const auto excess = [](Volume a, Volume b) { return std::max(cubicMetres(0), a - b); };
  study.dailyMakeUp = decide(excess, study.dailyProduct, study.dailyToVaults);
  study.dailySurplus = decide(excess, study.dailyToVaults, study.dailyProduct);
  study.reclaimShare = decide(
      [](Volume product, Volume makeUp, Volume all) -> Decided<double> {
        if (!(all.value() > 0)) return undecided<double>({"water for one wash"});
        return (product - makeUp).value() / all.value();
      },
      study.dailyProduct, study.dailyMakeUp, study.dailyWash);
}

} // namespace

DemandStudy demandStudy(const WashDemand& wash) {
  DemandStudy study;
  fillFlows(wash, study);
  fillDay(wash, study);
  return study;
}

} // namespace sump
