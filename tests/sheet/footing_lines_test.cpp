// The planes under footings on the excavation sheet, worked by hand.

#include "core/sheet/footing_lines.h"

#include "tests/rules/depot.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

/// A vault whose dig goes down to 89 ft, its bottom 15.5 x 10 ft, and a building 4 ft north of it.
Plan besideABuilding(std::optional<Length> footing) {
  Plan plan;
  plan.site.groundDefault = feet(96.5);
  plan.basis.earth.soil = SoilClass::StableRock;
  plan.vaults.append(twoChamberVault("V1", {}, feet(90)));
  plan.buildings.append({"B1", "", {ft(-20, 9), ft(20, 9), ft(20, 30), ft(-20, 30)}, {}, footing});
  return plan;
}

std::vector<FootingLine> linesOf(const Plan& plan) {
  const Review review = sump::testing::reviewed(plan);
  return footingLines({review, builtinCatalog(), *paperSize("arch-d"), 0, {}});
}

TEST(FootingLines, LieAsFarOutAsTheFootingIsOverTheBottom) {
  // 95 - 89 = 6 ft out from the wall at y = 9 ft.
  const auto lines = linesOf(besideABuilding(feet(95)));
  ASSERT_EQ(lines.size(), 1u);
  EXPECT_NEAR(inFeet(lines[0].footing), 95, 1e-9);
  EXPECT_NEAR(inFeet(lines[0].bottom), 89, 1e-9);
  ASSERT_GE(lines[0].line.size(), 2u);
  for (Point2 p : lines[0].line) {
    EXPECT_NEAR(p.y, 3 * kMetresPerFoot, 1e-9);
    EXPECT_LE(std::abs(p.x), (7.75 + 6) * kMetresPerFoot + 1.5 + 1e-9) << "near the dig only";
  }
}

TEST(FootingLines, NeedALevelAndAFootingOverTheBottom) {
  EXPECT_TRUE(linesOf(besideABuilding({})).empty());
  EXPECT_TRUE(linesOf(besideABuilding(feet(88.5))).empty());
}

} // namespace
} // namespace sump::test
