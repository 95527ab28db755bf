#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sump::test {
namespace {

/// A run through these points, given as x, y, invert in metres.
sump::Run through(const std::vector<Point3>& points, const std::string& pipe = "pvc-sch80",
                  const std::string& size = "2") {
  std::vector<Vertex> vertices;
  for (std::size_t i = 1; i + 1 < points.size(); ++i)
    vertices.push_back({flat(points[i]), metres(points[i].z)});
  const Service service =
      pipe.find("conduit") == std::string::npos ? Service::Product : Service::Power;
  return makeRun("R", service, pipe, size, freeEnd(flat(points.front()), metres(points.front().z)),
                 freeEnd(flat(points.back()), metres(points.back().z)), vertices);
}

/// A level run that turns by so many degrees in plan.
sump::Run turn(double angle, const std::string& pipe = "pvc-sch80", const std::string& size = "2") {
  const double a = angle * kPi / 180;
  return through({{0, 0, 5}, {10, 0, 5}, {10 + 10 * std::cos(a), 10 * std::sin(a), 5}}, pipe, size);
}

using Kinds = std::vector<FittingKind>;

TEST(Bends, RolledOffsetIsTwoFortyFives) {
  // Rolled offset as pipe fitters reckon it: roll 3, rise 4, true offset 5, travel 5 x sqrt 2.
  const RunStudy run = studyOf(through({{0, 0, 5}, {10, 0, 5}, {15, 3, 9}, {25, 3, 9}}));
  ASSERT_EQ(run.bends.size(), 2u);
  for (const Bend& bend : run.bends) {
    EXPECT_NEAR(bend.degrees, 45, 1e-9);
    EXPECT_EQ(bend.fittings, Kinds{FittingKind::Elbow45});
    EXPECT_TRUE(bend.stock);
  }
  EXPECT_NEAR(inMetres(run.legs[1].developed), 5 * std::sqrt(2), 1e-9);
  EXPECT_EQ(itemCount(run, "elbow-45", "2"), 2);
}

TEST(Bends, ANinetyInPlanAndInElevation) {
  const RunStudy run = studyOf(through({{0, 0, 5}, {10, 0, 5}, {10, 10, 5}, {10, 10, 8}}));
  ASSERT_EQ(run.bends.size(), 2u);
  EXPECT_NEAR(run.bends[0].degrees, 90, 1e-9);
  EXPECT_FALSE(run.bends[0].vertical);
  EXPECT_EQ(run.bends[0].point, 1);
  EXPECT_NEAR(run.bends[1].degrees, 90, 1e-9);
  EXPECT_TRUE(run.bends[1].vertical);
  EXPECT_EQ(itemCount(run, "elbow-90", "2"), 2);
}

TEST(Bends, ThirtyDegreesIsNoStockAngle) {
  const RunStudy run = studyOf(turn(30));
  ASSERT_EQ(run.bends.size(), 1u);
  EXPECT_FALSE(run.bends[0].stock);
  // Of 22.5, 45 and all sums of three, 22.5 lies nearest.
  EXPECT_EQ(run.bends[0].fittings, Kinds{FittingKind::Elbow22});
  EXPECT_EQ(run.bends[0].madeDegrees, 22.5);
}

TEST(Bends, ACombinationIsNamedWhereItMakesTheTurn) {
  const RunStudy run = studyOf(turn(67.5));
  ASSERT_EQ(run.bends.size(), 1u);
  EXPECT_FALSE(run.bends[0].stock);
  EXPECT_EQ(run.bends[0].fittings, (Kinds{FittingKind::Elbow45, FittingKind::Elbow22}));
  EXPECT_EQ(run.bends[0].madeDegrees, 67.5);
  EXPECT_EQ(itemCount(run, "elbow-45", "2"), 1);
  EXPECT_EQ(itemCount(run, "elbow-22", "2"), 1);
}

TEST(Bends, OnlyWhatIsStockedInTheSizeIsUsed) {
  // 1 in Sch 80 has no 22-1/2; 6 in SDR 35 has an 11-1/4.
  EXPECT_FALSE(studyOf(turn(22.5, "pvc-sch80", "1")).bends[0].stock);
  EXPECT_TRUE(studyOf(turn(22.5)).bends[0].stock);
  const RunStudy sewer = studyOf(turn(11.25, "pvc-sdr35", "6"));
  EXPECT_TRUE(sewer.bends[0].stock);
  EXPECT_EQ(sewer.bends[0].fittings, Kinds{FittingKind::Elbow11});
}

TEST(Bends, ConduitTurnsWithSweeps) {
  const RunStudy run = studyOf(turn(90, "pvc-conduit-sch80", "1"));
  ASSERT_EQ(run.bends.size(), 1u);
  EXPECT_TRUE(run.bends[0].stock);
  // A 1 in sweep: radius 5-3/4 in, and for a right angle the tangent is as long (NEC ch. 9 table
  // 2).
  ASSERT_EQ(run.pieces.size(), 2u);
  EXPECT_NEAR(inInches(run.pieces[0].takeOut), 5.75, 1e-9);
}

TEST(Bends, SmallTurnsAreTakenUpInTheJoints) {
  EXPECT_TRUE(studyOf(turn(2.9)).bends.empty());
  EXPECT_EQ(studyOf(turn(3.1)).bends.size(), 1u);
}

TEST(Bends, WithinToleranceTheNearestStockFittingIsTaken) {
  EXPECT_TRUE(studyOf(turn(47.9)).bends[0].stock);
  EXPECT_FALSE(studyOf(turn(48.1)).bends[0].stock);
  // A wide tolerance reaches two stock angles; the nearer one is meant.
  Plan plan;
  plan.limits["bend.tolerance"] = 40 * kPi / 180;
  plan.runs.put(turn(50));
  EXPECT_EQ(studyOf(plan).runs[0].bends[0].fittings, Kinds{FittingKind::Elbow45});
}

TEST(Bends, DoublingBackTakesTwoNineties) {
  const RunStudy run = studyOf(through({{0, 0, 5}, {10, 0, 5}, {0, 0, 5}}));
  ASSERT_EQ(run.bends.size(), 1u);
  EXPECT_NEAR(run.bends[0].degrees, 180, 1e-9);
  EXPECT_EQ(run.bends[0].fittings, (Kinds{FittingKind::Elbow90, FittingKind::Elbow90}));
}

TEST(Bends, AZeroLengthLegDoesNotHideATurn) {
  const RunStudy run = studyOf(through({{0, 0, 5}, {10, 0, 5}, {10, 0, 5}, {10, 10, 5}}));
  ASSERT_EQ(run.bends.size(), 1u);
  EXPECT_NEAR(run.bends[0].degrees, 90, 1e-9);
}

TEST(Bends, ADropAndALegAwayIsTwoNineties) {
  const RunStudy run = studyOf(through({{0, 0, 5}, {10, 0, 5}, {10, 0, 2}, {20, 0, 2}}));
  ASSERT_EQ(run.bends.size(), 2u);
  EXPECT_TRUE(run.bends[0].vertical && run.bends[1].vertical);
  EXPECT_EQ(itemCount(run, "elbow-90", "2"), 2);
}

} // namespace
} // namespace sump::test
