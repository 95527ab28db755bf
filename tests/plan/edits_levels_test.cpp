#include "core/plan/edits_levels.h"

#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump {

using namespace test;

namespace {

Plan planWithRun() {
  Plan plan;
  plan.runs.put(makeRun("A", Service::Inlet, "pvc-sdr35", "6", freeEnd(ft(0, 0), feet(95)),
                        freeEnd(ft(30, 0), feet(94)),
                        {{ft(10, 0), feet(94.8)}, {ft(20, 0), std::nullopt}}));
  return plan;
}

} // namespace

TEST(EditsLevels, SetsOnePoint) {
  const Plan plan = planWithRun();
  EXPECT_EQ(setInvert(plan, "A", -1, feet(96)).runs[0].from.invert, feet(96));
  EXPECT_EQ(setInvert(plan, "A", 1, feet(96)).runs[0].vertices[1].invert, feet(96));
  EXPECT_EQ(setInvert(plan, "A", 2, feet(96)).runs[0].to.invert, feet(96));
  EXPECT_FALSE(setInvert(plan, "A", 0, std::nullopt).runs[0].vertices[0].invert);
  // Nothing else changes.
  EXPECT_EQ(setInvert(setInvert(plan, "A", 0, feet(90)), "A", 0, feet(94.8)), plan);
}

TEST(EditsLevels, LeavesWhatIsNotThere) {
  const Plan plan = planWithRun();
  EXPECT_EQ(setInvert(plan, "B", 0, feet(96)), plan);
  EXPECT_EQ(setInvert(plan, "A", -2, feet(96)), plan);
  EXPECT_EQ(setInvert(plan, "A", 3, feet(96)), plan);
  EXPECT_EQ(shiftInverts(plan, "B", feet(1)), plan);
}

TEST(EditsLevels, KnowsWhatIsStatedAndWhatMayBeGraded) {
  sump::Run run = planWithRun().runs[0];
  EXPECT_EQ(statedInvert(run, -1), feet(95));
  EXPECT_EQ(statedInvert(run, 0), feet(94.8));
  EXPECT_FALSE(statedInvert(run, 1));
  EXPECT_EQ(statedInvert(run, 2), feet(94));
  EXPECT_FALSE(statedInvert(run, 3));
  EXPECT_TRUE(mayBeGraded(run, 0));
  EXPECT_FALSE(mayBeGraded(run, -1)) << "a free end";
  EXPECT_FALSE(mayBeGraded(run, 2));
  EXPECT_FALSE(mayBeGraded(run, 3));
  run.to = at(EndKind::Sewer, "SW");
  EXPECT_TRUE(mayBeGraded(run, 2));
}

TEST(EditsLevels, ShiftsWhatIsStated) {
  const sump::Run run = shiftInverts(planWithRun(), "A", feet(-0.5)).runs[0];
  EXPECT_NEAR(inFeet(*run.from.invert), 94.5, 1e-12);
  EXPECT_NEAR(inFeet(*run.vertices[0].invert), 94.3, 1e-12);
  EXPECT_FALSE(run.vertices[1].invert);
  EXPECT_NEAR(inFeet(*run.to.invert), 93.5, 1e-12);
}

} // namespace sump
