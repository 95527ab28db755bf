// The calculation report as pages: complete, legible, with the Study's own numbers; and a golden
// dump of a small one (SUMPWRIGHT_UPDATE_GOLDEN=1 writes it anew).

#include "core/exchange/plan_file.h"
#include "core/geometry/polygon.h"
#include "core/rules/review.h"
#include "core/sheet/calculation_report.h"
#include "core/study/calculation_outline.h"
#include "core/study/calculation_print.h"
#include "tests/sheet/composed.h"
#include "tests/sheet/page_texts.h"
#include "tests/sheet/small_plan.h"
#include "tests/sheet/study_values.h"
#include "tests/support/golden.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace sump {
namespace {

std::string allOf(const Page& page) {
  std::string all;
  for (const PageText& text : testing::textsOf(page))
    all += text.text;
  return testing::squeezed(all);
}
bool holds(const Page& page, const std::string& words) {
  return allOf(page).find(testing::squeezed(words)) != std::string::npos;
}
bool hasText(const Page& page, const std::string& whole) {
  return std::ranges::any_of(testing::textsOf(page),
                             [&](const PageText& t) { return t.text == whole; });
}

struct ReportCase {
  std::string plan, paper;
};
void PrintTo(const ReportCase& c, std::ostream* out) {
  *out << c.plan << " on " << c.paper;
}

class CalculationReports : public ::testing::TestWithParam<ReportCase> {
protected:
  const Review review_ = review(testing::samplePlan(GetParam().plan), builtinCatalog());
  const std::vector<Calculation> all_ = calculations(review_.plan, review_.study);
  const CalculationOutline outline_{all_};
  const std::vector<Page> pages_ = composeCalculationReport(review_.plan, all_, GetParam().paper);

  /// The page on which a calculation stands, by its number: the only one where it is a heading.
  const Page* pageOf(const std::string& number) const {
    for (const Page& page : pages_) {
      for (const PageText& t : testing::textsOf(page)) {
        if (t.text == number && t.bold && t.height > 2.5 && t.height < 3.5) return &page;
      }
    }
    return nullptr;
  }
};

TEST_P(CalculationReports, NoTextTouchesAnother) {
  for (const Page& page : pages_) {
    const auto all = testing::textsOf(page);
    std::vector<Ring> boxes;
    for (const PageText& text : all)
      boxes.push_back(textBox(text));
    for (std::size_t i = 0; i < all.size(); ++i) {
      for (std::size_t k = i + 1; k < all.size(); ++k) {
        EXPECT_FALSE(overlaps(boxes[i], boxes[k]))
            << page.number << ": '" << all[i].text << "' and '" << all[k].text << "' at "
            << all[k].at.x << "," << all[k].at.y;
      }
    }
  }
}

TEST_P(CalculationReports, EverythingStandsInTheFrameAndIsLegible) {
  for (const Page& page : pages_) {
    EXPECT_GT(page.height, page.width) << "upright";
    const auto in = [&](Point2 p) { // ISO 5457: 20 mm filing margin, 10 mm elsewhere
      return p.x > 19.9 && p.y > 9.9 && p.x < page.width - 9.9 && p.y < page.height - 9.9;
    };
    for (const PageText& text : testing::textsOf(page)) {
      EXPECT_GE(text.height, 2.4) << text.text;
      for (Point2 p : textBox(text))
        EXPECT_TRUE(in(p)) << page.number << ": " << text.text;
    }
  }
}

TEST_P(CalculationReports, EveryCalculationIsThereUncut) {
  const UnitSystem units = review_.plan.project.units;
  for (const CalculationSection& section : outline_.sections()) {
    for (const NumberedCalculation& entry : section.entries) {
      const Calculation& c = entry.calculation;
      const Page* page = pageOf(entry.number);
      ASSERT_NE(page, nullptr) << entry.number;
      EXPECT_TRUE(holds(*page, c.title)) << c.title;
      EXPECT_TRUE(holds(*page, c.formula)) << c.id << ": " << c.formula;
      EXPECT_TRUE(holds(*page, c.source)) << c.id << ": " << c.source;
      for (const std::string& step : c.steps)
        EXPECT_TRUE(holds(*page, step)) << c.id << ": " << step;
      for (const CalculationInput& in : c.inputs) {
        EXPECT_TRUE(hasText(*page, in.symbol)) << c.id << ": " << in.symbol;
        EXPECT_TRUE(hasText(*page, printInput(in, units))) << c.id;
        EXPECT_TRUE(hasText(*page, printSi(in.value, in.kind))) << c.id;
      }
      if (!c.decided) {
        EXPECT_TRUE(holds(*page, "Cannot be decided: needs " + c.needs)) << c.id;
      }
    }
  }
}

TEST_P(CalculationReports, EveryResultIsTheStudysOwn) {
  const UnitSystem units = review_.plan.project.units;
  const testing::StudyValues values(review_.study);
  std::size_t held = 0;
  for (const CalculationSection& section : outline_.sections()) {
    for (const NumberedCalculation& entry : section.entries) {
      const Calculation& c = entry.calculation;
      std::optional<double> value = c.decided ? std::optional(c.result) : std::nullopt;
      if (values.knows(c.id, c.object)) {
        value = values.of(c.id, c.object);
        EXPECT_EQ(c.decided, value.has_value()) << c.id;
        ++held;
      }
      if (!value) continue;
      Calculation studys = c;
      studys.result = *value;
      const std::string text = printResult(studys, units), si = printSi(*value, c.kind);
      EXPECT_TRUE(hasText(*pageOf(entry.number), text == si ? text : text + "   (" + si + ")"))
          << c.id << ": " << text;
    }
  }
  EXPECT_GT(held, 80u) << "a new calculation should get its place in study_values.h";
}

TEST_P(CalculationReports, ContentsSayOnWhichPage) {
  const auto all = testing::textsOf(pages_.front());
  for (const CalculationSection& section : outline_.sections()) {
    for (const NumberedCalculation& entry : section.entries) {
      const Page* page = pageOf(entry.number);
      ASSERT_NE(page, nullptr);
      const std::string number = std::to_string(page - pages_.data() + 1);
      const bool told = std::ranges::any_of(pages_, [&](const Page& contents) {
        const auto line = testing::textsOf(contents);
        for (std::size_t i = 0; i + 1 < line.size(); ++i) {
          if (line[i].text != entry.number || line[i].bold) continue;
          return std::ranges::any_of(line, [&](const PageText& t) {
            return t.align == Align::Right && t.text == number && t.at.y == line[i].at.y;
          });
        }
        return false;
      });
      EXPECT_TRUE(told) << entry.number << " on page " << number;
    }
  }
}

TEST_P(CalculationReports, NoBlockIsSplitAndEverySectionHeadStandsWithItsFirst) {
  for (const Page& page : pages_) {
    for (const PageText& text : testing::textsOf(page))
      EXPECT_EQ(text.text.find("(continued)"), std::string::npos) << text.text;
  }
  for (const CalculationSection& section : outline_.sections()) {
    EXPECT_TRUE(hasText(*pageOf(section.number + ".1"), section.number + "   " + section.title));
  }
}

TEST_P(CalculationReports, EveryPageCarriesTitleNumberAndCaution) {
  const Project& project = review_.plan.project;
  for (std::size_t i = 0; i < pages_.size(); ++i) {
    EXPECT_TRUE(holds(pages_[i], project.identificationNumber)) << i;
    EXPECT_TRUE(holds(pages_[i], project.issueDate)) << i;
    EXPECT_TRUE(holds(pages_[i], std::to_string(i + 1) + " of " + std::to_string(pages_.size())));
  }
  for (const std::string& words :
       {project.createdBy, project.approvedBy, project.legalOwner, project.title,
        std::string("authority having jurisdiction"), std::string("sealed by licensed people")})
    EXPECT_TRUE(holds(pages_.front(), words)) << words;
}

INSTANTIATE_TEST_SUITE_P(Papers, CalculationReports,
                         ::testing::Values(ReportCase{"transit-depot", "letter"},
                                           ReportCase{"transit-depot", "a4"},
                                           ReportCase{"boatyard-pad", "a4"},
                                           ReportCase{"boatyard-pad", "letter"},
                                           ReportCase{"small", "letter"}));

Calculation lift() {
  Calculation c;
  c.id = "lift";
  c.object = "R-SU";
  c.section = "Suction";
  c.title = "Static lift from low water";
  c.formula = "z_p - z_w";
  c.inputs = {{"z_p", "pump suction port, centreline", 3.048, QuantityKind::Length, "plan"},
              {"z_w", "low water", 1.524, QuantityKind::Length, "level"}};
  c.steps = {"3.048 m - 1.524 m = 1.524 m"};
  c.result = 1.524;
  c.kind = QuantityKind::Length;
  c.source = "geometry";
  return c;
}

std::vector<Calculation> fewCalculations() {
  Calculation open = lift();
  open.id = "air";
  open.object = "";
  open.section = "Water and air";
  open.title = "Air pressure";
  open.formula = "101,325 Pa x (1 - 0.0065 h / 288.15)^5.25588";
  open.inputs = {};
  open.steps = {};
  open.decided = false;
  open.needs = "altitude";
  Calculation level = lift();
  level.id = "level";
  level.title = "Low water";
  level.steps = {};
  return {level, lift(), open};
}

TEST(CalculationReport, MatchesTheGoldenDump) {
  std::string now;
  for (const Page& page : composeCalculationReport(testing::smallPlan(), fewCalculations()))
    now += dump(page);
  testing::expectGolden("sheet/golden/calculation-report.txt", now);
}

TEST(CalculationReport, NamesRunsAsTheSheetsDoAndWhereInputsComeFrom) {
  const auto pages = composeCalculationReport(testing::smallPlan(), fewCalculations());
  ASSERT_EQ(pages.size(), 2u);
  EXPECT_TRUE(hasText(pages[1], "SU-1 (R-SU)"));
  EXPECT_TRUE(hasText(pages[1], "1.1")) << "the low water of the lift is calculation 1.1";
  EXPECT_TRUE(hasText(pages[1], "5 ft   (1.524 m)"));
  EXPECT_TRUE(hasText(pages[1], "Cannot be decided: needs altitude."));
}

// A pipe run with hundreds of pieces: carried on, each step once and in order, under a head that
// says so.
TEST(CalculationReport, CarriesOnWhatIsLongerThanAPage) {
  std::vector<Calculation> all = fewCalculations();
  all[1].steps.clear();
  for (int i = 0; i < 150; ++i)
    all[1].steps.push_back("step number " + std::to_string(i) + ".");
  const auto pages = composeCalculationReport(testing::smallPlan(), all);
  std::vector<std::string> seen;
  std::set<const Page*> on;
  int continued = 0;
  for (const Page& page : pages) {
    for (const PageText& t : testing::textsOf(page)) {
      if (t.text.starts_with("step number ")) {
        seen.push_back(t.text);
        on.insert(&page);
      }
      continued += t.text == "Static lift from low water (continued)" ? 1 : 0;
    }
  }
  EXPECT_EQ(seen, all[1].steps);
  EXPECT_GE(on.size(), 3u);
  EXPECT_EQ(static_cast<int>(on.size()), continued + 1);
}

TEST(CalculationReport, EvenWordsThatNeverEndStayOnThePaper) {
  std::vector<Calculation> all = fewCalculations();
  all[1].formula = std::string(4000, 'm');
  all[1].inputs[0].name = std::string(300, 'W');
  all[1].object = std::string(200, 'X');
  for (const Page& page : composeCalculationReport(testing::smallPlan(), all)) {
    for (const PageText& text : testing::textsOf(page)) {
      for (Point2 p : textBox(text)) {
        EXPECT_TRUE(p.x > 19.9 && p.x < page.width - 9.9 && p.y < page.height - 9.9) << text.text;
      }
    }
  }
}

TEST(CalculationReport, TakesThePaperThatGoesWithTheUnits) {
  Plan plan = testing::smallPlan();
  EXPECT_NEAR(composeCalculationReport(plan, fewCalculations()).front().width, 215.9, 1e-9);
  plan.project.units = UnitSystem::Metric;
  EXPECT_NEAR(composeCalculationReport(plan, fewCalculations()).front().height, 297, 1e-9);
  EXPECT_THROW(composeCalculationReport(plan, fewCalculations(), "arch-d"), std::invalid_argument);
  EXPECT_EQ(composeCalculationReport(Plan{}, {}).size(), 1u) << "nothing to work out yet";
}

} // namespace
} // namespace sump
