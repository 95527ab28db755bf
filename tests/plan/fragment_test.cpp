// Cutting objects out of a plan and pasting them into it or another.

#include "core/plan/fragment.h"

#include "core/plan/consistency.h"
#include "core/plan/edits_objects.h"
#include "tests/support/nearly_same.h"
#include "tests/support/places.h"
#include "tests/support/random_plan.h"

#include <gtest/gtest.h>

namespace sump {

namespace {

Plan fragmentDepot() {
  return readPlanFile(sampleFile("transit-depot"));
}

void expectWhole(const Plan& plan) {
  for (const Problem& p : inconsistencies(plan))
    ADD_FAILURE() << p.pointer << " " << p.what;
}

} // namespace

TEST(Fragment, HoldsWhatWasChosenAndFreesTheRest) {
  const Plan plan = fragmentDepot();
  const Plan part = fragmentOf(plan, {"V1", "LK-1", "WW-1"});
  EXPECT_EQ(allObjects(part), (std::vector<Id>{"V1", "WW-1", "LK-1"}));
  EXPECT_EQ(part.project.title, "");
  EXPECT_EQ(part.project.units, plan.project.units);
  // The link leaves vault 1 and ended in vault 2, which is not here.
  const sump::Run& link = *part.runs.find("LK-1");
  EXPECT_EQ(link.from, plan.runs.find("LK-1")->from);
  EXPECT_EQ(link.to.kind, EndKind::Free);
  EXPECT_NEAR(distance(link.to.at, *sitePosition(plan, plan.runs.find("LK-1")->to)), 0, 1e-9);
  expectWhole(part);
}

TEST(Fragment, OfARunBetweenThingsThatStayIsTheRunWithFreeEnds) {
  const Plan part = fragmentOf(fragmentDepot(), {"SU-1"});
  ASSERT_EQ(part.runs.size(), 1u);
  EXPECT_EQ(part.runs[0].from.kind, EndKind::Free);
  EXPECT_EQ(part.runs[0].to.kind, EndKind::Free);
  EXPECT_TRUE(part.runs[0].to.invert) << "the level that its port gave";
}

TEST(Fragment, PastesIntoAnEmptyPlanUnderItsOwnIds) {
  const Plan part = fragmentOf(fragmentDepot(), {"V1", "V2", "IC-1", "LK-1"});
  const Pasted there = pasted(Plan(), part, {0, 0});
  EXPECT_EQ(there.added, (std::set<Id>{"V1", "V2", "IC-1", "LK-1"}));
  EXPECT_EQ(there.plan.vaults, part.vaults);
  EXPECT_EQ(there.plan.runs, part.runs);
}

TEST(Fragment, PastesBesideItselfUnderFreshIdsAndHangsOnItsOwn) {
  const Plan plan = fragmentDepot();
  const Plan part = fragmentOf(plan, {"V1", "IC-1", "RC-1"});
  const Pasted there = pasted(plan, part, {10, 0});
  expectWhole(there.plan);
  ASSERT_EQ(there.added.size(), 3u);
  for (const Id& id : there.added)
    EXPECT_FALSE(Locator(plan).find(id)) << id;
  const Vault& copy = there.plan.vaults.back();
  EXPECT_EQ(copy.centre, plan.vaults.find("V1")->centre + Point2(10, 0));
  for (const sump::Run& run : there.plan.runs) {
    if (!there.added.contains(run.id)) continue;
    EXPECT_TRUE(run.from.target == copy.id || run.to.target == copy.id) << run.id;
    if (run.eductor) {
      EXPECT_TRUE(std::ranges::any_of(
          copy.manways, [&](const Manway& m) { return m.id == run.eductor->manway; }));
    }
  }
}

TEST(Fragment, OfEverythingIsEverythingAgain) {
  for (unsigned seed = 0; seed < 30; ++seed) {
    std::mt19937 rng(seed);
    const Plan plan = test::randomPlan(rng);
    const std::vector<Id> ids = allObjects(plan);
    const std::set<Id> all(ids.begin(), ids.end());
    const Plan part = fragmentOf(plan, all);
    expectWhole(part);
    // Through the text, as the clipboard takes it.
    const Plan read = readPlanText(writePlanText(part), "clipboard");
    const Pasted twice = pasted(plan, read, {1, 2});
    expectWhole(twice.plan);
    EXPECT_EQ(allObjects(twice.plan).size(), 2 * ids.size());
    Plan bare = plan; // what a fragment leaves behind
    bare.project = part.project;
    bare.site = {};
    bare.basis = {};
    bare.locked.clear();
    bare.acceptances.clear();
    bare.revisions.clear();
    bare.limits.clear();
    EXPECT_TRUE(test::nearlySame(pasted(Plan(), part, {}).plan,
                                 [&] {
                                   Plan empty = bare;
                                   empty.project = {};
                                   return empty;
                                 }()))
        << seed;
  }
}

} // namespace sump
