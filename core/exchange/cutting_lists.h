#pragma once
// The cutting list as lists: each stick with its cuts, each piece with its lengths, and the count
// of sticks beside its proven bound.

#include "core/exchange/list_table.h"
#include "core/rules/review.h"
#include "core/study/cutting.h"

namespace sump {

/// A cut as the shop reads it: `110 1/4"` or `2800 mm`.
std::string printCut(Length length, UnitSystem units);

ListTable sticksTable(const Review& review, const CuttingList& cutting);
ListTable piecesTable(const Review& review);
ListTable stickCountTable(const Review& review, const CuttingList& cutting);

/// All three, one below the other with a blank line between.
std::string cuttingCsv(const Review& review, const CuttingList& cutting);

} // namespace sump
