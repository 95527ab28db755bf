// Lines that pass the walls of vaults and risers off square.

#include "core/study/hole_gaps.h"
#include "core/study/pass_slant.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace sump::test {
namespace {

/// A vault of 11.5 x 6 ft whose own x lies 30 degrees off east.
Vault turned() {
  return twoChamberVault("V", ft(50, 50), feet(90), degrees(30));
}

/// A vent out of the chamber that goes through the low side, in the vault's own frame, so far off
/// square to it.
Plan ventThrough(double angle, double x = 3) {
  const Vault vault = turned();
  const Point2 from = ft(x, -2);
  const Point2 to = from + Point2{std::tan(angle * kPi / 180), -1} * 2;
  Plan plan;
  plan.vaults.append(vault);
  plan.runs.append(makeRun("VT", Service::Vent, "pvc-sch80", "2", inChamber("V", 2, from, feet(93)),
                           freeEnd(vault.frame().toSite(to), feet(93))));
  return plan;
}

double slantThrough(double angle) {
  const Plan plan = ventThrough(angle);
  const auto passes = slantPasses(plan, studyOf(plan));
  EXPECT_EQ(passes.size(), 1u);
  return inDegrees(passes.at(0).slant);
}

TEST(PassSlant, IsOffTheSquareToTheVaultsWall) {
  for (double angle : {0.0, 20.0, 45.0})
    EXPECT_NEAR(slantThrough(angle), angle, 1e-6);
  EXPECT_NEAR(slantThrough(-30), 30, 1e-6) << "never negative";
}

/// 2.375 / cos 45 + 6 x tan 45 = 3.3588 + 6 in.
TEST(PassSlant, AsksForAWiderOpening) {
  EXPECT_NEAR(inInches(openingWidth(inches(2.375), inches(6), degrees(45))), 9.3588, 1e-4);
  EXPECT_NEAR(inInches(openingWidth(inches(2.375), inches(6), degrees(0))), 2.375, 1e-9);
}

Length gapTo(HoleEdge edge, const Plan& plan) {
  const auto gaps = holeGaps(plan, builtinCatalog(), studyOf(plan));
  const auto found = std::ranges::find(gaps, edge, &HoleGap::edge);
  EXPECT_NE(found, gaps.end());
  return found->clear;
}

/// The outside face stands 3 ft from the vault's axis, 1 ft from the end of the vent: at 45 degrees
/// it is met at 3 + 1 = 4 ft, the inside face at 3.5 ft. Inside the corner is at 5.25 ft: 15 in
/// less half of 2.375 / cos 45 = 1.6794 in.
TEST(HoleGaps, ReckonWithTheWidthOfASlantingHole) {
  EXPECT_NEAR(inInches(gapTo(HoleEdge::Corner, ventThrough(0))), 27 - 1.1875, 1e-6);
  EXPECT_NEAR(inInches(gapTo(HoleEdge::Corner, ventThrough(45))), 15 - 1.6794, 1e-4);
}

/// The baffle's face stands 0.25 ft from the middle: of a vent that leans toward it the outside
/// face is nearest, at 2 ft: 21 in.
TEST(HoleGaps, MeasureFromTheFaceThatIsNearest) {
  EXPECT_NEAR(inInches(gapTo(HoleEdge::Baffle, ventThrough(-45))), 21 - 1.6794, 1e-4);
  EXPECT_NEAR(inInches(gapTo(HoleEdge::Baffle, ventThrough(45))), 39 - 1.6794, 1e-4);
}

/// Two vents at 45 degrees whose axes lie 1 ft apart along the wall, 0.5 ft of which the wall's
/// thickness takes: 6 in less two halves of 3.3588 in.
TEST(HoleGaps, LeaveLessBetweenSlantingNeighbours) {
  Plan plan = ventThrough(45);
  sump::Run other = *ventThrough(45, 2).runs.begin();
  other.id = "VT-2";
  plan.runs.append(other);
  EXPECT_NEAR(inInches(gapTo(HoleEdge::Pipe, plan)), 6 - 3.3588, 1e-4);
}

/// A riser of 24 in over chamber 2, and a line over the lid that goes past its centre 6 in aside:
/// the sine of the angle to the radius is 6 / 12.
TEST(PassSlant, IsOffTheRadiusOfARoundRiser) {
  Vault vault = turned();
  vault.manways = {{"M", ft(3, 0), feet(2), feet(99), false}};
  Plan plan;
  plan.vaults.append(vault);
  const auto site = [&](double x, double y) { return vault.frame().toSite(ft(x, y)); };
  plan.runs.append(makeRun("RC", Service::Recirculation, "pvc-sch80", "1",
                           freeEnd(site(3.5, 20), feet(97)),
                           inChamber("V", 2, ft(3.5, 0), feet(97))));
  const auto passes = slantPasses(plan, studyOf(plan));
  ASSERT_EQ(passes.size(), 1u);
  EXPECT_EQ(passes[0].manway, "M");
  EXPECT_NEAR(inDegrees(passes[0].slant), 30, 1e-6);
}

} // namespace
} // namespace sump::test
