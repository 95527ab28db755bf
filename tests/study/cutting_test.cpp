// What a cut stick keeps for squaring its ends, by hand: 2 in Sch 80 comes in sticks of 240 in, the
// saw takes 1/8 in, and 1/2 in is kept.

#include "core/study/cutting.h"
#include "tests/reference/two_vault_plan.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace sump::test {
namespace {

/// Straight lines of pipe of these lengths in inches, with no fittings.
CuttingGroup cutsOf(const std::vector<double>& lengths, Length trim) {
  Plan plan;
  double y = 0;
  for (double length : lengths) {
    plan.runs.append(makeRun("R" + std::to_string(plan.runs.size()), Service::Product, "pvc-sch80",
                             "2", freeEnd(ft(0, y), feet(5)),
                             freeEnd(ft(length / 12, y), feet(5))));
    y += 3;
  }
  return cuttingList(plan, studyOf(plan), builtinCatalog(), inches(0.125), trim).groups.at(0);
}

const Length kTrim = inches(0.5);

TEST(CuttingTrim, TheBuiltInLimitIsHalfAnInch) {
  EXPECT_NEAR(inInches(builtinCatalog().limits.length(kTrimLimit)), 0.5, 1e-12);
}

/// 119 1/2 + 119 7/8 + 1/8 + 1/2 = 240: just fits. 1/16 in more does not.
TEST(CuttingTrim, TwoCutsTheSawAndTheTrimFillAStick) {
  const CuttingGroup fits = cutsOf({119.5, 119.875}, kTrim);
  ASSERT_EQ(fits.sticks.size(), 1u);
  EXPECT_NEAR(inInches(fits.sticks[0].offcut), 240 - 119.5 - 119.875 - 2 * 0.125, 1e-6);
  EXPECT_EQ(cutsOf({119.5, 119.9375}, kTrim).sticks.size(), 2u);
  EXPECT_EQ(cutsOf({119.5, 119.9375}, metres(0)).sticks.size(), 1u) << "240 in without the trim";
}

/// A whole stick, and one that loses less than the trim, keep the ends that they came with.
TEST(CuttingTrim, NearlyWholeSticksStandForThemselves) {
  const CuttingGroup group = cutsOf({240, 239.75, 100}, kTrim);
  ASSERT_EQ(group.sticks.size(), 3u);
  EXPECT_EQ(group.leastPossible, 3);
  EXPECT_NEAR(inInches(group.sticks[0].offcut), 0, 1e-6);
  EXPECT_NEAR(inInches(group.sticks[1].offcut), 240 - 239.75 - 0.125, 1e-6);
  EXPECT_NEAR(inInches(group.sticks[2].offcut), 240 - 100 - 0.125, 1e-6);
  EXPECT_NEAR(inInches(group.net), 579.75, 1e-6);
}

/// 3 x 79 7/8 + 2/8 = 239 7/8 leaves 1/8 in: with the trim each stick takes two of them.
TEST(CuttingTrim, TheBoundKnowsOfIt) {
  const std::vector<double> six(6, 79.875);
  EXPECT_EQ(cutsOf(six, metres(0)).sticks.size(), 2u);
  const CuttingGroup trimmed = cutsOf(six, kTrim);
  EXPECT_EQ(trimmed.sticks.size(), 3u);
  EXPECT_TRUE(trimmed.proven());
}

/// 482 in are 240 + 240 + 2, but 2 in do not fill two sockets of 1-1/2 in: 240 + 239 + 3.
TEST(CuttingParts, TheLastFillsTwoSockets) {
  const auto parts = [](double length) {
    std::vector<double> all;
    for (const StickCut& cut : cutsOf({length}, kTrim).cuts)
      all.push_back(inInches(cut.length));
    return all;
  };
  const auto expect = [&](double length, const std::vector<double>& expected) {
    const auto found = parts(length);
    ASSERT_EQ(found.size(), expected.size()) << length;
    for (std::size_t i = 0; i < found.size(); ++i)
      EXPECT_NEAR(found[i], expected[i], 1e-6) << length;
  };
  expect(482, {240, 239, 3});
  expect(483, {240, 240, 3});
  expect(242, {239, 3});
  expect(2, {2});
}

/// two_vault_plan.md reckons without it: no stick there is filled so far that it would matter.
TEST(CuttingTrim, LeavesThePlanWorkedByHandAsItIs) {
  const Plan plan = twoVaultPlan();
  const Study study = studyOf(plan);
  const Length kerf = builtinCatalog().limits.length(kKerfLimit);
  const CuttingList without = cuttingList(plan, study, builtinCatalog(), kerf);
  const CuttingList with = cuttingList(plan, study, builtinCatalog(), kerf, kTrim);
  ASSERT_EQ(with.groups.size(), without.groups.size());
  for (std::size_t i = 0; i < with.groups.size(); ++i) {
    EXPECT_EQ(with.groups[i].leastPossible, without.groups[i].leastPossible);
    ASSERT_EQ(with.groups[i].sticks.size(), without.groups[i].sticks.size());
    for (std::size_t s = 0; s < with.groups[i].sticks.size(); ++s)
      EXPECT_EQ(with.groups[i].sticks[s].cuts, without.groups[i].sticks[s].cuts);
  }
}

} // namespace
} // namespace sump::test
