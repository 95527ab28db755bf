// What pipes leave free of a manway, by figures that can be worked out.

#include "core/study/manway_way.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sump::test {
namespace {

double clear(std::vector<ShaftPipe> pipes) {
  return inMetres(clearWay(metres(2), pipes)); // an opening of radius 1
}
ShaftPipe post(double x, double y, double radius) {
  return {{x, y}, {x, y}, radius};
}

constexpr double kClose = 5e-4; // of a diameter, by its declaration

TEST(ManwayWay, AnOpeningWithoutPipesIsClear) {
  EXPECT_NEAR(clear({}), 2, kClose);
}

TEST(ManwayWay, AStraightPipeLeavesTheSegmentBesideIt) {
  // The circle touches the opening and the pipe: radius and distance, less half the pipe.
  for (double off : {0.0, 0.25, 0.6, 0.9})
    EXPECT_NEAR(clear({{{-3, off}, {3, off}, 0.05}}), 1 + off - 0.05, kClose) << off;
}

TEST(ManwayWay, APipeThatEndsInTheOpeningLeavesMore) {
  // Straight behind its end.
  EXPECT_NEAR(clear({{{0, -3}, {0, -0.5}, 0.1}}), 1.5 - 0.1, kClose);
}

TEST(ManwayWay, TwoPostsByDescartes) {
  // Circles of 1/2 beside each other in a circle of 1: curvatures 2, 2 and -1 leave one of
  // 2 + 2 - 1 + 2 sqrt(4 - 2 - 2) = 3 (Descartes' theorem).
  EXPECT_NEAR(clear({post(-0.5, 0, 0.5), post(0.5, 0, 0.5)}), 2.0 / 3, kClose);
}

TEST(ManwayWay, FourPostsLeaveTheMiddleOrTheSides) {
  const auto four = [](double at, double radius) {
    return clear(
        {post(at, 0, radius), post(-at, 0, radius), post(0, at, radius), post(0, -at, radius)});
  };
  // Far out the middle is left; near the middle the way between two posts and the edge, where
  // 1 - d = hypot(at - d / sqrt 2, d / sqrt 2) - radius.
  EXPECT_NEAR(four(0.9, 0.1), 1.6, kClose);
  const double c = 0.2, r = 0.05;
  const double d = ((1 + r) * (1 + r) - c * c) / (2 * (1 + r) - std::sqrt(2.0) * c);
  EXPECT_NEAR(four(c, r), 2 * (1 - d), kClose);
}

TEST(ManwayWay, NothingIsLeftOfAFullOpening) {
  EXPECT_EQ(clear({post(0, 0, 1.2)}), 0);
}

/// A manway of 2 ft over chamber 1, whose middle is at -3 ft, and a vent of 3.5 in outside.
Plan ventPlan(Run vent) {
  Plan plan;
  plan.site.groundDefault = feet(98);
  Vault vault = twoChamberVault("V1", {}, feet(90));
  vault.manways = {{"M1", ft(-3, 0), feet(2), {}, false}};
  plan.vaults.append(vault);
  plan.runs.append(std::move(vent));
  return plan;
}
std::vector<ManwayLine> linesOf(const Plan& plan) {
  const Study study = studyOf(plan);
  return ManwayWays(plan, study).lines(study.vaults[0], 0);
}
Run ventAt(double x, double invert) {
  return makeRun("VT", Service::Vent, "pvc-sch80", "3", inChamber("V1", 1, ft(x, -2), feet(invert)),
                 freeEnd(ft(x, 20), feet(invert)));
}

TEST(ManwayWay, ALineCountsFromFloorToRim) {
  const double touching = -3 + 1 + 1.75 / 12; // 12 in and half of 3.5 in
  EXPECT_EQ(linesOf(ventPlan(ventAt(touching - 0.01, 94))).size(), 1U);
  EXPECT_TRUE(linesOf(ventPlan(ventAt(touching + 0.01, 94))).empty());
  EXPECT_EQ(linesOf(ventPlan(ventAt(-3, 97))).size(), 1U) << "through the riser";
  EXPECT_TRUE(linesOf(ventPlan(ventAt(-3, 98.1))).empty()) << "over the rim";
  EXPECT_TRUE(linesOf(ventPlan(ventAt(-3, 89))).empty()) << "under the floor";
}

TEST(ManwayWay, TellsWhatEndsThereFromWhatPasses) {
  EXPECT_FALSE(linesOf(ventPlan(ventAt(-3, 94))).at(0).ends);
  sump::Run ends = ventAt(-3, 94);
  ends.from.at = ft(-3, 0.5);
  EXPECT_TRUE(linesOf(ventPlan(ends)).at(0).ends);
  sump::Run eductor = ends;
  eductor.eductor = EductorMount{"M1", feet(95), feet(94), "1"};
  EXPECT_FALSE(linesOf(ventPlan(ends)).at(0).hangs);
  EXPECT_TRUE(linesOf(ventPlan(eductor)).at(0).hangs);
}

} // namespace
} // namespace sump::test
