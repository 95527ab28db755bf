// Which interconnects share a detail, and what it says of them.

#include "core/sheet/typical_interconnect.h"

#include "tests/sheet/composed.h"

#include <gtest/gtest.h>

#include <utility>

namespace sump {
namespace {

using Ids = std::vector<Id>;

template <class Change> Ids alikeAfter(const Id& changed, Change change) {
  Plan plan = testing::samplePlan("ferry-quay");
  sump::Run run = *plan.runs.find(changed);
  change(run);
  plan.runs.put(std::move(run));
  const Review reviewed = review(plan, builtinCatalog());
  return alikeInterconnects(reviewed.plan, reviewed.study, "IC-1");
}

TEST(TypicalInterconnect, HoldsForThoseAtTheSameLevelsInOtherVaults) {
  // IC-5 lies lower, before the suction.
  const Review& reviewed = testing::sampleReview("ferry-quay");
  const Ids upper{"IC-1", "IC-2", "IC-3", "IC-4"};
  for (const Id& id : upper)
    EXPECT_EQ(alikeInterconnects(reviewed.plan, reviewed.study, id), upper) << id;
  EXPECT_EQ(alikeInterconnects(reviewed.plan, reviewed.study, "IC-5"), Ids{"IC-5"});
}

TEST(TypicalInterconnect, HoldsForNoneThatDiffers) {
  const Ids rest{"IC-1", "IC-2", "IC-4"};
  EXPECT_EQ(alikeAfter("IC-3", [](sump::Run& r) { r.from.invert = *r.from.invert + metres(0.01); }),
            rest);
  EXPECT_EQ(alikeAfter("IC-3", [](sump::Run& r) { r.size = "4"; }), rest);
  EXPECT_EQ(alikeAfter("IC-3", [](sump::Run& r) { r.to.fitting = EndFitting::Tee; }), rest);
  // As long as before, but off the middle of its baffle.
  EXPECT_EQ(alikeAfter("IC-3",
                       [](sump::Run& r) {
                         r.from.at.x += 0.05;
                         r.to.at.x += 0.05;
                       }),
            rest);
}

TEST(TypicalInterconnect, IsNotThatOfADeeperVault) {
  Plan plan = testing::samplePlan("ferry-quay");
  Vault vault = *plan.vaults.find(plan.runs.find("IC-4")->from.target);
  vault.floor = vault.floor - metres(0.1);
  plan.vaults.put(vault);
  const Review reviewed = review(plan, builtinCatalog());
  EXPECT_EQ(alikeInterconnects(reviewed.plan, reviewed.study, "IC-1"),
            (Ids{"IC-1", "IC-2", "IC-3"}));
}

TEST(TypicalInterconnect, IsPointedAtOnceInEachVault) {
  const Review& reviewed = testing::sampleReview("ferry-quay");
  const SheetJob job{reviewed, builtinCatalog(), *paperSize("a1"), 0, {}};
  EXPECT_TRUE(isFirstInItsVault(job, "IC-1"));
  EXPECT_FALSE(isFirstInItsVault(job, "IC-2")); // in the same vault
  EXPECT_TRUE(isFirstInItsVault(job, "IC-3"));
  EXPECT_FALSE(isFirstInItsVault(job, "LK-1"));
}

TEST(TypicalInterconnect, SaysInWhichVaultsItHolds) {
  const Review& reviewed = testing::sampleReview("ferry-quay");
  const SheetJob job{reviewed, builtinCatalog(), *paperSize("a1"), 0, {}};
  const Ids alike = alikeInterconnects(reviewed.plan, reviewed.study, "IC-1");
  EXPECT_EQ(interconnectTags(job, alike), "IC-1 (IC-2, IC-3, IC-4 similar)");
  const auto notes = interconnectNotes(job, alike);
  ASSERT_EQ(notes.size(), 2u);
  EXPECT_EQ(notes[1], "The same levels of lid, water, pipe and floor and the same lengths hold for "
                      "IC-3 in Vault 2, settling; IC-4 in Vault 3, settling.");
  EXPECT_EQ(interconnectNotes(job, {"IC-5"}).size(), 1u);
}

} // namespace
} // namespace sump
