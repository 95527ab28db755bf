// Cover of lines under the floors of rooms and buildings.

#include "core/study/floor_cover.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

/// A hall from x 0 to 30 ft whose floor lies at 100 ft, with a drain in it from x 20 to 22 ft.
Plan hall() {
  Plan plan;
  plan.buildings.append(
      {"B", "Hall", {ft(0, 0), ft(30, 0), ft(30, 20), ft(0, 20)}, feet(100), feet(95)});
  Basin drain;
  drain.id = "TD";
  drain.at = ft(21, 10);
  drain.length = feet(2);
  drain.width = feet(2);
  drain.rim = feet(100);
  drain.outletInvert = feet(98);
  plan.basins.append(drain);
  return plan;
}

std::optional<CoverCheck> coverOf(Plan plan, Point2 from, double fromLevel, Point2 to,
                                  double toLevel) {
  plan.runs.append(makeRun("UF", Service::Underflow, "pvc-sch80", "2",
                           freeEnd(from, feet(fromLevel)), freeEnd(to, feet(toLevel))));
  const Study study = studyOf(plan);
  EXPECT_FALSE(study.runs.front().leastCover);
  return coverUnderFloors(plan, buildingParts(plan), study.runs.front());
}

/// 2 in pipe is 1.913 in inside and 0.231 in thick: its top is 2.144 in over the invert.
TEST(FloorCover, IsFromThePipesTopToTheFloors) {
  const auto cover = coverOf(hall(), ft(5, 10), 99, ft(15, 10), 98.5);
  ASSERT_TRUE(cover);
  EXPECT_NEAR(inInches(cover->cover), 12 - 2.144, 1e-6);
  EXPECT_NEAR(cover->at.x, 5 * kMetresPerFoot, 1e-9) << "where it is highest";
}

/// Rising 0.8 ft in 16 it is at 99.75 ft when it comes to the drain, 15 ft along.
TEST(FloorCover, EndsWhereABasinIs) {
  const auto cover = coverOf(hall(), ft(5, 10), 99, ft(21, 10), 99.8);
  ASSERT_TRUE(cover);
  EXPECT_NEAR(cover->at.x, 20 * kMetresPerFoot, 1e-9);
  EXPECT_NEAR(inInches(cover->cover), 3 - 2.144, 1e-6);
}

TEST(FloorCover, IsNoneOverTheFloorOrOutside) {
  EXPECT_FALSE(coverOf(hall(), ft(5, 10), 101, ft(15, 10), 101));
  EXPECT_FALSE(coverOf(hall(), ft(40, 10), 99, ft(50, 10), 99));
  Plan unknown = hall();
  Building copy = *unknown.buildings.find("B");
  copy.floor.reset();
  unknown.buildings.put(copy);
  EXPECT_FALSE(coverOf(unknown, ft(5, 10), 99, ft(15, 10), 99));
}

} // namespace
} // namespace sump::test
