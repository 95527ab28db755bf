#include "core/study/context.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <numeric>
#include <random>

namespace sump::test {
namespace {

/// A level straight run of so many feet.
sump::Run levelPiece(double length, const std::string& pipe = "pvc-sch80",
                     const std::string& size = "6") {
  return makeRun("R", Service::Product, pipe, size, freeEnd(ft(0, 0), feet(5)),
                 freeEnd(ft(length, 0), feet(5)));
}

TEST(Pieces, PlainEndsTakeNothingOut) {
  const RunStudy run = studyOf(levelPiece(19));
  ASSERT_EQ(run.pieces.size(), 1u);
  EXPECT_NEAR(inFeet(run.pieces[0].cut), 19, 1e-9);
  EXPECT_TRUE(run.items.empty());
  EXPECT_EQ(run.sticks, 1);
}

TEST(Pieces, CouplingsJoinSticks) {
  EXPECT_EQ(itemCount(studyOf(levelPiece(20)), "coupling", "6"), 0);
  EXPECT_EQ(itemCount(studyOf(levelPiece(20.1)), "coupling", "6"), 1);
  EXPECT_EQ(itemCount(studyOf(levelPiece(60)), "coupling", "6"), 2);
  EXPECT_EQ(studyOf(levelPiece(60)).sticks, 3);
  EXPECT_EQ(studyOf(levelPiece(60.5)).sticks, 4);
}

TEST(Pieces, BelledPipeNeedsNoCouplings) {
  const RunStudy run = studyOf(levelPiece(60, "pvc-sdr35"));
  EXPECT_EQ(itemCount(run, "coupling", "6"), 0);
  EXPECT_EQ(run.sticks, 5) << "60 / 14 ft laying length";
  EXPECT_NEAR(inFeet(run.buy), 70, 1e-9);
}

TEST(Pieces, PartsAreCutInWithHalfTheirLayingLengthOnEachSide) {
  sump::Run run = levelPiece(10, "pvc-sch80", "2");
  run.parts = {part("V", PartKind::BallValve, 0, 0.5)}; // 5.9 in long
  const RunStudy study = studyOf(run);
  ASSERT_EQ(study.pieces.size(), 2u);
  EXPECT_NEAR(inInches(study.pieces[0].cut), 60 - 2.95, 1e-9);
  EXPECT_NEAR(inInches(study.pieces[1].cut), 60 - 2.95, 1e-9);
  EXPECT_EQ(itemCount(study, "ball-valve", "2"), 1);
  EXPECT_EQ(study.items[0].part, "V");
}

TEST(Pieces, AReducerInMidLegChangesPipeAndPartsBehindIt) {
  sump::Run run = levelPiece(10, "pvc-sch80", "2");
  // Listed out of order on purpose.
  run.parts = {part("V", PartKind::BallValve, 0, 0.75), part("X", PartKind::Reducer, 0, 0.5, "1"),
               part("U", PartKind::Union, 0, 0.25)};
  run.to.fitting = EndFitting::ElbowDown;
  const RunStudy study = studyOf(run);
  EXPECT_EQ(itemCount(study, "reducer", "2 x 1"), 1);
  EXPECT_EQ(itemCount(study, "union", "2"), 1);
  EXPECT_EQ(itemCount(study, "ball-valve", "1"), 1);
  EXPECT_EQ(itemCount(study, "elbow-90", "1"), 1);
  ASSERT_EQ(study.pieces.size(), 4u);
  EXPECT_EQ(study.pieces[1].size, "2");
  EXPECT_EQ(study.pieces[2].size, "1");
  EXPECT_EQ(study.sticks, 2) << "one of each size";
}

TEST(Pieces, TwoReducersOnOneLegStepDownInTheOrderOfFlow) {
  sump::Run run = levelPiece(10, "pvc-sch80", "3");
  run.parts = {part("X2", PartKind::Reducer, 0, 0.6, "1"),
               part("X1", PartKind::Reducer, 0, 0.3, "2")};
  const RunStudy study = studyOf(run);
  EXPECT_EQ(itemCount(study, "reducer", "3 x 2"), 1);
  EXPECT_EQ(itemCount(study, "reducer", "2 x 1"), 1);
}

TEST(Pieces, AReducerAtACornerStandsOnTheSideWhereItWasDrawn) {
  sump::Run run = makeRun("R", Service::Product, "pvc-sch80", "2", freeEnd(ft(0, 0), feet(5)),
                          freeEnd(ft(5, 5), feet(5)), {{ft(5, 0), feet(5)}});
  run.parts = {part("X", PartKind::Reducer, 0, 1, "1")};
  EXPECT_EQ(itemCount(studyOf(run), "elbow-90", "1"), 1);
  run.parts = {part("X", PartKind::Reducer, 1, 0, "1")};
  EXPECT_EQ(itemCount(studyOf(run), "elbow-90", "2"), 1);
}

TEST(Pieces, FittingsTooCloseLeaveNoPipeRatherThanLessThanNone) {
  // Two 6 in elbows need 7-3/4 in between centres.
  const RunStudy run =
      studyOf(makeRun("R", Service::Product, "pvc-sch80", "6", freeEnd(ft(0, 0), feet(5)),
                      freeEnd(ft(5, 5), feet(5)),
                      {{ft(2, 0), feet(5)}, {ft(2, 0.5), feet(5)}, {ft(5, 0.5), feet(5)}}));
  ASSERT_EQ(run.pieces.size(), 4u);
  EXPECT_NEAR(inInches(run.pieces[1].centreToCentre), 6, 1e-9);
  EXPECT_EQ(inMetres(run.pieces[1].cut), 0);
}

/// 2 in Sch 80 has a bore of 1.913 in (ASTM D1785); its elbow takes 1-9/16 in from centre to
/// socket. East on the level at 5 ft, then upright to the end.
RunStudy uprightAtTheEnd(Length end, double partAlong = -1) {
  sump::Run run = makeRun("R", Service::Product, "pvc-sch80", "2", freeEnd(ft(0, 0), feet(5)),
                          freeEnd(ft(4, 0), end));
  run.vertices = {{ft(4, 0), feet(5)}};
  if (partAlong >= 0) run.parts = {part("U", PartKind::Union, 1, partAlong)}; // 1.45 in long
  return studyOf(run);
}

TEST(Pieces, UprightPipeIsCutFromTheElbowsCentreToItsOpening) {
  const RunStudy down = uprightAtTheEnd(feet(2));
  ASSERT_EQ(down.pieces.size(), 2u);
  EXPECT_NEAR(inInches(down.pieces[0].cut), 48 - 1.5625, 1e-9);
  EXPECT_NEAR(inInches(down.pieces[1].cut), 36 + 1.913 / 2 - 1.5625, 1e-9);
  const RunStudy up = uprightAtTheEnd(feet(8));
  ASSERT_EQ(up.pieces.size(), 2u);
  EXPECT_NEAR(inInches(up.pieces[1].cut), 36 - 1.913 / 2 - 1.5625, 1e-9);
}

TEST(Pieces, APartInUprightPipeIsMeasuredFromItsOpening) {
  const RunStudy run = uprightAtTheEnd(feet(2), 0.5);
  ASSERT_EQ(run.pieces.size(), 3u);
  EXPECT_NEAR(inInches(run.pieces[1].cut), 18 + 1.913 / 2 - 1.5625 - 0.725, 1e-9);
  EXPECT_NEAR(inInches(run.pieces[2].cut), 18 - 0.725, 1e-9);
}

/// Upright between two levels both of which are inverts: no half bore is left over.
TEST(Pieces, UprightPipeBetweenTwoBendsIsAsLongAsTheLevelsDiffer) {
  sump::Run run = makeRun("R", Service::Product, "pvc-sch80", "2", freeEnd(ft(0, 0), feet(5)),
                          freeEnd(ft(8, 0), feet(2)));
  run.vertices = {{ft(4, 0), feet(5)}, {ft(4, 0), feet(2)}};
  const RunStudy study = studyOf(run);
  ASSERT_EQ(study.pieces.size(), 3u);
  EXPECT_NEAR(inInches(study.pieces[1].cut), 36 - 2 * 1.5625, 1e-9);
}

/// 1 in Sch 80 has a bore of 0.935 in: dropped on a level 2 in main it is longer by the difference.
TEST(Pieces, UprightPipeOnAnotherRunReachesThatRunsCentre) {
  Plan plan;
  plan.runs.put(levelPiece(10, "pvc-sch80", "2")); // at 5 ft
  sump::Run drop = makeRun("BR", Service::Product, "pvc-sch80", "1", freeEnd(ft(5, 4), feet(8)),
                           onRun("R", ft(5, 0)));
  drop.vertices = {{ft(5, 0), feet(8)}};
  plan.runs.put(drop);
  const RunStudy study = studyOf(plan).runs[1];
  ASSERT_EQ(study.pieces.size(), 2u);
  const double elbow = inInches(study.pieces[0].takeOut);
  EXPECT_NEAR(inInches(study.pieces[1].cut), 36 - (1.913 - 0.935) / 2 - elbow - 1.5625, 1e-9);
}

TEST(Pieces, EndFittingsAreItemsAndTakePipe) {
  sump::Run run = levelPiece(10, "pvc-sch80", "2");
  run.from.fitting = EndFitting::FootValve; // 3.4 in
  run.to.fitting = EndFitting::Tee;         // 1-9/16 in to the socket
  const RunStudy study = studyOf(run);
  ASSERT_EQ(study.pieces.size(), 1u);
  EXPECT_NEAR(inInches(study.pieces[0].cut), 120 - 3.4 - 1.5625, 1e-9);
  EXPECT_EQ(itemCount(study, "foot-valve", "2"), 1);
  EXPECT_EQ(itemCount(study, "tee", "2"), 1);
}

Plan branched(Point2 where) {
  Plan plan;
  plan.runs.put(levelPiece(10, "pvc-sch80", "2"));
  plan.runs.put(makeRun("BR", Service::Product, "pvc-sch80", "1", onRun("R", where),
                        freeEnd(ft(5, 4), feet(5))));
  return plan;
}

TEST(Pieces, ABranchIsATeeOnTheRunItJoins) {
  const Study study = studyOf(branched(ft(5, 1)));
  const RunStudy &main = study.runs[0], &branch = study.runs[1];
  EXPECT_EQ(itemCount(main, "tee", "2 x 1"), 1);
  EXPECT_EQ(itemCount(branch, "tee", "1"), 0);
  ASSERT_EQ(main.pieces.size(), 2u);
  EXPECT_NEAR(inInches(main.pieces[0].cut), 60 - 1.5625, 1e-9);
  ASSERT_EQ(branch.pieces.size(), 1u);
  EXPECT_NEAR(inInches(branch.pieces[0].cut), 48 - 1.5625, 1e-9) << "it stops at the tee's socket";
}

TEST(Pieces, ABranchAtTheVeryEndStillTakesThePipeBack) {
  const RunStudy main = studyOf(branched(ft(12, 0))).runs[0];
  EXPECT_EQ(itemCount(main, "tee", "2 x 1"), 1);
  ASSERT_EQ(main.pieces.size(), 1u);
  EXPECT_NEAR(inInches(main.pieces[0].cut), 120 - 1.5625, 1e-9);
}

TEST(Pieces, ABranchBehindAReducerHasTheSmallerTee) {
  Plan plan = branched(ft(8, 0));
  sump::Run main = plan.runs[0];
  main.parts = {part("X", PartKind::Reducer, 0, 0.5, "1")};
  plan.runs.put(main);
  EXPECT_EQ(itemCount(studyOf(plan).runs[0], "tee", "1"), 1);
}

TEST(Sticks, CutsArePackedAndLongOnesJoined) {
  EXPECT_EQ(sticksFor({}, 20), 0);
  EXPECT_EQ(sticksFor({0, 0}, 20), 0);
  EXPECT_EQ(sticksFor({20}, 20), 1);
  EXPECT_EQ(sticksFor({20.0000001}, 20), 1) << "a hair is no second stick";
  EXPECT_EQ(sticksFor({10, 10, 10}, 20), 2);
  EXPECT_EQ(sticksFor({12, 12, 8, 8}, 20), 2);
  EXPECT_EQ(sticksFor({47}, 20), 3);
  EXPECT_EQ(sticksFor({47, 13}, 20), 3) << "7 and 13 share the third";
  EXPECT_EQ(sticksFor({2e9}, 20), 100000000) << "no loop over sticks";
}

TEST(Sticks, StayBetweenTheLengthItselfAndTheGuarantee) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> cut(0.01, 1);
  for (int round = 0; round < 300; ++round) {
    std::vector<double> cuts(1 + random() % 60);
    for (double& length : cuts)
      length = cut(random);
    const double least = std::accumulate(cuts.begin(), cuts.end(), 0.0);
    const int sticks = sticksFor(cuts, 1);
    EXPECT_GE(sticks, least - 1e-6);
    EXPECT_LE(sticks, static_cast<int>(cuts.size()));
    // At most one stick can be left half empty, or two would have been one.
    EXPECT_LT(sticks, 2 * least + 1);
  }
}

} // namespace
} // namespace sump::test
