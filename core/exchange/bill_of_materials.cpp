#include "core/exchange/bill_of_materials.h"

#include "core/units/print.h"

#include <algorithm>

namespace sump {

namespace {

const std::vector<std::string> kHeadings = {"Item",        "Trade",  "Category", "Key",
                                            "Description", "Size",   "Material", "In place",
                                            "Waste",       "To buy", "Unit",     "Sticks"};
const std::vector<std::string> kPriceHeadings = {"Priced amount", "Per", "Unit price"};
constexpr std::size_t kTradeColumn = 1, kDescriptionColumn = 4, kPricedColumn = 12,
                      kPriceColumn = 14, kCostColumn = 15;

/// Nominal sizes carry their unit: a spreadsheet reads a bare `1/2` or `1-1/2` as a date.
std::string sizeText(const BillLine& line) {
  if (line.size.empty() || sizeHasUnit(line)) return line.size;
  return line.size + " in";
}

ListCell amountCell(const Decided<double>& amount, BillUnit unit, UnitSystem units) {
  if (!amount) return listText("?");
  return listNumber(inUnit(*amount, unit, units), unitDecimals(*amount, unit, units));
}

std::string fromText(const BillLine& line) {
  std::string text;
  for (const BillShare& share : line.shares)
    text += (text.empty() ? "" : " ") + share.from;
  return text;
}

std::string noteText(const BillLine& line) {
  if (line.net) return line.note;
  return "cannot be decided: needs " + needsText(line.net.needs);
}

/// Rows start under the heading.
std::string cellAt(std::size_t column, std::size_t row) {
  return ListTable::letters(column) + std::to_string(row + 2);
}

void addCost(std::vector<ListCell>& cells, const std::optional<LineCost>& cost, std::size_t row) {
  if (!cost) {
    cells.insert(cells.end(), 4, listText(""));
    return;
  }
  cells.push_back(listNumber(cost->amount, 4));
  cells.push_back(listText(cost->unit));
  cells.push_back(listNumber(cost->price, 4));
  cells.push_back(
      listFormula("=ROUND(" + cellAt(kPricedColumn, row) + "*" + cellAt(kPriceColumn, row) + ",2)",
                  cost->cost, 2));
}

std::vector<ListCell> lineCells(const BillLine& line, std::size_t row, UnitSystem units) {
  const bool pipe = line.category == "pipe";
  return {listNumber(static_cast<double>(row) + 1, 0),
          listText(line.trade),
          listText(line.category),
          listText(line.key),
          listText(line.description),
          listText(sizeText(line)),
          listText(line.material),
          amountCell(line.net, line.unit, units),
          pipe          ? listText("sticks")
          : line.bought ? listText(fixed(line.waste * 100, 0) + " %")
                        : listText(""),
          line.bought ? amountCell(line.order, line.unit, units) : listText(""),
          listText(std::string(unitName(line.unit, units))),
          pipe ? listNumber(line.sticks, 0) : listText("")};
}

/// `B2:B40` of the bill's lines.
std::string columnRange(std::size_t column, std::size_t lines) {
  return cellAt(column, 0) + ":" + cellAt(column, lines - 1);
}

void addTotals(ListTable& table, const Costs& costs, std::size_t lines) {
  const auto total = [&](const std::string& name, const std::string& formula, double value) {
    std::vector<ListCell> cells(table.headings.size(), listText(""));
    cells[kDescriptionColumn] = listText(name);
    cells[kCostColumn] = listFormula(formula, value, 2);
    table.rows.push_back(std::move(cells));
    ++table.totals;
  };
  const std::string trades = columnRange(kTradeColumn, lines);
  const std::string money = columnRange(kCostColumn, lines);
  for (const auto& [trade, cost] : costs.byTrade)
    total("Total " + trade, "=SUMIF(" + trades + ",\"" + trade + "\"," + money + ")", cost);
  total("Total of what has a price", "=SUM(" + money + ")", costs.total);
}

/// The order of trades in which the bill stands.
std::vector<std::string> tradesOf(const Bill& bill) {
  std::vector<std::string> trades;
  for (const BillLine& line : bill.lines) {
    if (std::ranges::find(trades, line.trade) == trades.end()) trades.push_back(line.trade);
  }
  return trades;
}

/// A formula of another sheet that looks at the bill.
std::string onBill(const std::string& range) {
  return "'" + std::string(kBillSheet) + "'!" + range;
}

std::vector<ListCell> tradeCells(const BuyList& buy, const std::string& trade) {
  const std::size_t lines = buy.bill.lines.size();
  const std::string trades = onBill(columnRange(kTradeColumn, lines));
  const auto count = std::ranges::count(buy.bill.lines, trade, &BillLine::trade);
  std::vector<ListCell> cells = {
      listText(trade),
      listFormula("=COUNTIF(" + trades + ",\"" + trade + "\")", static_cast<double>(count), 0)};
  if (!buy.costs) return cells;
  double cost = 0;
  for (const auto& [name, sum] : buy.costs->byTrade) {
    if (name == trade) cost = sum;
  }
  cells.push_back(listFormula("=SUMIF(" + trades + ",\"" + trade + "\"," +
                                  onBill(columnRange(kCostColumn, lines)) + ")",
                              cost, 2));
  return cells;
}

} // namespace

ListTable billTable(const Review& review, const BuyList& buy) {
  const UnitSystem units = review.plan.project.units;
  ListTable table{kBillSheet, kHeadings, {}};
  if (buy.costs) {
    table.headings.insert(table.headings.end(), kPriceHeadings.begin(), kPriceHeadings.end());
    table.headings.push_back("Cost (" + buy.costs->currency + ")");
  }
  table.headings.insert(table.headings.end(), {"From", "Note"});
  for (std::size_t row = 0; row < buy.bill.lines.size(); ++row) {
    const BillLine& line = buy.bill.lines[row];
    std::vector<ListCell> cells = lineCells(line, row, units);
    if (buy.costs) addCost(cells, buy.costs->lines[row], row);
    cells.push_back(listText(fromText(line)));
    cells.push_back(listText(noteText(line)));
    table.rows.push_back(std::move(cells));
  }
  if (buy.costs && !buy.bill.lines.empty()) addTotals(table, *buy.costs, buy.bill.lines.size());
  return table;
}

ListTable billByRunTable(const Review& review, const BuyList& buy) {
  const UnitSystem units = review.plan.project.units;
  ListTable table{
      "By run",
      {"Run or vault", "Trade", "Category", "Key", "Description", "Size", "In place", "Unit"},
      {}};
  const auto addShare = [&](const Id& from, const BillLine& line, const Decided<double>& amount) {
    table.rows.push_back({listText(from), listText(line.trade), listText(line.category),
                          listText(line.key), listText(line.description), listText(sizeText(line)),
                          amountCell(amount, line.unit, units),
                          listText(std::string(unitName(line.unit, units)))});
  };
  const auto addOf = [&](const Id& id) {
    for (const BillLine& line : buy.bill.lines) {
      for (const BillShare& share : line.shares) {
        if (share.from == id) addShare(id, line, share.amount);
      }
    }
  };
  for (const Run& run : review.plan.runs)
    addOf(run.id);
  for (const Vault& vault : review.plan.vaults)
    addOf(vault.id);
  for (const BillLine& line : buy.bill.lines) {
    if (line.shares.empty()) addShare("site", line, line.net);
  }
  return table;
}

ListTable billByTradeTable(const Review&, const BuyList& buy) {
  ListTable table{"By trade", {"Trade", "Lines"}, {}};
  if (buy.costs) table.headings.push_back("Cost (" + buy.costs->currency + ")");
  for (const std::string& trade : tradesOf(buy.bill))
    table.rows.push_back(tradeCells(buy, trade));
  if (table.rows.empty()) return table;
  const std::string last = std::to_string(table.rows.size() + 1);
  std::vector<ListCell> total = {
      listText("Total"),
      listFormula("=SUM(B2:B" + last + ")", static_cast<double>(buy.bill.lines.size()), 0)};
  if (buy.costs) total.push_back(listFormula("=SUM(C2:C" + last + ")", buy.costs->total, 2));
  table.rows.push_back(std::move(total));
  table.totals = 1;
  return table;
}

ListTable missingPricesTable(const Review& review, const BuyList& buy) {
  const UnitSystem units = review.plan.project.units;
  ListTable table{"Missing prices",
                  {"item", "size", "unit", "price", "currency", "Description", "To buy", "Why"},
                  {}};
  if (!buy.costs) return table;
  for (std::size_t i : buy.costs->missing) {
    const BillLine& line = buy.bill.lines[i];
    table.rows.push_back({listText(line.key), listText(sizeText(line)),
                          listText(std::string(unitName(line.unit, units))), listText(""),
                          listText(buy.costs->currency), listText(line.description),
                          amountCell(line.order, line.unit, units),
                          listText(line.order ? "not in the price list" : noteText(line))});
  }
  return table;
}

ListTable billNotesTable(const BuyList& buy) {
  ListTable table{"Notes", {"Note"}, {}};
  for (const std::string& note : buy.bill.notes)
    table.rows.push_back({listText(note)});
  return table;
}

std::string billOfMaterialsCsv(const Review& review, const BuyList& buy) {
  return csvOf(billTable(review, buy));
}

} // namespace sump
