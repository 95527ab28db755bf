#include "core/study/hydraulics_parts.h"

#include <algorithm>

namespace sump {

namespace {

template <class Row> const Row* ofRun(const std::vector<Row>& rows, const Id& id) {
  const auto found = std::ranges::find(rows, id, &Row::run);
  return found == rows.end() ? nullptr : &*found;
}

bool isPressureRun(Service service) {
  const Drive drive = facts(service).drive;
  return drive == Drive::Suction || drive == Drive::Pressure;
}

template <class Is> int countRuns(const Plan& plan, Is is) {
  int count = 0;
  for (const Run& run : plan.runs)
    count += is(run) ? 1 : 0;
  return count;
}

/// Product at the peak; recirculation runs all the while, where there is any.
Decided<Flow> pumpFlow(const Plan& plan, const DemandStudy& demand) {
  const auto& flow = plan.basis.pump.recirculation;
  const bool none = !flow && countRuns(plan, [](const Run& r) {
                               return r.service == Service::Recirculation;
                             }) == 0;
  return decide([](Flow a, Flow b) { return a + b; }, demand.peakProduct,
                none ? Decided<Flow>(cubicMetresPerSecond(0))
                     : given(flow, "flow of the recirculation"));
}

/// The only product run carries all product water; one of several carries what its wash draws.
Decided<Flow> productFlow(const Plan& plan, const DemandStudy& demand, const Run& run) {
  const auto same = [&](const Run& r) { return r.service == Service::Product; };
  if (countRuns(plan, same) == 1) return demand.peakProduct;
  const auto toSameWash = [&](const Run& r) {
    return same(r) && r.to.kind == EndKind::Wash && r.to.target == run.to.target;
  };
  if (run.to.kind != EndKind::Wash || countRuns(plan, toSameWash) != 1) {
    return undecided<Flow>({"one product run to each wash; " + run.id + " is not"});
  }
  WashDemand own = plan.basis.demand;
  for (const WashDevice& device : own.devices) {
    if (device.wash.empty()) return undecided<Flow>({"wash that " + device.name + " belongs to"});
  }
  std::erase_if(own.devices, [&](const WashDevice& d) { return d.wash != run.to.target; });
  return demandStudy(own).peakProduct;
}

Decided<Flow> designFlow(const Plan& plan, const HydraulicsStudy& study, const Run& run) {
  switch (run.service) {
  case Service::Suction:
  case Service::SpareSuction:
    return study.pumpFlow;
  case Service::Recirculation:
    return given(plan.basis.pump.recirculation, "flow of the recirculation");
  case Service::Underflow:
    return given(plan.basis.pump.underflow, "flow of the underflow");
  case Service::MakeUp:
    return given(plan.basis.makeUp.flow, "flow of the make-up");
  default:
    return productFlow(plan, study.demand, run);
  }
}

Decided<std::vector<SizeChoice>> sizes(const StudyContext& context, const WaterStudy& water,
                                       const Run& run, const RunStudy& path,
                                       const PressureRun& row) {
  if (!row.loss) return undecided<std::vector<SizeChoice>>(row.loss.needs);
  const PipeProduct& pipe = *context.catalog.pipe(run.pipe);
  const auto drawn = std::ranges::find(pipe.sizes, run.size, &PipeSize::nominal);
  std::vector<SizeChoice> choices;
  for (int step = 0; step <= 2 && pipe.sizes.end() - drawn > step; ++step) {
    const auto loss = runLoss(context, water, run, path, *row.flow, {step, false, 0, metres(0)});
    if (!loss) break;
    const SizeVerdict verdict = loss->fastest > row.ceiling         ? SizeVerdict::TooFast
                                : loss->fastest * 2.0 < row.ceiling ? SizeVerdict::Generous
                                                                    : SizeVerdict::Suits;
    choices.push_back({drawn[step].nominal, step, loss->fastest, loss->total, verdict});
  }
  return choices;
}

PressureRun pressureRun(const StudyContext& context, const HydraulicsStudy& study, const Run& run,
                        const RunStudy& path) {
  PressureRun row;
  row.run = run.id;
  row.service = run.service;
  row.ceiling = feetPerSecond(context.limits.number(
      facts(run.service).drive == Drive::Suction ? "velocity.suction" : "velocity.pressure"));
  row.flow = designFlow(context.plan, study, run);
  row.loss =
      decide([&](Flow flow) { return runLoss(context, study.water, run, path, flow); }, row.flow);
  row.sizes = sizes(context, study.water, run, path, row);
  return row;
}

template <class T> Decided<T> within(const std::optional<T>& value, const char* need) {
  return given(value, need);
}

} // namespace

WaterStudy waterStudy(const WaterBasis& basis) {
  const auto t = given(basis.temperature, "water temperature");
  WaterStudy water;
  const char* liquid = "water temperature between 0 and 99 C";
  water.density = decide([&](Temperature v) { return within(waterDensity(v), liquid); }, t);
  water.viscosity = decide([&](Temperature v) { return within(waterViscosity(v), liquid); }, t);
  water.vapourPressure =
      decide([&](Temperature v) { return within(saturationPressure(v), liquid); }, t);
  water.airPressure = decide(
      [](Length h) { return within(atmosphericPressure(h), "altitude between -5 and 11 km"); },
      given(basis.altitude, "altitude of the site"));
  water.vapourHead = decide(headOf, water.vapourPressure, water.density);
  water.airHead = decide(headOf, water.airPressure, water.density);
  return water;
}

const PressureRun* HydraulicsStudy::run(const Id& id) const {
  return ofRun(runs, id);
}
const SuctionStudy* HydraulicsStudy::suction(const Id& id) const {
  return ofRun(suctions, id);
}

void fillHydraulics(const StudyContext& context, Study& study) {
  const Plan& plan = context.plan;
  HydraulicsStudy result;
  result.water = waterStudy(plan.basis.water);
  result.demand = demandStudy(plan.basis.demand);
  result.pumpFlow = pumpFlow(plan, result.demand);
  result.pumpHead = decide(
      [&](Flow flow) {
        return given(headAt(plan.basis.pump.curve, flow), "pump curve at the peak flow");
      },
      result.pumpFlow);
  for (std::size_t i = 0; i < plan.runs.size(); ++i) {
    if (!isPressureRun(plan.runs[i].service)) continue;
    result.runs.push_back(pressureRun(context, result, plan.runs[i], study.runs[i]));
    if (facts(plan.runs[i].service).drive != Drive::Suction) continue;
    result.suctions.push_back(suctionStudy(context, study, result, result.runs.back()));
  }
  fillPressures(context, study, result);
  study.hydraulics = std::move(result);
}

} // namespace sump
