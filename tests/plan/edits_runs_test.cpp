// Runs reversed, split, joined and drawn in parallel. Expected values are worked out by hand from
// the coordinates beside them.

#include "core/plan/edits_runs.h"

#include "core/plan/consistency.h"
#include "core/plan/ends.h"

#include <gtest/gtest.h>

namespace sump {

namespace {

/// 10 m east, then 6 m north, with a valve on each leg.
Plan corner() {
  sump::Run run;
  run.id = "VT-1";
  run.service = Service::Vent;
  run.pipe = "pvc-sch80";
  run.size = "3";
  run.from.at = {0, 0};
  run.from.invert = metres(30);
  run.to.at = {10, 6};
  run.to.invert = metres(31);
  run.vertices = {{{10, 0}, metres(30.5)}};
  run.parts = {{"VT-1-1", PartKind::Union, 0, 0.25, {}},
               {"VT-1-2", PartKind::BallValve, 1, 0.5, {}}};
  Plan plan;
  plan.runs.append(run);
  return plan;
}

} // namespace

TEST(ReverseRun, TurnsEndsCornersAndParts) {
  const Plan back = reverseRun(corner(), "VT-1");
  const sump::Run& run = back.runs[0];
  EXPECT_EQ(run.from.at, (Point2{10, 6}));
  EXPECT_EQ(run.to.at, (Point2{0, 0}));
  ASSERT_EQ(run.parts.size(), 2u);
  EXPECT_EQ(run.parts[0].id, "VT-1-2"); // first leg now, still in its middle
  EXPECT_EQ(run.parts[0].leg, 0);
  EXPECT_EQ(run.parts[1].leg, 1);
  EXPECT_NEAR(run.parts[1].along, 0.75, 1e-12);
  EXPECT_EQ(reverseRun(back, "VT-1"), corner());
  EXPECT_EQ(reverseRun(corner(), "none"), corner());
}

TEST(SplitRun, PartsKeepTheirPlacesAndJoiningGivesTheRunBack) {
  Id made;
  // 4 m along the first leg: the union at 2.5 m stays there.
  const Plan cut = splitRun(corner(), "VT-1", 0, 0.4, metres(30.2), made);
  ASSERT_EQ(cut.runs.size(), 2u);
  EXPECT_TRUE(inconsistencies(cut).empty());
  EXPECT_EQ(cut.runs[0].to.at, (Point2{4, 0}));
  EXPECT_EQ(cut.runs[1].id, made);
  EXPECT_EQ(cut.runs[1].from.at, (Point2{4, 0}));
  EXPECT_EQ(cut.runs[1].from.invert, metres(30.2));
  EXPECT_NEAR(cut.runs[0].parts.at(0).along, 0.625, 1e-12);
  EXPECT_EQ(cut.runs[1].parts.at(0).leg, 1);
  const auto joined = joinRuns(cut, "VT-1", made, 1e-6);
  ASSERT_TRUE(joined);
  ASSERT_EQ(joined->runs.size(), 1u);
  const sump::Run& whole = joined->runs[0];
  EXPECT_EQ(whole.from.at, (Point2{0, 0}));
  EXPECT_EQ(whole.to.at, (Point2{10, 6}));
  EXPECT_EQ(whole.vertices.size(), 2u); // the cut stays as a corner
  EXPECT_EQ(whole.parts.at(1).leg, 2);
  EXPECT_TRUE(inconsistencies(*joined).empty());
}

TEST(JoinRuns, TurnsTheSecondRoundAndRefusesWhatDoesNotMeet) {
  Id made;
  const Plan cut = splitRun(corner(), "VT-1", 1, 0.5, std::nullopt, made);
  const Plan turned = reverseRun(cut, made);
  const auto joined = joinRuns(turned, "VT-1", made, 1e-6);
  ASSERT_TRUE(joined);
  EXPECT_EQ(joined->runs[0].to.at, (Point2{10, 6}));
  // The other way about the first keeps its id and the line its direction of flow.
  const auto other = joinRuns(cut, made, "VT-1", 1e-6);
  ASSERT_TRUE(other);
  EXPECT_EQ(other->runs[0].id, made);
  EXPECT_EQ(other->runs[0].from.at, (Point2{0, 0}));
  Plan wider = cut;
  sump::Run run = wider.runs[1];
  run.size = "4";
  wider.runs.put(run);
  EXPECT_FALSE(joinRuns(wider, "VT-1", made, 1e-6));
  EXPECT_FALSE(joinRuns(cut, "VT-1", "VT-1", 1e-6));
}

TEST(ParallelRun, KeepsItsDistanceOnEveryLeg) {
  Id made;
  const auto plan = parallelRun(corner(), "VT-1", -0.5, made);
  ASSERT_TRUE(plan);
  const sump::Run& beside = *plan->runs.find(made);
  // To the right of east is south, to the right of north is east.
  EXPECT_NEAR(beside.from.at.y, -0.5, 1e-12);
  EXPECT_NEAR(beside.vertices.at(0).at.x, 10.5, 1e-12);
  EXPECT_NEAR(beside.vertices.at(0).at.y, -0.5, 1e-12);
  EXPECT_NEAR(beside.to.at.x, 10.5, 1e-12);
  EXPECT_EQ(beside.vertices.at(0).invert, metres(30.5));
  EXPECT_TRUE(beside.parts.empty());
  EXPECT_TRUE(inconsistencies(*plan).empty());
  EXPECT_FALSE(parallelRun(corner(), "VT-1", 0, made));
}

TEST(ParallelRun, ADropIsOneCorner) {
  Plan plan = corner();
  sump::Run run = plan.runs[0];
  run.vertices.push_back({{10, 0}, metres(29)});
  run.parts.clear();
  plan.runs.put(run);
  Id made;
  const auto beside = parallelRun(plan, "VT-1", 1, made);
  ASSERT_TRUE(beside);
  ASSERT_EQ(beside->runs.find(made)->vertices.size(), 1u);
  EXPECT_EQ(beside->runs.find(made)->vertices[0].invert, metres(29));
  EXPECT_NEAR(beside->runs.find(made)->vertices[0].at.x, 9, 1e-12);
}

} // namespace sump
