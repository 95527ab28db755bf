#pragma once
// Two plans held against each other, by their objects' stable ids. Every difference that the plan
// file would show is told: the comparison visits the fields that the file is described by.

#include "core/exchange/buy_list.h"
#include "core/study/plan_changes.h"

#include <string>
#include <vector>

namespace sump {

/// In the order of the plan file. Empty exactly when both plans have the same file. `limits` tells
/// in what the plan's own limits are printed.
std::vector<PlanChange> changesBetween(const Plan& before, const Plan& after, const Limits& limits);

/// Lines whose amount to buy differs as printed, in the order of the later bill, then those that
/// are no longer there.
std::vector<BillChange> billChanges(const Bill& before, const Bill& after, UnitSystem units);

/// Both together. Takes two searches for the least sticks: not for every step of a drag.
PlanComparison comparePlans(const Review& before, const Review& after, const BuyOptions& options,
                            std::string earlier);

} // namespace sump
