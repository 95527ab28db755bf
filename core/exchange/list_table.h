#pragma once
// A list as rows and columns, from which the CSV and the workbook are both written, so that no
// number can differ between them.

#include <optional>
#include <string>
#include <vector>

namespace sump {

struct ListCell {
  std::string text;
  std::optional<double> number; ///< rounded to `decimals`
  int decimals = 0;
  std::string formula; ///< in a workbook instead of the number: `=ROUND(M2*O2,2)`
};

ListCell listText(std::string text);
ListCell listNumber(double value, int decimals);
ListCell listFormula(std::string formula, double value, int decimals);

struct ListTable {
  std::string name; ///< of the workbook's sheet, 31 characters at most
  std::vector<std::string> headings;
  std::vector<std::vector<ListCell>> rows;
  int totals = 0; ///< how many of the last rows are totals
  /// `P` for the 16th: the letters of a column in formulas, from 0.
  static std::string letters(std::size_t column);
};

std::string csvOf(const ListTable& table);

} // namespace sump
