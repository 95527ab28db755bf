#include "core/exchange/buy_list.h"

#include "core/units/earth.h"
#include "core/units/print.h"

#include <cmath>

namespace sump {

BuyList buyList(const Review& review, const BuyOptions& options) {
  const Catalog& catalog = options.catalog != nullptr ? *options.catalog : builtinCatalog();
  const Supplies& supplies = options.supplies != nullptr ? *options.supplies : builtinSupplies();
  // Reviews that were not made from a catalogue (tests) have no limits of their own.
  const Limits& limits = review.limits.has(kKerfLimit) ? review.limits : catalog.limits;
  const Length kerf = options.kerf.value_or(limits.length(kKerfLimit));
  BuyList list;
  list.cutting = cuttingList(review.plan, review.study, catalog, kerf, limits.length(kTrimLimit));
  list.bill = billOf(review.plan, review.study, catalog, supplies, list.cutting);
  if (options.prices != nullptr) list.costs = costsOf(list.bill, *options.prices);
  return list;
}

std::string_view unitName(BillUnit unit, UnitSystem units) {
  const bool metric = units == UnitSystem::Metric;
  switch (unit) {
  case BillUnit::Length:
    return metric ? "m" : "ft";
  case BillUnit::Area:
    return metric ? "m2" : "yd2";
  case BillUnit::Volume:
    return metric ? "m3" : "yd3";
  case BillUnit::Liquid:
    return metric ? "L" : "qt";
  case BillUnit::Each:
    break;
  }
  return "each";
}

double inUnit(double amount, BillUnit unit, UnitSystem units) {
  const bool metric = units == UnitSystem::Metric;
  switch (unit) {
  case BillUnit::Length:
    return metric ? amount : inFeet(metres(amount));
  case BillUnit::Area:
    return metric ? amount : amount / kSquareMetresPerSquareYard;
  case BillUnit::Volume:
    return metric ? amount : amount / kCubicMetresPerCubicYard;
  case BillUnit::Liquid:
    return metric ? amount * 1000 : amount / (kCubicMetresPerGallon / 4);
  case BillUnit::Each:
    break;
  }
  return amount;
}

int unitDecimals(double amount, BillUnit unit, UnitSystem units) {
  if (unit == BillUnit::Each) return amount == std::floor(amount) ? 0 : 2;
  if (unit == BillUnit::Liquid) return 2;
  return units == UnitSystem::Metric ? 2 : 1;
}

std::string printOrder(const BillLine& line, UnitSystem units) {
  return line.bought ? printAmount(line.order, line.unit, units) : std::string();
}

std::string printAmount(const Decided<double>& amount, BillUnit unit, UnitSystem units) {
  if (!amount) return "?";
  const std::string number =
      fixed(inUnit(*amount, unit, units), unitDecimals(*amount, unit, units));
  return unit == BillUnit::Each ? number : number + " " + std::string(unitName(unit, units));
}

} // namespace sump
