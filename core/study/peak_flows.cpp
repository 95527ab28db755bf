#include "core/study/duty.h"

namespace sump {

PeakFlows peakFlows(const StudyContext& context, const Study& study) {
  PeakFlows peak;
  peak.inflow = study.hydraulics.demand.peakToVaults;
  peak.drawn = study.hydraulics.demand.peakProduct;
  bool recirculates = false;
  for (const Run& run : context.plan.runs)
    recirculates = recirculates || run.service == Service::Recirculation;
  peak.recirculated =
      recirculates ? given(context.plan.basis.pump.recirculation, "flow of the recirculation")
                   : Decided<Flow>(cubicMetresPerSecond(0));
  return peak;
}

} // namespace sump
