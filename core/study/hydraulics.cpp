#include "core/study/hydraulics_parts.h"

#include "core/study/object_names.h"

#include <algorithm>
#include <unordered_map>

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

/// What is counted once, so that no run looks at all the others.
struct RunCounts {
  int products = 0;
  std::unordered_map<std::string_view, int> productsTo; ///< by wash equipment
  bool recirculates = false;
};

RunCounts countRuns(const Plan& plan) {
  RunCounts counts;
  for (const Run& run : plan.runs) {
    counts.recirculates |= run.service == Service::Recirculation;
    if (run.service != Service::Product) continue;
    ++counts.products;
    if (run.to.kind == EndKind::Wash) ++counts.productsTo[run.to.target];
  }
  return counts;
}

/// Product at the peak; recirculation runs all the while, where there is any.
Decided<Flow> pumpFlow(const Plan& plan, const DemandStudy& demand, const RunCounts& counts) {
  const auto& flow = plan.basis.pump.recirculation;
  const bool none = !flow && !counts.recirculates;
  return decide([](Flow a, Flow b) { return a + b; }, demand.peakProduct,
                none ? Decided<Flow>(cubicMetresPerSecond(0))
                     : given(flow, "flow of the recirculation"));
}

/// The only product run carries all product water; one of several carries what its wash draws.
Decided<Flow> productFlow(const Plan& plan, const DemandStudy& demand, const RunCounts& counts,
                          const Run& run) {
  if (counts.products == 1) return demand.peakProduct;
  if (run.to.kind != EndKind::Wash || counts.productsTo.at(run.to.target) != 1) {
    return undecided<Flow>({"one product run to each wash; " + run.id + " is not"});
  }
  WashDemand own = plan.basis.demand;
  for (const WashDevice& device : own.devices) {
    if (device.wash.empty())
      return undecided<Flow>({"wash that " + called(device) + " belongs to"});
  }
  std::erase_if(own.devices, [&](const WashDevice& d) { return d.wash != run.to.target; });
  return demandStudy(own).peakProduct;
}

Decided<Flow> designFlow(const Plan& plan, const HydraulicsStudy& study, const RunCounts& counts,
                         const Run& run) {
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
    return productFlow(plan, study.demand, counts, run);
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
    std::optional<RunLoss> larger;
    if (step > 0) {
      larger =
          runLoss(context, water, run, path, *row.flow, {step, false, 0, metres(0), true}).value;
      if (!larger) break;
    }
    const RunLoss& loss = larger ? *larger : *row.loss;
    const SizeVerdict verdict = loss.fastest > row.ceiling         ? SizeVerdict::TooFast
                                : loss.fastest * 2.0 < row.ceiling ? SizeVerdict::Generous
                                                                   : SizeVerdict::Suits;
    choices.push_back({drawn[step].nominal, step, loss.fastest, loss.total, verdict});
  }
  return choices;
}

PressureRun pressureRun(const StudyContext& context, const HydraulicsStudy& study,
                        const RunCounts& counts, const Run& run, const RunStudy& path) {
  PressureRun row;
  row.run = run.id;
  row.service = run.service;
  row.ceiling = feetPerSecond(context.limits.number(
      facts(run.service).drive == Drive::Suction ? "velocity.suction" : "velocity.pressure"));
  row.flow = designFlow(context.plan, study, counts, run);
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
  const RunCounts counts = countRuns(plan);
  result.pumpFlow = pumpFlow(plan, result.demand, counts);
  result.pumpHead = decide(
      [&](Flow flow) {
        return given(headAt(plan.basis.pump.curve, flow), "pump curve at the peak flow");
      },
      result.pumpFlow);
  for (std::size_t i = 0; i < plan.runs.size(); ++i) {
    if (!isPressureRun(plan.runs[i].service)) continue;
    result.runs.push_back(pressureRun(context, result, counts, plan.runs[i], study.runs[i]));
    if (facts(plan.runs[i].service).drive != Drive::Suction) continue;
    result.suctions.push_back(suctionStudy(context, study, result, result.runs.back()));
  }
  fillPressures(context, study, result);
  study.hydraulics = std::move(result);
}

} // namespace sump
