#pragma once
// A comparison of two plans as lists: CSV for people's own records, JSON for other programs.

#include "core/exchange/list_table.h"
#include "core/study/plan_changes.h"

#include <string>

namespace sump {

/// `Kind, Object, Id, Part, What, Before, After, Difference`.
ListTable changeTable(const PlanComparison& comparison);
/// `Trade, Key, Description, Size, Before, After, Difference, Unit`.
ListTable billChangeTable(const PlanComparison& comparison);
/// Both below each other, an empty line between.
std::string comparisonCsv(const PlanComparison& comparison);
/// `{"earlier": ..., "changes": [...], "bill": [...]}`; extents in site metres.
std::string comparisonJson(const PlanComparison& comparison);
/// `+2`, `-13.1`, `?` when one of the amounts cannot be decided.
std::string differenceText(const BillChange& change);
std::string amountText(const std::optional<double>& amount, const BillChange& change);

} // namespace sump
