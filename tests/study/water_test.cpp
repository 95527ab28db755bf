#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

/// Vaults A, B, C ... with floors at 90 ft, 20 ft apart.
Plan train(int count) {
  Plan plan;
  for (int i = 0; i < count; ++i) {
    plan.vaults.append(
        twoChamberVault(std::string(1, static_cast<char>('A' + i)), ft(20 * i, 0), feet(90)));
  }
  return plan;
}

sump::Run link(const Id& from, const Id& to, double startInvert, double endInvert) {
  return makeRun("LK-" + from + to, Service::Link, "pvc-sch80", "6",
                 inChamber(from, 2, ft(4, 0), feet(startInvert)),
                 inChamber(to, 1, ft(-4, 0), feet(endInvert)));
}

sump::Run overflow(const Id& from, double startInvert) {
  return makeRun("OF-" + from, Service::Overflow, "pvc-sch80", "6",
                 inChamber(from, 2, ft(4, 0), feet(startInvert)),
                 freeEnd(ft(200, 0), feet(startInvert - 1)));
}

double levelOf(const Study& study, const Id& vault) {
  const auto& level = study.vault(vault)->waterLevel;
  return level ? inFeet(*level) : -1;
}

TEST(Water, SingleChamberStandsAtTheOverflow) {
  Plan plan = train(1);
  Vault vault = plan.vaults[0];
  vault.baffles.clear();
  plan.vaults.put(vault);
  plan.runs.put(overflow("A", 93));
  const Study study = studyOf(plan);
  ASSERT_EQ(study.vaults[0].chambers.size(), 1u);
  EXPECT_NEAR(levelOf(study, "A"), 93, 1e-9);
  // 10'-6" x 5' x 3' = 157.5 ft3; x 1728/231 gal.
  EXPECT_NEAR(inGallons(study.workingVolume), 157.5 * 1728 / 231, 1e-6);
}

TEST(Water, TheHigherOfLinkAndNextVaultSetsTheLevelUpstream) {
  Plan plan = train(3);
  plan.runs.put(link("A", "B", 94, 93.9));
  plan.runs.put(link("B", "C", 92, 91.9)); // drowned by C
  plan.runs.put(overflow("C", 93));
  const Study study = studyOf(plan);
  EXPECT_NEAR(levelOf(study, "C"), 93, 1e-9);
  EXPECT_NEAR(levelOf(study, "B"), 93, 1e-9);
  EXPECT_NEAR(levelOf(study, "A"), 94, 1e-9);
  EXPECT_NEAR(inFeet(*study.vault("B")->overflowInvert), 92, 1e-9) << "as drawn, though drowned";
  EXPECT_EQ(study.vault("B")->overflowRun, "LK-BC");
}

TEST(Water, ARiserInTheLinkHoldsTheWaterAtItsTop) {
  Plan plan = train(2);
  sump::Run up = link("A", "B", 92, 93.9); // starts at mid-depth, stands up to 94, then falls
  up.vertices = {{ft(4, 0), feet(94)}};
  plan.runs.put(up);
  plan.runs.put(overflow("B", 93));
  EXPECT_NEAR(levelOf(studyOf(plan), "A"), 94, 1e-9);
}

TEST(Water, WithoutAnOverflowNothingIsKnown) {
  Plan plan = train(2);
  plan.runs.put(link("A", "B", 94, 93.9));
  const Study study = studyOf(plan);
  for (const VaultStudy& vault : study.vaults) {
    EXPECT_FALSE(vault.waterLevel);
    EXPECT_EQ(vault.workingVolume.value(), 0);
    EXPECT_EQ(vault.chambers[0].waterDepth.value(), 0);
  }
  EXPECT_EQ(study.workingVolume.value(), 0);
}

TEST(Water, AVaultThatNothingLeavesIsUnknownWhileOthersAreKnown) {
  Plan plan = train(2);
  plan.runs.put(overflow("B", 93));
  const Study study = studyOf(plan);
  EXPECT_TRUE(study.vault("B")->waterLevel);
  EXPECT_FALSE(study.vault("A")->waterLevel);
}

TEST(Water, AReversedLinkCarriesNoWaterOut) {
  Plan plan = train(2);
  plan.runs.put(link("B", "A", 94, 93.9));
  plan.runs.put(overflow("B", 93));
  const Study study = studyOf(plan);
  EXPECT_FALSE(study.vault("A")->waterLevel);
  EXPECT_NEAR(levelOf(study, "B"), 93, 1e-9) << "the link back is no way out";
}

TEST(Water, OfSeveralWaysOutTheLowestCounts) {
  Plan plan = train(1);
  plan.runs.put(overflow("A", 93.5));
  sump::Run lower = overflow("A", 93);
  lower.id = "OF-2";
  plan.runs.put(lower);
  const Study study = studyOf(plan);
  EXPECT_NEAR(levelOf(study, "A"), 93, 1e-9);
  EXPECT_EQ(study.vault("A")->overflowRun, "OF-2");
}

TEST(Water, DepthStopsAtTheLidAndAtTheFloor) {
  Plan plan = train(1);
  plan.runs.put(overflow("A", 99));
  EXPECT_NEAR(inFeet(studyOf(plan).vaults[0].chambers[0].waterDepth), 5, 1e-9);
  plan.runs.put(overflow("A", 89));
  EXPECT_EQ(studyOf(plan).vaults[0].chambers[0].waterDepth.value(), 0);
  EXPECT_EQ(studyOf(plan).workingVolume.value(), 0);
}

TEST(Water, AnOverflowWithoutALevelIsNoWayOut) {
  Plan plan = train(1);
  sump::Run unknown = overflow("A", 93);
  unknown.to.invert.reset();
  plan.runs.put(unknown);
  EXPECT_FALSE(studyOf(plan).vaults[0].waterLevel);
}

} // namespace
} // namespace sump::test
