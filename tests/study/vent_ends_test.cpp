// Open ends of vents and the roofs beside them.

#include "core/catalog/catalog.h"
#include "core/study/limits_for.h"
#include "core/study/vent_ends.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

/// A shop from x 10 to 30 ft with its roof at 112 ft, and a shed from 45 ft on whose roof nobody
/// has told.
Plan ventSite(Point2 end) {
  Plan plan;
  plan.buildings.append(
      {"B", "Shop", {ft(10, 0), ft(30, 0), ft(30, 20), ft(10, 20)}, {}, {}, feet(112)});
  plan.buildings.append({"S", "Shed", {ft(45, 0), ft(60, 0), ft(60, 20), ft(45, 20)}, {}, {}, {}});
  plan.runs.append(makeRun("VT", Service::Vent, "pvc-sch80", "3", freeEnd(end + ft(0, 8), feet(98)),
                           freeEnd(end, feet(113)), {{end, feet(98)}}));
  return plan;
}

std::vector<VentEnd> endsOf(const Plan& plan) {
  return ventEnds(plan, studyOf(plan), limitsFor(plan, builtinCatalog()));
}

TEST(VentEnds, TellRoofsWithinTenFeetTheNearestFirst) {
  // 36 ft: 6 ft from the shop, 9 ft from the shed.
  const auto ends = endsOf(ventSite(ft(36, 10)));
  ASSERT_EQ(ends.size(), 1U);
  EXPECT_NEAR(inFeet(ends[0].level), 113, 1e-9);
  ASSERT_EQ(ends[0].roofs.size(), 2U);
  EXPECT_EQ(ends[0].roofs[0].building, "B");
  EXPECT_NEAR(inFeet(ends[0].roofs[0].away), 6, 1e-9);
  EXPECT_NEAR(inFeet(*ends[0].roofs[0].roof), 112, 1e-9);
  EXPECT_NEAR(inFeet(ends[0].roofs[1].away), 9, 1e-9);
  EXPECT_FALSE(ends[0].roofs[1].roof);
  // 34 ft: 11 ft from the shed.
  EXPECT_EQ(endsOf(ventSite(ft(34, 10)))[0].roofs.size(), 1U);
}

TEST(VentEnds, OverABuildingAreNotAway) {
  const auto ends = endsOf(ventSite(ft(20, 10)));
  EXPECT_EQ(ends.at(0).roofs.at(0).away.value(), 0);
}

TEST(VentEnds, AreNoneWhereAVentJoinsAnotherOrHasNoLevel) {
  Plan plan = ventSite(ft(36, 10));
  sump::Run unknown = makeRun("V2", Service::Vent, "pvc-sch80", "3", freeEnd(ft(0, 30), {}),
                              freeEnd(ft(5, 30), {}));
  plan.runs.append(unknown);
  EXPECT_EQ(endsOf(plan).size(), 1U);
}

} // namespace
} // namespace sump::test
