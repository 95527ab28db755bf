#include "core/exchange/cost_words.h"

#include "core/units/print.h"

namespace sump {

CostWords costWords(const BuyList& buy) {
  const Costs& costs = *buy.costs;
  const std::string currency = costs.currency.empty() ? "" : costs.currency + " ";
  CostWords words;
  for (const auto& [trade, cost] : costs.byTrade)
    words.byTrade.push_back(trade + ": " + currency + grouped(cost, 2));
  words.total = currency + grouped(costs.total, 2);
  for (std::size_t i : costs.missing) {
    const BillLine& line = buy.bill.lines[i];
    words.missing.push_back(line.key + (line.size.empty() ? "" : " (" + line.size + ")"));
  }
  return words;
}

} // namespace sump
