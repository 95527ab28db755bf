#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

constexpr double kExact = 1e-9;

sump::Run straightRun(RunEnd from, RunEnd to, std::vector<Vertex> vertices = {}) {
  return makeRun("R", Service::Product, "pvc-sch80", "2", std::move(from), std::move(to),
                 std::move(vertices));
}

TEST(RunPath, UnknownInvertsFollowThePlanLengthBetweenKnownOnes) {
  const RunStudy run = studyOf(
      straightRun(freeEnd({0, 0}, metres(10)), freeEnd({10, 20}, metres(4)),
                  {{{10, 0}, std::nullopt}, {{10, 10}, metres(8)}, {{10, 15}, std::nullopt}}));
  ASSERT_TRUE(run.resolved);
  EXPECT_NEAR(run.points[1].at.z, 9, kExact);
  EXPECT_NEAR(run.points[2].at.z, 8, kExact);
  EXPECT_NEAR(run.points[3].at.z, 6, kExact);
  EXPECT_EQ(run.points[0].vertex, -1);
  EXPECT_EQ(run.points[2].vertex, 1);
  EXPECT_EQ(run.points[4].vertex, 3);
}

TEST(RunPath, AVerticalDropIsALegOfItsOwn) {
  const RunStudy run = studyOf(straightRun(freeEnd({0, 0}, metres(10)), freeEnd({4, 0}, metres(7)),
                                           {{{4, 0}, metres(9.9)}}));
  ASSERT_EQ(run.legs.size(), 2u);
  EXPECT_TRUE(run.legs[1].vertical);
  EXPECT_FALSE(run.legs[0].vertical);
  EXPECT_NEAR(inMetres(run.plan), 4, kExact);
  EXPECT_NEAR(inMetres(run.developed), std::hypot(4, 0.1) + 2.9, kExact);
  EXPECT_NEAR(run.slope, 0.1 / 4, kExact) << "drops do not count toward the slope";
  EXPECT_NEAR(*run.leastSlope, 0.1 / 4, kExact);
}

// 15.15 ft of plan and a hair more than that would be told as 15.1 and 15.2 ft.
TEST(RunPath, BothEndsOfADropHaveOneStation) {
  const RunStudy run = studyOf(straightRun(
      freeEnd({0, 0}, metres(10)), freeEnd({4 + 1e-9, 0}, metres(7)), {{{4, 0}, metres(9.9)}}));
  ASSERT_EQ(run.legs.size(), 2u);
  EXPECT_TRUE(run.legs[1].vertical);
  EXPECT_EQ(inMetres(run.legs[1].plan), 0);
}

TEST(RunPath, ASlopedDropIsNotVertical) {
  // 3-4-5: 3 m down over 4 m in plan is 5 m of pipe.
  const RunStudy run =
      studyOf(straightRun(freeEnd({0, 0}, metres(10)), freeEnd({4, 0}, metres(7))));
  EXPECT_FALSE(run.legs[0].vertical);
  EXPECT_NEAR(inMetres(run.developed), 5, kExact);
  EXPECT_NEAR(run.slope, 0.75, kExact);
  EXPECT_NEAR(run.points[1].station, 5, kExact);
}

TEST(RunPath, AZeroLengthLegAddsNothing) {
  const RunStudy run = studyOf(straightRun(freeEnd({0, 0}, metres(10)), freeEnd({8, 0}, metres(10)),
                                           {{{4, 0}, metres(10)}, {{4, 0}, metres(10)}}));
  ASSERT_EQ(run.legs.size(), 3u);
  EXPECT_EQ(inMetres(run.legs[1].developed), 0);
  EXPECT_NEAR(inMetres(run.developed), 8, kExact);
  EXPECT_TRUE(run.bends.empty());
  ASSERT_EQ(run.pieces.size(), 1u);
}

TEST(RunPath, ARunOfNoLengthAtAllIsStudiedQuietly) {
  const RunStudy run =
      studyOf(straightRun(freeEnd({1, 1}, metres(10)), freeEnd({1, 1}, metres(10))));
  EXPECT_TRUE(run.resolved);
  EXPECT_EQ(inMetres(run.developed), 0);
  EXPECT_EQ(run.slope, 0);
  EXPECT_EQ(run.sticks, 0);
}

TEST(RunPath, AnEndWithoutALevelIsAProblemNotAGuess) {
  const RunStudy run =
      studyOf(straightRun(freeEnd({0, 0}, std::nullopt), freeEnd({8, 0}, metres(10))));
  EXPECT_FALSE(run.resolved);
  EXPECT_EQ(run.problem, "run.no-level");
  EXPECT_TRUE(run.points.empty());
  EXPECT_TRUE(run.items.empty());
}

TEST(RunPath, PipeThatIsNotInTheCatalogueIsAProblem) {
  sump::Run run = straightRun(freeEnd({0, 0}, metres(10)), freeEnd({8, 0}, metres(10)));
  run.pipe = "glass";
  const RunStudy study = studyOf(run);
  EXPECT_TRUE(study.resolved);
  EXPECT_EQ(study.problem, "run.no-such-pipe");
  EXPECT_EQ(study.sticks, 0);
}

TEST(RunPath, TargetsKnowTheirLevels) {
  Plan plan;
  plan.basins.put({"B",
                   "",
                   BasinKind::CatchBasin,
                   {0, 0},
                   degrees(90),
                   metres(2),
                   metres(1),
                   metres(12),
                   metres(11)});
  plan.sewers.put({"S", "", {0, -20}, metres(9), std::nullopt});
  plan.washes.put({"W", "", {5, 5}, degrees(0), metres(2), metres(2), metres(13), "2"});
  EquipmentRoom room;
  room.id = "R";
  room.corner = {20, 0};
  room.angle = degrees(90);
  room.floor = metres(12);
  room.ports = {{"P", "", Service::Product, {1, 2}, metres(0.5), "2"}};
  plan.rooms.put(room);
  plan.runs.put(makeRun("A", Service::Inlet, "pvc-sdr35", "6", at(EndKind::Basin, "B", {1, 0}),
                        at(EndKind::Sewer, "S")));
  plan.runs.put(makeRun("B1", Service::Product, "pvc-sch80", "2", at(EndKind::Port, "P"),
                        at(EndKind::Wash, "W")));
  const Study study = studyOf(plan);
  EXPECT_NEAR(inMetres(study.runs[0].startInvert), 11, kExact);
  EXPECT_NEAR(inMetres(study.runs[0].endInvert), 9, kExact);
  EXPECT_NEAR(study.runs[0].points[0].at.y, 1, kExact) << "local x of a basin turned 90 degrees";
  EXPECT_NEAR(inMetres(study.runs[1].startInvert), 12.5, kExact);
  EXPECT_NEAR(study.runs[1].points[0].at.x, 18, kExact);
  EXPECT_NEAR(study.runs[1].points[0].at.y, 1, kExact);
  EXPECT_NEAR(inMetres(study.runs[1].endInvert), 13, kExact);
}

TEST(RunPath, TheRunsOwnInvertWinsOverTheTargets) {
  Plan plan;
  plan.sewers.put({"S", "", {0, 10}, metres(9), std::nullopt});
  sump::Run run = straightRun(freeEnd({0, 0}, metres(10)), at(EndKind::Sewer, "S"));
  run.to.invert = metres(9.2);
  plan.runs.put(run);
  EXPECT_NEAR(inMetres(studyOf(plan).runs[0].endInvert), 9.2, kExact);
}

TEST(RunPath, AnEndFollowsItsVaultWhenThatIsMovedAndTurned) {
  Plan plan;
  plan.vaults.put(twoChamberVault("V", {100, 50}, metres(8), degrees(90)));
  plan.runs.put(
      straightRun(inChamber("V", 1, {-1, 0.5}, metres(9)), freeEnd({100, 60}, metres(9))));
  const RunStudy run = studyOf(plan).runs[0];
  EXPECT_NEAR(run.points[0].at.x, 99.5, kExact);
  EXPECT_NEAR(run.points[0].at.y, 49, kExact);
}

TEST(RunPath, ARunAttachedToARunTakesItsInvertThere) {
  Plan plan;
  // The branch comes first in the plan: order must not matter.
  plan.runs.put(makeRun("BR", Service::MakeUp, "pvc-sch80", "1", onRun("MAIN", {4, 3}),
                        freeEnd({4, 9}, metres(11))));
  plan.runs.put(makeRun("MAIN", Service::MakeUp, "pvc-sch80", "2", freeEnd({0, 0}, metres(10)),
                        freeEnd({8, 0}, metres(12))));
  const RunStudy run = studyOf(plan).runs[0];
  ASSERT_TRUE(run.resolved);
  EXPECT_NEAR(run.points[0].at.x, 4, kExact);
  EXPECT_NEAR(run.points[0].at.y, 0, kExact);
  EXPECT_NEAR(run.points[0].at.z, 11, kExact);
}

TEST(RunPath, RunsThatHangOnEachOtherInACircleAreUnresolved) {
  Plan plan;
  plan.runs.put(straightRun(onRun("Q", {0, 0}), freeEnd({8, 0}, metres(10))));
  sump::Run other = straightRun(onRun("R", {0, 0}), freeEnd({8, 0}, metres(10)));
  other.id = "Q";
  plan.runs.put(other);
  const Study study = studyOf(plan);
  EXPECT_FALSE(study.runs[0].resolved);
  EXPECT_FALSE(study.runs[1].resolved);
}

TEST(RunPath, TheLeastSlopeIsThatOfTheFlattestLegOutsideVaults) {
  Plan plan;
  plan.vaults.put(twoChamberVault("V", {0, 0}, metres(8)));
  // Level inside the vault, then 1 in 50, then 1 in 100.
  plan.runs.put(straightRun(inChamber("V", 2, {0.5, 0}, metres(9)), freeEnd({15, 0}, metres(8.85)),
                            {{{1, 0}, metres(9)}, {{6, 0}, metres(8.9)}}));
  const RunStudy run = studyOf(plan).runs[0];
  EXPECT_FALSE(run.legs[0].outsideVault);
  EXPECT_TRUE(run.legs[1].outsideVault) << "it leaves the vault";
  EXPECT_NEAR(*run.leastSlope, 0.05 / 9, kExact);
}

TEST(RunPath, ReducersChangeTheSizeOfTheLegsBehindThem) {
  sump::Run run = straightRun(freeEnd({0, 0}, metres(10)), freeEnd({9, 0}, metres(10)),
                              {{{3, 0}, metres(10)}, {{6, 0}, metres(10)}});
  run.parts = {part("X2", PartKind::Reducer, 2, 0, "1"),
               part("X1", PartKind::Reducer, 0, 0.5, "1-1/2")};
  const RunStudy study = studyOf(run);
  EXPECT_EQ(study.legs[0].size, "2");
  EXPECT_EQ(study.legs[1].size, "1-1/2");
  EXPECT_EQ(study.legs[2].size, "1") << "the reducer stands at its very start";
}

} // namespace
} // namespace sump::test
