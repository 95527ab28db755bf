// Sleeves where runs pass the walls and footings of buildings.

#include "core/study/wall_sleeves.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>

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
  EXPECT_NEAR(inFeet(*found[0].footing), 95, 1e-9);
  EXPECT_EQ(found[0].sleeve, "3");
  EXPECT_NEAR(found[1].at.x, 30 * kMetresPerFoot, 1e-9);
  EXPECT_EQ(found[2].run, "B");
  EXPECT_EQ(found[2].sleeve, "1-1/2");
  for (const WallSleeve& sleeve : found)
    EXPECT_EQ(passOf(sleeve, feet(1)), WallPass::Wall);
}

/// A 2 in line that comes in at this invert.
Plan lineAt(Length invert, Plan plan = site()) {
  plan.runs.append(makeRun("A", Service::Product, "pvc-sch80", "2", freeEnd(ft(0, 10), invert),
                           freeEnd(ft(20, 10), invert)));
  return plan;
}

/// 2 in pipe is 2.375 in outside and 1.913 in inside, its 3 in sleeve 3.5 in outside: the middle is
/// 0.9565 in over the invert, so the sleeve reaches from 0.7935 in under the invert to 2.7065 in
/// over it, and the pipe 0.231 in under it.
TEST(WallSleeves, ReachAsFarAsTheirOutside) {
  const WallSleeve sleeve = sleevesOf(lineAt(feet(98))).at(0);
  EXPECT_NEAR(inInches(sleeve.low - feet(98)), -0.7935, 1e-6);
  EXPECT_NEAR(inInches(sleeve.high - feet(98)), 2.7065, 1e-6);
  EXPECT_NEAR(inInches(sleeve.pipeLow - feet(98)), -0.231, 1e-6);
}

/// The footing stands from 95 to 96 ft.
TEST(WallSleeves, PassTheFootingWithAnyPartOfTheSleeve) {
  const auto pass = [](Length invert) { return passOf(sleevesOf(lineAt(invert)).at(0), feet(1)); };
  EXPECT_EQ(pass(feet(96) + inches(0.80)), WallPass::Wall);
  EXPECT_EQ(pass(feet(96) + inches(0.79)), WallPass::Footing);
  EXPECT_EQ(pass(feet(95.4)), WallPass::Footing);
  EXPECT_EQ(pass(feet(95) - inches(2.70)), WallPass::Footing);
  EXPECT_EQ(pass(feet(95) - inches(2.71)), WallPass::Under);
}

/// The shop's footing stands on 95 ft, that of the store beside it on 94 ft.
TEST(WallSleeves, CountACommonWallOnceWithBothItsFootings) {
  const auto shared = [](Length invert, std::optional<Length> footing = feet(94)) {
    Plan plan = site();
    plan.buildings.append(
        {"C", "Store", {ft(30, 0), ft(40, 0), ft(40, 20), ft(30, 20)}, feet(100), footing});
    plan.runs.append(makeRun("A", Service::Product, "pvc-sch80", "2", freeEnd(ft(0, 10), invert),
                             freeEnd(ft(50, 10), invert)));
    return plan;
  };
  const auto found = sleevesOf(shared(feet(98)));
  ASSERT_EQ(found.size(), 3u);
  EXPECT_EQ(found[0].buildings, std::vector<Id>{"B"});
  EXPECT_EQ(found[1].buildings, (std::vector<Id>{"B", "C"}));
  EXPECT_NEAR(found[1].at.x, 30 * kMetresPerFoot, 1e-9);
  EXPECT_NEAR(inFeet(*found[1].footing), 95, 1e-9);
  EXPECT_NEAR(inFeet(*found[1].lowestFooting), 94, 1e-9);
  EXPECT_EQ(found[2].buildings, std::vector<Id>{"C"});
  // Under the one footing it may stand in the other.
  EXPECT_EQ(passOf(sleevesOf(shared(feet(94.5))).at(1), feet(1)), WallPass::Footing);
  EXPECT_EQ(passOf(sleevesOf(shared(feet(93.5))).at(1), feet(1)), WallPass::Under);
  EXPECT_EQ(passOf(sleevesOf(shared(feet(98), std::nullopt)).at(1), feet(1)), WallPass::Unknown);
  double counted = 0;
  for (const QuantityLine& line : studyOf(shared(feet(98))).takeOff)
    counted += line.item == "wall-sleeve" ? line.quantity : 0;
  EXPECT_EQ(counted, 3);
}

TEST(WallSleeves, UnderTheFootingThereIsNoneToSet) {
  Plan plan = site();
  plan.runs.append(makeRun("A", Service::Product, "pvc-sch80", "2", freeEnd(ft(0, 10), feet(94)),
                           freeEnd(ft(20, 10), feet(94))));
  EXPECT_EQ(passOf(sleevesOf(plan).at(0), feet(1)), WallPass::Under);
  for (const QuantityLine& line : studyOf(plan).takeOff)
    EXPECT_NE(line.item, "wall-sleeve");
  Plan unknown = site(std::nullopt);
  unknown.runs.append(plan.runs[0]);
  EXPECT_EQ(passOf(sleevesOf(unknown).at(0), feet(1)), WallPass::Unknown);
  EXPECT_TRUE(isBuiltIn(sleevesOf(unknown).at(0)));
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
  EXPECT_EQ(sleevesOf(plan)[0].buildings, std::vector<Id>{"B"});
  plan.buildings = {};
  ASSERT_EQ(sleevesOf(plan).size(), 1u);
  EXPECT_EQ(sleevesOf(plan)[0].buildings, std::vector<Id>{"R"});
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

/// At 45 degrees a 3 in sleeve, 3.5 in outside, needs 3.5 / cos 45 = 4.9497 in across the face, and
/// in a wall of 8 in leaves 8 x tan 45 = 8 in aside of where it came in: 12.9497 in together. At 30
/// degrees: 3.5 / 0.866025 = 4.0415 in and 8 x 0.577350 = 4.6188 in, 8.6603 in together.
TEST(WallSleeves, AtASlantNeedALongerOpening) {
  const auto across = [](double aside) { // on 10 ft of way to the wall
    Plan plan = site();
    plan.runs.append(makeRun("A", Service::Product, "pvc-sch80", "2",
                             freeEnd(ft(0, 10 - aside), feet(98)),
                             freeEnd(ft(20, 10 + aside), feet(98))));
    return sleevesOf(plan).at(0);
  };
  const WallSleeve square = across(0);
  EXPECT_FALSE(isSkew(square));
  EXPECT_NEAR(inInches(straightOpening(square, inches(8))), 3.5, 1e-9);
  const WallSleeve slant = across(10);
  EXPECT_TRUE(isSkew(slant));
  EXPECT_NEAR(inDegrees(slant.skew), 45, 1e-9);
  EXPECT_NEAR(inInches(straightOpening(slant, inches(8))), 12.9497, 1e-4);
  const WallSleeve less = across(10 * std::tan(kPi / 6));
  EXPECT_NEAR(inDegrees(less.skew), 30, 1e-9);
  EXPECT_NEAR(inInches(straightOpening(less, inches(8))), 8.6603, 1e-4);
  EXPECT_FALSE(isSkew(across(10 * std::tan(4.9 * kPi / 180))));
  EXPECT_TRUE(isSkew(across(10 * std::tan(-5.1 * kPi / 180))));
}

TEST(WallSleeves, AtASlantAreALineOfTheirOwn) {
  Plan plan = lineAt(feet(98));
  plan.runs.append(makeRun("B", Service::Product, "pvc-sch80", "2", freeEnd(ft(0, 0), feet(98)),
                           freeEnd(ft(18, 18), feet(98))));
  std::map<std::string, double> counted;
  for (const QuantityLine& line : studyOf(plan).takeOff) {
    if (line.item == "wall-sleeve") counted[line.description] += line.quantity;
  }
  const std::map<std::string, double> expected = {
      {"Sleeve in building wall, by its own size, two over the pipe", 1},
      {"Sleeve in building wall, by its own size, two over the pipe, 45\u00B0 off square", 1}};
  EXPECT_EQ(counted, expected);
}

std::vector<SlabPass> slabsOf(const Plan& plan) {
  return slabPasses(plan, studyOf(plan));
}

/// The floor stands at 100 ft.
TEST(SlabPasses, AreWhereALineGoesThroughAFloor) {
  Plan plan = lineAt(feet(98)); // stays under it
  plan.runs.append(makeRun("B", Service::Product, "pvc-sch80", "1", freeEnd(ft(0, 12), feet(98)),
                           freeEnd(ft(20, 12), feet(102)), {{ft(20, 12), feet(98)}}));
  // Halfway up a slope from 98 ft at x 20 ft to 102 ft at x 24 ft.
  plan.runs.append(makeRun("C", Service::Product, "pvc-sch80", "2", freeEnd(ft(20, 5), feet(98)),
                           freeEnd(ft(24, 5), feet(102))));
  // Rises outside.
  plan.runs.append(makeRun("D", Service::Product, "pvc-sch80", "2", freeEnd(ft(5, 5), feet(98)),
                           freeEnd(ft(5, 5), feet(102))));
  const auto found = slabsOf(plan);
  ASSERT_EQ(found.size(), 2u);
  EXPECT_EQ(found[0].run, "B");
  EXPECT_EQ(found[0].floor, "B");
  EXPECT_NEAR(found[0].at.x, 20 * kMetresPerFoot, 1e-9);
  EXPECT_NEAR(found[0].at.z, 100 * kMetresPerFoot, 1e-9);
  EXPECT_EQ(found[0].size, "1");
  EXPECT_EQ(found[0].sleeve, "1-1/2");
  EXPECT_EQ(found[1].run, "C");
  EXPECT_NEAR(found[1].at.x, 22 * kMetresPerFoot, 1e-9);
}

TEST(SlabPasses, TellARoomInABuildingOnceAndNoFloorOfUnknownLevel) {
  Plan plan = site();
  EquipmentRoom room;
  room.id = "R";
  room.corner = ft(12, 2);
  room.length = room.width = feet(8);
  room.floor = feet(100.2);
  plan.rooms.append(room);
  plan.runs.append(makeRun("A", Service::Product, "pvc-sch80", "2", freeEnd(ft(15, 5), feet(98)),
                           freeEnd(ft(15, 5), feet(102))));
  ASSERT_EQ(slabsOf(plan).size(), 1u);
  EXPECT_EQ(slabsOf(plan)[0].floor, "R");
  EXPECT_NEAR(slabsOf(plan)[0].at.z, 100.2 * kMetresPerFoot, 1e-9);
  plan.rooms = {};
  ASSERT_EQ(slabsOf(plan).size(), 1u);
  EXPECT_EQ(slabsOf(plan)[0].floor, "B");
  Building unknown = plan.buildings[0];
  unknown.floor.reset();
  plan.buildings.put(unknown);
  EXPECT_TRUE(slabsOf(plan).empty());
}

} // namespace
} // namespace sump::test
