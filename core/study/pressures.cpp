// Pressures at the ends of the pumped and supplied runs, and where pump and system meet.
//
// From the low water to the end of a run: pressure head = pump head - rise - losses of suction,
// equipment and run - velocity head there.

#include "core/study/hydraulics_parts.h"

#include "core/study/object_names.h"

#include <algorithm>

namespace sump {

namespace {

constexpr int kSystemPoints = 12;
constexpr int kHalvings = 60;

class Pressures {
public:
  Pressures(const StudyContext& context, const Study& study, HydraulicsStudy& hydraulics)
      : context_(context), study_(study), hydraulics_(hydraulics), suction_(only(Service::Suction)),
        product_(only(Service::Product)) {}
  void fill();

private:
  Decided<Length> elevation(const PressureRun& run, bool atEnd) const;
  Decided<Pressure> wanted(const PressureRun& run) const;
  Decided<Pressure> fromPump(const PressureRun& run) const;
  Decided<Pressure> fromSupply(const PressureRun& run) const;
  void fillRun(PressureRun& run);
  void fillDevices();
  const PressureRun* only(Service service) const;
  Decided<Length> systemHead(Flow product) const;
  Decided<WorkingPoint> workingPoint() const;
  Decided<Length> lowWater() const {
    return hydraulics_.suctions.empty() ? undecided<Length>({"a suction run"})
                                        : hydraulics_.suctions.front().lowWater;
  }
  Decided<Length> suctionLoss() const {
    if (suction_ == nullptr) return undecided<Length>({"one suction run"});
    return decide([](const RunLoss& l) { return l.total; }, suction_->loss);
  }

  const StudyContext& context_;
  const Study& study_;
  HydraulicsStudy& hydraulics_;
  const PressureRun* suction_; ///< when there is just one
  const PressureRun* product_; ///< the same
};

/// The run of a service when there is just one.
const PressureRun* Pressures::only(Service service) const {
  const PressureRun* found = nullptr;
  for (const PressureRun& run : hydraulics_.runs) {
    if (run.service != service) continue;
    if (found != nullptr) return nullptr;
    found = &run;
  }
  return found;
}

Decided<Length> Pressures::elevation(const PressureRun& run, bool atEnd) const {
  const RunStudy* path = study_.run(run.run);
  if (!path->resolved) return undecided<Length>({"levels of the run " + run.run});
  return atEnd ? path->endInvert : path->startInvert;
}

Decided<Pressure> Pressures::wanted(const PressureRun& run) const {
  if (run.service == Service::Recirculation) {
    return given(context_.plan.basis.pump.eductorPressure, "pressure wanted at the eductor");
  }
  if (run.service != Service::Product) return pascals(0);
  const Id& wash = context_.locator.run(run.run)->to.target;
  Decided<Pressure> most = undecided<Pressure>({"wash devices at the end of " + run.run});
  for (const WashDevice& device : context_.plan.basis.demand.devices) {
    if (device.freshWater || (!device.wash.empty() && device.wash != wash)) continue;
    const auto own = given(device.pressure, "pressure needed by " + called(device));
    if (!own) return own;
    most = most ? std::max(*most, *own) : *own;
  }
  return most;
}

Decided<Pressure> Pressures::fromPump(const PressureRun& run) const {
  // The equipment stands between the pump and the product port only.
  const Decided<Length> equipment =
      run.service == Service::Product
          ? given(context_.plan.basis.pump.equipmentLoss, "head lost in the equipment")
          : Decided<Length>(metres(0));
  return decide(
      [](Length head, Length end, Length low, Length suction, Length treated, const RunLoss& loss,
         Density rho) {
        return pressureOf(head - (end - low) - suction - treated - loss.total - loss.velocityHead,
                          rho);
      },
      hydraulics_.pumpHead, elevation(run, true), lowWater(), suctionLoss(), equipment, run.loss,
      hydraulics_.water.density);
}

Decided<Pressure> Pressures::fromSupply(const PressureRun& run) const {
  return decide(
      [](Pressure supply, Length lift, const RunLoss& loss, Density rho) {
        return supply - pressureOf(lift + loss.total + loss.velocityHead, rho);
      },
      given(context_.plan.basis.makeUp.pressure, "pressure of the fresh-water supply"), run.lift,
      run.loss, hydraulics_.water.density);
}

void Pressures::fillRun(PressureRun& run) {
  run.lift =
      decide([](Length a, Length b) { return a - b; }, elevation(run, true), elevation(run, false));
  if (facts(run.service).drive == Drive::Suction) {
    run.wanted = run.neededAtStart = run.atEnd =
        undecided<Pressure>({"a pressure run; see the suction"});
    return;
  }
  run.wanted = wanted(run);
  run.neededAtStart = decide([](Pressure end, Length lift, const RunLoss& loss,
                                Density rho) { return end + pressureOf(lift + loss.total, rho); },
                             run.wanted, run.lift, run.loss, hydraulics_.water.density);
  if (run.service == Service::MakeUp) {
    run.atEnd = fromSupply(run);
  } else if (run.service == Service::Underflow) {
    run.atEnd = undecided<Pressure>({"pump head while the underflow is flushed"});
  } else {
    run.atEnd = fromPump(run);
  }
}

void Pressures::fillDevices() {
  for (const WashDevice& device : context_.plan.basis.demand.devices) {
    if (device.freshWater) continue;
    DevicePressure row;
    row.device = device.id;
    row.available = undecided<Pressure>({"a product run to the wash of " + called(device)});
    for (const PressureRun& run : hydraulics_.runs) {
      const Run& drawn = *context_.locator.run(run.run);
      if (run.service != Service::Product || drawn.to.kind != EndKind::Wash) continue;
      if (!device.wash.empty() && device.wash != drawn.to.target) continue;
      row.run = run.run;
      row.available = run.atEnd;
    }
    row.required = given(device.pressure, "pressure needed by " + called(device));
    hydraulics_.devices.push_back(std::move(row));
  }
}

/// Head that the system takes when this much goes to the wash.
Decided<Length> Pressures::systemHead(Flow product) const {
  const PressureRun *line = product_, *suction = suction_;
  if (line == nullptr || suction == nullptr) {
    return undecided<Length>({"one product run and one suction run: no network is solved"});
  }
  const auto lossAt = [&](const PressureRun& run, Flow flow) {
    return runLoss(context_, hydraulics_.water, *context_.locator.run(run.run),
                   *study_.run(run.run), flow, {0, false, 0, metres(0), true});
  };
  return decide(
      [&](Flow peak, Flow pump, Pressure want, Density rho, Length end, Length low,
          Length treated) -> Decided<Length> {
        if (!(peak.value() > 0)) return undecided<Length>({"flow of the wash devices"});
        const double ratio = (product / peak).value();
        const Flow through = product + (pump - peak);
        return decide(
            [&](const RunLoss& a, const RunLoss& b) {
              return end - low + (headOf(want, rho) + treated) * (ratio * ratio) + a.total +
                     b.total + b.velocityHead;
            },
            lossAt(*suction, through), lossAt(*line, product));
      },
      line->flow, hydraulics_.pumpFlow, line->wanted, hydraulics_.water.density,
      elevation(*line, true), lowWater(),
      given(context_.plan.basis.pump.equipmentLoss, "head lost in the equipment"));
}

/// The system takes more and the pump gives less as the flow rises, so they meet once.
Decided<WorkingPoint> Pressures::workingPoint() const {
  const auto& curve = context_.plan.basis.pump.curve;
  const PressureRun* line = product_;
  if (curve.size() < 2) return undecided<WorkingPoint>({"pump curve"});
  if (line == nullptr) return undecided<WorkingPoint>({"one product run: no network is solved"});
  const Decided<Length> first = systemHead(cubicMetresPerSecond(0));
  if (!first) return undecided<WorkingPoint>(first.needs);
  const Flow other = *hydraulics_.pumpFlow - *line->flow;
  const auto spare = [&](Flow product) { // pump head left over
    return (*headAt(curve, std::min(curve.back().flow, product + other)) - *systemHead(product))
        .value();
  };
  Flow low = std::max(cubicMetresPerSecond(0), curve.front().flow - other);
  Flow high = curve.back().flow - other;
  if (high <= low || spare(low) < 0 || spare(high) > 0) {
    return undecided<WorkingPoint>({"pump curve as far as it meets the system"});
  }
  for (int i = 0; i < kHalvings; ++i) {
    const Flow middle = (low + high) / 2.0;
    (spare(middle) > 0 ? low : high) = middle;
  }
  const double ratio = (low / *line->flow).value();
  return WorkingPoint{low + other, low, *headAt(curve, low + other),
                      *line->wanted * (ratio * ratio)};
}

void Pressures::fill() {
  for (PressureRun& run : hydraulics_.runs)
    fillRun(run);
  fillDevices();
  hydraulics_.workingPoint = workingPoint();
  if (!hydraulics_.workingPoint) return;
  const Flow other = hydraulics_.workingPoint->pump - hydraulics_.workingPoint->product;
  const Flow most = context_.plan.basis.pump.curve.back().flow - other;
  for (int i = 0; i <= kSystemPoints; ++i) {
    const Flow product = most * (static_cast<double>(i) / kSystemPoints);
    if (const auto head = systemHead(product)) {
      hydraulics_.systemCurve.push_back({product + other, *head});
    }
  }
}

} // namespace

void fillPressures(const StudyContext& context, const Study& study, HydraulicsStudy& hydraulics) {
  Pressures(context, study, hydraulics).fill();
}

} // namespace sump
