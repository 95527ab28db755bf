#include "core/study/decided.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

TEST(DecidedTest, CombinesKnownValues) {
  const auto sum =
      decide([](int a, double b) { return a + b; }, Decided<int>(2), given<double>(0.5, "a share"));
  ASSERT_TRUE(sum);
  EXPECT_EQ(*sum, 2.5);
  EXPECT_TRUE(sum.needs.empty());
}

TEST(DecidedTest, GathersEveryNeedOnceInTheOrderOfAsking) {
  const auto a = given<int>(std::nullopt, "water temperature");
  const auto b = given<int>(std::nullopt, "pump curve");
  const auto known = Decided<int>(1);
  const auto first = decide([](int x, int y) { return x + y; }, a, known);
  const auto sum = decide([](int x, int y, int z) { return x + y + z; }, first, b, a);
  EXPECT_FALSE(sum);
  EXPECT_EQ(sum.needs, (Needs{"water temperature", "pump curve"}));
  EXPECT_EQ(needsText(sum.needs), "water temperature, pump curve");
}

TEST(DecidedTest, WorkMayItselfBeUndecided) {
  const auto root = [](double x) -> Decided<double> {
    if (x < 0) return undecided<double>({"a number of 0 or more"});
    return x;
  };
  EXPECT_EQ(*decide(root, Decided<double>(4.0)), 4.0);
  EXPECT_EQ(decide(root, Decided<double>(-4.0)).needs, Needs{"a number of 0 or more"});
}

TEST(DecidedTest, WhatWasNeverAssignedIsNoPass) {
  const Decided<int> blank;
  EXPECT_FALSE(blank);
  EXPECT_FALSE(blank.needs.empty());
}

} // namespace
} // namespace sump
