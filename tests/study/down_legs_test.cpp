// Pipe in the lower arms of tees in vaults: as stated, worked out, or none.

#include "core/plan/carry.h"
#include "core/plan/edits_levels.h"
#include "core/study/down_legs.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

/// A vault whose floor lies at 0.60 m with water up to 1.80 m, where its overflow OF starts with a
/// tee; inlet WW ends with one in it, its invert at this level.
Plan teesAt(double inlet) {
  Plan plan;
  plan.vaults.append(openVault(metres(0.6), metres(1.6)));
  Run in, out;
  in.id = "WW";
  in.pipe = out.pipe = "pvc-sch80";
  in.size = out.size = "6";
  in.from.at = {-6, 0};
  in.from.invert = metres(inlet + 0.1);
  in.to = {EndKind::Chamber, "V1", 1, {-1.5, 0}, metres(inlet), EndFitting::Tee};
  plan.runs.append(in);
  out.id = "OF";
  out.service = Service::Overflow;
  out.from = {EndKind::Chamber, "V1", 1, {1.5, 0}, metres(1.8), EndFitting::Tee};
  out.to.at = {8, 0};
  out.to.invert = metres(1.7);
  plan.runs.append(out);
  return plan;
}

Plan stated(Plan plan, double level) {
  Run inlet = *plan.runs.find("WW");
  inlet.to.legEnd = metres(level);
  plan.runs.put(std::move(inlet));
  return plan;
}

/// 6 in Sch 80: bore 5.709 in; a tee's socket stop is 3-7/8 in from its axis, its mouth half the
/// outside of 6.625 in further.
constexpr double kHalfBore = 5.709 / 2 * 0.0254, kStop = 3.875 * 0.0254,
                 kMouth = kStop + 6.625 / 2 * 0.0254;

TEST(DownLegs, WithoutALevelReachToTheMiddleOfWhatIsAsked) {
  const Study study = studyOf(teesAt(1.9));
  const RunStudy &in = *study.run("WW"), &out = *study.run("OF");
  ASSERT_EQ(in.downLegs.size(), 1u);
  // 20 to 40 % of 1.20 m, more than 8 in: 0.24 to 0.48 m, middle 0.36 m under 1.80 m.
  EXPECT_NEAR(inMetres(in.downLegs[0].end), 1.44, 1e-9);
  EXPECT_FALSE(in.downLegs[0].stated);
  EXPECT_NEAR(inMetres(in.downLegs[0].mouth), 1.9 + kHalfBore - kMouth, 1e-9);
  ASSERT_EQ(in.pieces.size(), 2u);
  EXPECT_EQ(in.downLegs[0].piece, 1u);
  EXPECT_TRUE(in.pieces[1].downLeg);
  EXPECT_NEAR(inMetres(in.pieces[1].cut), 1.9 + kHalfBore - 1.44 - kStop, 1e-9);
  // 25 to 40 %: 0.30 to 0.48 m, middle 0.39 m.
  ASSERT_EQ(out.downLegs.size(), 1u);
  EXPECT_TRUE(out.downLegs[0].atStart);
  EXPECT_NEAR(inMetres(out.downLegs[0].end), 1.41, 1e-9);
}

TEST(DownLegs, ReachToTheLevelThatIsStated) {
  const Study study = studyOf(stated(teesAt(1.9), 1.5));
  const RunStudy& in = *study.run("WW");
  ASSERT_EQ(in.downLegs.size(), 1u);
  EXPECT_TRUE(in.downLegs[0].stated);
  EXPECT_NEAR(inMetres(in.downLegs[0].end), 1.5, 1e-9);
  EXPECT_NEAR(inMetres(in.pieces.at(1).cut), 1.9 + kHalfBore - 1.5 - kStop, 1e-9);
}

TEST(DownLegs, NeedNoPipeWhereTheArmReachesDeepEnough) {
  const Study study = studyOf(teesAt(1.5)); // its mouth: 1.5 + 0.0725 - 0.1826 = 1.39 m
  const RunStudy& in = *study.run("WW");
  ASSERT_EQ(in.downLegs.size(), 1u);
  EXPECT_FALSE(in.downLegs[0].piece);
  EXPECT_NEAR(inMetres(in.downLegs[0].end), 1.5 + kHalfBore - kMouth, 1e-9);
  EXPECT_EQ(in.pieces.size(), 1u);
}

TEST(DownLegs, AreNoneWhereNothingTellsTheirEnd) {
  Plan plan = teesAt(1.9);
  plan.runs.erase("OF"); // the water's level goes with it
  EXPECT_TRUE(studyOf(plan).run("WW")->downLegs.empty());
  EXPECT_EQ(studyOf(stated(plan, 1.5)).run("WW")->downLegs.size(), 1u);
}

TEST(DownLegs, MoveWithTheRunAndStayBehindWhenItsEndIsFreed) {
  const Plan plan = stated(teesAt(1.9), 1.5);
  const Plan shifted = shiftInverts(plan, "WW", metres(0.1));
  EXPECT_NEAR(inMetres(*shifted.runs.find("WW")->to.legEnd), 1.6, 1e-9);
  RunEnd end = plan.runs.find("WW")->to;
  freeEnd(Locator(plan), end);
  EXPECT_FALSE(end.legEnd);
}

} // namespace
} // namespace sump::test
