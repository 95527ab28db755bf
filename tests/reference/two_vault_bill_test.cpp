// Holds the bill to the figures of two_vault_plan.md, which were worked by hand.

#include "core/study/bill.h"
#include "tests/reference/two_vault_plan.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace sump::test {
namespace {

class TwoVaultBill : public ::testing::Test {
protected:
  static Bill billFor(const Plan& plan) {
    const Catalog& catalog = builtinCatalog();
    const Study study = studyOf(plan);
    return billOf(plan, study, catalog, builtinSupplies(),
                  cuttingList(plan, study, catalog, catalog.limits.length(kKerfLimit)));
  }
  const BillLine& line(const std::string& key, const std::string& size = {}) const {
    const auto found = std::ranges::find_if(
        bill_.lines, [&](const BillLine& l) { return l.key == key && l.size == size; });
    EXPECT_NE(found, bill_.lines.end()) << key << " " << size;
    static const BillLine none;
    return found == bill_.lines.end() ? none : *found;
  }
  void expectCount(const std::string& key, const std::string& size, double net, double order) {
    const BillLine& l = line(key, size);
    ASSERT_TRUE(l.net && l.order) << key << " " << size;
    EXPECT_NEAR(*l.net, net, 1e-9) << key << " " << size;
    EXPECT_NEAR(*l.order, order, 1e-9) << key << " " << size;
  }
  /// Quarts in place and pints to buy.
  void expectPoured(const std::string& key, double quarts, double pints) {
    const BillLine& l = line(key);
    ASSERT_TRUE(l.net && l.order) << key;
    EXPECT_NEAR(*l.net / gallons(0.25).value(), quarts, 1e-6) << key;
    EXPECT_NEAR(*l.order / gallons(0.125).value(), pints, 1e-6) << key;
  }

  const Plan plan_ = twoVaultPlan();
  const Bill bill_ = billFor(plan_);
};

TEST_F(TwoVaultBill, JointsAreSockets) {
  expectCount("solvent-joint", "6", 15, 15);
  expectCount("solvent-joint", "2", 7, 7);
  expectCount("conduit-joint", "1", 4, 4);
  EXPECT_FALSE(line("solvent-joint", "6").bought);
}

TEST_F(TwoVaultBill, CementAndPrimerFollowTheJoints) {
  expectPoured("pvc-cement", 1.616667, 4);
  expectPoured("pvc-primer", 0.808333, 2);
  expectPoured("conduit-cement", 0.032, 1);
}

TEST_F(TwoVaultBill, PipeIsWholeSticksOfTheCuttingList) {
  const BillLine& six = line("pvc-sch80", "6");
  EXPECT_EQ(six.sticks, 4);
  EXPECT_NEAR(inFeet(metres(*six.order)), 80, 1e-9);
  EXPECT_NEAR(inInches(metres(*six.net)), 22.25 * 2 + 95.2359 + 766.9968, 0.01);
  EXPECT_EQ(line("pvc-sch80", "2").sticks, 1);
  EXPECT_EQ(line("pvc-sdr35", "6").sticks, 4);
  EXPECT_EQ(line("pvc-conduit-sch80", "1").sticks, 2);
}

TEST_F(TwoVaultBill, FittingsAndValves) {
  expectCount("sch80-socket:elbow-90", "6", 4, 4);
  expectCount("sch80-socket:tee", "6", 4, 4);
  expectCount("sdr35-gasket:elbow-45", "6", 2, 2);
  expectCount("backwater-valve", "6", 1, 1);
  // Openings by hand: IN 1, LK 2, OF 1; SU; FC; and the baffles' IC-1 and IC-2.
  expectCount("wall-connector", "6", 4, 4);
  expectCount("wall-connector", "2", 1, 1);
  expectCount("wall-connector", "1", 1, 1);
  expectCount("baffle-sleeve", "6", 2, 2);
  expectCount("wall-sleeve", "3", 1, 1);
  expectCount("wall-sleeve", "1-1/2", 1, 1);
  expectCount("lid", "", 2, 2);
}

TEST_F(TwoVaultBill, Supports) {
  Plan plan = plan_;
  plan.basis.water.temperature = fahrenheit(75);
  const Bill bill = billFor(plan);
  for (const auto& [size, count] : {std::pair("6", 2), {"2", 2}, {"1", 1}}) {
    const auto line = std::ranges::find_if(bill.lines, [size = size](const BillLine& l) {
      return l.key == "pipe-support" && l.size == size;
    });
    ASSERT_NE(line, bill.lines.end()) << size;
    EXPECT_EQ(*line->net, count) << size;
  }
}

TEST_F(TwoVaultBill, Marking) {
  const BillLine& tape = line("purple-tape");
  EXPECT_NEAR(inFeet(metres(*tape.net)), 25.5430, 1e-3);
  EXPECT_NEAR(inFeet(metres(*tape.order)), 28.0973, 1e-3);
  expectCount("purple-label", "", 2, 2);
}

TEST_F(TwoVaultBill, EarthworkIsTheEarthStudys) {
  const Study study = studyOf(plan_);
  EXPECT_NEAR(*line("excavation").net, study.earth.dug.value->value(), 1e-9);
  EXPECT_NEAR(*line("bedding").order, 1.1 * study.earth.bedding.value->value(), 1e-9);
  EXPECT_EQ(*line("truckload").net, *study.earth.truckloads);
  double ribbon = 0;
  for (const TrenchStudy& trench : study.earth.trenches)
    ribbon += inMetres(trench.length);
  EXPECT_GT(ribbon, 0);
  double backfilled = 0;
  for (const BackfilledRun& run : study.earth.backfilled)
    backfilled += inMetres(run.length + run.overLid);
  EXPECT_GT(backfilled, 0);
  ribbon += backfilled;
  EXPECT_NEAR(*line("warning-ribbon").net, ribbon, 1e-9);
  EXPECT_EQ(line("warning-ribbon").trade, "site work"); // who fills the trench lays it: one line
}

TEST_F(TwoVaultBill, SharesAddUpToWhatIsInPlace) {
  std::set<std::string> shared;
  for (const BillLine& l : bill_.lines) {
    if (!l.net || l.shares.empty()) continue;
    double sum = 0;
    for (const BillShare& share : l.shares)
      sum += share.amount;
    EXPECT_NEAR(sum, *l.net, 1e-9) << l.key;
    shared.insert(l.category);
  }
  EXPECT_GE(shared.size(), 10u);
}

TEST_F(TwoVaultBill, WhatIsNotKnownIsNotCounted) {
  const BillLine& ballast = line("ballast-concrete");
  EXPECT_FALSE(ballast.net) << "no groundwater is given";
  EXPECT_FALSE(ballast.order);
  EXPECT_FALSE(ballast.net.needs.empty());
}

TEST_F(TwoVaultBill, ThrustIsSpokenOf) {
  const auto says = [](const Bill& bill, const std::string& words) {
    return std::ranges::any_of(
        bill.notes, [&](const std::string& note) { return note.find(words) != std::string::npos; });
  };
  EXPECT_TRUE(says(bill_, "Thrust blocks: none"));
  Plan gasketed = plan_;
  gasketed.runs.put(makeRun("PW", Service::Product, "pvc-sdr35", "6", freeEnd(ft(50, 30), feet(94)),
                            freeEnd(ft(60, 30), feet(94))));
  const Bill bill = billFor(gasketed);
  EXPECT_FALSE(says(bill, "Thrust blocks: none"));
  EXPECT_TRUE(says(bill, "PW carries pressure in gasketed pipe"));
}

TEST_F(TwoVaultBill, LevelPipeInTheRoomNeedsTheWaterTemperature) {
  Plan plan = plan_;
  plan.runs.put(makeRun("PW", Service::Product, "pvc-sch80", "2", freeEnd(ft(37, 25), feet(99)),
                        freeEnd(ft(45, 25), feet(99))));
  const auto supports = [&](const Bill& bill) {
    return *std::ranges::find_if(
        bill.lines, [](const BillLine& l) { return l.key == "pipe-support" && l.size == "2"; });
  };
  EXPECT_EQ(supports(billFor(plan)).net.needs, Needs{"water temperature"});
  plan.basis.water.temperature = fahrenheit(75);
  EXPECT_EQ(*supports(billFor(plan)).net, 2 + 2) << "8 ft by the code's 4 ft, and SU's two";
  plan.basis.water.temperature = fahrenheit(130);
  EXPECT_EQ(*supports(billFor(plan)).net, 2 + 3) << "8 ft by the table's 3.5 ft";
  plan.basis.water.temperature = fahrenheit(150);
  EXPECT_FALSE(supports(billFor(plan)).net) << "beyond the table";
}

TEST_F(TwoVaultBill, CollarsAreConcrete) {
  Plan plan = plan_;
  Vault vault = plan.vaults[0];
  vault.collar = feet(1);
  plan.vaults.put(vault);
  const Bill bill = billFor(plan);
  const auto found = std::ranges::find(bill.lines, "collar-concrete", &BillLine::key);
  ASSERT_NE(found, bill.lines.end());
  // 13.5 x 8 - 11.5 x 6 = 39 ft2, 0.5 ft thick = 19.5 ft3
  EXPECT_NEAR(*found->net, 19.5 * kMetresPerFoot * kMetresPerFoot * kMetresPerFoot, 1e-9);
}

} // namespace
} // namespace sump::test
