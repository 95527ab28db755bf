// The workbook read back without the library that wrote it, and by LibreOffice where it is there.

#include "core/exchange/workbook.h"

#include "core/exchange/bill_of_materials.h"
#include "core/exchange/plan_file.h"
#include "core/units/print.h"
#include "tests/support/csv_reader.h"
#include "tests/support/own_folder.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <fstream>
#include <map>
#include <sstream>
#include <unistd.h>

namespace sump::test {
namespace {

const std::string kBooksSource = sourceFolder();

/// Prices for some lines and not for others, in units that have to be converted.
constexpr const char* kPrices = "item,size,unit,price,currency\n"
                                "pvc-sch80,,ft,9.87,USD\n"
                                "pvc-sch80,6,stick,231.19,USD\n"
                                "sch80-socket:elbow-90,,each,17.03,USD\n"
                                "sch80-socket:tee,6,each,88.4,USD\n"
                                "pvc-cement,,qt,31.25,USD\n"
                                "excavation,,m3,13.333,USD\n"
                                "truckload,,load,250,USD\n";

class Workbook : public ::testing::Test {
protected:
  void SetUp() override { writeWorkbook(buyTables(review_, buy_), "Transit depot", file_); }

  static std::string output(const std::string& command) {
    FILE* pipe = popen(command.c_str(), "r");
    std::string text;
    std::array<char, 4096> part{};
    while (std::size_t n = std::fread(part.data(), 1, part.size(), pipe))
      text.append(part.data(), n);
    EXPECT_EQ(pclose(pipe), 0) << command << "\n" << text;
    return text;
  }

  const Review review_ =
      review(readPlanFile(kBooksSource + "/samples/transit-depot.sump"), builtinCatalog());
  const PriceList prices_ = parsePrices(kPrices, "p.csv");
  const BuyList buy_ = buyList(review_, {.prices = &prices_});
  const testing::OwnFolder folder_;
  const std::filesystem::path file_ = folder_ / "bill.xlsx";
};

TEST_F(Workbook, HoldsTheListsAndItsFormulasGiveTheValuesBesideThem) {
  const std::string text = output("python3 " + kBooksSource + "/tests/exchange/workbook_check.py " +
                                  file_.string() + " 2>&1");
  std::map<std::string, std::string> found;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    const std::size_t at = line.rfind('\t');
    if (at != std::string::npos) found[line.substr(0, at)] = line.substr(at + 1);
  }
  int formulas = 0;
  for (const ListTable& table : buyTables(review_, buy_)) {
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
      for (std::size_t c = 0; c < table.rows[r].size(); ++c) {
        const ListCell& cell = table.rows[r][c];
        const std::string at = table.name + "\t" + ListTable::letters(c) + std::to_string(r + 2);
        if (cell.number) {
          ASSERT_TRUE(found.contains(at)) << at;
          EXPECT_NEAR(std::stod(found[at]), *cell.number, 1e-9) << at;
        } else if (!cell.text.empty() && cell.text.find('\n') == std::string::npos) {
          EXPECT_EQ(found[at], cell.text) << at;
        }
        formulas += cell.formula.empty() ? 0 : 1;
      }
    }
  }
  EXPECT_EQ(found["formulas"], std::to_string(formulas));
  EXPECT_GT(formulas, 20);
}

TEST_F(Workbook, TotalsAreTheCosts) {
  const ListTable bill = billTable(review_, buy_);
  EXPECT_GT(buy_.costs->total, 0);
  EXPECT_FALSE(buy_.costs->missing.empty());
  double sum = 0;
  for (const auto& cost : buy_.costs->lines)
    sum += cost ? cost->cost : 0;
  EXPECT_NEAR(sum, buy_.costs->total, 1e-6);
  EXPECT_NEAR(*bill.rows.back()[15].number, buy_.costs->total, 0.005);
  EXPECT_EQ(missingPricesTable(review_, buy_).rows.size(), buy_.costs->missing.size());
}

TEST_F(Workbook, APlaceThatCannotBeWrittenIsOneError) {
  EXPECT_THROW(writeWorkbook(buyTables(review_, buy_), "", folder_ / "none" / "bill.xlsx"),
               InputError);
  EXPECT_FALSE(std::filesystem::exists(folder_ / "bill.xlsx.part"));
}

/// LibreOffice works every formula out when it loads; its first sheet must be our CSV.
TEST_F(Workbook, LibreOfficeReadsTheSameTotals) {
  if (std::system("command -v soffice > /dev/null 2>&1") != 0)
    GTEST_SKIP() << "LibreOffice (soffice) is not installed; the workbook was read by python only";
  output("soffice -env:UserInstallation=file://" + (folder_ / "profile").string() +
         " --headless --convert-to csv --outdir " + folder_.path().string() + " " + file_.string() +
         " 2>&1");
  std::ostringstream text;
  text << std::ifstream(folder_ / "bill.csv").rdbuf();
  std::string crlf;
  for (char c : text.str())
    crlf += c == '\n' ? std::string("\r\n") : std::string(1, c);
  const auto rows = readCsv(crlf);
  const ListTable bill = billTable(review_, buy_);
  ASSERT_EQ(rows.size(), bill.rows.size() + 1);
  for (std::size_t r = bill.rows.size() - static_cast<std::size_t>(bill.totals);
       r < bill.rows.size(); ++r) {
    EXPECT_EQ(rows[r + 1][4], bill.rows[r][4].text);
    std::string cost = rows[r + 1][15];
    std::erase(cost, ',');
    // The values, not as they are shown: a whole sum has no decimals.
    EXPECT_NEAR(std::stod(cost), *bill.rows[r][15].number, 0.005);
  }
}

} // namespace
} // namespace sump::test
