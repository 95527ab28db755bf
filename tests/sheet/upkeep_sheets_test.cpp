// The operations sheets: complete, legible, in the frame, and with the Study's own figures.

#include "core/sheet/upkeep_sheets.h"

#include "core/exchange/plan_file.h"
#include "core/geometry/polygon.h"
#include "core/rules/review.h"
#include "tests/sheet/composed.h"
#include "tests/sheet/page_texts.h"
#include "tests/sheet/small_plan.h"
#include "tests/support/golden.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>

namespace sump {
namespace {

Plan upkeepPlan(const std::string& name) {
  return name == "empty" ? Plan{} : testing::samplePlan(name);
}

struct SheetCase {
  std::string plan, paper;
};
void PrintTo(const SheetCase& c, std::ostream* out) {
  *out << c.plan << " on " << c.paper;
}

class UpkeepPages : public ::testing::TestWithParam<SheetCase> {
protected:
  const Review review_ = review(upkeepPlan(GetParam().plan), builtinCatalog());
  const UpkeepPlan upkeep_ = upkeep(review_.plan, review_.study, builtinUpkeep());
  const std::vector<Page> pages_ = composeUpkeepSheets(review_.plan, upkeep_, GetParam().paper);

  bool told(const std::string& words) const {
    return std::ranges::any_of(pages_, [&](const Page& page) {
      std::string all;
      for (const PageText& text : testing::textsOf(page))
        all += text.text;
      return testing::squeezed(all).find(testing::squeezed(words)) != std::string::npos;
    });
  }
};

TEST_P(UpkeepPages, NoTextTouchesAnother) {
  for (const Page& page : pages_) {
    const auto all = testing::textsOf(page);
    std::vector<Ring> rings;
    for (const PageText& text : all)
      rings.push_back(textBox(text));
    for (std::size_t i = 0; i < all.size(); ++i) {
      for (std::size_t k = i + 1; k < all.size(); ++k) {
        EXPECT_FALSE(overlaps(rings[i], rings[k]))
            << page.number << ": '" << all[i].text << "' and '" << all[k].text << "'";
      }
    }
  }
}

TEST_P(UpkeepPages, EverythingStandsInTheFrame) {
  for (const Page& page : pages_) {
    EXPECT_GT(page.height, page.width) << "upright";
    const auto in = [&](Point2 p) { // ISO 5457: 20 mm filing margin, 10 mm elsewhere
      return p.x > 19.9 && p.y > 9.9 && p.x < page.width - 9.9 && p.y < page.height - 9.9;
    };
    for (const PageItem& item : page.items) {
      if (const auto* text = std::get_if<PageText>(&item)) {
        EXPECT_GE(text->height, 2.4) << text->text;
        for (Point2 p : textBox(*text))
          EXPECT_TRUE(in(p)) << page.number << ": " << text->text;
      } else {
        for (Point2 p : std::get<PageShape>(item).points)
          EXPECT_TRUE(in(p)) << page.number << " at " << p.x << "," << p.y;
      }
    }
  }
}

TEST_P(UpkeepPages, EveryStepTaskCautionAndFigureIsThereUncut) {
  for (const UpkeepStep& step : upkeep_.startUp) {
    EXPECT_TRUE(told(step.title + "date, initials" + step.text)) << step.title;
    EXPECT_TRUE(step.caution.empty() || told("CAUTION: " + step.caution)) << step.caution;
  }
  for (const UpkeepTask& task : upkeep_.tasks) {
    EXPECT_TRUE(told(task.step.title + recurring(task.every) + task.step.text)) << task.step.title;
    EXPECT_TRUE(told("Interval: " + task.basis)) << task.basis;
  }
  for (const std::string& caution : upkeep_.cautions)
    EXPECT_TRUE(told(caution)) << caution;
  for (const UpkeepFigure& figure : upkeep_.figures) {
    EXPECT_TRUE(told(figure.title)) << figure.title;
    EXPECT_TRUE(told(figure.text ? *figure.text
                                 : "cannot be decided: needs " + needsText(figure.text.needs)))
        << figure.key;
  }
}

TEST_P(UpkeepPages, EveryStepHasABoxToTickAndAPlaceToSign) {
  const auto squares = [](const Page& page) {
    return std::ranges::count_if(page.items, [](const PageItem& item) {
      const auto* shape = std::get_if<PageShape>(&item);
      return shape != nullptr && shape->closed && shape->points.size() == 4 &&
             std::abs(shape->points[2].x - shape->points[0].x - 4) < 1e-9 &&
             std::abs(shape->points[2].y - shape->points[0].y - 4) < 1e-9;
    });
  };
  std::size_t found = 0, lines = 0;
  for (const Page& page : pages_) {
    found += static_cast<std::size_t>(squares(page));
    for (const PageText& text : testing::textsOf(page))
      lines += text.text == "date, initials" ? 1 : 0;
  }
  EXPECT_EQ(found, upkeep_.startUp.size());
  EXPECT_EQ(lines, upkeep_.startUp.size());
  EXPECT_TRUE(told("Licensed electrician, name"));
}

INSTANTIATE_TEST_SUITE_P(
    Papers, UpkeepPages,
    ::testing::Values(SheetCase{"transit-depot", "letter"}, SheetCase{"transit-depot", "a4"},
                      SheetCase{"boatyard-pad", "a4"}, SheetCase{"boatyard-pad", "letter"},
                      SheetCase{"ferry-quay", "a4"}, SheetCase{"ferry-quay", "letter"},
                      SheetCase{"small", "letter"}, SheetCase{"empty", "a4"}));

TEST(UpkeepSheets, AreNumberedAsOperationsAndStartUpkeepOnAPageOfItsOwn) {
  const Plan plan = testing::smallPlan();
  const Review reviewed = review(plan, builtinCatalog());
  const auto pages = composeUpkeepSheets(plan, upkeep(plan, reviewed.study, builtinUpkeep()));
  ASSERT_GE(pages.size(), 2u);
  EXPECT_EQ(pages[0].number, "O-001");
  EXPECT_EQ(pages[1].number, "O-002");
  EXPECT_EQ(pages.front().title, "Start-up");
  EXPECT_EQ(pages.back().title, "Upkeep");
  EXPECT_NEAR(pages[0].width, 215.9, 1e-9);
  EXPECT_THROW(composeUpkeepSheets(plan, upkeep(plan, reviewed.study, builtinUpkeep()), "a1"),
               std::invalid_argument);
}

/// A table of its own, so that the golden text changes with the sheet only.
UpkeepTable smallTable() {
  UpkeepTable table;
  table.source = {"common practice, no source", Confidence::CommonPractice};
  table.pressureLow = psi(40);
  table.pressureHigh = psi(60);
  table.cautions = {"Lock out and tag out first."};
  table.startUp = {
      {"prime", "Suction filled", "With {primingVolume}.", "Air gap.", {"run:suction"}, {}}};
  table.tasks = {{{"look", "Look round", "Near {pumpPressureUsual}.", {}, {"rooms"}, {}},
                  {1, UpkeepUnit::Day},
                  std::nullopt,
                  {}},
                 {{"flush", "Flush", "One minute.", {}, {"run:underflow"}, {}},
                  {1, UpkeepUnit::Week},
                  std::nullopt,
                  {}},
                 {{"out", "Pump out", "By a hauler.", {}, {"vaults"}, {}},
                  {6, UpkeepUnit::Month},
                  UpkeepInterval{3, UpkeepUnit::Month},
                  "pumpOutTrain"}};
  return table;
}

TEST(UpkeepSheets, MatchTheGoldenDump) {
  const Plan plan = testing::smallPlan();
  const Review reviewed = review(plan, builtinCatalog());
  std::string now;
  for (const Page& page : composeUpkeepSheets(plan, upkeep(plan, reviewed.study, smallTable())))
    now += dump(page);
  testing::expectGolden("sheet/golden/upkeep-sheets.txt", now);
}

} // namespace
} // namespace sump
