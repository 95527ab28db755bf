#pragma once
// The calculation report: every calculation of a study on upright pages, for a reviewer with a
// pocket calculator.

#include "core/plan/plan.h"
#include "core/sheet/page.h"
#include "core/study/calculation.h"

#include <string>
#include <string_view>
#include <vector>

namespace sump {

/// Letter for US customary plans, A4 for metric ones.
std::string_view reportPaper(UnitSystem units);

/// How to read it, the cautions, the contents with page numbers and the title block; then section
/// by section the calculations (sump::calculations). Runs and vaults are called as on the sheets,
/// with their id where that differs. `paper` is `letter` or `a4`, both
/// upright; empty: what goes with the units. Throws std::invalid_argument for another.
std::vector<Page> composeCalculationReport(const Plan& plan, std::vector<Calculation> calculations,
                                           const std::string& paper = {});

} // namespace sump
