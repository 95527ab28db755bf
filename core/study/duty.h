#pragma once
// What the vaults do: loads at the peak, drains, storage, chambers. Steps of fillTrain; private to
// core/study.

#include "core/study/passages.h"
#include "core/study/settling.h"

namespace sump {

/// What the train is asked to carry, of the wash demand and the pump.
struct PeakFlows {
  Decided<Flow> inflow;
  Decided<Flow> drawn;
  Decided<Flow> recirculated;
};
/// Of HydraulicsStudy::demand and the pump; no recirculation without such a run.
PeakFlows peakFlows(const StudyContext& context, const Study& study);

/// Manning full and at the peak, for each inlet and overflow. A flush may run while the wash is at
/// its peak, so an inlet carries both. It is drawn from the train and comes back to it, so no
/// overflow carries it.
std::vector<GravityStudy> gravityRuns(const StudyContext& context, const Study& study,
                                      const Decided<Flow>& peak);

/// Volume from the rest level down to the low-level float. A chamber gives no more than what stands
/// above the highest sill between it and the end of the train. Rests on still water: no losses.
Decided<Volume> usableVolume(const StudyContext& context, const Study& study,
                             const Decided<TrainMap>& map);

/// The level down to which each chamber gives that volume.
Decided<std::vector<ChamberLow>> lowWaterLevels(const StudyContext& context,
                                                const Decided<TrainMap>& map);

/// Each chamber at the larger of the flows into it with the pump running and stopped.
std::vector<ChamberDuty> chamberDuties(const StudyContext& context, const Study& study,
                                       const Decided<TrainMap>& map, const PeakFlows& peak);

/// Sediment of the vehicles, or suspended solids times the wash water of a day and the trap share
/// over the solids of settled sludge; the larger when both are given.
Decided<Volume> sludgePerDay(const StudyContext& context, const Study& study);

/// Days as a duration until sludge reaches the stated share of the water depth, less the oil
/// allowance, over this area.
Decided<Duration> pumpOut(const StudyContext& context, const Decided<Volume>& perDay, Area area,
                          Length waterDepth);

inline constexpr double kSecondsPerDay = 86400;

} // namespace sump
