#pragma once
// The bill of materials as lists: by trade, by run, what has no price, and what no line can say.

#include "core/exchange/buy_list.h"
#include "core/exchange/list_table.h"

#include <string>
#include <vector>

namespace sump {

inline constexpr const char* kBillSheet = "Bill of materials";

/// One row a line; with prices a total a trade and one of all.
ListTable billTable(const Review& review, const BuyList& buy);
/// What each run and vault has of each line, in place; `site` for what is of the site as a whole.
ListTable billByRunTable(const Review& review, const BuyList& buy);
/// Lines and cost of each trade; formulas refer to the bill's sheet.
ListTable billByTradeTable(const Review& review, const BuyList& buy);
/// What is bought and has no price, or no amount to price.
ListTable missingPricesTable(const Review& review, const BuyList& buy);
ListTable billNotesTable(const BuyList& buy);

std::string billOfMaterialsCsv(const Review& review, const BuyList& buy);

} // namespace sump
