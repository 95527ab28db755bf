#pragma once
// The steps of the hydraulics study. Private to core/study.

#include "core/study/context.h"
#include "core/study/water_air.h"

namespace sump {

DemandStudy demandStudy(const WashDemand& wash);
WaterStudy waterStudy(const WaterBasis& basis);

/// What is changed about a run to try it otherwise.
struct LossTrial {
  int stepsUp = 0;       ///< sizes above the drawn one, in the same pipe
  bool straight = false; ///< from end to end without bends
  int moreElbows = 0;    ///< 90 degrees, in the run's last size
  Length moreLength{};   ///< in the run's last size
  bool sumsOnly = false; ///< leaves out the rows of pipe and fittings
};
/// Losses at a flow. Pipe, then the fittings of RunStudy::items, entry and exit.
Decided<RunLoss> runLoss(const StudyContext& context, const WaterStudy& water, const Run& run,
                         const RunStudy& study, Flow flow, const LossTrial& trial = {});

/// Head and NPSH of the curve's points by straight lines between them; nothing beyond them.
std::optional<Length> headAt(const std::vector<PumpPoint>& curve, Flow flow);
std::optional<Length> npshRequiredAt(const std::vector<PumpPoint>& curve, Flow flow);

/// Absolute heads less lift and losses (NPSH available).
constexpr Length npshAvailable(Length surface, Length lift, Length vapour, Length loss) {
  return surface - lift - vapour - loss;
}

/// How the numbers of the suctions came about.
std::vector<Calculation> suctionCalculations(const Plan& plan, const Study& study);

SuctionStudy suctionStudy(const StudyContext& context, const Study& study,
                          const HydraulicsStudy& hydraulics, const PressureRun& pressure);
/// Ends of product, recirculation, make-up and underflow runs; device pressures; working point.
void fillPressures(const StudyContext& context, const Study& study, HydraulicsStudy& hydraulics);

} // namespace sump
