#include "core/exchange/prices.h"

#include "core/exchange/csv_read.h"
#include "core/exchange/input_error.h"
#include "core/units/earth.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <fstream>
#include <map>
#include <sstream>

namespace sump {

namespace {

struct PriceUnit {
  std::string_view name;
  BillUnit unit;
  double amount; ///< SI
};
constexpr std::array<PriceUnit, 17> kUnits = {
    {{"each", BillUnit::Each, 1},
     {"100", BillUnit::Each, 100},
     {"load", BillUnit::Each, 1},
     {"ft", BillUnit::Length, kMetresPerFoot},
     {"100 ft", BillUnit::Length, 100 * kMetresPerFoot},
     {"m", BillUnit::Length, 1},
     {"stick", BillUnit::Length, 0},
     {"yd2", BillUnit::Area, kSquareMetresPerSquareYard},
     {"ft2", BillUnit::Area, kSquareMetresPerSquareYard / 9},
     {"m2", BillUnit::Area, 1},
     {"yd3", BillUnit::Volume, kCubicMetresPerCubicYard},
     {"ft3", BillUnit::Volume, kCubicMetresPerCubicYard / 27},
     {"m3", BillUnit::Volume, 1},
     {"pt", BillUnit::Liquid, kCubicMetresPerGallon / 8},
     {"qt", BillUnit::Liquid, kCubicMetresPerGallon / 4},
     {"gal", BillUnit::Liquid, kCubicMetresPerGallon},
     {"L", BillUnit::Liquid, 0.001}}};

const PriceUnit* priceUnit(std::string_view name) {
  const auto found = std::ranges::find(kUnits, name, &PriceUnit::name);
  return found == kUnits.end() ? nullptr : &*found;
}

/// The names of all units, or of those that measure as this one does.
std::string unitNames(std::optional<BillUnit> of = std::nullopt) {
  std::string names;
  for (const PriceUnit& unit : kUnits) {
    if (of && unit.unit != *of) continue;
    names += (names.empty() ? "" : ", ") + std::string(unit.name);
  }
  return names;
}

std::string trimmed(std::string_view text) {
  const auto start = text.find_first_not_of(" \t");
  if (start == std::string_view::npos) return {};
  return std::string(text.substr(start, text.find_last_not_of(" \t") - start + 1));
}

/// `1/2 in` and `1/2"` as the bill holds them: `1/2`. Vault sizes keep their marks.
std::string nominalSize(const std::string& text) {
  if (text.ends_with(" in")) return text.substr(0, text.size() - 3);
  if (text.ends_with('"') && nominalInches(text.substr(0, text.size() - 1)))
    return text.substr(0, text.size() - 1);
  return text;
}

/// Which column holds what.
class PriceColumns {
public:
  PriceColumns(const CsvRecord& heading, const std::string& file) : file_(file) {
    for (std::size_t i = 0; i < heading.cells.size(); ++i)
      at_.emplace(trimmed(heading.cells[i]), i);
    for (const char* name : {"item", "size", "unit", "price", "currency"}) {
      if (at_.contains(name)) continue;
      throw InputError(file_, "", heading.line, std::string("has no column '") + name + "'",
                       "start the file with item,size,unit,price,currency");
    }
  }
  std::string cell(const CsvRecord& record, const char* name) const {
    const std::size_t at = at_.at(name);
    if (at < record.cells.size()) return trimmed(record.cells[at]);
    throw InputError(file_, "", record.line, std::string("has no cell for '") + name + "'",
                     "give as many cells as the first line");
  }

private:
  const std::string& file_;
  std::map<std::string, std::size_t> at_;
};

class PriceReader {
public:
  explicit PriceReader(const std::string& file) { list_.file = file; }
  void add(const PriceColumns& columns, const CsvRecord& record);
  PriceList take() { return std::move(list_); }

private:
  [[noreturn]] void fail(const CsvRecord& record, const std::string& what,
                         const std::string& mend) const {
    throw InputError(list_.file, "", record.line, what, mend);
  }
  double number(const CsvRecord& record, const std::string& text) const;
  void takeCurrency(const CsvRecord& record, const std::string& currency);

  PriceList list_;
};

double PriceReader::number(const CsvRecord& record, const std::string& text) const {
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  const bool whole = error == std::errc() && end == text.data() + text.size();
  if (!whole || !std::isfinite(value) || value < 0) {
    fail(record, "the price '" + text + "' is no amount",
         "write digits with a decimal point and nothing else, like 1250.50");
  }
  return value;
}

void PriceReader::takeCurrency(const CsvRecord& record, const std::string& currency) {
  if (currency.empty()) fail(record, "has no currency", "write one in every row, like USD");
  if (list_.currency.empty()) list_.currency = currency;
  if (currency == list_.currency) return;
  fail(record, "is in " + currency + " after rows in " + list_.currency,
       "keep one currency a list");
}

void PriceReader::add(const PriceColumns& columns, const CsvRecord& record) {
  PriceRow row;
  row.line = record.line;
  row.item = columns.cell(record, "item");
  row.size = nominalSize(columns.cell(record, "size"));
  row.unit = columns.cell(record, "unit");
  if (row.item.empty()) fail(record, "has no item", "write the key that the bill prints");
  if (priceUnit(row.unit) == nullptr)
    fail(record, "the unit '" + row.unit + "' is not known", "use one of: " + unitNames());
  row.price = number(record, columns.cell(record, "price"));
  takeCurrency(record, columns.cell(record, "currency"));
  for (const PriceRow& known : list_.rows) {
    if (known.item == row.item && known.size == row.size) {
      fail(record,
           "prices '" + row.item + "' of size '" + row.size + "' again after line " +
               std::to_string(known.line),
           "keep one of the two rows");
    }
  }
  list_.rows.push_back(std::move(row));
}

/// What one of the price's unit is, in the bill's measure.
double amountOfOne(const BillLine& line, const PriceUnit& unit) {
  if (unit.amount > 0) return unit.amount;
  return line.sticks > 0 ? *line.order / line.sticks : 0;
}

LineCost costOf(const BillLine& line, const PriceRow& row, const std::string& file) {
  const PriceUnit& unit = *priceUnit(row.unit);
  const double one = amountOfOne(line, unit);
  if (unit.unit != line.unit || one <= 0) {
    throw InputError(file, "", row.line,
                     "'" + row.item + "' is not counted by the unit '" + row.unit + "'",
                     "use one of: " + unitNames(line.unit));
  }
  // As it is printed, so that whoever multiplies the list's figures gets the list's cost.
  const double amount = std::round(*line.order / one * 1e4) / 1e4;
  return {amount, row.unit, row.price, std::round(amount * row.price * 100) / 100};
}

void addToTrade(Costs& costs, const std::string& trade, double cost) {
  const auto known =
      std::ranges::find(costs.byTrade, trade, &std::pair<std::string, double>::first);
  if (known == costs.byTrade.end()) {
    costs.byTrade.emplace_back(trade, cost);
  } else {
    known->second += cost;
  }
  costs.total += cost;
}

} // namespace

const PriceRow* PriceList::find(std::string_view item, std::string_view size) const {
  const PriceRow* any = nullptr;
  for (const PriceRow& row : rows) {
    if (row.item != item) continue;
    if (row.size == size) return &row;
    if (row.size.empty()) any = &row;
  }
  return any;
}

PriceList parsePrices(std::string_view text, const std::string& file) {
  const std::vector<CsvRecord> records = readCsv(text, file);
  if (records.empty()) {
    throw InputError(file, "", 1, "is empty", "start it with item,size,unit,price,currency");
  }
  const PriceColumns columns(records.front(), file);
  PriceReader reader(file);
  for (std::size_t i = 1; i < records.size(); ++i)
    reader.add(columns, records[i]);
  return reader.take();
}

PriceList readPrices(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  std::ostringstream text;
  text << stream.rdbuf();
  if (!stream || std::filesystem::is_directory(file)) {
    throw InputError(file.string(), "", 0, "cannot be read", "name a price list in CSV");
  }
  return parsePrices(text.str(), file.string());
}

Costs costsOf(const Bill& bill, const PriceList& prices) {
  Costs costs;
  costs.currency = prices.currency;
  for (std::size_t i = 0; i < bill.lines.size(); ++i) {
    const BillLine& line = bill.lines[i];
    costs.lines.emplace_back();
    if (!line.bought) continue;
    const PriceRow* row = prices.find(line.key, line.size);
    if (row == nullptr || !line.order) {
      costs.missing.push_back(i);
      continue;
    }
    costs.lines.back() = costOf(line, *row, prices.file);
    addToTrade(costs, line.trade, costs.lines.back()->cost);
  }
  return costs;
}

} // namespace sump
