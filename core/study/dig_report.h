#pragma once
// How the numbers of the digs came about. Private to core/study.

#include "core/plan/plan.h"
#include "core/study/earth.h"

namespace sump {

/// Pits, trenches, footings, ways out, totals.
std::vector<Calculation> digCalculations(const Plan& plan, const EarthStudy& earth);

} // namespace sump
