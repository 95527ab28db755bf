// Whole sheets: what they must hold for a contractor, on every paper and plan; and their golden
// dumps (SUMPWRIGHT_UPDATE_GOLDEN=1 writes them anew).

#include "core/exchange/plan_file.h"
#include "core/geometry/polygon.h"
#include "core/sheet/clip.h"
#include "core/sheet/compose.h"
#include "core/units/print.h"
#include "tests/sheet/composed.h"
#include "tests/sheet/page_texts.h"
#include "tests/sheet/small_plan.h"
#include "tests/support/golden.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <sstream>

namespace sump {
namespace {

const Page& sheetNumbered(const std::vector<Page>& pages, const std::string& number) {
  const auto found = std::find_if(pages.begin(), pages.end(),
                                  [&](const Page& page) { return page.number == number; });
  return found == pages.end() ? pages.front() : *found;
}

bool sheetsSay(const std::vector<Page>& pages, const std::string& words) {
  return std::any_of(pages.begin(), pages.end(), [&](const Page& page) {
    const auto all = testing::textsOf(page);
    return std::any_of(all.begin(), all.end(),
                       [&](const PageText& t) { return t.text.find(words) != std::string::npos; });
  });
}

struct Case {
  std::string plan, paper;
  double scale = 0;
};
void PrintTo(const Case& c, std::ostream* out) {
  *out << c.plan << " on " << c.paper << " scale " << c.scale;
}

class Sheets : public ::testing::TestWithParam<Case> {
protected:
  const std::vector<Page>& pages_ =
      testing::sampleSheets(GetParam().plan, GetParam().paper, GetParam().scale);
};

TEST_P(Sheets, NoTextTouchesAnother) {
  for (const Page& page : pages_) {
    const auto all = testing::textsOf(page);
    for (std::size_t i = 0; i < all.size(); ++i) {
      for (std::size_t k = i + 1; k < all.size(); ++k) {
        if (!around(textBox(all[i])).meets(around(textBox(all[k])))) continue;
        EXPECT_FALSE(overlaps(textBox(all[i]), textBox(all[k])))
            << page.number << ": '" << all[i].text << "' and '" << all[k].text << "' at "
            << all[k].at.x << "," << all[k].at.y;
      }
    }
  }
}

TEST_P(Sheets, EverythingStandsOnTheSheetAndIsLegible) {
  constexpr double kEdge = 4.9; // mm: the outer line of the ISO 5457 border stands 5 mm in
  for (const Page& page : pages_) {
    const auto on = [&](Point2 p) {
      return p.x >= kEdge && p.y >= kEdge && p.x <= page.width - kEdge &&
             p.y <= page.height - kEdge;
    };
    for (const PageItem& item : page.items) {
      if (const auto* text = std::get_if<PageText>(&item)) {
        EXPECT_GE(text->height, 2.19) << text->text; // small paper may save a sheet so
        for (Point2 p : textBox(*text))
          EXPECT_TRUE(on(p)) << page.number << ": " << text->text;
      } else {
        for (Point2 p : std::get<PageShape>(item).points)
          EXPECT_TRUE(on(p)) << page.number << ": " << p.x << "," << p.y;
      }
    }
  }
}

TEST_P(Sheets, NameEveryRunOnThePlanAndInTheSchedule) {
  const Plan plan = testing::samplePlan(GetParam().plan);
  for (const auto& run : plan.runs) {
    const std::string tag = std::string(facts(run.service).code) + "-";
    int count = 0;
    for (const Page& page : pages_) {
      for (const PageText& text : testing::textsOf(page))
        count += text.text.starts_with(tag) ? 1 : 0;
    }
    EXPECT_GE(count, 2) << tag;
  }
}

INSTANTIATE_TEST_SUITE_P(Papers, Sheets,
                         // Further papers and samples: set_test.cpp.
                         ::testing::Values(Case{"small", "arch-d"}, Case{"small", "a2"},
                                           Case{"small", "arch-d", 240}, Case{"small", "a3", 48},
                                           Case{"transit-depot", "a1"},
                                           Case{"boatyard-pad", "arch-c"}));

TEST(Sheet, PrintsTheNumbersOfTheStudy) {
  const Review reviewed = review(testing::smallPlan(), builtinCatalog());
  const std::vector<Page> pages = composeSheets(reviewed, {"arch-d", 0});
  const UnitSystem us = UnitSystem::UsCustomary;
  EXPECT_TRUE(sheetsSay(pages, printVolume(reviewed.study.workingVolume, us)));
  for (const RunStudy& run : reviewed.study.runs) {
    if (!run.resolved) continue;
    EXPECT_TRUE(sheetsSay(pages, printRunLength(run.developed, us))) << run.id;
  }
  for (const VaultStudy& vault : reviewed.study.vaults) {
    ASSERT_TRUE(vault.waterLevel);
    EXPECT_TRUE(sheetsSay(pages, "Water level " + printElevation(*vault.waterLevel, us)));
    // Only the vault that the overflow leaves has an overflow.
    const auto& out = *reviewed.plan.runs.find(vault.overflowRun);
    const std::string what =
        out.service == Service::Overflow ? "Overflow inv. " : "Outlet inv. (LK-1) ";
    EXPECT_TRUE(sheetsSay(pages, what + printElevation(*vault.overflowInvert, us))) << vault.id;
    EXPECT_TRUE(sheetsSay(pages, "Floor " + printElevation(vault.floor, us)));
  }
}

TEST(Sheet, ATrueScaleIsDrawn) {
  // At 1:240 a vault 12 ft (3657.6 mm) long is 15.24 mm long on the paper.
  const std::vector<Page> pages = testing::sampleSheets("small", "arch-d", 240);
  int found = 0;
  for (const PageItem& item : sheetNumbered(pages, "P-101").items) {
    const auto* shape = std::get_if<PageShape>(&item);
    if (shape == nullptr || !shape->fill || shape->fill->ink != Ink::Concrete) continue;
    EXPECT_NEAR(distance(shape->points[0], shape->points[1]), 15.24, 1e-9);
    ++found;
  }
  EXPECT_EQ(found, 2);
  EXPECT_TRUE(sheetsSay(pages, "1\" = 20'-0\" (1:240)"));
}

TEST(Sheet, CarriesTitleBlockCautionsAndStorage) {
  const std::vector<Page> pages = testing::sampleSheets("small", "arch-d");
  for (const char* words :
       {"Quarry Lane Transport", "QL-0042", "2026-03-02", "P-101", "R. Osei", "M. Lindqvist",
        "For review", "CALL BEFORE YOU DIG", "EXCAVATION", "CONFINED SPACE", "LIFTING",
        "ELECTRICAL", "CROSS-CONNECTION", "authority having jurisdiction", "Working storage",
        "RUN SCHEDULE", "VAULT SCHEDULE", "LEGEND", "1 of "}) {
    EXPECT_TRUE(sheetsSay(pages, words)) << words;
  }
}

TEST(Sheet, RefusesPaperThatItDoesNotKnowOrThatIsTooSmall) {
  EXPECT_THROW(testing::sampleSheets("small", "foolscap"), std::invalid_argument);
  EXPECT_THROW(testing::sampleSheets("transit-depot", "a4", 5), std::invalid_argument)
      << "hundreds of parts";
}

TEST(Sheet, AnEmptyPlanStillGivesASheet) {
  const std::vector<Page> pages = composeSheets(review(Plan{}, builtinCatalog()), {"arch-d", 0});
  EXPECT_TRUE(sheetsSay(pages, "GENERAL NOTES"));
}

TEST(Sheet, TheSameReviewGivesTheSamePages) {
  const auto compose = [] { return composeSheets(testing::sampleReview("small"), {"arch-d", 0}); };
  const auto once = compose(), again = compose();
  ASSERT_EQ(once.size(), again.size());
  for (std::size_t i = 0; i < once.size(); ++i)
    EXPECT_EQ(dump(once[i]), dump(again[i]));
}

void compareGolden(const std::string& plan, const std::string& paper) {
  std::string now;
  for (const Page& page : testing::sampleSheets(plan, paper))
    now += dump(page);
  testing::expectGolden("sheet/golden/" + plan + "-" + paper + ".txt", now);
}

TEST(Sheet, MatchesTheGoldenDumps) {
  compareGolden("transit-depot", "arch-d");
  compareGolden("boatyard-pad", "a1");
}

} // namespace
} // namespace sump
