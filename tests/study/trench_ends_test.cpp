// How far trenches reach at upright pipe, how deep they are in and out of doors, by hand.

#include "core/study/trench.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

/// 20 ft east at invert 93 ft under 96.5 ft, then up to `top`: 3 in Sch 80, 3.5 in outside, whose
/// trench is 3.5 + 16 = 19.5 in wide.
sump::Run ventRiser(double top) {
  return makeRun("R", Service::Vent, "pvc-sch80", "3", freeEnd(ft(0, 0), feet(93)),
                 freeEnd(ft(20, 0), feet(top)), {{ft(20, 0), feet(93)}});
}

// The pipe stands in the middle of its trench: 9.75 in are dug beyond it.
TEST(Trench, HoldsThePipeThatStandsUprightAtItsEnd) {
  Plan plan;
  plan.site.groundDefault = feet(96.5);
  plan.runs.append(ventRiser(93));
  EXPECT_NEAR(inFeet(studyOf(plan).earth.trenches.at(0).length), 20, 1e-9) << "it lies flat";
  plan.runs.put(ventRiser(100));
  const TrenchStudy trench = studyOf(plan).earth.trenches.at(0);
  EXPECT_NEAR(inFeet(trench.length), 20 + 9.75 / 12, 1e-9);
  EXPECT_NEAR(trench.stretches.back().back().at.x / kMetresPerFoot, 20 + 9.75 / 12, 1e-9);
  EXPECT_NEAR(trench.bedding.value() / 0.028316846592, (20 + 9.75 / 12) * (19.5 / 12) * (4.0 / 12),
              1e-9);
  plan.buildings.append({"B1", "", {ft(20.5, -5), ft(30, -5), ft(30, 5), ft(20.5, 5)}, {}, {}});
  const TrenchStudy atWall = studyOf(plan).earth.trenches.at(0);
  EXPECT_NEAR(inFeet(atWall.length), 20.5, 1e-9) << "not into a building";
  EXPECT_TRUE(atWall.clashes.empty());
}

// Backwards too: the riser at the run's start.
TEST(Trench, HoldsThePipeThatStandsUprightAtItsStart) {
  Plan plan;
  plan.site.groundDefault = feet(96.5);
  plan.runs.append(makeRun("R", Service::Vent, "pvc-sch80", "3", freeEnd(ft(20, 0), feet(100)),
                           freeEnd(ft(0, 0), feet(93)), {{ft(20, 0), feet(93)}}));
  const TrenchStudy trench = studyOf(plan).earth.trenches.at(0);
  EXPECT_NEAR(inFeet(trench.length), 20 + 9.75 / 12, 1e-9);
  EXPECT_NEAR(trench.stretches.front().front().at.x / kMetresPerFoot, 20 + 9.75 / 12, 1e-9);
}

// A floor at 99 ft from x = 50 on, 2.5 ft over the ground: deeper there by that.
TEST(Trench, TellsItsDepthOutdoorsBesideThatFromAFloor) {
  Plan plan;
  plan.site.groundDefault = feet(96.5);
  plan.runs.append(makeRun("R", Service::Overflow, "pvc-sch80", "6", freeEnd(ft(0, 0), feet(93)),
                           freeEnd(ft(100, 0), feet(93))));
  const TrenchStudy open = studyOf(plan).earth.trenches.at(0);
  EXPECT_EQ(open.depthOutdoors, open.depth);
  EXPECT_FALSE(open.deepestUnderFloor());
  plan.buildings.append({"B1", "", {ft(50, -9), ft(120, -9), ft(120, 9), ft(50, 9)}, feet(99), {}});
  const TrenchStudy both = studyOf(plan).earth.trenches.at(0);
  EXPECT_TRUE(both.deepestUnderFloor());
  EXPECT_NEAR(inFeet(both.depthOutdoors), inFeet(open.depth), 1e-9);
  EXPECT_NEAR(inFeet(both.depth), inFeet(open.depth) + 2.5, 1e-9);
}

} // namespace
} // namespace sump::test
