// Two plans held against each other: nothing that the plan file shows goes untold, and what is told
// reads as a person would say it.

#include "core/exchange/change_lists.h"
#include "core/exchange/compare_plans.h"
#include "core/exchange/plan_file.h"
#include "core/plan/edits.h"
#include "core/plan/edits_objects.h"
#include "tests/support/places.h"
#include "tests/support/random_editor.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <set>

namespace sump {
namespace {

const Limits& limits() {
  return builtinCatalog().limits;
}

Plan depot() {
  return readPlanFile(sampleFile("transit-depot"));
}

std::vector<PlanChange> changes(const Plan& before, const Plan& after) {
  return changesBetween(before, after, limits());
}

std::string all(const std::vector<PlanChange>& list) {
  std::string text;
  for (const PlanChange& change : list)
    text += std::string(name(change.kind)) + " " + told(change) + "\n";
  return text;
}

std::multiset<std::string> subjects(const std::vector<PlanChange>& list, ChangeKind kind) {
  std::multiset<std::string> found;
  for (const PlanChange& change : list) {
    if (change.kind == kind) found.insert(change.object + "/" + change.part + "/" + change.what);
  }
  return found;
}

/// What is added one way is removed the other way, and as much is told.
void expectMirrored(const Plan& before, const Plan& after) {
  const auto there = changes(before, after), back = changes(after, before);
  EXPECT_EQ(there.size(), back.size()) << all(there) << "---\n" << all(back);
  EXPECT_EQ(subjects(there, ChangeKind::Added), subjects(back, ChangeKind::Removed));
  EXPECT_EQ(subjects(there, ChangeKind::Removed), subjects(back, ChangeKind::Added));
}

void expectNoneUntold(const Plan& before, const Plan& after) {
  const auto list = changes(before, after);
  ASSERT_EQ(list.empty(), writePlanText(before) == writePlanText(after)) << all(list);
  for (const PlanChange& change : list) {
    ASSERT_FALSE(change.noun.empty()) << told(change);
    ASSERT_TRUE(change.before != change.after || !change.difference.empty()) << told(change);
  }
}

TEST(ComparePlans, TheSamePlanHasNoChanges) {
  const Plan plan = depot();
  EXPECT_TRUE(changes(plan, plan).empty());
  EXPECT_TRUE(changes(plan, readPlanText(writePlanText(plan), "copy")).empty());
}

TEST(ComparePlansProperty, EveryRandomEditIsTold) {
  int told = 0;
  for (unsigned seed = 0; seed < 15; ++seed) {
    test::RandomEditor editor(seed);
    const Plan start = editor.start();
    Plan plan = start;
    for (int i = 0; i < 25; ++i) {
      const Plan next = editor.edit(plan);
      expectNoneUntold(plan, next);
      expectMirrored(plan, next);
      told += changes(plan, next).empty() ? 0 : 1;
      plan = next;
    }
    expectNoneUntold(start, plan);
    expectMirrored(start, plan);
  }
  EXPECT_GT(told, 150);
}

TEST(ComparePlansProperty, StrangersDifferBothWays) {
  std::mt19937 rng(7);
  Plan before = test::randomPlan(rng);
  for (int i = 0; i < 20; ++i) {
    const Plan after = test::randomPlan(rng); // of the same ids for the most part
    expectNoneUntold(before, after);
    expectMirrored(before, after);
    before = after;
  }
}

/// Every number and text of a plan file, by pointer.
std::vector<nlohmann::json::json_pointer> leaves(const nlohmann::json& root) {
  std::vector<nlohmann::json::json_pointer> found;
  const nlohmann::json flat = root.flatten();
  for (const auto& [pointer, value] : flat.items()) {
    if (value.is_primitive()) found.emplace_back(pointer);
  }
  return found;
}

TEST(ComparePlansProperty, EveryFieldOfTheFileIsCompared) {
  std::mt19937 rng(11);
  std::size_t tried = 0;
  for (int i = 0; i < 2; ++i) {
    const std::string text = writePlanText(test::randomPlan(rng));
    const Plan before = readPlanText(text, "before");
    const auto root = nlohmann::json::parse(text);
    for (const auto& pointer : leaves(root)) {
      auto changed = root;
      auto& value = changed[pointer];
      if (value.is_boolean()) {
        value = !value.get<bool>();
      } else if (value.is_number()) {
        value = value.get<double>() + (value.is_number_integer() ? 1 : 1e-6);
      } else if (value.is_string()) {
        value = value.get<std::string>() + "x";
      }
      try {
        expectNoneUntold(before, readPlanText(changed.dump(), "after"));
        ++tried;
      } catch (const InputError&) { // no plan any more: an id or a word that must not change
      }
      if (HasFatalFailure()) FAIL() << pointer.to_string();
    }
  }
  EXPECT_GT(tried, 500U);
}

const PlanChange* find(const std::vector<PlanChange>& list, ChangeKind kind, const Id& object) {
  const auto found = std::find_if(list.begin(), list.end(), [&](const PlanChange& change) {
    return change.kind == kind && change.object == object;
  });
  return found == list.end() ? nullptr : &*found;
}

TEST(ComparePlans, AMovedVaultSaysHowFarAndWhichWay) {
  const Plan before = depot();
  const Vault& vault = before.vaults.front();
  Plan after = before;
  Vault moved = vault;
  moved.centre = vault.centre + Point2{0.3048 * 3, 0.3048 * 3}; // 3 ft east and north
  after.vaults.put(moved);
  const auto list = changes(before, after);
  ASSERT_EQ(list.size(), 1U) << all(list);
  EXPECT_EQ(list[0].kind, ChangeKind::Moved);
  EXPECT_EQ(list[0].object, vault.id);
  // sqrt(18) ft = 4.2426 ft = 4 ft 2.912 in, to 1/16 in: 4'-2 15/16".
  EXPECT_EQ(list[0].difference, "4'-2 15/16\" toward N 45\u00b0 E");
  ASSERT_TRUE(list[0].extent);
  EXPECT_NEAR(lerp(list[0].extent->low, list[0].extent->high, 0.5).x, moved.centre.x, 1e-9);
}

TEST(ComparePlans, LevelsArePrintedOnTheDatum) {
  const Plan before = depot();
  Plan after = before;
  Vault lower = before.vaults.front();
  lower.floor = lower.floor - feet(0.25);
  after.vaults.put(lower);
  const auto list = changes(before, after);
  ASSERT_EQ(list.size(), 1U) << all(list);
  EXPECT_EQ(list[0].kind, ChangeKind::Level);
  EXPECT_EQ(list[0].what, "floor");
  EXPECT_EQ(list[0].difference, "-0.25");
}

TEST(ComparePlans, WhatWouldReadAlikeIsToldExactly) {
  const Plan before = depot();
  Plan after = before;
  Vault wider = before.vaults.front();
  wider.width = wider.width + metres(1e-5);
  after.vaults.put(wider);
  const auto list = changes(before, after);
  ASSERT_EQ(list.size(), 1U);
  EXPECT_EQ(list[0].kind, ChangeKind::Resized);
  EXPECT_NE(list[0].before, list[0].after);
}

TEST(ComparePlans, PartsAreCountedAndNamed) {
  const Plan before = depot();
  Plan after = before;
  Vault vault = before.vaults.front();
  vault.manways.push_back({"MH-NEW", {0, 0}, feet(2), {}, false});
  after.vaults.put(vault);
  const auto list = changes(before, after);
  ASSERT_EQ(list.size(), 2U) << all(list);
  EXPECT_EQ(list[0].kind, ChangeKind::Added);
  EXPECT_EQ(list[0].part, "MH-NEW");
  EXPECT_EQ(list[0].object, vault.id);
  EXPECT_EQ(list[1].kind, ChangeKind::Count);
  EXPECT_EQ(list[1].after, std::to_string(vault.manways.size()));
}

TEST(ComparePlans, AnAddedCornerLeavesTheOthersUntold) {
  const Plan before = depot();
  const sump::Run* run = nullptr;
  for (const sump::Run& one : before.runs) {
    if (one.vertices.size() >= 2) run = &one;
  }
  ASSERT_NE(run, nullptr);
  const Plan after = insertVertex(
      before, run->id, 1, {lerp(run->vertices[0].at, run->vertices[1].at, 0.5) + Point2{1, 1}, {}});
  const auto list = changes(before, after);
  const PlanChange* count = find(list, ChangeKind::Count, run->id);
  ASSERT_NE(count, nullptr) << all(list);
  EXPECT_EQ(count->difference, "corner 2 new");
}

TEST(ComparePlans, FactsBasisAndLimitsAreKindsOfTheirOwn) {
  const Plan before = depot();
  Plan after = before;
  after.project.revision = before.project.revision + "2";
  after.basis.water.altitude = before.basis.water.altitude.value_or(metres(0)) + metres(100);
  after.limits["storage.minimum"] = 15;
  const auto list = changes(before, after);
  ASSERT_EQ(list.size(), 3U) << all(list);
  EXPECT_EQ(list[0].kind, ChangeKind::Project);
  EXPECT_EQ(list[1].kind, ChangeKind::Basis);
  EXPECT_EQ(list[2].kind, ChangeKind::Limits);
  // 15 m3 / 0.003785411784 m3 = 3,962.6 gal.
  EXPECT_EQ(list[2].after, "3,963 gal");
  // By its name, and for other programs by its id.
  EXPECT_EQ(subject(list[2]), "limits: " + limits().at("storage.minimum").title);
  EXPECT_EQ(list[2].part, "storage.minimum");
}

TEST(CompareBills, DifferencesAreThoseOfTheTwoBills) {
  const Plan plan = depot();
  const Review before = review(plan, builtinCatalog());
  const Review after = review(eraseObjects(plan, {plan.runs.back().id}), builtinCatalog());
  const PlanComparison comparison = comparePlans(before, after, {}, "depot");
  ASSERT_FALSE(comparison.bill.empty());
  const Bill was = buyList(before).bill, is = buyList(after).bill;
  for (const BillChange& change : comparison.bill) {
    const auto amount = [&](const Bill& bill) {
      double sum = 0;
      for (const BillLine& line : bill.lines) {
        const bool same = line.key == change.key && line.description == change.description &&
                          change.size.rfind(line.size, 0) == 0 && line.trade == change.trade;
        if (same && line.order) {
          sum += inUnit(*line.order, line.unit, plan.project.units);
        }
      }
      return sum;
    };
    ASSERT_TRUE(change.difference()) << change.description;
    EXPECT_NEAR(*change.difference(), amount(is) - amount(was), 0.11) << change.description;
    EXPECT_NE(*change.difference(), 0) << change.description;
  }
  EXPECT_TRUE(comparePlans(before, before, {}, "depot").empty());
}

TEST(CompareLists, JsonAndCsvHoldEveryChange) {
  const Plan plan = depot();
  const Review before = review(plan, builtinCatalog());
  const Review after = review(eraseObjects(plan, {plan.runs.back().id}), builtinCatalog());
  const PlanComparison comparison = comparePlans(before, after, {}, "depot.sump");
  const auto json = nlohmann::json::parse(comparisonJson(comparison));
  EXPECT_EQ(json.at("earlier"), "depot.sump");
  EXPECT_EQ(json.at("changes").size(), comparison.changes.size());
  EXPECT_EQ(json.at("bill").size(), comparison.bill.size());
  const std::string csv = comparisonCsv(comparison);
  EXPECT_EQ(static_cast<std::size_t>(std::count(csv.begin(), csv.end(), '\n')),
            comparison.changes.size() + comparison.bill.size() + 3); // two headings, a line between
}

} // namespace
} // namespace sump
