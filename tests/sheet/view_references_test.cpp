// References from sheet to sheet: whatever names a view names one that stands on that sheet, and
// every section, elevation and detail is named on a plan.

#include "core/exchange/plan_file.h"
#include "core/geometry/polygon.h"
#include "core/sheet/clip.h"
#include "core/sheet/compose.h"
#include "core/sheet/view_references.h"
#include "tests/sheet/composed.h"
#include "tests/sheet/small_plan.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <map>
#include <regex>
#include <set>

namespace sump {
namespace {

struct ReferenceCase {
  std::string plan, paper;
};
void PrintTo(const ReferenceCase& c, std::ostream* out) {
  *out << c.plan << " on " << c.paper;
}

/// `1/C-301`
using ViewCounts = std::map<std::string, int>;

PaperBox circleBox(const PageShape& circle) {
  return circle.round ? PaperBox{circle.points[0], circle.points[0]}.grown(
                            distance(circle.points[0], circle.points[1]))
                      : around(circle.points);
}

/// Whatever stands in a circle.
std::vector<std::string> wordsIn(const Page& page, const PageShape& circle) {
  std::vector<std::string> found;
  for (const PageItem& item : page.items) {
    const auto* text = std::get_if<PageText>(&item);
    if (text != nullptr && circleBox(circle).holds(around(textBox(*text)).centre()))
      found.push_back(text->text);
  }
  return found;
}

class References : public ::testing::TestWithParam<ReferenceCase> {
protected:
  static const std::vector<Page>& pages() {
    return testing::sampleSheets(GetParam().plan, GetParam().paper);
  }

  /// The rest of a section stands with its title and a number of its own on the next sheet.
  static bool goesOn(const Page& page, std::size_t number) {
    const auto* title = number > 0 ? std::get_if<PageText>(&page.items[number - 1]) : nullptr;
    return title != nullptr && title->text.ends_with("(continued)");
  }

  static ViewCounts shown(bool withRests = true) {
    ViewCounts views;
    for (const Page& page : pages()) {
      for (std::size_t i = 0; i < page.items.size(); ++i) {
        const auto* shape = std::get_if<PageShape>(&page.items[i]);
        if (shape == nullptr || shape->role != PageRole::ViewNumber) continue;
        if (!withRests && goesOn(page, i)) continue;
        for (const std::string& number : wordsIn(page, *shape))
          ++views[number + "/" + page.number];
      }
    }
    return views;
  }

  /// Those in bubbles and in words.
  static std::vector<std::string> namedOn(const Page& page) {
    std::vector<std::string> found;
    static const std::regex kWords("[0-9]*/([GCPE]-[0-9]+|-)");
    for (const PageItem& item : page.items) {
      const auto* shape = std::get_if<PageShape>(&item);
      if (shape == nullptr) {
        const std::string& text = std::get<PageText>(item).text;
        for (std::sregex_iterator i(text.begin(), text.end(), kWords), end; i != end; ++i)
          found.push_back(i->str());
      } else if (shape->role == PageRole::Reference) {
        const auto words = wordsIn(page, *shape);
        EXPECT_EQ(words.size(), 2u) << page.number;
        if (words.size() == 2) found.push_back(words[0] + "/" + words[1]);
      }
    }
    return found;
  }
};

std::vector<ReferenceCase> referenceCases() {
  std::vector<ReferenceCase> cases;
  for (const char* plan : {"transit-depot", "boatyard-pad", "ferry-quay"}) {
    for (const char* paper : {"arch-d", "a1", "ansi-b", "a3", "a4"})
      cases.push_back({plan, paper});
  }
  return cases;
}
INSTANTIATE_TEST_SUITE_P(Papers, References, ::testing::ValuesIn(referenceCases()));

TEST_P(References, NoTwoViewsOfASheetHaveOneNumber) {
  for (const auto& [view, count] : shown())
    EXPECT_EQ(count, 1) << view;
}

TEST_P(References, EachNamesAViewThatStandsThere) {
  const ViewCounts views = shown();
  std::size_t named = 0;
  for (const Page& page : pages()) {
    for (const std::string& view : namedOn(page)) {
      EXPECT_TRUE(views.contains(view)) << view << " on " << page.number;
      ++named;
    }
  }
  EXPECT_GT(named, 10u);
}

TEST_P(References, EverySectionElevationAndDetailIsNamedOnAPlan) {
  std::set<std::string> named;
  for (const Page& page : pages()) {
    const bool plan = page.number[2] == '1';
    if (!plan) continue;
    for (const std::string& view : namedOn(page))
      named.insert(view);
  }
  std::size_t asked = 0;
  for (const auto& [view, count] : shown(false)) {
    const char series = view[view.find('-') + 1];
    if (series != '3' && series != '4' && series != '5') continue;
    EXPECT_TRUE(named.contains(view)) << view;
    ++asked;
  }
  EXPECT_GT(asked, 5u);
}

/// The bubbles of the placement plan that name this series.
std::set<std::string> cutsNamed(const Page& page, const std::string& series) {
  std::set<std::string> found;
  for (const PageItem& item : page.items) {
    const auto* shape = std::get_if<PageShape>(&item);
    if (shape == nullptr || shape->role != PageRole::Reference) continue;
    const auto words = wordsIn(page, *shape);
    if (words.size() == 2 && words[1].starts_with(series)) found.insert(words[0] + words[1]);
  }
  return found;
}

TEST_P(References, ThePlacementPlanMarksWhereEveryVaultIsCut) {
  std::set<std::string> across, along;
  for (const Page& page : pages()) {
    if (!page.number.starts_with("C-1")) continue;
    across.merge(cutsNamed(page, "C-3"));
    along.merge(cutsNamed(page, "P-3"));
  }
  const std::size_t vaults = GetParam().plan == "ferry-quay" ? 4 : 2;
  EXPECT_GE(across.size(), vaults);
  EXPECT_EQ(along.size(), 1u);
}

} // namespace
} // namespace sump
