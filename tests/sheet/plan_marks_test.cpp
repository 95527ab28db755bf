// What the plans name so that tables can be followed into them: numbers of parts, corners and
// chambers of vaults, where runs go on, where coordinates begin; and the boxes for firm and seal.

#include "core/exchange/plan_file.h"
#include "core/sheet/compose.h"
#include "core/sheet/continuations.h"
#include "core/sheet/plan_measures.h"
#include "tests/sheet/composed.h"
#include "tests/sheet/page_texts.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <map>
#include <sstream>

namespace sump {
namespace {

struct MarkedSample {
  const Review& review;
  const std::vector<Page>& pages;
};

const Page& markedPage(const MarkedSample& of, const std::string& number) {
  return *std::ranges::find(of.pages, number, &Page::number);
}

int countOf(const Page& page, const std::string& wanted) {
  const auto texts = testing::textsOf(page);
  return static_cast<int>(std::ranges::count(texts, wanted, &PageText::text));
}

/// The numbers that stand alone or in rows, as `4, 5`, on the plates with a border.
std::vector<int> boxedNumbers(const Page& page) {
  std::vector<int> numbers;
  bool boxed = false;
  for (const PageItem& item : page.items) {
    if (const auto* shape = std::get_if<PageShape>(&item)) {
      boxed = shape->role == PageRole::Plate && shape->line;
      continue;
    }
    const std::string& text = std::get<PageText>(item).text;
    if (boxed && text.find_first_not_of("0123456789, ") == std::string::npos) {
      std::istringstream in(text);
      for (std::string word; std::getline(in, word, ',');)
        numbers.push_back(std::stoi(word));
    }
    boxed = false;
  }
  return numbers;
}

/// The rows of the table of parts, by its first column under the heading.
int listedRows(const MarkedSample& of) {
  int most = 0;
  for (const Page& page : of.pages) {
    const auto texts = testing::textsOf(page);
    const auto title = std::ranges::find(texts, "VALVES AND PARTS IN THE RUNS", &PageText::text);
    if (title == texts.end()) continue;
    for (auto text = title; text != texts.end(); ++text) {
      const bool count =
          std::ranges::all_of(text->text, [](unsigned char c) { return std::isdigit(c) != 0; });
      if (count && !text->text.empty() && std::stoi(text->text) == most + 1) ++most;
    }
  }
  return most;
}

class PlanMarks : public ::testing::TestWithParam<const char*> {
protected:
  const MarkedSample of_{
      testing::sampleReview(GetParam()),
      testing::sampleSheets(GetParam(),
                            std::string(GetParam()) == "transit-depot" ? "arch-d" : "a1")};
};
INSTANTIATE_TEST_SUITE_P(Samples, PlanMarks,
                         ::testing::Values("transit-depot", "boatyard-pad", "ferry-quay"));

TEST_P(PlanMarks, EveryListedPartIsNumberedOnceOnThePlan) {
  std::vector<int> numbers = boxedNumbers(markedPage(of_, "P-101"));
  std::ranges::sort(numbers);
  const int rows = listedRows(of_);
  ASSERT_GT(rows, 15);
  ASSERT_EQ(numbers.size(), static_cast<std::size_t>(rows));
  for (int i = 0; i < rows; ++i)
    EXPECT_EQ(numbers[static_cast<std::size_t>(i)], i + 1);
}

TEST_P(PlanMarks, PlacementAndPlanNameCornersAndChambers) {
  const Page& page = markedPage(of_, "C-101");
  for (const Vault& vault : of_.review.plan.vaults) {
    for (int corner = 1; corner <= 4; ++corner) // once in the table, once on the plan
      EXPECT_EQ(countOf(page, vault.id + "-" + std::to_string(corner)), 2);
  }
  std::map<int, int> chambersWith; // this number
  for (const Vault& vault : of_.review.plan.vaults) {
    for (int i = 1; i <= static_cast<int>(chambers(vault).size()); ++i)
      ++chambersWith[i];
  }
  for (const auto& [number, count] : chambersWith) {
    const std::string name = "ch. " + std::to_string(number);
    EXPECT_EQ(countOf(page, name), count);
    const int inLegend = name == "ch. 1" ? 1 : 0;
    EXPECT_EQ(countOf(markedPage(of_, "P-101"), name), count + inLegend)
        << name << ", also where a leader must do";
  }
}

TEST_P(PlanMarks, TheOriginIsDrawnWhereTheNotesSay) {
  EXPECT_EQ(countOf(markedPage(of_, "G-001"), "N 0, E 0"), 1);
  bool told = false;
  for (const PageText& text : testing::textsOf(markedPage(of_, "C-101")))
    told = told || text.text.find("G-001") != std::string::npos;
  EXPECT_TRUE(told);
}

TEST_P(PlanMarks, EverySheetHasRoomForFirmAndSeal) {
  for (const Page& page : of_.pages) {
    EXPECT_EQ(countOf(page, "Firm"), 1) << page.number;
    EXPECT_EQ(countOf(page, "Seal or stamp"), 1) << page.number;
  }
}

TEST_P(PlanMarks, TheHeapHasOneHeight) {
  const Page& page = markedPage(of_, "C-102");
  for (const PageText& text : testing::textsOf(page))
    EXPECT_EQ(text.text.find("if all is heaped"), std::string::npos) << text.text;
}

SheetView viewOfTen() {
  SheetView view{"2", "", {{0, 0}, {100, 100}}, {5, 5}, 100};
  view.hidden = PaperBox{{0, 0}, {30, 30}}; // x to 3, y from 7
  return view;
}

TEST(ShownParts, EndAtTheFrameAndAtAViewThatLiesOverIt) {
  const auto parts = shownParts({{-2, 8}, {12, 8}}, viewOfTen());
  ASSERT_EQ(parts.size(), 1u);
  EXPECT_NEAR(parts[0].front().x, 3, 1e-9);
  EXPECT_NEAR(parts[0].back().x, 10, 1e-9);
}

TEST(ShownParts, GoOnBehindAViewThatLiesOverThem) {
  // In from below, under the corner that is hidden, and out to the right.
  const auto parts = shownParts({{2, 2}, {2, 8}, {8, 8}}, viewOfTen());
  ASSERT_EQ(parts.size(), 2u);
  EXPECT_NEAR(parts[0].back().y, 7, 1e-9);
  EXPECT_NEAR(parts[1].front().x, 3, 1e-9);
  EXPECT_NEAR(parts[1].back().x, 8, 1e-9);
}

TEST(ShownParts, AreWholeWhereNothingHidesThem) {
  const Polyline line{{4, 2}, {6, 2}, {6, 9}};
  const auto parts = shownParts(line, viewOfTen());
  ASSERT_EQ(parts.size(), 1u);
  EXPECT_EQ(parts[0].size(), 3u);
}

TEST(ShownParts, ARunThatLeavesIsMarkedOnItsLongestPartBeside) {
  const Polyline beside = longestBeside({{-5, 5}, {5, 5}, {13, 5}}, viewOfTen());
  ASSERT_EQ(beside.size(), 2u);
  EXPECT_NEAR(beside.front().x, -5, 1e-9);
  EXPECT_NEAR(beside.back().x, 0, 1e-9);
  EXPECT_EQ(longestBeside({{4, 2}, {6, 2}}, viewOfTen()).size(), 2u) << "all of one that stays";
}

TEST(NearestPair, MeetsTheSidesFromACornerOfEither) {
  const Ring square{{0, 0}, {4, 0}, {4, 4}, {0, 4}}, turned{{6, 2}, {8, 0}, {10, 2}, {8, 4}};
  for (const auto& [a, b] : {std::pair(square, turned), std::pair(turned, square)}) {
    const PlanMeasure nearest = nearestPair(a, b);
    EXPECT_NEAR(distance(nearest.from, nearest.to), 2, 1e-9);
    EXPECT_NEAR(nearest.from.y, 2, 1e-9);
    EXPECT_NEAR(nearest.from.x, a == square ? 4 : 6, 1e-9);
  }
}

TEST(ClearestSide, KeepsOffOtherOutlinesAndTheMarksOfCuts) {
  const Ring ring{{0, 0}, {4, 0}, {4, 2}, {0, 2}};
  const std::vector<Ring> others{{{0, -1.2}, {4, -1.2}, {4, -0.1}, {0, -0.1}}};
  const std::vector<Point2> none, cut{{2, 2}};
  const PlanMeasure upper = clearestSide(ring, 0, {others, none, 0.4, 1.0});
  EXPECT_EQ(upper.from.y, 2);
  EXPECT_EQ(upper.off, 0.4);
  const PlanMeasure farther = clearestSide(ring, 0, {others, cut, 0.4, 1.0});
  EXPECT_EQ(farther.from.y, 2);
  EXPECT_EQ(farther.off, 1.0);
}

TEST(ClearestSide, LeavesAGapToTheDimensionThatIsThere) {
  const Ring ring{{0, 0}, {4, 0}, {4, 2}, {0, 2}};
  const PlanMeasure lower = clearestSide(ring, 0, {{}, {}, 0.4, 1.0});
  EXPECT_EQ(lower.from.y, 0);
  EXPECT_EQ(clearestSide(ring, 0, {{}, {}, 0.4, 1.0, {lineOf(lower)}}).from.y, 2);
}

} // namespace
} // namespace sump
