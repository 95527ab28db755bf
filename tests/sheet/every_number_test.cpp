// Every number with a unit and every level that a sheet prints is one of the Plan's or the Study's,
// rounded as it is printed: on every page of every sample. Where a text belongs to a run or a
// vault, by its row or its label, the number must be that one's.

#include "core/exchange/plan_file.h"
#include "core/sheet/compose.h"
#include "tests/sheet/composed.h"
#include "tests/sheet/known_numbers.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace sump {
namespace {

using testing::KnownNumbers;
using testing::Printed;
using testing::PrintedNumber;

/// A text of a page and the run or vault that it is about, where that can be seen.
struct Said {
  std::string page;
  PageText text;
  Id object;
  Id drawing; ///< the run whose drawing the text is in
};

/// What runs and vaults are called on the sheets.
std::map<std::string, Id> namesOf(const Plan& plan) {
  std::map<std::string, Id> names;
  std::map<Service, int> count;
  for (const Run& run : plan.runs) {
    const std::string tag =
        std::string(facts(run.service).code) + "-" + std::to_string(++count[run.service]);
    names[tag] = run.id;
  }
  for (const Vault& vault : plan.vaults)
    names[vault.name] = vault.id;
  return names;
}

/// The object that a text begins with.
Id objectOf(const std::string& text, const std::map<std::string, Id>& names) {
  for (const auto& [name, id] : names) {
    if (!text.starts_with(name)) continue;
    const char next = text.size() > name.size() ? text[name.size()] : ' ';
    if (next == ' ' || next == ':') return id;
  }
  return {};
}

/// Titles stand over a run's section and under a detail: `WW-1  Inlet`, `SUCTION ENTRY, SU-1`.
void tellDrawings(std::vector<Said>& all, const std::map<std::string, Id>& names) {
  const auto isTitle = [](const PageText& text) {
    const bool number = text.text.find_first_not_of("0123456789") == std::string::npos;
    return text.bold && text.height >= 3.4 && !number; // not the view's own number
  };
  Id drawing;
  for (Said& said : all) {
    if (isTitle(said.text)) drawing = objectOf(said.text.text, names);
    if (said.page.starts_with("P-3")) said.drawing = drawing;
  }
  drawing.clear();
  for (auto said = all.rbegin(); said != all.rend(); ++said) {
    if (isTitle(said->text)) {
      const std::size_t comma = said->text.text.rfind(", ");
      drawing =
          comma == std::string::npos ? Id() : objectOf(said->text.text.substr(comma + 2), names);
    }
    if (said->page.starts_with("P-5")) said->drawing = drawing;
  }
  // What stands under a detail's title, in line with it, is told of that detail.
  const Said* title = nullptr;
  for (Said& said : all) {
    if (isTitle(said.text)) title = &said;
    const bool under = title != nullptr && said.text.at.x == title->text.at.x;
    if (said.page.starts_with("P-5") && under) said.drawing = title->drawing;
  }
}

/// A table's cells stand in a row after its first; a label's lines follow its name in the page.
std::vector<Said> saidOn(const std::vector<Page>& pages, const std::map<std::string, Id>& names) {
  std::vector<Said> all;
  for (const Page& page : pages) {
    Said last;
    for (const PageItem& item : page.items) {
      const auto* text = std::get_if<PageText>(&item);
      if (text == nullptr) continue;
      Said said{page.number, *text, objectOf(text->text, names), {}};
      const Point2 step = text->at - last.text.at;
      const bool sameRow = step.y == 0 && step.x > 0;
      const bool nextLine =
          step.x == 0 && step.y > 0 && step.y < 2 * text->height && text->align == Align::Left;
      if (said.object.empty() && (sameRow || nextLine)) said.object = last.object;
      all.push_back(said);
      last = said;
    }
  }
  tellDrawings(all, names);
  return all;
}

std::vector<PrintedNumber> numbersIn(const std::string& text, UnitSystem units) {
  std::vector<PrintedNumber> found = testing::printedNumbers(text);
  for (const PrintedNumber& level : testing::printedLevels(text, units))
    found.push_back(level);
  return found;
}

struct Sample {
  const Review& review;
  const std::vector<Page>& pages;
};

Sample sample(const std::string& name) {
  const Review& review = testing::sampleReview(name);
  const bool metric = review.plan.project.units == UnitSystem::Metric;
  return {review, testing::sampleSheets(name, metric ? "a1" : "arch-d")};
}

class EveryNumber : public ::testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Samples, EveryNumber,
                         ::testing::Values("transit-depot", "boatyard-pad", "ferry-quay"));

/// The figures of a long section's scale of levels: round numbers that stand alone. They are no
/// numbers of the plan; that they stand at their heights is tested below.
bool isTick(const Said& said, const PrintedNumber& number) {
  if (!said.page.starts_with("P-3") || number.length != said.text.text.size()) return false;
  const double tenths = number.value / number.unit * 10;
  return number.kind == Printed::Level && said.object.empty() &&
         std::abs(tenths - std::round(tenths)) < 1e-6;
}

struct Found {
  Said said;
  PrintedNumber number;
};

/// All numbers of a sample's set but the ticks.
std::vector<Found> allNumbers(const Sample& of) {
  const UnitSystem units = of.review.plan.project.units;
  std::vector<Found> all;
  for (const Said& said : saidOn(of.pages, namesOf(of.review.plan))) {
    if (said.text.text.find_first_of("0123456789") == std::string::npos) continue;
    for (const PrintedNumber& number : numbersIn(said.text.text, units)) {
      if (!isTick(said, number)) all.push_back({said, number});
    }
  }
  return all;
}

std::string told(const Found& found) {
  const PageText& text = found.said.text;
  return found.said.page + ": '" + text.text +
         "': " + text.text.substr(found.number.at, found.number.length) + " is no number of " +
         (found.said.object.empty() ? "the plan" : found.said.object);
}

/// Of the object that the text is about, or one that only this series of sheets shows; in a run's
/// drawing one that this drawing shows, or of the run.
bool isKnown(const KnownNumbers& known, const PrintedNumber& number, const Said& said) {
  const std::string series = said.page.substr(0, 3);
  if (!said.drawing.empty()) {
    return known.has(number, said.drawing) || known.has(number, series + ":" + said.drawing) ||
           (!said.object.empty() && known.has(number, said.object));
  }
  return known.has(number, said.object) || known.has(number, series);
}

TEST_P(EveryNumber, IsOfThePlanOrTheStudy) {
  const Sample of = sample(GetParam());
  const KnownNumbers known(of.review);
  const std::vector<Found> all = allNumbers(of);
  EXPECT_GT(all.size(), 500u);
  for (const Found& found : all)
    EXPECT_TRUE(isKnown(known, found.number, found.said)) << told(found);
}

/// Every number in turn with a slip of the pen: the test above must notice nearly all of them. It
/// cannot all, since now and then a wrong level is another level of the same run or of the site.
TEST_P(EveryNumber, AChangedNumberIsCaught) {
  const Sample of = sample(GetParam());
  const KnownNumbers known(of.review);
  std::map<Printed, std::pair<int, int>> caught; // and of how many
  for (const Found& found : allNumbers(of)) {
    PrintedNumber wrong = found.number;
    // Seven in the last digit, or half an inch.
    wrong.value += 14 * wrong.half * (wrong.unit == kMetresPerInch ? 0.6 : 1);
    auto& [yes, all] = caught[wrong.kind];
    ++all;
    if (!isKnown(known, wrong, found.said)) ++yes;
  }
  for (const auto& [kind, count] : caught) {
    const auto [yes, all] = count;
    const double least = std::min(0.85 * all, all - 1.0); // of a few, one may be another's
    EXPECT_GE(yes, std::max(least, 1.0))
        << "kind " << static_cast<int>(kind) << ": " << yes << " of " << all;
  }
}

TEST_P(EveryNumber, ScalesOfLevelsStandAtTheirHeights) {
  const Sample of = sample(GetParam());
  const UnitSystem units = of.review.plan.project.units;
  // Of one section: the same page and edge, told upward.
  std::map<std::tuple<std::string, double, int>, std::vector<std::pair<double, double>>> scales;
  std::map<std::pair<std::string, double>, int> section;
  for (const Said& said : saidOn(of.pages, namesOf(of.review.plan))) {
    for (const PrintedNumber& number : numbersIn(said.text.text, units)) {
      if (!isTick(said, number) || said.text.angle != 0) continue;
      int& nth = section[{said.page, said.text.at.x}];
      const auto& before = scales[{said.page, said.text.at.x, nth}];
      if (!before.empty() && said.text.at.y >= before.back().second) ++nth;
      scales[{said.page, said.text.at.x, nth}].emplace_back(number.value, said.text.at.y);
    }
  }
  int checked = 0;
  for (auto& [where, ticks] : scales) {
    std::sort(ticks.begin(), ticks.end());
    if (ticks.size() < 3) continue;
    const auto [low, bottom] = ticks.front();
    const auto [high, top] = ticks.back();
    ASSERT_GT(high, low);
    const double perMetre = (top - bottom) / (high - low);
    EXPECT_LT(perMetre, 0) << std::get<0>(where) << ": up is up";
    for (const auto& [level, y] : ticks) {
      EXPECT_NEAR(y, bottom + (level - low) * perMetre, 0.01) << std::get<0>(where) << " " << level;
      ++checked;
    }
  }
  EXPECT_GT(checked, 10);
}

} // namespace
} // namespace sump
