#pragma once
// Everything that the lists of what to buy are made of, from one Review.

#include "core/exchange/prices.h"
#include "core/rules/review.h"

#include <optional>

namespace sump {

struct BuyList {
  CuttingList cutting;
  Bill bill;
  std::optional<Costs> costs; ///< with a price list only
};

struct BuyOptions {
  const Catalog* catalog = nullptr;   ///< null: the built-in one
  const Supplies* supplies = nullptr; ///< null: the built-in ones
  const PriceList* prices = nullptr;
  std::optional<Length> kerf = std::nullopt; ///< left out: the plan's limit
};

/// Takes a search for the least sticks: not for every step of a drag.
BuyList buyList(const Review& review, const BuyOptions& options = {});

/// `ft`, `m`, `yd3`, `qt`, `each` ...
std::string_view unitName(BillUnit unit, UnitSystem units);
/// An amount of the bill in that unit.
double inUnit(double amount, BillUnit unit, UnitSystem units);
/// Decimals that it is printed with.
int unitDecimals(double amount, BillUnit unit, UnitSystem units);
/// What to order of a line; empty for what is counted for the work alone or comes with something
/// else.
std::string printOrder(const BillLine& line, UnitSystem units);
/// `43.6 ft`, `3`, `?` when it cannot be decided.
std::string printAmount(const Decided<double>& amount, BillUnit unit, UnitSystem units);

} // namespace sump
