#include "core/exchange/workbook.h"

#include "core/exchange/bill_of_materials.h"
#include "core/exchange/cutting_lists.h"
#include "core/exchange/plan_file.h"

#include <xlsxwriter.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <map>

namespace sump {

namespace {

/// Cell formats by decimals, plain and bold.
class Formats {
public:
  explicit Formats(lxw_workbook* book) : book_(book) {}
  lxw_format* of(int decimals, bool bold) {
    lxw_format*& format = made_[{decimals, bold}];
    if (format != nullptr) return format;
    format = workbook_add_format(book_);
    if (bold) format_set_bold(format);
    if (decimals >= 0) {
      const std::string zeros(static_cast<std::size_t>(decimals), '0');
      format_set_num_format(format, (decimals == 0 ? "0" : "#,##0." + zeros).c_str());
    }
    return format;
  }

private:
  lxw_workbook* book_;
  std::map<std::pair<int, bool>, lxw_format*> made_;
};

void writeCell(lxw_worksheet* sheet, lxw_row_t row, lxw_col_t column, const ListCell& cell,
               bool bold, Formats& formats) {
  if (!cell.number) {
    if (!cell.text.empty())
      worksheet_write_string(sheet, row, column, cell.text.c_str(), formats.of(-1, bold));
    return;
  }
  lxw_format* format = formats.of(cell.decimals, bold);
  if (cell.formula.empty()) {
    worksheet_write_number(sheet, row, column, *cell.number, format);
  } else {
    worksheet_write_formula_num(sheet, row, column, cell.formula.c_str(), format, *cell.number);
  }
}

/// As wide as the widest of the first rows, within reason.
void setWidths(lxw_worksheet* sheet, const ListTable& table) {
  for (std::size_t c = 0; c < table.headings.size(); ++c) {
    std::size_t most = table.headings[c].size();
    for (const auto& row : table.rows)
      most = std::max(most, row[c].text.size());
    const auto column = static_cast<lxw_col_t>(c);
    worksheet_set_column(sheet, column, column,
                         static_cast<double>(std::clamp<std::size_t>(most, 8, 60)) + 2, nullptr);
  }
}

void addSheet(lxw_workbook* book, const ListTable& table, Formats& formats) {
  lxw_worksheet* sheet = workbook_add_worksheet(book, table.name.c_str());
  for (std::size_t c = 0; c < table.headings.size(); ++c) {
    worksheet_write_string(sheet, 0, static_cast<lxw_col_t>(c), table.headings[c].c_str(),
                           formats.of(-1, true));
  }
  const std::size_t plain = table.rows.size() - static_cast<std::size_t>(table.totals);
  for (std::size_t r = 0; r < table.rows.size(); ++r) {
    for (std::size_t c = 0; c < table.rows[r].size(); ++c) {
      writeCell(sheet, static_cast<lxw_row_t>(r + 1), static_cast<lxw_col_t>(c), table.rows[r][c],
                r >= plain, formats);
    }
  }
  setWidths(sheet, table);
  worksheet_freeze_panes(sheet, 1, 0);
  worksheet_set_landscape(sheet);
  worksheet_fit_to_pages(sheet, 1, 0);
  worksheet_repeat_rows(sheet, 0, 0);
}

[[noreturn]] void fail(const std::filesystem::path& file, const char* why) {
  throw InputError(file.string(), "", 0, std::string("the workbook is not written: ") + why,
                   "name a file in a folder that can be written");
}

} // namespace

void writeWorkbook(const std::vector<ListTable>& tables, const std::string& title,
                   const std::filesystem::path& file) {
  std::filesystem::path draft = file;
  draft += ".part";
  if (!std::ofstream(draft)) fail(file, "the place cannot be written");
  lxw_workbook* book = workbook_new(draft.string().c_str());
  if (book == nullptr) fail(file, "no memory");
  lxw_doc_properties facts = {};
  std::string name = title;
  facts.title = name.data();
  workbook_set_properties(book, &facts);
  Formats formats(book);
  for (const ListTable& table : tables)
    addSheet(book, table, formats);
  const lxw_error error = workbook_close(book);
  if (error != LXW_NO_ERROR) {
    std::error_code ignored;
    std::filesystem::remove(draft, ignored);
    fail(file, lxw_strerror(error));
  }
  std::ifstream stream(draft, std::ios::binary);
  const std::string bytes(std::istreambuf_iterator<char>(stream), {});
  stream.close();
  std::filesystem::remove(draft);
  writeFileAtomically(file, bytes);
}

std::vector<ListTable> buyTables(const Review& review, const BuyList& buy) {
  std::vector<ListTable> tables = {billTable(review, buy), billByTradeTable(review, buy),
                                   billByRunTable(review, buy)};
  if (buy.costs) tables.push_back(missingPricesTable(review, buy));
  tables.push_back(sticksTable(review, buy.cutting));
  tables.push_back(piecesTable(review));
  tables.push_back(stickCountTable(review, buy.cutting));
  tables.push_back(billNotesTable(buy));
  return tables;
}

} // namespace sump
