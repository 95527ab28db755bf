// Saw cuts in pavements and floors, by hand. Ground at 3 m, 2 in pipe at 2.4 m: the trench is
// 2.375 + 16 = 18.375 in wide (0.466725 m) with upright sides.

#include "core/study/bill.h"
#include "core/study/surface_cuts.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace sump::test {
namespace {

constexpr double kWide = 18.375 * kMetresPerInch;

Plan pavedSite() {
  Plan plan;
  plan.site.groundDefault = metres(3);
  plan.pavements.append({"P", "Yard", {{5, -10}, {15, -10}, {15, 10}, {5, 10}}, true});
  return plan;
}

void addLine(Plan& plan, const Id& id, Point2 a, Point2 b) {
  plan.runs.append(makeRun(id, Service::Product, "pvc-sch80", "2", freeEnd(a, metres(2.4)),
                           freeEnd(b, metres(2.4))));
}

SurfaceCuts cutsIn(const Plan& plan) {
  const auto cuts = surfaceCuts(plan, studyOf(plan).earth);
  EXPECT_TRUE(cuts);
  return cuts ? *cuts : SurfaceCuts{};
}

TEST(SurfaceCuts, RunAlongBothSidesAndNotAlongThePavementsEdge) {
  Plan plan = pavedSite();
  addLine(plan, "A", {0, 0}, {20, 0});
  const SurfaceCuts cuts = cutsIn(plan);
  EXPECT_NEAR(inMetres(cuts.pavementCut), 2 * 10, 1e-6);
  EXPECT_NEAR(cuts.pavement.value(), 10 * kWide, 1e-2);
  EXPECT_EQ(inMetres(cuts.floorCut), 0);
}

TEST(SurfaceCuts, CloseTheEndThatLiesInThePavement) {
  Plan plan = pavedSite();
  addLine(plan, "A", {0, 0}, {10, 0});
  EXPECT_NEAR(inMetres(cutsIn(plan).pavementCut), 2 * 5 + kWide, 1e-6);
}

/// Each of four sides is open over the width of the other trench.
TEST(SurfaceCuts, LeaveOutWhereTrenchesCross) {
  Plan plan = pavedSite();
  addLine(plan, "A", {0, 0}, {20, 0});
  addLine(plan, "B", {10, -15}, {10, 15});
  const SurfaceCuts cuts = cutsIn(plan);
  EXPECT_NEAR(inMetres(cuts.pavementCut), 2 * 10 + 2 * 20 - 4 * kWide, 1e-6);
  EXPECT_NEAR(cuts.pavement.value(), 30 * kWide - kWide * kWide, 1e-2);
}

TEST(SurfaceCuts, CountOneTrenchForRunsInOnePlace) {
  Plan plan = pavedSite();
  addLine(plan, "A", {0, 0}, {20, 0});
  addLine(plan, "B", {0, 0}, {20, 0});
  EXPECT_NEAR(inMetres(cutsIn(plan).pavementCut), 2 * 10, 1e-6);
}

/// At a bend the outer side is longer and the inner one shorter by the same, whatever the angle,
/// and so are the areas: two sides along the line, and both ends.
TEST(SurfaceCuts, GoRoundTheOuterCornerOfABend) {
  for (const Point2 corner : {Point2{10, -4}, Point2{10, -6}, Point2{10, -7.2}}) {
    Plan plan = pavedSite();
    const Point2 a = {6, -8}, b = {10, 4};
    plan.runs.append(makeRun("A", Service::Product, "pvc-sch80", "2", freeEnd(a, metres(2.4)),
                             freeEnd(b, metres(2.4)), {{corner, std::nullopt}}));
    const double length = distance(a, corner) + distance(corner, b);
    const SurfaceCuts cuts = cutsIn(plan);
    EXPECT_NEAR(inMetres(cuts.pavementCut), 2 * length + 2 * kWide, 1e-2) << corner.y;
    EXPECT_NEAR(cuts.pavement.value(), length * kWide, 1e-2) << corner.y;
  }
}

/// The floor from x 8 to 12 m lies over the pavement.
TEST(SurfaceCuts, TellFloorsFromThePavementUnderThem) {
  Plan plan = pavedSite();
  plan.buildings.append(
      {"B", "Shop", {{8, -5}, {12, -5}, {12, 5}, {8, 5}}, metres(3), std::nullopt});
  addLine(plan, "A", {0, 0}, {10, 0});
  const SurfaceCuts cuts = cutsIn(plan);
  EXPECT_NEAR(inMetres(cuts.pavementCut), 2 * 3, 1e-6);
  EXPECT_NEAR(inMetres(cuts.floorCut), 2 * 2 + kWide, 1e-6);
  EXPECT_NEAR(cuts.pavement.value(), 3 * kWide, 1e-2);
  EXPECT_NEAR(cuts.floor.value(), 2 * kWide, 1e-2);
}

TEST(SurfaceCuts, NeedTheGround) {
  Plan plan = pavedSite();
  addLine(plan, "A", {0, 0}, {20, 0});
  plan.site.groundDefault.reset();
  EXPECT_FALSE(surfaceCuts(plan, studyOf(plan).earth));
}

TEST(SurfaceCuts, AreInTheBill) {
  Plan plan = pavedSite();
  addLine(plan, "A", {0, 0}, {20, 0});
  const Study study = studyOf(plan);
  const Bill bill = billOf(plan, study, builtinCatalog(), builtinSupplies(), {});
  const auto line = [&](const char* key) {
    return std::ranges::find(bill.lines, key, &BillLine::key);
  };
  ASSERT_NE(line("pavement-cut"), bill.lines.end());
  EXPECT_NEAR(*line("pavement-cut")->order, 20, 1e-6);
  ASSERT_NE(line("pavement-patch"), bill.lines.end());
  EXPECT_EQ(line("pavement-patch")->unit, BillUnit::Area);
  EXPECT_EQ(line("floor-cut"), bill.lines.end()) << "no floor is cut";
}

} // namespace
} // namespace sump::test
