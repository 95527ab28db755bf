#pragma once
// Start-up and upkeep as sheets to tick off and sign: discipline O, operations.

#include "core/plan/plan.h"
#include "core/sheet/page.h"
#include "core/study/upkeep.h"

#include <string>
#include <vector>

namespace sump {

/// Upright pages: start-up with its title block, cautions, figures, steps and signatures first,
/// then, from a page of its own on, the recurring tasks with boxes and lines for their record.
/// Numbered O-001, O-002 ... `paper` is `letter` or `a4`; empty: what goes with the units. Throws
/// std::invalid_argument for another.
std::vector<Page> composeUpkeepSheets(const Plan& plan, const UpkeepPlan& upkeep,
                                      const std::string& paper = {});

} // namespace sump
