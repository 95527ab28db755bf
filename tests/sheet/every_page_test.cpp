// Every page of every sample that is printed, on its own papers and on others: no text lies on
// another, none leaves its frame or is too small to read, none crosses a line of its table, and no
// sheet stands nearly empty.

#include "core/exchange/plan_file.h"
#include "core/geometry/polygon.h"
#include "core/sheet/border.h"
#include "core/sheet/calculation_report.h"
#include "core/sheet/compose.h"
#include "core/sheet/cutting_sheet.h"
#include "core/sheet/upkeep_sheets.h"
#include "core/study/cutting.h"
#include "core/study/study.h"
#include "core/study/upkeep.h"
#include "core/study/upkeep_table.h"
#include "tests/sheet/composed.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <tuple>

namespace sump {
namespace {

struct PageCase {
  std::string plan, document, paper;
};
void PrintTo(const PageCase& c, std::ostream* out) {
  *out << c.document << " of " << c.plan << " on " << c.paper;
}

std::vector<Page> pagesOf(const PageCase& c) {
  const Review& reviewed = testing::sampleReview(c.plan);
  if (c.document == "report") {
    return composeCalculationReport(reviewed.plan, calculations(reviewed.plan, reviewed.study),
                                    c.paper);
  }
  if (c.document == "upkeep") {
    return composeUpkeepSheets(reviewed.plan,
                               upkeep(reviewed.plan, reviewed.study, builtinUpkeep()), c.paper);
  }
  return composeCuttingSheet(reviewed,
                             cuttingList(reviewed.plan, reviewed.study, builtinCatalog(),
                                         reviewed.limits.length(kKerfLimit),
                                         reviewed.limits.length(kTrimLimit)),
                             c.paper);
}

std::vector<PageCase> pageCases() {
  std::vector<PageCase> cases;
  for (const char* plan : {"transit-depot", "boatyard-pad", "ferry-quay"}) {
    for (const char* paper : {"arch-d", "a1", "arch-b", "ansi-b", "a3", "a4"})
      cases.push_back({plan, "set", paper});
    for (const char* document : {"report", "upkeep", "cutting list"}) {
      for (const char* paper : {"letter", "a4"})
        cases.push_back({plan, document, paper});
    }
  }
  return cases;
}

class EveryPage : public ::testing::TestWithParam<PageCase> {
protected:
  /// Composed once; several tests look at them.
  static const std::vector<Page>& pages() {
    static std::map<std::tuple<std::string, std::string, std::string>, std::vector<Page>> known;
    const PageCase& c = GetParam();
    if (c.document == "set") return testing::sampleSheets(c.plan, c.paper);
    const auto found = known.find({c.plan, c.document, c.paper});
    if (found != known.end()) return found->second;
    return known.emplace(std::tuple(c.plan, c.document, c.paper), pagesOf(c)).first->second;
  }
  const std::vector<Page>& pages_ = pages();
};
INSTANTIATE_TEST_SUITE_P(Papers, EveryPage, ::testing::ValuesIn(pageCases()));

struct PlacedText {
  PageText text;
  PaperBox box;
  std::size_t index; ///< among the page's items
};

std::vector<PlacedText> pageTexts(const Page& page) {
  std::vector<PlacedText> found;
  for (std::size_t i = 0; i < page.items.size(); ++i) {
    if (const auto* text = std::get_if<PageText>(&page.items[i]))
      found.push_back({*text, around(textBox(*text)), i});
  }
  return found;
}

TEST_P(EveryPage, NoTextTouchesAnother) {
  ASSERT_FALSE(pages_.empty());
  for (const Page& page : pages_) {
    const auto all = pageTexts(page);
    for (std::size_t i = 0; i < all.size(); ++i) {
      for (std::size_t k = i + 1; k < all.size(); ++k) {
        if (!all[i].box.meets(all[k].box)) continue;
        EXPECT_FALSE(overlaps(textBox(all[i].text), textBox(all[k].text)))
            << page.number << ": '" << all[i].text.text << "' and '" << all[k].text.text << "'";
      }
    }
  }
}

TEST_P(EveryPage, TextStaysInTheFrameAndCanBeRead) {
  // The shop sheet has no frame, and smaller letters so that it stays one page.
  const bool shop = GetParam().document == "cutting list";
  const double least = shop ? 1.8 : 2.0; // mm
  for (const Page& page : pages_) {
    constexpr double kEdge = 5; // mm that printers leave
    const PaperBox frame =
        shop ? PaperBox{{0, 0}, {page.width, page.height}}.grown(-kEdge) : drawingSpace(page);
    for (const PlacedText& t : pageTexts(page)) {
      // Grid references stand between the frame and the border.
      const bool reference = t.text.text.size() <= 2 && !frame.holds(t.box);
      EXPECT_TRUE(frame.grown(reference ? 5.1 : 0).holds(t.box))
          << page.number << ": " << t.text.text;
      EXPECT_GE(t.text.height, least) << page.number << ": " << t.text.text;
    }
  }
}

bool hides(const PageItem& item, const PaperBox& box) {
  const auto* shape = std::get_if<PageShape>(&item);
  if (shape == nullptr || !shape->closed || shape->round || !shape->fill) return false;
  if (shape->fill->hatch != Hatch::None || shape->points.size() < 4) return false;
  const PaperBox filled = around(shape->points);
  return filled.holds(box.grown(-0.4)) && contains(shape->points, box.centre());
}

struct DrawnLine {
  std::size_t item;
  Polyline points;
  PaperBox box;
};

/// The drawn thin lines of a page's shapes; none of an outline that only fills.
std::vector<DrawnLine> pageLines(const Page& page) {
  std::vector<DrawnLine> lines;
  for (std::size_t i = 0; i < page.items.size(); ++i) {
    const auto* shape = std::get_if<PageShape>(&page.items[i]);
    if (shape == nullptr || shape->round || !shape->line || shape->points.empty()) continue;
    Polyline line = shape->points;
    if (shape->closed) line.push_back(line.front());
    const PaperBox box = around(line);
    lines.push_back({i, std::move(line), box});
  }
  return lines;
}

/// A text is cut by a line that runs through its middle and that no fill hides from it.
bool isCut(const Page& page, const PlacedText& t, const DrawnLine& line) {
  if (!line.box.touches(t.box)) return false;
  // The middle of the capitals: a hair of a line at the box's edge is no fault.
  const double trim = 0.35 * t.text.height;
  const bool upright = t.text.angle != 0;
  PaperBox core = t.box;
  core.low = core.low + (upright ? Point2{trim * 1.4, 0.3} : Point2{0.3, trim * 1.4});
  core.high = core.high - (upright ? Point2{trim * 1.4, 0.3} : Point2{0.3, trim * 1.4});
  for (std::size_t k = 0; k + 1 < line.points.size(); ++k) {
    if (!cutsBox(line.points[k], line.points[k + 1], core)) continue;
    for (std::size_t j = line.item + 1; j < t.index; ++j) {
      if (hides(page.items[j], t.box)) return false;
    }
    return true;
  }
  return false;
}

TEST_P(EveryPage, NoLineRunsThroughAText) {
  for (const Page& page : pages_) {
    const std::vector<DrawnLine> lines = pageLines(page);
    for (const PlacedText& t : pageTexts(page)) {
      const bool cut =
          std::ranges::any_of(lines, [&](const DrawnLine& line) { return isCut(page, t, line); });
      EXPECT_FALSE(cut) << page.number << ": a line through '" << t.text.text << "' at "
                        << t.text.at.x << "," << t.text.at.y;
    }
  }
}

/// How much of the drawing space carries something, in cells of 12 mm.
double usedShare(const Page& page) {
  constexpr double kCell = 12;
  const PaperBox space = drawingSpace(page);
  const int columns = static_cast<int>(space.width() / kCell);
  const int rows = static_cast<int>(space.height() / kCell);
  std::vector<bool> used(static_cast<std::size_t>(columns * rows));
  const auto take = [&](PaperBox box) {
    for (int r = 0; r < rows; ++r) {
      for (int c = 0; c < columns; ++c) {
        const Point2 low = space.low + Point2{c * kCell, r * kCell};
        if (box.meets({low, low + Point2{kCell, kCell}}))
          used[static_cast<std::size_t>(r * columns + c)] = true;
      }
    }
  };
  for (const PageItem& item : page.items) {
    if (const auto* text = std::get_if<PageText>(&item)) {
      take(around(textBox(*text)));
    } else {
      const auto& shape = std::get<PageShape>(item);
      const PaperBox box = around(shape.points);
      const bool border =
          box.width() > 0.95 * space.width() || box.height() > 0.95 * space.height();
      // A drawing's frame holds room for its labels: all of it is used.
      if (!border) take(box.grown(0.01));
    }
  }
  return static_cast<double>(std::count(used.begin(), used.end(), true)) /
         static_cast<double>(columns * rows);
}

// A title names the kinds of sheet on the page, each with the runs that it shows.
std::string withoutRuns(const std::string& kind) {
  return kind.substr(0, kind.find(", "));
}
std::string firstKind(const std::string& title) {
  return withoutRuns(title.substr(0, title.find("; ")));
}
std::string lastKind(const std::string& title) {
  const std::size_t at = title.rfind("; ");
  return withoutRuns(at == std::string::npos ? title : title.substr(at + 2));
}

// The last page of what goes on over several may be shorter than others, and that of the set.
TEST_P(EveryPage, NoSheetStandsNearlyEmpty) {
  if (GetParam().document != "set") return;
  for (std::size_t i = 0; i < pages_.size(); ++i) {
    const bool last = i + 1 == pages_.size();
    const bool ends = !last && lastKind(pages_[i].title) != firstKind(pages_[i + 1].title);
    const bool began = i > 0 && lastKind(pages_[i - 1].title) == firstKind(pages_[i].title);
    EXPECT_GE(usedShare(pages_[i]), last || (ends && began) ? 0.16 : 0.25)
        << pages_[i].number << " " << pages_[i].title;
  }
}

} // namespace
} // namespace sump
