// What changed since an earlier plan, on the sheets: clouds on the plan, lists with the revisions.

#include "core/exchange/compare_plans.h"
#include "core/exchange/plan_file.h"
#include "core/geometry/polygon.h"
#include "core/plan/edits_objects.h"
#include "core/sheet/border.h"
#include "core/sheet/compose.h"
#include "core/sheet/revision_clouds.h"
#include "tests/sheet/page_texts.h"
#include "tests/support/golden.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

namespace sump {
namespace {

struct CloudCase {
  std::string plan, paper;
};
void PrintTo(const CloudCase& c, std::ostream* out) {
  *out << c.plan << " on " << c.paper;
}

Plan cloudSample(const std::string& name) {
  return readPlanFile(sampleFile(name));
}

/// A vault lower, another moved, a run resized, one gone.
Plan revised(Plan plan) {
  plan.project.revision = "C";
  Vault first = plan.vaults.front(), last = plan.vaults.back();
  first.floor = first.floor - metres(0.2);
  last.centre = last.centre + Point2{0.4, 0};
  plan.vaults.put(first);
  plan.vaults.put(last);
  Run run = plan.runs.front();
  run.size = "8";
  plan.runs.put(run);
  return eraseObjects(plan, {plan.runs.back().id});
}

int count(const std::vector<Page>& pages, const std::string& series, const std::string& words) {
  int n = 0;
  for (const Page& page : pages) {
    if (!page.number.starts_with(series)) continue;
    for (const PageText& text : testing::textsOf(page))
      n += text.text == words ? 1 : 0;
  }
  return n;
}

class RevisionClouds : public ::testing::TestWithParam<CloudCase> {
protected:
  const Plan plan_ = cloudSample(GetParam().plan);
  const Review before_ = review(plan_, builtinCatalog());
  const Review after_ = review(revised(plan_), builtinCatalog());
  const PlanComparison comparison_ = comparePlans(before_, after_, {}, "issued.sump");
  std::vector<Page> pages(const PlanComparison* changes) const {
    SheetOptions options;
    options.paper = GetParam().paper;
    options.sheets = {"plan", "findings"};
    options.changes = changes;
    return composeSheets(after_, options);
  }
  /// With the changes clouded; composed once, as several tests look at them.
  const std::vector<Page>& clouded() const {
    static std::map<std::pair<std::string, std::string>, std::vector<Page>> known;
    std::vector<Page>& found = known[{GetParam().plan, GetParam().paper}];
    if (found.empty()) found = pages(&comparison_);
    return found;
  }
};

TEST_P(RevisionClouds, EveryCloudHasItsTriangleAndTextsKeepClear) {
  const std::vector<Page>& all = clouded();
  // Moved vault, lowered vault, resized run, removed run.
  for (const char* number : {"1", "2", "3", "4"})
    EXPECT_GE(count(all, "P-1", number), 1) << "cloud " << number;
  EXPECT_GE(count(all, "P-1", "C"), 4);
  for (const Page& page : all) {
    const PaperBox frame = drawingSpace(page);
    std::vector<PageText> drawn = testing::textsOf(page);
    for (std::size_t i = 0; i < drawn.size(); ++i) {
      const PaperBox box = around(textBox(drawn[i]));
      if (drawn[i].text.size() > 2) {
        EXPECT_TRUE(frame.holds(box)) << page.number << ": " << drawn[i].text;
      }
      for (std::size_t k = i + 1; k < drawn.size(); ++k) {
        if (!box.meets(around(textBox(drawn[k])))) continue;
        EXPECT_FALSE(overlaps(textBox(drawn[i]), textBox(drawn[k])))
            << page.number << ": '" << drawn[i].text << "' and '" << drawn[k].text << "'";
      }
    }
  }
}

TEST_P(RevisionClouds, ListsTellEveryChange) {
  std::string said;
  for (const Page& page : clouded()) {
    if (!page.number.starts_with("G-6")) continue;
    for (const PageText& text : testing::textsOf(page))
      said += text.text + " ";
  }
  ASSERT_NE(said.find("CHANGES SINCE issued.sump, REVISION C"), std::string::npos) << said;
  ASSERT_NE(said.find("CHANGE IN THE BILL OF MATERIALS"), std::string::npos);
  for (const PlanChange& change : comparison_.changes) {
    const std::string tail = change.kind == ChangeKind::Removed ? "removed" : change.after;
    EXPECT_NE(said.find(tail), std::string::npos) << told(change);
  }
  ASSERT_FALSE(comparison_.bill.empty());
}

TEST_P(RevisionClouds, WithoutAnEarlierPlanNothingIsClouded) {
  const PlanComparison none{"issued.sump", {}, {}};
  const auto plain = pages(nullptr), same = pages(&none);
  for (const Page& page : plain) {
    if (!page.number.starts_with("P-1")) continue;
    const auto other = std::find_if(same.begin(), same.end(),
                                    [&](const Page& p) { return p.number == page.number; });
    ASSERT_NE(other, same.end());
    EXPECT_EQ(page.items.size(), other->items.size());
  }
  EXPECT_EQ(count(plain, "G-6", "CHANGE IN THE BILL OF MATERIALS"), 0);
  EXPECT_EQ(count(same, "G-6", "Nothing to buy changed."), 1);
}

/// A resized run and a lowered vault of the depot.
struct Resized {
  Review before = review(cloudSample("transit-depot"), builtinCatalog());
  Review after = review(changed(before.plan), builtinCatalog());
  PlanComparison comparison = comparePlans(before, after, {}, "issued.sump");
  SheetJob job{after, builtinCatalog(), *paperSize("arch-d"), 0, {}, &comparison};
  SheetView view{"1", "PLAN", {{20, 20}, {880, 580}}, {15, 15}, 50, {}};

  static Plan changed(Plan plan) {
    plan.project.revision = "C";
    Run run = *plan.runs.find("OF-1");
    run.size = "8";
    plan.runs.put(run);
    Vault vault = plan.vaults.front();
    vault.floor = vault.floor - metres(0.2);
    plan.vaults.put(vault);
    return plan;
  }
};

/// Nothing on the page but the clouds, so that this golden file changes with the clouds alone.
TEST(RevisionCloudsGolden, CloudsOfARunAndAVault) {
  const Resized of;
  Page page;
  page.number = "P-101";
  page.title = "Clouds";
  page.width = 914;
  page.height = 610;
  LabelBoard board(of.view, {}, page);
  EXPECT_TRUE(drawClouds(revisionClouds(of.job), of.view, nullptr, board, page).empty());
  Block list = planChangeBlock(of.job, 200);
  place(list, {30, 500}, 580, page);
  testing::expectGolden("sheet/golden/revision-clouds.txt", dump(page));
}

/// The cloud stays within an arc's height of its distance from the line; a box would not.
TEST(RevisionCloudsShape, ALongRunIsFollowed) {
  const Resized of;
  const CloudSet set = revisionClouds(of.job);
  ASSERT_EQ(set.clouds.size(), 2u);
  const Cloud& cloud = set.clouds[0].lines.empty() ? set.clouds[1] : set.clouds[0];
  ASSERT_EQ(cloud.lines.size(), 1u);
  EXPECT_FALSE(cloud.rest);
  Page page;
  LabelBoard board(of.view, {}, page);
  CloudSet only{"C", {cloud}, {1}};
  drawClouds(only, of.view, nullptr, board, page);
  Polyline line;
  for (Point2 p : cloud.lines[0])
    line.push_back(of.view.toPaper(p));
  std::size_t points = 0;
  for (const PageItem& item : page.items) {
    const auto* shape = std::get_if<PageShape>(&item);
    if (shape == nullptr || !shape->line || shape->line->width != 0.5) continue;
    for (Point2 p : shape->points) {
      EXPECT_LT(distanceToLine(p, line), 7.5) << p.x << " " << p.y;
      EXPECT_GT(distanceToLine(p, line), 1.2) << p.x << " " << p.y;
      ++points;
    }
  }
  EXPECT_GT(points, 200u);
}

TEST(RevisionCloudsWords, ANameThatSaysTheNounIsNotDoubled) {
  PlanChange change;
  change.noun = "vault";
  change.called = "Vault 1, settling";
  EXPECT_EQ(objectWords(change), "Vault 1, settling");
  change.called = "V1";
  EXPECT_EQ(objectWords(change), "vault V1");
  change.called = "Vaulted cellar";
  EXPECT_EQ(objectWords(change), "vault Vaulted cellar");
  change.called.clear();
  EXPECT_EQ(objectWords(change), "vault");
}

INSTANTIATE_TEST_SUITE_P(Papers, RevisionClouds,
                         ::testing::Values(CloudCase{"transit-depot", "arch-d"},
                                           CloudCase{"transit-depot", "ansi-b"},
                                           CloudCase{"boatyard-pad", "a1"},
                                           CloudCase{"boatyard-pad", "a3"},
                                           CloudCase{"ferry-quay", "a1"}));

} // namespace
} // namespace sump
