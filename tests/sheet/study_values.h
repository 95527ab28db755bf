#pragma once
// The Study's own number behind each calculation, looked up apart from the code that writes the
// calculations, so that a report can be held against it.

#include "core/study/study.h"

#include <map>
#include <optional>
#include <string>
#include <utility>

namespace sump::testing {

class StudyValues {
public:
  explicit StudyValues(const Study& study) {
    hydraulics(study.hydraulics);
    for (const PressureRun& run : study.hydraulics.runs)
      pressure(run);
    for (const SuctionStudy& suction : study.hydraulics.suctions)
      lift(suction);
    gravity(study.train);
    storage(study.train);
    for (const DevicePressure& device : study.hydraulics.devices)
      put("wash.pressure", device.device, device.available);
    for (const SuctionStudy& suction : study.hydraulics.suctions) {
      const RunStudy& run = *study.run(suction.run);
      if (!run.resolved) continue;
      put("suction.pocket", run.id, Decided<Length>(run.pocket ? run.pocket->rise : metres(0)));
    }
    for (const ChamberDuty& duty : study.train.chambers)
      chamber(study.train, duty);
    earth(study.earth);
    for (const ConduitStudy& conduit : study.wiring.conduits)
      put("wiring.fill", conduit.run, conduit.fill);
  }

  bool knows(const std::string& id, const Id& object) const {
    return values_.contains({id, object});
  }
  /// Nothing: undecided.
  std::optional<double> of(const std::string& id, const Id& object) const {
    return values_.at({id, object});
  }
  std::size_t size() const { return values_.size(); }

private:
  static double number(double v) { return v; }
  static double number(int v) { return v; }
  template <class Unit> static double number(const bu::quantity<Unit>& v) { return v.value(); }
  template <class T> void put(const std::string& id, const Id& object, const Decided<T>& value) {
    values_[{id, object}] = value ? std::optional(number(*value)) : std::nullopt;
  }

  void hydraulics(const HydraulicsStudy& h) {
    put("water.density", "", h.water.density);
    put("water.viscosity", "", h.water.viscosity);
    put("water.vapour-pressure", "", h.water.vapourPressure);
    put("air.pressure", "", h.water.airPressure);
    const DemandStudy& d = h.demand;
    put("demand.peak-product", "", d.peakProduct);
    put("demand.peak-fresh", "", d.peakFresh);
    put("demand.peak-to-vaults", "", d.peakToVaults);
    put("demand.busy-hour", "", d.busyHourWash);
    put("demand.daily-wash", "", d.dailyWash);
    put("demand.daily-product", "", d.dailyProduct);
    put("demand.daily-to-vaults", "", d.dailyToVaults);
    put("demand.daily-make-up", "", d.dailyMakeUp);
    put("demand.daily-surplus", "", d.dailySurplus);
    put("demand.reclaim-share", "", d.reclaimShare);
    put("pump.flow", "", h.pumpFlow);
    put("pump.head", "", h.pumpHead);
    put("pump.working-point", "",
        decide([](const WorkingPoint& w) { return w.product; }, h.workingPoint));
  }
  void pressure(const PressureRun& run) {
    put("run.loss", run.run, decide([](const RunLoss& l) { return l.total; }, run.loss));
    put("run.needed-at-start", run.run, run.neededAtStart);
    put("run.at-end", run.run, run.atEnd);
    const auto drawn = [](const std::vector<SizeChoice>& sizes) { return sizes.front().fastest; };
    put("run.size", run.run, decide(drawn, run.sizes));
  }
  void lift(const SuctionStudy& s) {
    put("suction.lift-low", s.run, s.liftLow);
    put("suction.lift-high", s.run, s.liftHigh);
    put("suction.total-lift", s.run, s.suctionLift);
    put("suction.npsh-available", s.run, s.npshAvailable);
    put("suction.npsh-ratio", s.run, s.npshRatio);
    put("suction.npsh-margin", s.run,
        decide([](Length has, Length wants) -> Length { return has - wants; }, s.npshAvailable,
               s.npshRequired));
    put("suction.npsh-rest", s.run, s.npshAvailableRest);
    put("suction.submergence", s.run, s.submergence);
    put("suction.priming-volume", s.run, s.primingVolume);
    put("suction.priming-time", s.run, s.primingTime);
  }
  void gravity(const TrainStudy& train) {
    for (const GravityStudy& g : train.gravity) {
      put("gravity.carried", g.run, g.peak);
      put("gravity.full-flow", g.run, g.fullFlow);
      put("gravity.full-velocity", g.run, g.fullVelocity);
      put("gravity.share", g.run, g.share);
      put("gravity.depth", g.run, g.depth);
      put("gravity.velocity", g.run, g.velocity);
    }
  }
  void storage(const TrainStudy& train) {
    put("train.peak-inflow", "", train.peakInflow);
    put("train.peak-draw", "", train.peakDraw);
    const auto over = [](const TrainLevels& l) { return l.overflow; };
    put("train.overflow.stopped", "", decide(over, train.pumpStopped));
    put("train.overflow.running", "", decide(over, train.pumpRunning));
    put("train.usable", "", train.usable);
    put("train.fill", "", train.fill);
    put("train.draw-down", "", train.drawDown);
    put("train.draw-down-net", "", train.drawDownNet);
    put("duty.sludge", "", train.sludgePerDay);
    put("duty.pump-out-first", "", train.pumpOutFirst);
    put("duty.pump-out-train", "", train.pumpOutTrain);
    put("duty.turnover", "", train.turnover);
  }
  void chamber(const TrainStudy& train, const ChamberDuty& duty) {
    const std::string n = "." + std::to_string(duty.chamber);
    const auto level = [&](const TrainLevels& l) {
      return l.chamber(duty.vault, duty.chamber)->level;
    };
    put("train.level.stopped" + n, duty.vault, decide(level, train.pumpStopped));
    put("train.level.running" + n, duty.vault, decide(level, train.pumpRunning));
    put("duty.flow" + n, duty.vault, duty.throughflow);
    put("duty.detention" + n, duty.vault, duty.detention);
    put("duty.overflow-rate" + n, duty.vault, duty.overflowRate);
    put("duty.forward" + n, duty.vault, duty.forward);
    put("duty.particle" + n, duty.vault, duty.particle);
    put("duty.droplet" + n, duty.vault, duty.droplet);
    put("duty.active-volume" + n, duty.vault, duty.activeVolume);
    put("duty.sludge-full" + n, duty.vault, duty.sludgeFull);
  }
  void earth(const EarthStudy& e) {
    for (const BuoyancyStudy& vault : e.buoyancy) {
      put("buoyancy.uplift", vault.vault, vault.uplift);
      put("buoyancy.factor", vault.vault, vault.factor);
      put("buoyancy.ballast", vault.vault, vault.ballast);
      put("buoyancy.collar", vault.vault, vault.collar);
      put("vault.weight", vault.vault, Decided<Mass>(vault.weight));
      put("vault.lift", vault.vault, Decided<Mass>(vault.heaviestPiece));
    }
    for (const LidLoadStudy& lid : e.lids)
      put("lid.earth", lid.vault, lid.earth);
    for (const LidLoadStudy& lid : e.lids)
      put("lid.live", lid.vault, lid.live);
    for (const PitStudy& pit : e.pits) {
      put("dig.depth", pit.vaults.front(), pit.depth);
      put("dig.volume", pit.vaults.front(), pit.dug);
      put("dig.bedding", pit.vaults.front(), pit.bedding);
      put("dig.risers", pit.vaults.front(), pit.risers);
      put("dig.backfill", pit.vaults.front(), pit.backfill);
    }
    for (const TrenchStudy& trench : e.trenches) {
      put("trench.width", trench.run, Decided<Length>(trench.bottomWidth));
      put("trench.volume", trench.run, Decided<Volume>(trench.dug));
      put("trench.bedding", trench.run, Decided<Volume>(trench.bedding));
      put("trench.pipe-zone", trench.run, Decided<Volume>(trench.pipeZone));
      put("trench.backfill", trench.run, Decided<Volume>(trench.backfill));
    }
    put("dig.deepest", "", e.deepest);
    put("dig.dug", "", e.dug);
    put("dig.backfilled", "", e.backfill);
    put("dig.spoil", "", e.spoil);
    put("dig.kept", "", e.kept);
    put("dig.kept-height", "", e.keptHeight);
    put("dig.heap-holds", "", e.heapHolds);
    put("dig.spoil-clear", "", e.spoilClear);
    put("dig.surplus", "", e.surplus);
    put("dig.truckloads", "", e.truckloads);
  }

  std::map<std::pair<std::string, Id>, std::optional<double>> values_;
};

} // namespace sump::testing
