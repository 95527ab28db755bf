// Pipe in the open in an equipment room and the spacing of its supports.

#include "core/study/exposed_pipe.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

/// A room of 10 x 10 ft, its floor at 100 ft.
Plan roomPlan() {
  Plan plan;
  EquipmentRoom room;
  room.id = "R";
  room.length = room.width = feet(10);
  room.floor = feet(100);
  plan.rooms.put(room);
  plan.basis.water.temperature = fahrenheit(70);
  return plan;
}

std::vector<ExposedPipe> exposed(const Plan& plan) {
  return exposedPipes(plan, studyOf(plan), builtinSupplies());
}

// From 4 ft outside along 3 ft up and 6 ft inside; 2 in pipe at 80 F: 6.5 ft by the trade table,
// 4 ft by code (supplies.json); upright 10 ft by code.
TEST(ExposedPipe, OnlyWhatStandsInTheRoomCounts) {
  Plan plan = roomPlan();
  plan.runs.append(makeRun("P", Service::Product, "pvc-sch80", "2", freeEnd(ft(-4, 5), feet(101)),
                           freeEnd(ft(6, 5), feet(104)), {{ft(6, 5), feet(101)}}));
  const auto found = exposed(plan);
  ASSERT_EQ(found.size(), 2u);
  EXPECT_FALSE(found[0].all.vertical);
  EXPECT_NEAR(inFeet(found[0].all.length), 6, 1e-9);
  EXPECT_NEAR(inFeet(*found[0].spacing), 4, 1e-9);
  EXPECT_TRUE(found[1].all.vertical);
  EXPECT_NEAR(inFeet(found[1].all.length), 3, 1e-9);
  EXPECT_NEAR(inFeet(*found[1].spacing), 10, 1e-9);
}

// Under the floor it lies in the ground.
TEST(ExposedPipe, WhatLiesUnderTheFloorIsNotInTheOpen) {
  Plan plan = roomPlan();
  plan.runs.append(makeRun("P", Service::Product, "pvc-sch80", "2", freeEnd(ft(1, 5), feet(97)),
                           freeEnd(ft(9, 5), feet(97))));
  EXPECT_TRUE(exposed(plan).empty());
}

TEST(ExposedPipe, LegsOfOneSizeAndWayAddUp) {
  Plan plan = roomPlan();
  plan.runs.append(makeRun("P", Service::Product, "pvc-sch80", "1", freeEnd(ft(1, 1), feet(103)),
                           freeEnd(ft(8, 6), feet(103)), {{ft(8, 1), feet(103)}}));
  const auto found = exposed(plan);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(inFeet(found[0].all.length), 12, 1e-9);
  EXPECT_NEAR(inFeet(*found[0].spacing), 3, 1e-9);
}

// NEC table 352.30, from memory: 1 in each 3 ft, to 2 in each 5 ft, however warm the water.
TEST(ExposedPipe, ConduitGoesByTheElectricalCode) {
  Plan plan = roomPlan();
  plan.basis.water.temperature.reset();
  plan.runs.append(makeRun("C", Service::Power, "pvc-conduit-sch80", "1-1/2",
                           freeEnd(ft(1, 1), feet(103)), freeEnd(ft(8, 1), feet(103))));
  plan.runs.append(makeRun("P", Service::Product, "pvc-sch80", "1", freeEnd(ft(1, 3), feet(103)),
                           freeEnd(ft(8, 3), feet(103))));
  const auto found = exposed(plan);
  ASSERT_EQ(found.size(), 2u);
  EXPECT_NEAR(inFeet(*found[0].spacing), 5, 1e-9);
  EXPECT_EQ(needsText(found[1].spacing.needs), "water temperature");
}

} // namespace
} // namespace sump::test
