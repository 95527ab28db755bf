#include "core/exchange/prices.h"

#include "core/exchange/csv_read.h"
#include "core/exchange/input_error.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

constexpr const char* kHeading = "item,size,unit,price,currency\n";

BillLine lineOf(std::string trade, std::string key, std::string size, BillUnit unit, double order) {
  BillLine line;
  line.trade = std::move(trade);
  line.key = std::move(key);
  line.size = std::move(size);
  line.unit = unit;
  line.net = line.order = order;
  return line;
}

Bill smallBill() {
  Bill bill;
  bill.lines = {lineOf("plumbing", "pvc-sch80", "6", BillUnit::Length, inMetres(feet(80))),
                lineOf("plumbing", "sch80-socket:tee", "6", BillUnit::Each, 4),
                lineOf("plumbing", "pvc-cement", "", BillUnit::Liquid, gallons(0.75).value()),
                lineOf("site work", "excavation", "", BillUnit::Volume, 76.4554857984)};
  bill.lines[0].sticks = 4;
  return bill;
}

TEST(Prices, AreJoinedBySizeAndSummedByTrade) {
  const PriceList prices = parsePrices(std::string(kHeading) + "pvc-sch80,6 in,stick,210.10,USD\r\n"
                                                               "sch80-socket:tee,6,each,95.5,USD\n"
                                                               "pvc-cement,,qt,31.00,USD\n"
                                                               "excavation,,yd3,12,USD\n"
                                                               "never-used,,each,1,USD\n",
                                       "own.csv");
  const Costs costs = costsOf(smallBill(), prices);
  EXPECT_EQ(costs.currency, "USD");
  EXPECT_NEAR(costs.lines[0]->cost, 840.40, 1e-9) << "4 sticks";
  EXPECT_NEAR(costs.lines[1]->cost, 382, 1e-9);
  EXPECT_NEAR(costs.lines[2]->cost, 93, 1e-9) << "3 quarts";
  EXPECT_NEAR(costs.lines[3]->cost, 1200, 1e-9) << "100 cubic yards";
  ASSERT_EQ(costs.byTrade.size(), 2u);
  EXPECT_EQ(costs.byTrade[0].first, "plumbing");
  EXPECT_NEAR(costs.byTrade[0].second, 1315.40, 1e-9);
  EXPECT_NEAR(costs.byTrade[1].second, 1200, 1e-9);
  EXPECT_NEAR(costs.total, 2515.40, 1e-9);
  EXPECT_TRUE(costs.missing.empty());
}

TEST(Prices, LengthsByFootAndMetreCostTheSame) {
  const auto pipe = [](const std::string& row) {
    return costsOf(smallBill(), parsePrices(kHeading + row, "p.csv")).lines[0]->cost;
  };
  EXPECT_NEAR(pipe("pvc-sch80,6,ft,10,USD\n"), 800, 1e-9);
  EXPECT_NEAR(pipe("pvc-sch80,6,100 ft,1000,USD\n"), 800, 1e-9);
  EXPECT_NEAR(pipe("pvc-sch80,6,m,10,USD\n"), 243.84, 1e-9) << "80 ft are 24.384 m";
}

TEST(Prices, ABlankSizePricesWhatHasNoRowOfItsOwn) {
  const PriceList prices =
      parsePrices(std::string(kHeading) + "tee,,each,5,EUR\ntee,6,each,9,EUR\n", "p.csv");
  EXPECT_EQ(prices.find("tee", "6")->price, 9);
  EXPECT_EQ(prices.find("tee", "4")->price, 5);
  EXPECT_EQ(prices.find("elbow", "4"), nullptr);
}

TEST(Prices, WhatHasNoneIsListed) {
  Bill bill = smallBill();
  bill.lines[3].order = undecided<double>({"ground levels"});
  bill.lines.push_back(lineOf("plumbing", "solvent-joint", "6", BillUnit::Each, 24));
  bill.lines.back().bought = false;
  const Costs costs =
      costsOf(bill, parsePrices(std::string(kHeading) + "excavation,,m3,12,USD\n", "p.csv"));
  EXPECT_EQ(costs.missing, (std::vector<std::size_t>{0, 1, 2, 3}))
      << "no price, or nothing to multiply it with; joints are not bought";
  EXPECT_EQ(costs.total, 0);
}

TEST(Prices, ABadRowIsOneErrorWithItsLineAndHowToMendIt) {
  const std::string h = kHeading;
  const std::vector<std::pair<std::string, std::pair<int, const char*>>> bad = {
      {"", {1, "is empty"}},
      {"item,size,price,currency\n", {1, "no column 'unit'"}},
      {h + "tee,6,each,nine,USD\n", {2, "'nine' is no amount"}},
      {h + "tee,6,each,\"1,250\",USD\n", {2, "'1,250' is no amount"}},
      {h + "tee,6,each,-1,USD\n", {2, "is no amount"}},
      {h + "tee,6,each,inf,USD\n", {2, "is no amount"}},
      {h + "\ntee,6,dozen,1,USD\n", {3, "unit 'dozen' is not known"}},
      {h + "tee,6,each,1,USD\ntee,4,each,1,EUR\n", {3, "is in EUR after rows in USD"}},
      {h + "tee,6,each,1,USD\ntee,6 in,each,2,USD\n", {3, "again after line 2"}},
      {h + "tee,6,each,1,\n", {2, "no currency"}},
      {h + ",6,each,1,USD\n", {2, "no item"}},
      {h + "tee,6\n", {2, "no cell for 'unit'"}},
      {h + "\"tee,6,each,1,USD\n", {2, "quote is not closed"}},
      {h + "\"tee\"x,6,each,1,USD\n", {2, "after a closing quote"}}};
  for (const auto& [text, expected] : bad) {
    SCOPED_TRACE(text);
    try {
      parsePrices(text, "own.csv");
      ADD_FAILURE() << "was taken";
    } catch (const InputError& error) {
      EXPECT_EQ(error.file, "own.csv");
      EXPECT_EQ(error.line, expected.first);
      EXPECT_NE(error.problem.find(expected.second), std::string::npos) << error.problem;
      EXPECT_FALSE(error.mend.empty());
    }
  }
}

TEST(Prices, AUnitThatCannotMeasureTheItemIsAnError) {
  try {
    costsOf(smallBill(),
            parsePrices(std::string(kHeading) + "\nsch80-socket:tee,6,ft,9,USD\n", "own.csv"));
    ADD_FAILURE() << "was taken";
  } catch (const InputError& error) {
    EXPECT_EQ(error.line, 3);
    EXPECT_NE(error.mend.find("each"), std::string::npos) << error.mend;
    EXPECT_EQ(error.mend.find("ft"), std::string::npos) << error.mend;
  }
}

TEST(CsvRead, KeepsQuotedCommasQuotesAndLines) {
  const auto records = sump::readCsv("\xEF\xBB\xBF"
                                     "a,\"b,\"\"c\"\"\r\nd\",\r\n\r\n\"\",e",
                                     "x.csv");
  ASSERT_EQ(records.size(), 2u);
  EXPECT_EQ(records[0].cells, (std::vector<std::string>{"a", "b,\"c\"\r\nd", ""}));
  EXPECT_EQ(records[1].line, 4);
  EXPECT_EQ(records[1].cells, (std::vector<std::string>{"", "e"}));
}

} // namespace
} // namespace sump::test
