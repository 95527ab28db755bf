// The views of the plan on every sheet of every sample: no leader through a symbol, over another's
// dot or across another leader, no label's plate over a wall, no symbol on another or cut off.

#include "core/exchange/plan_file.h"
#include "core/geometry/polygon.h"
#include "core/sheet/clip.h"
#include "core/sheet/compose.h"
#include "tests/sheet/composed.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <map>
#include <tuple>

namespace sump {
namespace {

struct ViewCase {
  std::string plan, paper;
};
void PrintTo(const ViewCase& c, std::ostream* out) {
  *out << c.plan << " on " << c.paper;
}

/// What stands on one view of a page.
struct Looked {
  std::string page;
  PaperBox frame;
  std::map<std::uint32_t, PaperBox> symbols;
  std::vector<std::pair<Point2, Point2>> leaders, walls, pipes;
  std::vector<std::pair<PaperBox, std::string>> plates; ///< with the first line on them
};

PaperBox boxOf(const PageShape& shape) {
  if (!shape.round) return around(shape.points);
  return PaperBox{shape.points[0], shape.points[0]}.grown(
      distance(shape.points[0], shape.points[1]));
}

void takeMark(const PageShape& shape, Looked& view) {
  if (shape.role == PageRole::Symbol) {
    const PaperBox box = boxOf(shape);
    const auto [known, isNew] = view.symbols.emplace(shape.symbol, box);
    if (!isNew) known->second = around({known->second.low, known->second.high, box.low, box.high});
  } else if (shape.role == PageRole::Wall) {
    for (std::size_t i = 0; i + 1 < shape.points.size(); ++i)
      view.walls.emplace_back(shape.points[i], shape.points[i + 1]);
    if (shape.closed) view.walls.emplace_back(shape.points.back(), shape.points.front());
  } else if (shape.role == PageRole::Other && !shape.closed && shape.line &&
             shape.line->ink == Ink::ServicePurple) {
    for (std::size_t i = 0; i + 1 < shape.points.size(); ++i)
      view.pipes.emplace_back(shape.points[i], shape.points[i + 1]);
  }
}

void takeLabel(const PageShape& shape, Looked& view) {
  if (shape.role == PageRole::Leader) view.leaders.emplace_back(shape.points[0], shape.points[1]);
  if (shape.role == PageRole::Plate) view.plates.emplace_back(around(shape.points), "");
}

/// A view's marks come before its frame, its labels behind it.
std::vector<Looked> viewsOf(const Page& page) {
  std::vector<Looked> views;
  Looked next;
  for (const PageItem& item : page.items) {
    const auto* shape = std::get_if<PageShape>(&item);
    if (shape == nullptr) {
      if (!views.empty() && !views.back().plates.empty() &&
          views.back().plates.back().second.empty())
        views.back().plates.back().second = std::get<PageText>(item).text;
      continue;
    }
    takeMark(*shape, next);
    if (shape->role == PageRole::ViewFrame) {
      next.page = page.number;
      next.frame = around(shape->points);
      views.push_back(std::move(next));
      next = {};
    } else if (!views.empty()) {
      takeLabel(*shape, views.back());
    }
  }
  return views;
}

bool isPlanSheet(const std::string& number) {
  for (const char* series : {"G-0", "C-1", "P-1", "P-4", "E-1"}) {
    if (number.starts_with(series)) return true;
  }
  return false;
}

class Views : public ::testing::TestWithParam<ViewCase> {
protected:
  static const std::vector<Looked>& views() {
    static std::map<std::pair<std::string, std::string>, std::vector<Looked>> known;
    const ViewCase& c = GetParam();
    const auto [found, isNew] = known.emplace(std::pair(c.plan, c.paper), std::vector<Looked>());
    if (!isNew) return found->second;
    for (const Page& page : testing::sampleSheets(c.plan, c.paper)) {
      if (!isPlanSheet(page.number)) continue;
      for (Looked& view : viewsOf(page))
        found->second.push_back(std::move(view));
    }
    return found->second;
  }
  /// Where a match line runs close by, or half a sheet is all there is, small paper cannot always
  /// have everything.
  static bool isSmall() { return GetParam().paper == "ansi-b" || GetParam().paper == "a3"; }
  const std::vector<Looked>& views_ = views();
};

std::vector<ViewCase> casesOn(std::initializer_list<const char*> papers) {
  std::vector<ViewCase> cases;
  for (const char* plan : {"transit-depot", "boatyard-pad", "ferry-quay"}) {
    for (const char* paper : papers)
      cases.push_back({plan, paper});
  }
  return cases;
}
INSTANTIATE_TEST_SUITE_P(Papers, Views,
                         ::testing::ValuesIn(casesOn({"arch-d", "a1", "ansi-b", "a3"})));

class LargeViews : public Views {};
INSTANTIATE_TEST_SUITE_P(OwnPapers, LargeViews, ::testing::ValuesIn(casesOn({"arch-d", "a1"})));

std::string at(const Looked& view, Point2 p) {
  return view.page + " at " + std::to_string(p.x) + "," + std::to_string(p.y);
}

TEST_P(Views, NoLeaderRunsThroughASymbol) {
  ASSERT_FALSE(views_.empty());
  for (const Looked& view : views_) {
    for (const auto& [from, to] : view.leaders) {
      for (const auto& [number, box] : view.symbols) {
        if (box.grown(0.5).holds(to)) continue; // the one that it points at
        EXPECT_FALSE(cutsBox(from, to, box)) << at(view, box.centre());
      }
    }
  }
}

TEST_P(Views, NoLeaderCrossesAnotherOrItsDot) {
  constexpr double kDot = 0.5; // mm, its radius
  for (const Looked& view : views_) {
    int crossings = 0;
    for (std::size_t i = 0; i < view.leaders.size(); ++i) {
      for (std::size_t k = 0; k < view.leaders.size(); ++k) {
        if (i == k) continue;
        const auto& [from, to] = view.leaders[i];
        const auto& [start, dot] = view.leaders[k];
        EXPECT_GT(nearestOnSegment(dot, from, to).distance, kDot) << at(view, dot);
        if (crossSegments(from, to, start, dot)) ++crossings; // each pair is seen twice
      }
    }
    EXPECT_LE(crossings, isSmall() ? 2 : 0) << view.page << " " << at(view, view.frame.centre());
  }
}

TEST_P(Views, NoPlateBreaksAWall) {
  constexpr double kHair = 0.2; // mm
  for (const Looked& view : views_) {
    std::string broken;
    int count = 0;
    for (const auto& [plate, text] : view.plates) {
      for (const auto& [a, b] : view.walls) {
        if (!cutsBox(a, b, plate.grown(-kHair))) continue;
        broken += at(view, plate.centre()) + ": " + text + "\n";
        ++count;
        break;
      }
    }
    EXPECT_LE(count, isSmall() ? 2 : 0) << broken;
  }
}

/// `V1-3`, of a vault.
bool isCorner(const std::string& text) {
  const std::size_t dash = text.find('-');
  return text.size() > 3 && text[0] == 'V' && dash + 2 == text.size() && text[dash + 1] >= '1' &&
         text[dash + 1] <= '4';
}

// A pipe close beside a vault goes on beside its corners' names.
TEST_P(LargeViews, NoCornersNameBreaksAPipeOfReclaimedWater) {
  constexpr double kHair = 0.2; // mm
  std::size_t corners = 0, pipes = 0;
  for (const Looked& view : views_) {
    if (!view.page.starts_with("P-1")) continue;
    pipes += view.pipes.size();
    for (const auto& [plate, text] : view.plates) {
      if (!isCorner(text)) continue;
      ++corners;
      for (const auto& [a, b] : view.pipes)
        EXPECT_FALSE(cutsBox(a, b, plate.grown(-kHair)))
            << at(view, plate.centre()) << ": " << text;
    }
  }
  EXPECT_GT(corners, 4u);
  EXPECT_GT(pipes, 10u);
}

TEST_P(Views, PlatesKeepOffTheFrame) {
  for (const Looked& view : views_) {
    for (const auto& [plate, text] : view.plates)
      EXPECT_TRUE(view.frame.grown(-1).holds(plate)) << at(view, plate.centre()) << ": " << text;
  }
}

TEST_P(Views, NoSymbolLiesOnAnother) {
  constexpr double kTouch = 0.1; // mm
  for (const Looked& view : views_) {
    for (auto a = view.symbols.begin(); a != view.symbols.end(); ++a) {
      for (auto b = std::next(a); b != view.symbols.end(); ++b)
        EXPECT_FALSE(a->second.grown(-kTouch).meets(b->second.grown(-kTouch)))
            << at(view, a->second.centre()) << " and " << at(view, b->second.centre());
    }
  }
}

TEST_P(Views, NoSymbolIsCutOff) {
  for (const Looked& view : views_) {
    for (const auto& [number, box] : view.symbols)
      EXPECT_TRUE(view.frame.grown(-1e-6).holds(box)) << at(view, box.centre());
  }
}

} // namespace
} // namespace sump
