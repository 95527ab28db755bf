#pragma once
// Lists as an XLSX workbook (ECMA-376, by libxlsxwriter): one sheet a table, totals as formulas
// with their values beside them, so that viewers that do not calculate show them too.

#include "core/exchange/buy_list.h"
#include "core/exchange/list_table.h"

#include <filesystem>
#include <string>
#include <vector>

namespace sump {

/// Written beside and renamed over the file. Throws InputError when it cannot be written.
void writeWorkbook(const std::vector<ListTable>& tables, const std::string& title,
                   const std::filesystem::path& file);

/// Bill, trades, runs, missing prices (with a price list), cutting list, pieces, sticks, notes.
std::vector<ListTable> buyTables(const Review& review, const BuyList& buy);

} // namespace sump
