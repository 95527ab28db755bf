// Every number with a unit and every level that a sheet prints is one of the Plan's or the Study's,
// rounded as it is printed: on every page of every sample. Where a text belongs to a run or a
// vault, by its row or its label, the number must be that one's.

#include "core/exchange/plan_file.h"
#include "core/sheet/compose.h"
#include "tests/sheet/known_numbers.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>

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

/// A table's cells stand in a row after its first; a label's lines follow its name in the page.
std::vector<Said> saidOn(const std::vector<Page>& pages, const std::map<std::string, Id>& names) {
  std::vector<Said> all;
  for (const Page& page : pages) {
    Said last;
    for (const PageItem& item : page.items) {
      const auto* text = std::get_if<PageText>(&item);
      if (text == nullptr) continue;
      Said said{page.number, *text, objectOf(text->text, names)};
      const Point2 step = text->at - last.text.at;
      const bool sameRow = step.y == 0 && step.x > 0;
      const bool nextLine =
          step.x == 0 && step.y > 0 && step.y < 2 * text->height && text->align == Align::Left;
      if (said.object.empty() && (sameRow || nextLine)) said.object = last.object;
      all.push_back(said);
      last = said;
    }
  }
  return all;
}

std::vector<PrintedNumber> numbersIn(const std::string& text, UnitSystem units) {
  std::vector<PrintedNumber> found = testing::printedNumbers(text);
  for (const PrintedNumber& level : testing::printedLevels(text, units))
    found.push_back(level);
  return found;
}

struct Sample {
  Review review;
  std::vector<Page> pages;
};

const Sample& sample(const std::string& name) {
  static std::map<std::string, Sample> known;
  const auto found = known.find(name);
  if (found != known.end()) return found->second;
  Review reviewed =
      review(readPlanFile(SUMPWRIGHT_SOURCE_DIR "/samples/" + name + ".sump"), builtinCatalog());
  const bool metric = reviewed.plan.project.units == UnitSystem::Metric;
  std::vector<Page> pages = composeSheets(reviewed, {metric ? "a1" : "arch-d", 0});
  return known.emplace(name, Sample{std::move(reviewed), std::move(pages)}).first->second;
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

TEST_P(EveryNumber, IsOfThePlanOrTheStudy) {
  const Sample& of = sample(GetParam());
  const KnownNumbers known(of.review);
  const std::vector<Found> all = allNumbers(of);
  EXPECT_GT(all.size(), 500u);
  for (const Found& found : all)
    EXPECT_TRUE(known.has(found.number, found.said.object)) << told(found);
}

/// Every number in turn with a slip of the pen: the test above must notice nearly all of them. It
/// cannot all, since now and then a wrong level is another level of the same run or of the site.
TEST_P(EveryNumber, AChangedNumberIsCaught) {
  const Sample& of = sample(GetParam());
  const KnownNumbers known(of.review);
  std::map<Printed, std::pair<int, int>> caught; // and of how many
  for (const Found& found : allNumbers(of)) {
    PrintedNumber wrong = found.number;
    // Seven in the last digit, or half an inch.
    wrong.value += 14 * wrong.half * (wrong.unit == kMetresPerInch ? 0.6 : 1);
    auto& [yes, all] = caught[wrong.kind];
    ++all;
    if (!known.has(wrong, found.said.object)) ++yes;
  }
  for (const auto& [kind, count] : caught) {
    const auto [yes, all] = count;
    EXPECT_GE(yes, 0.85 * all) << "kind " << static_cast<int>(kind) << ": " << yes << " of " << all;
  }
}

TEST_P(EveryNumber, ScalesOfLevelsStandAtTheirHeights) {
  const Sample& of = sample(GetParam());
  const UnitSystem units = of.review.plan.project.units;
  // Of one section: the same page and the same edge.
  std::map<std::pair<std::string, double>, std::vector<std::pair<double, double>>> scales;
  for (const Said& said : saidOn(of.pages, namesOf(of.review.plan))) {
    for (const PrintedNumber& number : numbersIn(said.text.text, units)) {
      if (isTick(said, number))
        scales[{said.page, said.text.at.x}].emplace_back(number.value, said.text.at.y);
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
    EXPECT_LT(perMetre, 0) << where.first << ": up is up";
    for (const auto& [level, y] : ticks) {
      EXPECT_NEAR(y, bottom + (level - low) * perMetre, 0.01) << where.first << " " << level;
      ++checked;
    }
  }
  EXPECT_GT(checked, 10);
}

} // namespace
} // namespace sump
