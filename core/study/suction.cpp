// The suction: lift, NPSH, priming.

#include "core/study/hydraulics_parts.h"

#include "core/study/friction.h"
#include "core/study/leg_sizes.h"
#include "core/study/object_names.h"

namespace sump {

namespace {

const auto kLess = [](Length a, Length b) { return a - b; };
const auto kMore = [](Length a, Length b) { return a + b; };

class Suction {
public:
  Suction(const StudyContext& context, const Study& study, const HydraulicsStudy& hydraulics,
          const PressureRun& pressure)
      : context_(context), study_(study), hydraulics_(hydraulics), pressure_(pressure),
        run_(*context.locator.run(pressure.run)), path_(*study.run(pressure.run)) {
    result_.run = pressure.run;
  }
  SuctionStudy take();

private:
  void levels();
  void npsh();
  void priming();
  void variants();
  Decided<Length> npshOf(const Decided<Length>& lift, const Decided<Length>& loss) const {
    const WaterStudy& water = hydraulics_.water;
    return decide(npshAvailable, water.airHead, lift, water.vapourHead, loss);
  }
  Decided<Length> loss(const LossTrial& trial) const;

  const StudyContext& context_;
  const Study& study_;
  const HydraulicsStudy& hydraulics_;
  const PressureRun& pressure_;
  const Run& run_;
  const RunStudy& path_;
  SuctionStudy result_;
};

void Suction::levels() {
  const Needs noLevels = {"levels of the run " + run_.id};
  const Decided<Length> inlet =
      path_.resolved ? Decided<Length>(path_.startInvert) : undecided<Length>(noLevels);
  const std::string last = sizeAt(run_, path_.legs.size(), 0);
  const PipeSize* size = context_.catalog.pipeSize(run_.pipe, last);
  result_.pump = path_.resolved && size != nullptr
                     ? Decided<Length>(path_.endInvert + size->inside / 2.0)
                     : undecided<Length>(noLevels);
  const VaultStudy* vault =
      run_.from.kind == EndKind::Chamber ? study_.vault(run_.from.target) : nullptr;
  const Needs noVault = {"a vault that " + run_.id + " draws from"};
  if (vault == nullptr) {
    result_.lowWater = result_.highWater = undecided<Length>(noVault);
  } else {
    result_.highWater =
        given(vault->waterLevel, "rest level of the vault " + spokenName(context_.plan, vault->id));
    result_.lowWater = decide([&](Length up) { return vault->floor + up; },
                              given(context_.plan.basis.water.lowLevel, "low-level float"));
  }
  result_.liftLow = decide(kLess, result_.pump, result_.lowWater);
  result_.liftHigh = decide(kLess, result_.pump, result_.highWater);
  result_.submergence = decide(kLess, result_.lowWater, inlet);
}

/// The limit of maker's print holds at sea level with cold water; a site with less air or more
/// vapour over its water has that much less to lift with.
Decided<Length> liftLimit(const StudyContext& context, const WaterStudy& water) {
  const Density cold = *waterDensity(celsius(15));
  const Length best = headOf(*atmosphericPressure(metres(0)), cold) -
                      headOf(*saturationPressure(celsius(15)), cold);
  return decide(
      [&](Length air, Length vapour) {
        return context.limits.length("suction.lift") - (best - (air - vapour));
      },
      water.airHead, water.vapourHead);
}

void Suction::npsh() {
  const Decided<Length> dirty = decide([](const RunLoss& l) { return l.dirty; }, pressure_.loss);
  const Decided<Length> clean = decide([](const RunLoss& l) { return l.total; }, pressure_.loss);
  result_.suctionLift = decide(kMore, result_.liftLow, dirty);
  result_.npshAvailable = npshOf(result_.liftLow, dirty);
  result_.npshAvailableRest = npshOf(result_.liftHigh, clean);
  result_.npshRequired = decide(
      [&](Flow flow) {
        return given(npshRequiredAt(context_.plan.basis.pump.curve, flow),
                     "required NPSH in the pump curve at the flow of " + run_.id);
      },
      pressure_.flow);
  result_.npshRatio = decide(
      [](Length available, Length required) -> Decided<double> {
        if (!(required.value() > 0)) return undecided<double>({"required NPSH above 0"});
        return (available / required).value();
      },
      result_.npshAvailable, result_.npshRequired);
  result_.liftLimit = liftLimit(context_, hydraulics_.water);
}

void Suction::priming() {
  bool known = path_.resolved && !path_.legs.empty();
  for (std::size_t leg = 0; leg < path_.legs.size(); ++leg) {
    for (const SizedStretch& stretch : legSizes(run_, leg)) {
      const PipeSize* size = context_.catalog.pipeSize(run_.pipe, stretch.size);
      known = known && size != nullptr;
      if (size == nullptr) continue;
      const Length length = stretch.share * path_.legs[leg].developed;
      result_.pipeVolume += kPi / 4 * size->inside * size->inside * length;
    }
  }
  const Decided<Volume> pipe = known ? Decided<Volume>(result_.pipeVolume)
                                     : undecided<Volume>({"length and bore of the run " + run_.id});
  const Pump& pump = context_.plan.basis.pump;
  result_.primingVolume = decide([](Volume a, Volume b) { return a + b; }, pipe,
                                 given(pump.strainerVolume, "volume of the strainer"));
  result_.primingTime = decide(
      [](Volume volume, Flow hose) -> Decided<Duration> {
        if (!(hose.value() > 0)) return undecided<Duration>({"flow of the priming hose"});
        return seconds((volume / hose).value());
      },
      result_.primingVolume, given(pump.primingHose, "flow of the priming hose"));
}

Decided<Length> Suction::loss(const LossTrial& trial) const {
  return decide(
      [&](Flow flow) {
        return decide([](const RunLoss& l) { return l.dirty; },
                      runLoss(context_, hydraulics_.water, run_, path_, flow, trial));
      },
      pressure_.flow);
}

void Suction::variants() {
  const auto add = [&](SuctionCase which, Decided<Length> lost) {
    const Decided<Length> left = npshOf(result_.liftLow, lost);
    result_.variants.push_back({which, std::move(lost), left});
  };
  add(SuctionCase::AsDrawn, decide([](const RunLoss& l) { return l.dirty; }, pressure_.loss));
  const std::pair<SuctionCase, LossTrial> cases[] = {
      {SuctionCase::Straight, {0, true, 0, metres(0), true}},
      {SuctionCase::OneSizeUp, {1, false, 0, metres(0), true}},
      {SuctionCase::OneMoreElbow, {0, false, 1, metres(0), true}},
      {SuctionCase::OneMoreFoot, {0, false, 0, feet(1), true}}};
  for (const auto& [which, trial] : cases)
    add(which, loss(trial));
}

SuctionStudy Suction::take() {
  levels();
  npsh();
  priming();
  variants();
  return std::move(result_);
}

} // namespace

SuctionStudy suctionStudy(const StudyContext& context, const Study& study,
                          const HydraulicsStudy& hydraulics, const PressureRun& pressure) {
  return Suction(context, study, hydraulics, pressure).take();
}

} // namespace sump
