// The shop sheet says every cut of the cutting list, and no text lies on another.

#include "core/sheet/cutting_sheet.h"

#include "core/exchange/plan_file.h"
#include "core/geometry/polygon.h"
#include "core/sheet/compose.h"
#include "core/units/print.h"
#include "tests/reference/two_vault_plan.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace sump::test {
namespace {

Review reviewOf(const std::string& name) {
  const Plan plan = name == "two-vault" ? twoVaultPlan() : readPlanFile(sampleFile(name));
  return review(plan, builtinCatalog());
}

CuttingList cutsOf(const Review& review) {
  return cuttingList(review.plan, review.study, builtinCatalog(), review.limits.length(kKerfLimit),
                     review.limits.length(kTrimLimit));
}

std::string allText(const std::vector<Page>& pages) {
  std::string all;
  for (const Page& page : pages) {
    for (const PageItem& item : page.items) {
      if (const auto* text = std::get_if<PageText>(&item)) all += text->text + " ";
    }
  }
  return all;
}

class CuttingSheet : public ::testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Plans, CuttingSheet,
                         ::testing::Values("two-vault", "transit-depot", "boatyard-pad",
                                           "ferry-quay"));

TEST_P(CuttingSheet, SaysEveryCutAndCount) {
  const Review reviewed = reviewOf(GetParam());
  const CuttingList cuts = cutsOf(reviewed);
  const bool metric = reviewed.plan.project.units == UnitSystem::Metric;
  const std::string text =
      allText(composeCuttingSheet(reviewed, cuts, shopPaper(reviewed.plan.project.units)));
  for (const CuttingGroup& group : cuts.groups) {
    EXPECT_NE(text.find(group.name + " " + group.size +
                        "\": " + std::to_string(group.sticks.size()) + " x "),
              std::string::npos);
    for (const StickCut& cut : group.cuts) {
      if (cut.length == group.stick) continue;
      const std::string length =
          metric ? fixed(inMillimetres(cut.length), 0) : inchesOnly(cut.length);
      const bool said = text.find(cutMark(cut) + " =") != std::string::npos ||
                        text.find(cutMark(cut) + ",") != std::string::npos;
      EXPECT_TRUE(said) << cutMark(cut);
      EXPECT_NE(text.find(length), std::string::npos) << length;
    }
  }
}

TEST_P(CuttingSheet, SaysBesideEachSizeWhatIsLeftToSpare) {
  const Review reviewed = reviewOf(GetParam());
  const CuttingList cuts = cutsOf(reviewed);
  const bool metric = reviewed.plan.project.units == UnitSystem::Metric;
  const std::string text =
      allText(composeCuttingSheet(reviewed, cuts, shopPaper(reviewed.plan.project.units)));
  for (const CuttingGroup& group : cuts.groups) {
    Length longest;
    for (const CutStick& stick : group.sticks)
      longest = std::max(longest, stick.offcut);
    std::string told = "none";
    if (longest >= feet(1)) told = metric ? fixed(inMillimetres(longest), 0) : inchesOnly(longest);
    const std::size_t head = text.find(group.name + " " + group.size + "\": ");
    ASSERT_NE(head, std::string::npos);
    const std::string lead = "; to spare: ";
    const std::size_t spare = text.find(lead, head);
    ASSERT_NE(spare, std::string::npos);
    EXPECT_EQ(text.substr(spare + lead.size(), told.size()), told) << group.name << group.size;
  }
}

TEST_P(CuttingSheet, NoTextTouchesAnotherOrLeavesThePaper) {
  const Review reviewed = reviewOf(GetParam());
  for (const char* paper : {"letter", "a4"}) {
    for (const Page& page : composeCuttingSheet(reviewed, cutsOf(reviewed), paper)) {
      std::vector<Ring> boxes;
      for (const PageItem& item : page.items) {
        if (const auto* text = std::get_if<PageText>(&item)) boxes.push_back(textBox(*text));
      }
      for (std::size_t i = 0; i < boxes.size(); ++i) {
        for (const Point2& p : boxes[i]) {
          EXPECT_GE(p.x, 0);
          EXPECT_LE(p.x, page.width);
          EXPECT_LE(p.y, page.height);
        }
        for (std::size_t k = 0; k < i; ++k)
          EXPECT_FALSE(overlaps(boxes[i], boxes[k])) << page.number << " " << i << " " << k;
      }
    }
  }
}

/// Numbered so that no sheet of the set has its number.
TEST_P(CuttingSheet, TakesOnePageOfItsOwnNumber) {
  const Review reviewed = reviewOf(GetParam());
  for (const char* paper : {"letter", "a4"}) {
    const auto pages = composeCuttingSheet(reviewed, cutsOf(reviewed), paper);
    ASSERT_EQ(pages.size(), 1u) << paper;
    EXPECT_EQ(pages[0].number, "Z-601");
    for (const SheetKind& kind : sheetKinds())
      EXPECT_FALSE(kind.series.starts_with("Z")) << kind.key;
  }
}

TEST_P(CuttingSheet, SticksAddUp) {
  const Review reviewed = reviewOf(GetParam());
  const CuttingList cuts = cutsOf(reviewed);
  std::size_t bought = 0;
  for (const CuttingGroup& group : cuts.groups)
    bought += group.sticks.size();
  std::size_t said = 0; // `3 x` before each row
  for (const Page& page : composeCuttingSheet(reviewed, cuts, "letter")) {
    for (const PageItem& item : page.items) {
      const auto* text = std::get_if<PageText>(&item);
      if (text != nullptr && text->bold && text->text.ends_with(" x"))
        said += std::stoul(text->text);
    }
  }
  EXPECT_EQ(said, bought);
}

/// What no page takes goes on over several, in the readable size.
TEST(CuttingSheetPaper, LongListsTakeMorePages) {
  const Review reviewed = reviewOf("ferry-quay");
  CuttingList cuts = cutsOf(reviewed);
  const std::vector<CuttingGroup> once = cuts.groups;
  for (int i = 0; i < 5; ++i)
    cuts.groups.insert(cuts.groups.end(), once.begin(), once.end());
  const auto pages = composeCuttingSheet(reviewed, cuts, "letter");
  ASSERT_GE(pages.size(), 3u);
  EXPECT_EQ(pages.back().number, "Z-60" + std::to_string(pages.size()));
}

TEST(CuttingSheetPaper, KnowsItsPapersAndAnEmptyPlan) {
  const Review reviewed = reviewOf("two-vault");
  EXPECT_THROW(composeCuttingSheet(reviewed, cutsOf(reviewed), "a0"), std::invalid_argument);
  const Review empty = review(Plan{}, builtinCatalog());
  EXPECT_NE(allText(composeCuttingSheet(empty, cutsOf(empty), "a4")).find("no pipe to cut"),
            std::string::npos);
}

} // namespace
} // namespace sump::test
