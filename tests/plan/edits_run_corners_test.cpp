// A run's corners and ends moved by hand. Expected values are worked out by hand from the
// coordinates beside them.

#include "core/plan/edits_run_corners.h"

#include "core/plan/consistency.h"

#include <gtest/gtest.h>

namespace sump {

namespace {

/// 10 m east, a drop of 1 m, 6 m north, and a drop at the very end.
Plan dropped() {
  sump::Run run;
  run.id = "PW-1";
  run.service = Service::Product;
  run.pipe = "pvc-sch80";
  run.size = "2";
  run.from.at = {0, 0};
  run.from.invert = metres(3);
  run.vertices = {{{10, 0}, metres(3)}, {{10, 0}, metres(2)}, {{10, 6}, metres(2)}};
  run.to.at = {10, 6};
  run.to.invert = metres(1);
  run.parts = {{"PW-1-1", PartKind::Union, 2, 0.5, {}}};
  Plan plan;
  plan.runs.append(run);
  return plan;
}

} // namespace

TEST(RunCorner, ADropMovesAsOne) {
  for (std::size_t corner : {0u, 1u}) {
    const Plan next = moveRunCorner(dropped(), "PW-1", corner, {12, 1});
    EXPECT_EQ(next.runs[0].vertices[0].at, (Point2{12, 1}));
    EXPECT_EQ(next.runs[0].vertices[1].at, (Point2{12, 1}));
    EXPECT_EQ(next.runs[0].vertices[1].invert, metres(2));
    EXPECT_EQ(next.runs[0].vertices[2].at, (Point2{10, 6}));
  }
  EXPECT_EQ(moveRunCorner(dropped(), "PW-1", 3, {1, 1}), dropped());
  EXPECT_EQ(moveRunCorner(dropped(), "none", 0, {1, 1}), dropped());
}

TEST(RunCorner, ADropGoesAsOneAndPartsStayOnTheRun) {
  const Plan next = eraseRunCorner(dropped(), "PW-1", 1);
  EXPECT_TRUE(inconsistencies(next).empty());
  ASSERT_EQ(next.runs[0].vertices.size(), 1u);
  EXPECT_EQ(next.runs[0].vertices[0].at, (Point2{10, 6}));
  EXPECT_EQ(next.runs[0].parts[0].leg, 0);
}

TEST(RunEndMoved, TakesADropAtItAlong) {
  RunEnd end = dropped().runs[0].to;
  end.at = {12, 8};
  const Plan next = moveRunEnd(dropped(), "PW-1", false, end);
  EXPECT_EQ(next.runs[0].to.at, (Point2{12, 8}));
  EXPECT_EQ(next.runs[0].vertices[2].at, (Point2{12, 8}));
  EXPECT_EQ(next.runs[0].vertices[1].at, (Point2{10, 0}));
  RunEnd start = dropped().runs[0].from;
  start.at = {-1, 0};
  EXPECT_EQ(moveRunEnd(dropped(), "PW-1", true, start).runs[0].vertices,
            dropped().runs[0].vertices);
}

TEST(CornerAdded, StandsOnTheNearestLeg) {
  const Plan next = *cornerAdded(dropped(), "PW-1", {4, 0.05}, 0.1);
  EXPECT_TRUE(inconsistencies(next).empty());
  ASSERT_EQ(next.runs[0].vertices.size(), 4u);
  EXPECT_EQ(next.runs[0].vertices[0].at, (Point2{4, 0}));
  EXPECT_FALSE(next.runs[0].vertices[0].invert) << "between its neighbours";
  EXPECT_EQ(next.runs[0].parts[0].leg, 3);
  EXPECT_FALSE(cornerAdded(dropped(), "PW-1", {4, 0.2}, 0.1)) << "too far off";
  EXPECT_FALSE(cornerAdded(dropped(), "PW-1", {9.95, 0}, 0.1)) << "a corner stands there";
  Plan site;
  site.site.boundary = {{0, 0}, {10, 0}, {10, 10}, {0, 10}};
  EXPECT_EQ(cornerAdded(site, "", {0.02, 4}, 0.1)->site.boundary.back(), (Point2{0, 4}));
  EXPECT_FALSE(cornerAdded(site, "none", {0, 4}, 0.1));
}

} // namespace sump
