#include "core/plan/edits.h"

#include "core/plan/edits_objects.h"
#include "core/plan/ends.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

using PlanRun = sump::Run; // ::testing::Test has a member of the same name

/// From (0, 0) by (4, 0) to (4, 4), with a valve on each leg.
Plan elbowPlan() {
  PlanRun run;
  run.id = "R1";
  run.to.at = {4, 4};
  run.vertices.push_back({{4, 0}, {}});
  run.parts.push_back({"X1", PartKind::BallValve, 0, 0.75, ""});
  run.parts.push_back({"X2", PartKind::GateValve, 1, 0.5, ""});
  return withObject(Plan{}, run);
}

Point2 partPlace(const Plan& plan, std::size_t part) {
  const Polyline line = *Locator(plan).centreline(plan.runs[0]);
  const InlinePart& p = plan.runs[0].parts[part];
  return lerp(line[p.leg], line[p.leg + 1], p.along);
}

TEST(Edits, AddsAndReplacesById) {
  Plan plan = withObject(Plan{}, Well{"W1", "old", {1, 2}});
  plan = withObject(plan, Well{"W1", "new", {1, 2}});
  plan = withObject(plan, Well{"W2", "", {3, 4}});
  ASSERT_EQ(plan.wells.size(), 2U);
  EXPECT_EQ(plan.wells[0].name, "new");
}

TEST(Edits, InsertedVertexLeavesPartsInPlace) {
  const Plan plan = elbowPlan();
  const Plan next = insertVertex(plan, "R1", 0, {{2, 0}, metres(1)});
  ASSERT_EQ(next.runs[0].vertices.size(), 2U);
  EXPECT_EQ(next.runs[0].parts[0].leg, 1);
  EXPECT_EQ(next.runs[0].parts[1].leg, 2);
  EXPECT_EQ(partPlace(next, 0), partPlace(plan, 0));
  EXPECT_EQ(partPlace(next, 1), partPlace(plan, 1));
  EXPECT_EQ(insertVertex(plan, "R1", 2, {{2, 0}, {}}), plan) << "the run has legs 0 and 1 only";
}

TEST(Edits, ErasedVertexJoinsItsLegs) {
  const Plan next = eraseVertex(elbowPlan(), "R1", 0);
  ASSERT_TRUE(next.runs[0].vertices.empty());
  // Legs of 4 m each: 0.75 of the first is 3/8 of both, 0.5 of the second is 6/8.
  EXPECT_EQ(next.runs[0].parts[0].leg, 0);
  EXPECT_DOUBLE_EQ(next.runs[0].parts[0].along, 0.375);
  EXPECT_EQ(next.runs[0].parts[1].leg, 0);
  EXPECT_DOUBLE_EQ(next.runs[0].parts[1].along, 0.75);
}

TEST(Edits, ErasingAnInsertedVertexGivesThePlanBack) {
  const Plan plan = elbowPlan();
  EXPECT_EQ(eraseVertex(insertVertex(plan, "R1", 0, {{2, 0}, {}}), "R1", 0), plan);
}

TEST(Edits, MovesOneVertex) {
  const Plan next = moveVertex(elbowPlan(), "R1", 0, {5, -1});
  EXPECT_EQ(next.runs[0].vertices[0].at, (Point2{5, -1}));
  EXPECT_EQ(moveVertex(elbowPlan(), "R1", 1, {5, -1}), elbowPlan());
  EXPECT_EQ(moveVertex(elbowPlan(), "R2", 0, {5, -1}), elbowPlan());
}

TEST(Edits, TurnsARoomAboutItsCentre) {
  EquipmentRoom room;
  room.id = "E1";
  room.length = metres(4);
  room.width = metres(2);
  const Plan next = rotateObject(withObject(Plan{}, room), "E1", degrees(90));
  // Centre (2, 1) stays; the low corner turns from (-2, -1) to (1, -2) about it.
  EXPECT_NEAR(next.rooms[0].corner.x, 3, 1e-12);
  EXPECT_NEAR(next.rooms[0].corner.y, -1, 1e-12);
  EXPECT_NEAR(inDegrees(next.rooms[0].angle), 90, 1e-12);
}

TEST(Edits, TurnsOutlinesAndRunsAboutTheirMiddle) {
  Plan plan = elbowPlan();
  plan = withObject(plan, Building{"B1", "", {{0, 0}, {4, 0}, {4, 2}, {0, 2}}, {}, {}});
  const Plan turned = rotateObject(rotateObject(plan, "B1", degrees(90)), "R1", degrees(180));
  EXPECT_NEAR(turned.buildings[0].outline[0].x, 3, 1e-12);
  EXPECT_NEAR(turned.buildings[0].outline[0].y, -1, 1e-12);
  EXPECT_NEAR(distance(turned.runs[0].from.at, {4, 4}), 0, 1e-12);
  EXPECT_NEAR(distance(turned.runs[0].vertices[0].at, {0, 4}), 0, 1e-12);
}

TEST(Edits, KeepsAnglesWithinHalfATurn) {
  EXPECT_NEAR(inDegrees(normalized(degrees(350))), -10, 1e-9);
  EXPECT_NEAR(inDegrees(normalized(degrees(-180))), 180, 1e-9);
  EXPECT_NEAR(inDegrees(normalized(degrees(725))), 5, 1e-9);
}

TEST(Edits, TellsWhichRunsAnErasureFreed) {
  SewerConnection sewer;
  sewer.id = "S1";
  sewer.at = {9, 9};
  PlanRun run;
  run.id = "R2";
  run.to.kind = EndKind::Sewer;
  run.to.target = "S1";
  const Plan plan = withObject(withObject(elbowPlan(), sewer), run);
  const Plan next = eraseObjects(plan, {"S1"});
  EXPECT_EQ(freedRuns(plan, next), std::vector<Id>{"R2"});
  EXPECT_EQ(next.runs.find("R2")->to.at, (Point2{9, 9})) << "the end stays where it was";
  EXPECT_TRUE(freedRuns(plan, plan).empty());
}

TEST(Edits, ReordersTheFlow) {
  Plan plan;
  for (const char* id : {"V1", "V2", "V3"}) {
    Vault vault;
    vault.id = id;
    plan = withObject(plan, vault);
  }
  const Plan next = placeVaultInFlow(plan, "V1", 9);
  EXPECT_EQ(next.vaults[0].id, "V2");
  EXPECT_EQ(next.vaults[2].id, "V1");
  EXPECT_EQ(placeVaultInFlow(plan, "V4", 0), plan);
}

} // namespace
} // namespace sump
