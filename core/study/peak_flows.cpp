#include "core/study/duty.h"

namespace sump {

namespace {

struct DeviceFlows {
  Flow product, fresh;
};

Decided<DeviceFlows> deviceFlows(const WashDemand& demand) {
  if (demand.devices.empty()) return undecided<DeviceFlows>({"wash devices"});
  return decide(
      [&](double share) {
        DeviceFlows flows;
        for (const WashDevice& device : demand.devices) {
          (device.freshWater ? flows.fresh : flows.product) +=
              static_cast<double>(device.count) * share * device.flow;
        }
        return flows;
      },
      given(demand.simultaneity, "share of the wash devices that run at once"));
}

/// Whether a step of the study has worked this out at all, decided or not.
bool made(const Decided<Flow>& result) {
  return result.needs != Decided<Flow>().needs;
}

} // namespace

PeakFlows peakFlows(const StudyContext& context, const Study& study) {
  const WashDemand& demand = context.plan.basis.demand;
  const auto devices = deviceFlows(demand);
  PeakFlows peak;
  peak.inflow = study.hydraulics.demand.peakToVaults;
  if (!made(peak.inflow)) {
    peak.inflow =
        decide([](const DeviceFlows& flows, double lost,
                  Flow other) { return (1 - lost) * (flows.product + flows.fresh) + other; },
               devices, given(demand.lostFraction, "share of the wash water that is lost"),
               given(demand.otherInflow, "other inflow to the drains"));
  }
  peak.drawn = study.hydraulics.demand.peakProduct;
  if (!made(peak.drawn)) {
    peak.drawn = decide([](const DeviceFlows& flows) { return flows.product; }, devices);
  }
  bool recirculates = false;
  for (const Run& run : context.plan.runs)
    recirculates = recirculates || run.service == Service::Recirculation;
  peak.recirculated =
      recirculates ? given(context.plan.basis.pump.recirculation, "flow of the recirculation")
                   : Decided<Flow>(cubicMetresPerSecond(0));
  return peak;
}

} // namespace sump
