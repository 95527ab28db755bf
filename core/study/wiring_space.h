#pragma once
// Working space in front of a panel and sight of a disconnect (NEC 110.26, 430.102). Private to
// core/study and its tests. The electrician and the inspector decide under the adopted code.

#include "core/study/context.h"

namespace sump {

/// Depth for a voltage to ground and what is opposite (NEC table 110.26(A)(1)): to 150 V one depth
/// for all; to 600 V by condition; above, undecided here.
Decided<Length> workingDepth(std::optional<int> voltsToGround, std::optional<FacingPanel> facing,
                             const Limits& limits);
/// Of a room that has a panel.
WorkingSpaceStudy workingSpace(const StudyContext& context, const EquipmentRoom& room,
                               const std::vector<RunStudy>& runs);
/// Distance and clear sight of a supply's disconnect.
SupplyStudy supplyStudy(const StudyContext& context, const Supply& supply);

} // namespace sump
