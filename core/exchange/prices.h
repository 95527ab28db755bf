#pragma once
// A user's own price list, joined to the bill.
//
// CSV with a heading: `item`, `size`, `unit`, `price`, `currency` in any order, other columns are
// ignored. `item` is the key that the bill of materials prints; a blank size prices all sizes that
// have no row of their own. One currency a list.

#include "core/study/bill.h"

#include <filesystem>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace sump {

struct PriceRow {
  std::string item;
  std::string size;
  std::string unit; ///< `each`, `ft`, `m`, `stick`, `yd3`, `m3`, `qt`, `gal`, `L` ...
  double price = 0;
  int line = 0; ///< in the file
};

struct PriceList {
  std::string file;
  std::string currency;
  std::vector<PriceRow> rows;
  const PriceRow* find(std::string_view item, std::string_view size) const;
};

/// Throw InputError with file, line and how to mend it.
PriceList readPrices(const std::filesystem::path& file);
PriceList parsePrices(std::string_view text, const std::string& file);

struct LineCost {
  double amount = 0; ///< of the order, in the price's unit
  std::string unit;
  double price = 0;
  double cost = 0; ///< to the hundredth, as every sum is of printed figures
};

struct Costs {
  std::string currency;
  std::vector<std::optional<LineCost>> lines; ///< one for each line of the bill
  std::vector<std::pair<std::string, double>> byTrade;
  double total = 0;
  /// Lines to buy without a price or without an amount; the total lacks them.
  std::vector<std::size_t> missing;
};

/// Throws InputError when a price is for a unit that its item is not counted in.
Costs costsOf(const Bill& bill, const PriceList& prices);

} // namespace sump
