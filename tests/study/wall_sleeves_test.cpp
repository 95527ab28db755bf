// Sleeves where runs pass the walls and footings of buildings.

#include "core/study/wall_sleeves.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

/// A building from x 10 to 30 ft and y 0 to 20 ft, the underside of its footing at 95 ft.
Plan site(std::optional<Length> footing = feet(95)) {
  Plan plan;
  plan.buildings.append(
      {"B", "Shop", {ft(10, 0), ft(30, 0), ft(30, 20), ft(10, 20)}, feet(100), footing});
  return plan;
}

std::vector<WallSleeve> sleevesOf(const Plan& plan) {
  return wallSleeves(plan, studyOf(plan));
}

TEST(WallSleeves, OneForEachWallThatALinePasses) {
  Plan plan = site();
  plan.runs.append(makeRun("A", Service::Product, "pvc-sch80", "2", freeEnd(ft(0, 10), feet(98)),
                           freeEnd(ft(40, 10), feet(96))));
  plan.runs.append(makeRun("B", Service::Product, "pvc-sch80", "1", freeEnd(ft(0, 12), feet(98)),
                           freeEnd(ft(20, 12), feet(102)), {{ft(20, 12), feet(98)}}));
  const auto found = sleevesOf(plan);
  ASSERT_EQ(found.size(), 3u);
  EXPECT_NEAR(found[0].at.x, 10 * kMetresPerFoot, 1e-9);
  EXPECT_NEAR(found[0].at.z, 97.5 * kMetresPerFoot, 1e-9);
  EXPECT_NEAR(inFeet(*found[0].overFooting), 2.5, 1e-9);
  EXPECT_EQ(found[0].sleeve, "3");
  EXPECT_NEAR(found[1].at.x, 30 * kMetresPerFoot, 1e-9);
  EXPECT_EQ(found[2].run, "B");
  EXPECT_EQ(found[2].sleeve, "1-1/2");
  for (const WallSleeve& sleeve : found)
    EXPECT_EQ(sleeve.pass, WallPass::Wall);
}

TEST(WallSleeves, UnderTheFootingThereIsNoneToSet) {
  Plan plan = site();
  plan.runs.append(makeRun("A", Service::Product, "pvc-sch80", "2", freeEnd(ft(0, 10), feet(94)),
                           freeEnd(ft(20, 10), feet(94))));
  EXPECT_EQ(sleevesOf(plan).at(0).pass, WallPass::Footing);
  for (const QuantityLine& line : studyOf(plan).takeOff)
    EXPECT_NE(line.item, "wall-sleeve");
  Plan unknown = site(std::nullopt);
  unknown.runs.append(plan.runs[0]);
  EXPECT_EQ(sleevesOf(unknown).at(0).pass, WallPass::Wall);
  EXPECT_FALSE(sleevesOf(unknown).at(0).overFooting);
}

TEST(WallSleeves, ACornerOnTheWallIsOneHole) {
  Plan plan = site();
  plan.runs.append(makeRun("A", Service::Product, "pvc-sch80", "2", freeEnd(ft(0, 5), feet(98)),
                           freeEnd(ft(20, 10), feet(98)), {{ft(10, 10), feet(98)}}));
  EXPECT_EQ(sleevesOf(plan).size(), 1u);
}

TEST(WallSleeves, ARoomHasWallsOfItsOwnOnlyOutsideBuildings) {
  Plan plan = site();
  EquipmentRoom room;
  room.id = "R";
  room.corner = ft(12, 2);
  room.length = room.width = feet(8);
  room.floor = feet(100);
  plan.rooms.append(room);
  plan.runs.append(makeRun("A", Service::Product, "pvc-sch80", "2", freeEnd(ft(0, 5), feet(98)),
                           freeEnd(ft(15, 5), feet(98))));
  ASSERT_EQ(sleevesOf(plan).size(), 1u);
  EXPECT_EQ(sleevesOf(plan)[0].building, "B");
  plan.buildings = {};
  ASSERT_EQ(sleevesOf(plan).size(), 1u);
  EXPECT_EQ(sleevesOf(plan)[0].building, "R");
}

TEST(WallSleeves, AreTwoSizesOverThePipeAndCounted) {
  EXPECT_EQ(sleeveSize("4"), "8");
  EXPECT_EQ(sleeveSize("6"), "10");
  EXPECT_EQ(sleeveSize("8"), "12");
  EXPECT_EQ(sleeveSize("10"), std::nullopt);
  EXPECT_EQ(sleeveSize("odd"), std::nullopt);
  Plan plan = site();
  plan.runs.append(makeRun("A", Service::Product, "pvc-sch80", "2", freeEnd(ft(0, 10), feet(98)),
                           freeEnd(ft(40, 10), feet(98))));
  double counted = 0;
  for (const QuantityLine& line : studyOf(plan).takeOff) {
    if (line.item != "wall-sleeve") continue;
    counted += line.quantity;
    EXPECT_EQ(line.size, "3");
    EXPECT_EQ(line.trade, "site work");
  }
  EXPECT_EQ(counted, 2);
}

} // namespace
} // namespace sump::test
