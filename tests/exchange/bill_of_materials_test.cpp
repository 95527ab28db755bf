// The bill of materials of the samples against golden files, and against the Study.
// SUMPWRIGHT_UPDATE_GOLDEN=1 rewrites the golden files; read the difference before committing.

#include "core/exchange/bill_of_materials.h"

#include "core/exchange/cutting_lists.h"
#include "core/exchange/plan_file.h"
#include "tests/support/csv_reader.h"
#include "tests/support/golden.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>

namespace sump::test {
namespace {

const std::filesystem::path kRoot = sourceFolder();

Review sampleReview(const std::string& name) {
  return review(readPlanFile(kRoot / "samples" / (name + ".sump")), builtinCatalog());
}

class BillOfMaterials : public ::testing::TestWithParam<const char*> {
protected:
  const Review review_ = sampleReview(GetParam());
  const BuyList buy_ = buyList(review_);
};
INSTANTIATE_TEST_SUITE_P(Samples, BillOfMaterials,
                         ::testing::Values("transit-depot", "boatyard-pad"));

TEST_P(BillOfMaterials, MatchesItsGoldenFile) {
  testing::expectGolden("exchange/golden/" + std::string(GetParam()) + ".csv",
                        billOfMaterialsCsv(review_, buy_));
}

TEST_P(BillOfMaterials, CuttingListMatchesItsGoldenFile) {
  testing::expectGolden("exchange/golden/" + std::string(GetParam()) + "-cuts.csv",
                        cuttingCsv(review_, buy_.cutting));
}

TEST_P(BillOfMaterials, HoldsEveryLineOfTheTakeOff) {
  std::map<std::string, double> taken, billed;
  const auto isWork = [](const std::string& category) {
    return category == "pipe" || category == "fitting" || category == "valve" ||
           category == "part" || category == "connector" || category == "vault" ||
           category == "riser" || category == "manway" || category == "baffle";
  };
  for (const QuantityLine& line : review_.study.takeOff)
    taken[line.trade + line.category + line.size] += line.quantity;
  for (const BillLine& line : buy_.bill.lines) {
    if (isWork(line.category)) billed[line.trade + line.category + line.size] += *line.net;
  }
  ASSERT_EQ(taken.size(), billed.size());
  for (const auto& [what, amount] : taken)
    EXPECT_NEAR(billed[what], amount, 1e-6) << what;
}

TEST_P(BillOfMaterials, BuysNoLessThanIsLaid) {
  for (const BillLine& line : buy_.bill.lines) {
    if (!line.net) continue;
    EXPECT_GE(*line.order, *line.net - 1e-9) << line.key << " " << line.size;
    if (line.category == "pipe") {
      EXPECT_GT(line.sticks, 0) << line.size;
    }
  }
}

/// Pipe takes no more sticks together than each service takes for itself.
TEST_P(BillOfMaterials, SticksAreThoseOfTheCuttingListAndNoMoreThanByService) {
  std::map<std::string, double> byService;
  for (const QuantityLine& line : review_.study.takeOff) {
    if (line.category == "pipe") byService[line.item + line.size] += inMetres(line.buy);
  }
  for (const CuttingGroup& group : buy_.cutting.groups) {
    EXPECT_TRUE(group.proven()) << group.pipe << " " << group.size;
    const double bought = static_cast<double>(group.sticks.size()) * inMetres(group.stick);
    EXPECT_LE(bought, byService[group.pipe + group.size] + inMetres(group.stick) + 1e-9)
        << "the saw's kerf may take one stick more";
  }
}

TEST_P(BillOfMaterials, ByRunAddsUpToTheBill) {
  std::map<std::string, double> whole, parts;
  for (const BillLine& line : buy_.bill.lines) {
    if (line.net) whole[line.trade + line.key + line.size + line.description] = *line.net;
  }
  for (const auto& line : buy_.bill.lines) {
    for (const BillShare& share : line.shares)
      parts[line.trade + line.key + line.size + line.description] += share.amount;
    if (line.shares.empty() && line.net)
      parts[line.trade + line.key + line.size + line.description] += *line.net;
  }
  EXPECT_EQ(whole.size(), parts.size());
  for (const auto& [what, amount] : whole)
    EXPECT_NEAR(parts[what], amount, 1e-9) << what;
  const ListTable byRun = billByRunTable(review_, buy_);
  std::size_t shares = 0;
  for (const BillLine& line : buy_.bill.lines)
    shares += std::max<std::size_t>(1, line.shares.size());
  EXPECT_EQ(byRun.rows.size(), shares) << "every run and vault is of the plan";
}

/// A list with these lines and nothing else.
std::vector<std::vector<std::string>> rowsWith(std::vector<BillLine> lines,
                                               UnitSystem units = UnitSystem::UsCustomary,
                                               std::optional<Costs> costs = std::nullopt) {
  Review reviewed;
  reviewed.plan.project.units = units;
  BuyList buy;
  buy.bill.lines = std::move(lines);
  buy.costs = std::move(costs);
  return readCsv(billOfMaterialsCsv(reviewed, buy));
}

BillLine teeLine() {
  BillLine line;
  line.trade = "plumbing";
  line.category = "fitting";
  line.key = "sch80-socket:tee";
  line.description = "Tee";
  line.size = "1-1/2";
  line.net = line.order = 2.0;
  line.shares = {{"R-1", 1}, {"R-2", 1}};
  return line;
}

BillLine pipeLine() {
  BillLine line = teeLine();
  line.category = "pipe";
  line.description = "PVC Sch 80 pipe";
  line.unit = BillUnit::Length;
  line.net = inMetres(feet(47.26));
  line.order = inMetres(feet(60));
  line.sticks = 3;
  return line;
}

constexpr std::size_t kDescription = 4, kSize = 5, kNet = 7, kOrder = 9, kUnit = 10, kSticks = 11,
                      kFrom = 12, kNote = 13;

TEST(BillOfMaterialsText, GuardsHostileNames) {
  for (const std::string& name :
       std::vector<std::string>{"=HYPERLINK(\"x\")", "+1", "-1", "@x", "\tcmd", "two\nlines", "a,b",
                                "\u00D8 6\" \u2014 \u6C34"}) {
    BillLine line = teeLine();
    line.description = name;
    line.shares = {{name, 2}};
    const auto rows = rowsWith({line});
    ASSERT_EQ(rows.size(), 2u) << name;
    ASSERT_EQ(rows[1].size(), rows[0].size()) << name;
    const bool formula = std::string("=+-@\t").find(name[0]) != std::string::npos;
    EXPECT_EQ(rows[1][kDescription], (formula ? "'" : "") + name);
    EXPECT_EQ(rows[1][kFrom], (formula ? "'" : "") + name);
  }
}

TEST(BillOfMaterialsText, ListsPipeInTheProjectsUnit) {
  const auto us = rowsWith({pipeLine()});
  EXPECT_EQ(us[1][kNet], "47.3");
  EXPECT_EQ(us[1][kOrder], "60.0");
  EXPECT_EQ(us[1][kUnit], "ft");
  EXPECT_EQ(us[1][kSticks], "3");
  const auto metric = rowsWith({pipeLine()}, UnitSystem::Metric);
  EXPECT_EQ(metric[1][kNet], "14.40") << "47.26 ft x 0.3048 m";
  EXPECT_EQ(metric[1][kOrder], "18.29");
  EXPECT_EQ(metric[1][kUnit], "m");
}

TEST(BillOfMaterialsText, CountsAndVolumes) {
  BillLine dig = teeLine();
  dig.unit = BillUnit::Volume;
  dig.net = dig.order = 76.4554857984; // 100 yd3
  BillLine cement = teeLine();
  cement.unit = BillUnit::Liquid;
  cement.net = cement.order = gallons(0.75).value();
  const auto us = rowsWith({teeLine(), dig, cement});
  EXPECT_EQ(us[1][kNet] + us[1][kUnit] + us[1][kSticks], "2each");
  EXPECT_EQ(us[1][kFrom], "R-1 R-2");
  EXPECT_EQ(us[2][kNet] + us[2][kUnit], "100.0yd3");
  EXPECT_EQ(us[3][kNet] + us[3][kUnit], "3.00qt");
  const auto metric = rowsWith({dig, cement}, UnitSystem::Metric);
  EXPECT_EQ(metric[1][kNet] + metric[1][kUnit], "76.46m3");
  EXPECT_EQ(metric[2][kNet] + metric[2][kUnit], "2.84L");
}

/// A bare `1-1/2` or `1/2` would be shown as a date.
TEST(BillOfMaterialsText, NoSizeLooksLikeADate) {
  for (const char* size : {"1/2", "1-1/2", "6", "6 x 4"}) {
    BillLine line = teeLine();
    line.size = size;
    EXPECT_EQ(rowsWith({line})[1][kSize], std::string(size) + " in");
  }
  BillLine vault = teeLine();
  vault.category = "vault";
  vault.size = "12'-0\" x 6'-0\"";
  EXPECT_EQ(rowsWith({vault})[1][kSize], vault.size);
}

TEST(BillOfMaterialsText, WhatCannotBeDecidedSaysWhatItNeeds) {
  BillLine line = teeLine();
  line.net = line.order = undecided<double>({"ground levels"});
  const auto rows = rowsWith({line});
  EXPECT_EQ(rows[1][kNet], "?");
  EXPECT_EQ(rows[1][kNote], "cannot be decided: needs ground levels");
}

TEST(BillOfMaterialsText, PricesBringCostAndTotalsByTrade) {
  BillLine dig = teeLine();
  dig.trade = "site work";
  dig.key = "excavation";
  Bill bill;
  bill.lines = {teeLine(), dig};
  const PriceList prices = parsePrices(
      "item,size,unit,price,currency\nsch80-socket:tee,,each,10.25,USD\nexcavation,,each,3,USD\n",
      "p.csv");
  const auto rows = rowsWith(bill.lines, UnitSystem::UsCustomary, costsOf(bill, prices));
  constexpr std::size_t kCost = 15;
  EXPECT_EQ(rows[0][kCost], "Cost (USD)");
  EXPECT_EQ(rows[1][kCost], "20.50");
  ASSERT_EQ(rows.size(), 6u);
  EXPECT_EQ(rows[3][kDescription] + rows[3][kCost], "Total plumbing20.50");
  EXPECT_EQ(rows[4][kDescription] + rows[4][kCost], "Total site work6.00");
  EXPECT_EQ(rows[5][kCost], "26.50");
}

/// A run that cannot be worked out is named with the reason.
TEST(BillOfMaterialsText, SaysWhichRunsAreNotCounted) {
  Plan plan = readPlanFile(kRoot / "samples" / "transit-depot.sump");
  sump::Run run = *plan.runs.find("SU-1");
  run.pipe = "no-such-pipe";
  plan.runs.put(run);
  const BuyList buy = buyList(review(plan, builtinCatalog()));
  EXPECT_TRUE(std::ranges::any_of(buy.bill.notes, [](const std::string& note) {
    return note.find("SU-1 is not counted") == 0;
  }));
  for (const BillLine& line : buy.bill.lines) {
    const bool ofPipe = line.category == "pipe" || line.category == "fitting" ||
                        line.category == "joint" || line.category == "cement";
    if (!ofPipe) continue; // its trench and its holes are known, its pipe is not
    EXPECT_EQ(std::ranges::find(line.shares, "SU-1", &BillShare::from), line.shares.end())
        << line.key;
  }
}

} // namespace
} // namespace sump::test
