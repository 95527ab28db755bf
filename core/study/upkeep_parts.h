#pragma once
// Pieces of study/upkeep. Private to core/study.

#include "core/study/upkeep.h"

namespace sump {

/// Every figure of kUpkeepFigures.
std::vector<UpkeepFigure> upkeepFigures(const Plan& plan, const Study& study,
                                        const UpkeepTable& table);

} // namespace sump
