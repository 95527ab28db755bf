#pragma once
// What is calculated: the train, the pump, the wiring. Part of known_numbers.h.

#include "tests/sheet/known_numbers.h"

namespace sump::testing {

inline void KnownNumbers::train(const TrainStudy& train) {
  for (const auto* state : {&train.pumpStopped, &train.pumpRunning}) {
    if (!*state) continue;
    for (const ChamberLevel& chamber : (*state)->chambers)
      levels(chamber.vault, chamber.rest, chamber.level);
    for (const PassageLevels& way : (*state)->passages) {
      for (const RunLevel& point : way.points)
        levels(way.run, point.water);
    }
    for (const BasinLevel& basin : (*state)->basins)
      levels(basin.basin, basin.level);
  }
  if (train.lowWater) {
    for (const ChamberLow& chamber : *train.lowWater)
      levels(chamber.vault, chamber.level);
  }
  for (const GravityStudy& g : train.gravity) {
    put(Printed::Flow, g.run, g.fullFlow);
    put(Printed::Flow, g.run, g.peak);
    put(Printed::Share, g.run, g.share);
    put(Printed::Velocity, g.run, g.velocity);
  }
  for (const ChamberDuty& duty : train.chambers) {
    put(Printed::Time, duty.vault, duty.detention);
    lengths(duty.vault, duty.activeDepth);
    put(Printed::Velocity, duty.vault, duty.overflowRate);
    put(Printed::Velocity, duty.vault, duty.forward);
  }
  for (const auto* flow : {&train.peakInflow, &train.peakDraw, &train.recirculation})
    put(Printed::Flow, Id{}, *flow);
  for (const auto* time : {&train.fill, &train.drawDown, &train.drawDownNet, &train.pumpOutFirst,
                           &train.pumpOutTrain, &train.turnover})
    put(Printed::Time, Id{}, *time);
  volumes(Id{}, train.usable, train.sludgePerDay);
}

inline void KnownNumbers::pumping(const HydraulicsStudy& h) {
  for (const PressureRun& run : h.runs) {
    put(Printed::Flow, run.run, run.flow);
    put(Printed::Velocity, run.run, run.ceiling);
    lengths(run.run, run.loss);
    if (run.loss) lengths(run.run, run.loss->dirty);
    if (run.loss) put(Printed::Velocity, run.run, run.loss->fastest);
    for (const auto* pressure : {&run.neededAtStart, &run.wanted, &run.atEnd})
      put(Printed::Pressure, run.run, *pressure);
  }
  for (const SuctionStudy& s : h.suctions) {
    levels(s.run, s.pump, s.lowWater, s.highWater);
    lengths(s.run, s.liftLow, s.liftHigh, s.submergence, s.suctionLift, s.npshAvailable,
            s.npshRequired, s.liftLimit);
    volumes(s.run, s.primingVolume);
    // A bare ratio is read as a level is.
    if (s.npshRatio) on("G-6", Printed::Level, *s.npshRatio * (metric_ ? 1 : kMetresPerFoot));
    put(Printed::Time, s.run, s.primingTime);
  }
  const DemandStudy& d = h.demand;
  volumes(Id{}, d.busyHourWash, d.dailyWash, d.dailyFresh, d.dailyProduct, d.dailyToVaults,
          d.dailyMakeUp, d.dailySurplus);
  put(Printed::Share, Id{}, d.reclaimShare);
  for (const auto* flow : {&d.peakProduct, &d.peakFresh, &d.peakToVaults, &h.pumpFlow})
    put(Printed::Flow, Id{}, *flow);
  lengths(Id{}, h.pumpHead);
  put(Printed::Power, Id{}, waterPower(h));
}

inline void KnownNumbers::wiring(const Plan& plan, const WiringStudy& wiring) {
  for (const ConduitStudy& conduit : wiring.conduits) {
    put(Printed::Share, conduit.run, conduit.fill);
    put(Printed::Share, conduit.run, conduit.fillLimit);
    put(Printed::Angle, conduit.run, conduit.mostDegrees * kPi / 180);
  }
  for (const WorkingSpaceStudy& space : wiring.spaces) {
    lengths(space.room, space.depthNeeded, space.depthClear, space.widthNeeded, space.widthClear,
            space.heightNeeded);
  }
  for (const SupplyStudy& supply : wiring.supplies) {
    lengths(supply.supply, supply.disconnectDistance);
    for (const Supply& given : plan.basis.wiring.supplies) {
      if (given.id == supply.supply) lengths(given.run, supply.disconnectDistance);
    }
  }
  for (const Supply& supply : plan.basis.wiring.supplies) {
    put(Printed::Volts, supply.id, supply.volts);
    if (supply.voltsToGround) put(Printed::Volts, supply.id, *supply.voltsToGround);
    if (const auto system = nominalSystem(supply))
      put(Printed::Volts, supply.id, std::stoi(std::string(system->name)));
  }
  for (const SignalCircuit& signal : plan.basis.wiring.signalCircuits) {
    const bool low = signal.kind == SignalKind::Dc24 || signal.kind == SignalKind::Ac24;
    for (const Id& object : {signal.id, signal.run})
      put(Printed::Volts, object, low ? 24 : signal.kind == SignalKind::Ac110 ? 110 : 220);
  }
}

inline void KnownNumbers::basis(const Basis& basis) {
  on("E-1", Printed::Volts, 24); // of limited-energy circuits in general
  lengths(Id{}, basis.water.sludgeDepth, basis.water.oilDepth, basis.water.lowLevel);
  if (basis.makeUp.pressure) put(Printed::Pressure, Id{}, *basis.makeUp.pressure);
  put(Printed::Flow, Id{}, basis.pump.recirculation);
  put(Printed::Flow, Id{}, basis.pump.underflow);
  // The pump in the designer's own words.
  for (const PrintedNumber& number : printedNumbers(basis.pump.name))
    put(number.kind, Id{}, number.value);
}

inline void KnownNumbers::calculated(const Review& review) {
  static const std::map<QuantityKind, Printed> kinds = {
      {QuantityKind::Length, Printed::Length},
      {QuantityKind::HeadOfWater, Printed::Length},
      {QuantityKind::Volume, Printed::Volume},
      {QuantityKind::SolidVolume, Printed::Volume},
      {QuantityKind::DisplacedVolume, Printed::Volume},
      {QuantityKind::Flow, Printed::Flow},
      {QuantityKind::Velocity, Printed::Velocity},
      {QuantityKind::Pressure, Printed::Pressure},
      {QuantityKind::Mass, Printed::Mass},
      {QuantityKind::Force, Printed::Force},
      {QuantityKind::Time, Printed::Time},
      {QuantityKind::Share, Printed::Share}};
  for (const Calculation& calculation : calculations(review.plan, review.study)) {
    const auto kind = kinds.find(calculation.kind);
    if (calculation.decided && kind != kinds.end())
      put(kind->second, calculation.object, calculation.result);
  }
}

} // namespace sump::testing
