#include "core/exchange/list_table.h"

#include "core/exchange/csv.h"
#include "core/units/print.h"

#include <cmath>

namespace sump {

ListCell listText(std::string text) {
  return {std::move(text), std::nullopt, 0, {}};
}

ListCell listNumber(double value, int decimals) {
  const double scale = std::pow(10.0, decimals);
  return {{}, std::round(value * scale) / scale, decimals, {}};
}

ListCell listFormula(std::string formula, double value, int decimals) {
  ListCell cell = listNumber(value, decimals);
  cell.formula = std::move(formula);
  return cell;
}

std::string ListTable::letters(std::size_t column) {
  std::string text(1, static_cast<char>('A' + column % 26));
  return column < 26 ? text : letters(column / 26 - 1) + text;
}

std::string csvOf(const ListTable& table) {
  std::vector<Cell> cells;
  for (const std::string& heading : table.headings)
    cells.push_back(textCell(heading));
  std::string text = csvLine(cells);
  for (const auto& row : table.rows) {
    cells.clear();
    for (const ListCell& cell : row) {
      cells.push_back(cell.number ? numberCell(fixed(*cell.number, cell.decimals))
                                  : textCell(cell.text));
    }
    text += csvLine(cells);
  }
  return text;
}

} // namespace sump
