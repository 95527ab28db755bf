// The checks of notes, underlays and the basis of the calculations.

#include "core/plan/consistency_checks.h"

#include <algorithm>
#include <cmath>

namespace sump {

void ConsistencyCheck::share(double v, const FilePlace& at) {
  demand(v >= 0 && v <= 1, at, "is " + brief(v) + ", must be within 0 and 1",
         "give a share, as 0.8 for 80 %");
}

/// Any quantity that is given must be finite and not negative.
template <class Q>
void ConsistencyCheck::notLess(const std::optional<Q>& v, const FilePlace& at,
                               std::string_view mend) {
  if (!v) return;
  double number = 0;
  if constexpr (std::is_same_v<Q, double>) {
    number = *v;
  } else {
    number = v->value();
  }
  demand(std::isfinite(number) && number >= 0, at,
         "is " + brief(number) + ", must not be less than 0", mend);
}

void ConsistencyCheck::notes(const FilePlace& root) {
  const FilePlace list = root / "notes";
  std::size_t i = 0;
  for (const DimensionNote& note : plan_.notes) {
    const FilePlace at = list[i++];
    id(note.id, at);
    for (const auto& [end, key] : {std::pair(&note.from, "from"), std::pair(&note.to, "to")}) {
      const FilePlace place = at / key;
      point(end->at, place / "at");
      demand(where_.position(*end).has_value(), place / "object",
             "is \"" + end->object + "\", which no object has",
             "give the id of an object of the plan, or leave it out");
    }
  }
}

void ConsistencyCheck::underlays(const FilePlace& root) {
  const FilePlace list = root / "underlays";
  std::size_t i = 0;
  for (const Underlay& underlay : plan_.underlays) {
    const FilePlace at = list[i++];
    id(underlay.id, at);
    point(underlay.at, at / "at");
    positive(underlay.width, at / "width", "give the width on the site in metres");
    positive(underlay.height, at / "height", "give the height on the site in metres");
    share(underlay.strength, at / "strength");
    demand(underlay.file.empty() || underlay.data.text.empty(), at / "file",
           "stands beside a picture held in the plan", "keep either file or data");
  }
}

void ConsistencyCheck::demandBasis(const FilePlace& basis) {
  const WashDemand& wash = plan_.basis.demand;
  const FilePlace at = basis / "demand";
  const FilePlace devices = at / "devices";
  std::size_t i = 0;
  for (const WashDevice& device : wash.devices) {
    const FilePlace place = devices[i++];
    id(device.id, place);
    demand(device.wash.empty() || where_.wash(device.wash) != nullptr, place / "wash",
           "is \"" + device.wash + "\", which is no wash equipment",
           "give the id of wash equipment, or leave it out");
    notLess(std::optional(device.flow), place / "flow", "give the flow of one device");
    notLess(device.pressure, place / "pressure", "give the pressure in pascals");
    demand(device.count > 0, place / "count", "is less than 1", "give how many there are");
    share(device.duty, place / "duty");
  }
  if (wash.simultaneity) share(*wash.simultaneity, at / "simultaneity");
  if (wash.lostFraction) share(*wash.lostFraction, at / "lostFraction");
  notLess(wash.otherInflow, at / "otherInflow", "give the flow in m3/s");
  const FilePlace vehicles = at / "vehicles";
  i = 0;
  for (const VehicleTraffic& kind : wash.vehicles) {
    const FilePlace place = vehicles[i++];
    notLess(kind.perHour, place / "perHour", "give the vehicles an hour");
    notLess(kind.perDay, place / "perDay", "give the vehicles a day");
    notLess(kind.water, place / "water", "give the water for one wash");
    notLess(kind.sediment, place / "sediment", "give the sediment of one wash");
  }
}

void ConsistencyCheck::pumpBasis(const FilePlace& basis) {
  const Pump& pump = plan_.basis.pump;
  const FilePlace at = basis / "pump";
  const FilePlace curve = at / "curve";
  for (std::size_t i = 0; i < pump.curve.size(); ++i) {
    const FilePlace place = curve[i];
    const PumpPoint& p = pump.curve[i];
    notLess(std::optional(p.flow), place / "flow", "give the flow in m3/s");
    notLess(std::optional(p.head), place / "head", "give the head in metres of water");
    notLess(p.npshRequired, place / "npshRequired", "give it in metres of water");
    if (i == 0) continue;
    demand(p.flow > pump.curve[i - 1].flow, place / "flow", "is not above the point before",
           "put the points in order of rising flow");
    demand(p.head <= pump.curve[i - 1].head, place / "head", "is above the point before",
           "give a curve that falls with the flow");
  }
  notLess(pump.equipmentLoss, at / "equipmentLoss", "give it in metres of water");
  notLess(pump.recirculation, at / "recirculation", "give the flow in m3/s");
  notLess(pump.underflow, at / "underflow", "give the flow in m3/s");
  notLess(pump.strainerLoss, at / "strainerLoss", "give it in metres of water");
  notLess(pump.primingHose, at / "primingHose", "give the flow in m3/s");
  notLess(pump.strainerVolume, at / "strainerVolume", "give the volume in m3");
  notLess(pump.eductorPressure, at / "eductorPressure", "give the pressure in pascals");
}

void ConsistencyCheck::wiringBasis(const FilePlace& basis) {
  const WiringBasis& wiring = plan_.basis.wiring;
  const FilePlace at = basis / "wiring";
  const auto brings = [this](const Id& run, const FilePlace& place) {
    demand(run.empty() || where_.run(run) != nullptr, place / "run",
           "is \"" + run + "\", which is no run", "give the id of a conduit, or leave it out");
  };
  const FilePlace supplies = at / "supplies";
  std::size_t i = 0;
  for (const Supply& supply : wiring.supplies) {
    const FilePlace place = supplies[i++];
    id(supply.id, place);
    brings(supply.run, place);
    demand(supply.volts > 0, place / "volts", "is not more than 0", "give the nominal voltage");
  }
  const FilePlace signals = at / "signalCircuits";
  i = 0;
  for (const SignalCircuit& signal : wiring.signalCircuits) {
    const FilePlace place = signals[i++];
    id(signal.id, place);
    brings(signal.run, place);
  }
}

/// The basis, and the lists that name objects.
void ConsistencyCheck::mentions(const FilePlace& root) {
  const FilePlace basis = root / "basis";
  demandBasis(basis);
  pumpBasis(basis);
  wiringBasis(basis);
  const FilePlace water = basis / "water";
  notLess(plan_.basis.water.sludgeDepth, water / "sludgeDepth", "give it in metres");
  notLess(plan_.basis.water.oilDepth, water / "oilDepth", "give it in metres");
  notLess(plan_.basis.water.suspendedSolids, water / "suspendedSolids", "give it in kg/m3");
  notLess(plan_.basis.water.lowLevel, water / "lowLevel", "give it in metres");
  const FilePlace earth = basis / "earth";
  if (!plan_.basis.earth.spoil.empty()) outlineIsSimple(plan_.basis.earth.spoil, earth / "spoil");
  const FilePlace locked = root / "locked";
  for (std::size_t i = 0; i < plan_.locked.size(); ++i) {
    demand(where_.find(plan_.locked[i]).has_value(), locked[i],
           "is \"" + plan_.locked[i] + "\", which no object has", "take it out of the list");
  }
}

} // namespace sump
