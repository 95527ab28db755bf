// How far trenches reach at upright pipe, how deep they are in and out of doors, and what footings
// they pass, by hand.

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
  plan.runs.append(makeRun("R", Service::Vent, "pvc-sch80", "3", freeEnd(ft(0, 0), feet(93)),
                           freeEnd(ft(20, 0), feet(93))));
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

// As above, but the run goes on from its rise over the ground: 9.75 in are dug beyond the rise, and
// nothing for what goes on.
TEST(Trench, HoldsThePipeThatGoesUpInTheMiddleOfItsRun) {
  Plan plan;
  plan.site.groundDefault = feet(96.5);
  plan.runs.append(makeRun("R", Service::MakeUp, "pvc-sch80", "3", freeEnd(ft(0, 0), feet(93)),
                           freeEnd(ft(20, 8), feet(100)),
                           {{ft(20, 0), feet(93)}, {ft(20, 0), feet(100)}}));
  const TrenchStudy trench = studyOf(plan).earth.trenches.at(0);
  EXPECT_NEAR(inFeet(trench.length), 20 + 9.75 / 12, 1e-9);
  ASSERT_EQ(trench.stretches.size(), 1u);
  EXPECT_NEAR(trench.stretches[0].back().at.x / kMetresPerFoot, 20 + 9.75 / 12, 1e-9);
  plan.buildings.append({"B1", "", {ft(20.5, -5), ft(30, -5), ft(30, 5), ft(20.5, 5)}, {}, {}});
  EXPECT_NEAR(inFeet(studyOf(plan).earth.trenches.at(0).length), 20.5, 1e-9) << "up to the wall";
}

// 20 ft at 93 ft and 20 ft at 94.5 ft with a rise between them, straight on and round a corner: the
// deeper trench takes the 9.75 in beyond the rise, the upper one begins there. No bed is dug twice.
TEST(Trench, OfALowerLegTakesTheGroundUnderTheRise) {
  for (const Point2 end : {ft(40, 0), ft(20, 20)}) {
    Plan plan;
    plan.site.groundDefault = feet(96.5);
    const std::vector<Vertex> rise = {{ft(20, 0), feet(93)}, {ft(20, 0), feet(94.5)}};
    plan.runs.append(makeRun("UP", Service::Vent, "pvc-sch80", "3", freeEnd(ft(0, 0), feet(93)),
                             freeEnd(end, feet(94.5)), rise));
    plan.runs.append(makeRun("DOWN", Service::Vent, "pvc-sch80", "3", freeEnd(end, feet(94.5)),
                             freeEnd(ft(0, 0), feet(93)), {rise[1], rise[0]}));
    const Study study = studyOf(plan);
    for (const TrenchStudy& trench : study.earth.trenches) {
      EXPECT_NEAR(inFeet(trench.length), 40, 1e-9) << trench.run;
      EXPECT_NEAR(trench.bedding.value() / 0.028316846592, 40 * (19.5 / 12) * (4.0 / 12), 1e-9);
      ASSERT_EQ(trench.stretches.size(), 2u) << trench.run;
    }
    const auto& up = study.earth.trenches.at(0).stretches;
    EXPECT_NEAR(up[0].back().at.x / kMetresPerFoot, 20 + 9.75 / 12, 1e-9);
    EXPECT_NEAR(distance(up[1].front().at, ft(20, 0)) / kMetresPerFoot, 9.75 / 12, 1e-9);
    const auto& down = study.earth.trenches.at(1).stretches;
    EXPECT_NEAR(down[1].front().at.x / kMetresPerFoot, 20 + 9.75 / 12, 1e-9);
  }
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

// 40 ft of line falling 2 ft toward a wall's end. Its bottom, 22.625 in wide, lies 4.436 in below
// the invert. The wall faces it from x = 30 on, 3 ft off the line; the invert is 94.5 ft there.
TEST(Trench, IsWorstForAFootingWhereItIsLowestBesideIt) {
  Plan plan;
  plan.site.groundDefault = feet(96.5);
  plan.runs.append(makeRun("R", Service::Overflow, "pvc-sch80", "6", freeEnd(ft(0, 0), feet(93)),
                           freeEnd(ft(40, 0), feet(95))));
  plan.buildings.append({"B1", "", {ft(30, 3), ft(40, 3), ft(40, 20), ft(30, 20)}, {}, feet(94)});
  const Study study = studyOf(plan);
  const TrenchStudy& trench = study.earth.trenches.at(0);
  ASSERT_EQ(trench.footings.size(), 1u);
  const double bottom =
      94.5 - (4 + inInches(study.runs[0].outsideDiameter - study.runs[0].insideDiameter) / 2) / 12;
  const double off = 3 - 22.625 / 24;
  // A little before the corner it is lower by 1 in 20, but farther off by less than that only for
  // 0.1 ft: within a quarter of an inch.
  EXPECT_NEAR(inFeet(*trench.footings[0].below), 94 - off - bottom, 0.02);
  EXPECT_GE(inFeet(*trench.footings[0].below), 94 - off - bottom - 1e-9);
  EXPECT_NEAR(inFeet(trench.footings[0].nearest), off, 1e-9);
}

// It runs 10 ft along the wall before it turns in: its side is 2 - 22.625/24 ft off. One that goes
// straight in passes no footing.
TEST(Trench, PassesTheFootingOfABuildingThatItGoesInto) {
  Plan plan;
  plan.site.groundDefault = feet(96.5);
  plan.buildings.append(
      {"B1", "", {ft(0, 2), ft(40, 2), ft(40, 20), ft(0, 20)}, feet(97), feet(92)});
  plan.runs.append(makeRun("R", Service::Overflow, "pvc-sch80", "6", freeEnd(ft(10, 0), feet(93)),
                           freeEnd(ft(20, 10), feet(93)), {{ft(20, 0), feet(93)}}));
  const auto along = studyOf(plan).earth.trenches.at(0).footings;
  ASSERT_EQ(along.size(), 1u);
  EXPECT_NEAR(inFeet(along[0].nearest), 2 - 22.625 / 24, 1e-9);
  plan.runs.put(makeRun("R", Service::Overflow, "pvc-sch80", "6", freeEnd(ft(20, -10), feet(93)),
                        freeEnd(ft(20, 10), feet(93))));
  EXPECT_TRUE(studyOf(plan).earth.trenches.at(0).footings.empty());
}

} // namespace
} // namespace sump::test
