// The change in the bill of materials.

#include "core/exchange/compare_plans.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace sump {

namespace {

using LineKey = std::tuple<std::string, std::string, std::string, std::string, std::string>;

LineKey keyOf(const BillLine& line) {
  return {line.trade, line.key, line.description, line.size, line.material};
}

/// Lines that are told by the same words are one; nothing is known of a sum with an unknown part.
std::map<LineKey, Decided<double>> amounts(const Bill& bill) {
  std::map<LineKey, Decided<double>> all;
  for (const BillLine& line : bill.lines) {
    const auto [place, isNew] = all.try_emplace(keyOf(line), line.order);
    if (isNew) continue;
    place->second = decide([](double a, double b) { return a + b; }, Decided<double>(place->second),
                           line.order);
  }
  return all;
}

std::optional<double> rounded(const Decided<double>& amount, BillUnit unit, UnitSystem units,
                              int decimals) {
  if (!amount) return std::nullopt;
  const double scale = std::pow(10.0, decimals);
  return std::round(inUnit(*amount, unit, units) * scale) / scale;
}

BillChange changeOf(const BillLine& line, const Decided<double>& was, const Decided<double>& is,
                    UnitSystem units) {
  BillChange change;
  change.trade = line.trade;
  change.key = line.key;
  change.description = line.description;
  change.size = line.size;
  if (!line.size.empty() && !sizeHasUnit(line)) change.size += " in";
  change.unit = std::string(unitName(line.unit, units));
  change.decimals = std::max(was ? unitDecimals(*was, line.unit, units) : 0,
                             is ? unitDecimals(*is, line.unit, units) : 0);
  change.before = rounded(was, line.unit, units, change.decimals);
  change.after = rounded(is, line.unit, units, change.decimals);
  return change;
}

} // namespace

std::vector<BillChange> billChanges(const Bill& before, const Bill& after, UnitSystem units) {
  std::map<LineKey, Decided<double>> was = amounts(before), is = amounts(after);
  std::map<LineKey, bool> told;
  std::vector<BillChange> changes;
  for (const Bill* bill : {&after, &before}) {
    for (const BillLine& line : bill->lines) {
      const LineKey key = keyOf(line);
      if (!told.try_emplace(key, true).second) continue;
      was.try_emplace(key, 0.0);
      is.try_emplace(key, 0.0);
      BillChange change = changeOf(line, was.at(key), is.at(key), units);
      if (change.before != change.after) changes.push_back(std::move(change));
    }
  }
  return changes;
}

PlanComparison comparePlans(const Review& before, const Review& after, const BuyOptions& options,
                            std::string earlier) {
  return {std::move(earlier), changesBetween(before.plan, after.plan, after.limits),
          billChanges(buyList(before, options).bill, buyList(after, options).bill,
                      after.plan.project.units)};
}

} // namespace sump
