#include "core/sheet/compose.h"

#include "core/geometry/polygon.h"
#include "core/plan/ends.h"
#include "core/sheet/arrange.h"
#include "core/sheet/border.h"
#include "core/sheet/labels.h"
#include "core/sheet/schedules.h"
#include "core/units/print.h"

#include <algorithm>
#include <stdexcept>

namespace sump {

namespace {

constexpr double kInset = 4; // mm between the frame and what stands in it
constexpr double kGap = 6;
constexpr double kLargestStrip = 0.36; // of the sheet's height, for schedules under the plan

struct Job {
  const Review& review;
  const Catalog& catalog;
  const PaperSize& paper;
  double scale;
};

Page emptyPage(const Job& job, std::string number, std::string title) {
  Page page{std::move(number), std::move(title), job.paper.width, job.paper.height, {}};
  drawBorder(page);
  return page;
}

/// The schedules side by side under the plan when they fit there; else they are left in `later`.
/// Returns the height taken.
double placeSchedules(const Job& job, const PaperBox& region, Page& page,
                      std::vector<Block>& later) {
  Block runs = runSchedule(job.review, job.catalog, region.width());
  Block vaults = chamberSchedule(job.review, region.width() - runs.width - kGap);
  Block manways = manwaySchedule(job.review, vaults.width);
  const double right = vaults.height() + kGap + manways.height();
  const double height = std::max(runs.height(), right);
  const double width = runs.width + kGap + std::max(vaults.width, manways.width);
  if (height > kLargestStrip * page.height || width > region.width()) {
    later.insert(later.end(), {std::move(runs), std::move(vaults), std::move(manways)});
    return 0;
  }
  const Point2 at{region.low.x, region.high.y - height};
  const Point2 beside{at.x + runs.width + kGap, at.y};
  place(runs, at, region.high.y, page);
  const double below = place(vaults, beside, region.high.y, page);
  place(manways, {beside.x, below + kGap}, region.high.y, page);
  return height + kGap;
}

/// What is left of the column is kept for the seals and stamps that licensed practice puts there.
void reserveSeals(const PaperBox& space, Page& page) {
  constexpr double kLeast = 50, kMost = 90;
  if (space.height() < kLeast) return;
  const PaperBox box{{space.low.x, std::max(space.low.y, space.high.y - kMost)}, space.high};
  page.items.push_back(PageShape{box.ring(), true, false, LineStyle{Ink::Grey, 0.25, {}}, {}});
  page.items.push_back(
      words({box.low.x + 2, box.low.y + 5}, "Space for seals and approval stamps"));
}

/// Blocks one below the other in the column above the title block; the rest goes to `later`.
void placeColumn(std::vector<Block> blocks, const PaperBox& column, Page& page,
                 std::vector<Block>& later) {
  double y = column.low.y;
  for (Block& block : blocks) {
    if (block.body.empty()) continue;
    const double below = place(block, {column.low.x, y}, column.high.y, page);
    if (!block.body.empty()) later.push_back(std::move(block));
    if (below > y) y = below + kGap * 0.6;
  }
  reserveSeals({{column.low.x, y}, column.high}, page);
}

RunLabel siteRunLabel(const Polyline& line, const SheetView& enlarged) {
  const double outside = planLength(line) - enlarged.shownLength(line);
  // 3 m: a stub that only just leaves the enlarged view is still labelled there.
  return outside > 3 && outside > 0.25 * planLength(line) ? RunLabel::Full : RunLabel::None;
}

/// The enlarged view's extent on the site view.
void drawExtent(const SheetView& site, const SheetView& enlarged, Page& page) {
  const PaperBox extent =
      around({site.toPaper(enlarged.site().low), site.toPaper(enlarged.site().high)});
  Polyline edge = extent.ring();
  edge.push_back(edge.front());
  for (Polyline& part : clipLine(edge, site.frame)) {
    page.items.push_back(
        PageShape{std::move(part), false, false, LineStyle{Ink::Black, 0.5, {4, 1.5}}, {}});
  }
}

/// One view with its labels. `enlarged` is the second view, if there is one.
std::vector<std::string> drawOneView(const Job& job, const SheetView& view,
                                     const SheetView* enlarged, const std::vector<Mark>& marks,
                                     Page& page) {
  const Plan& plan = job.review.plan;
  const bool site = enlarged != nullptr && &view != enlarged;
  const Locator locator(plan);
  const auto label = [&](const Run& run) {
    if (enlarged == nullptr) return RunLabel::Full;
    const auto line = locator.centreline(run);
    const RunLabel there = line ? siteRunLabel(*line, *enlarged) : RunLabel::None;
    if (site) return there;
    return there == RunLabel::Full ? RunLabel::Tag : RunLabel::Full;
  };
  drawView(view, marks, page);
  if (site) drawExtent(view, *enlarged, page);
  auto unplaced =
      drawLabels(view, {job.review, job.catalog, marks, label, site ? enlarged : nullptr}, page);
  if (view.hidden) {
    page.items.push_back(PageShape{view.hidden->ring(), true, false,
                                   LineStyle{Ink::Black, 0.35, {}},
                                   FillStyle{Ink::White, Hatch::None}});
  }
  drawViewTitle(view, plan.project.units, plan.site.north, page);
  return unplaced;
}

/// The enlarged view first: the site view may lie over a corner of it.
std::vector<std::string> drawViews(const Job& job, const PaperBox& region,
                                   const std::vector<Mark>& marks, Page& page) {
  const Plan& plan = job.review.plan;
  const std::vector<SheetView> views =
      arrangeViews(extents(plan, marks), region, plan.project.units, job.scale);
  const SheetView* enlarged = views.size() == 2 ? &views[1] : nullptr;
  std::vector<std::string> unplaced;
  for (auto view = views.rbegin(); view != views.rend(); ++view) {
    const auto missing = drawOneView(job, *view, enlarged, marks, page);
    unplaced.insert(unplaced.end(), missing.begin(), missing.end());
  }
  return unplaced;
}

/// Fills pages with columns of what did not fit on the plan sheet.
class Continuation {
public:
  explicit Continuation(const Job& job) : job_(job) {}

  std::vector<Page> pages(std::vector<Block> blocks) {
    for (Block& block : blocks) {
      while (!block.body.empty())
        placePart(block);
    }
    return std::move(pages_);
  }

private:
  void turnPage() {
    const std::string number = "P-60" + std::to_string(pages_.size() + 1);
    pages_.push_back(emptyPage(job_, number, "Schedules and notes"));
    column_ = drawingSpace(pages_.back()).grown(-kInset).low;
    columnWidth_ = 0;
    y_ = column_.y;
  }

  void placePart(Block& block) {
    if (pages_.empty()) turnPage();
    if (placed(block)) return;
    // Next column, then next page.
    column_.x += columnWidth_ + kGap;
    columnWidth_ = 0;
    y_ = column_.y;
    if (placed(block)) return;
    turnPage();
    if (placed(block)) return;
    throw std::invalid_argument("The schedules do not fit on " + std::string(job_.paper.name) +
                                ". Choose a larger paper size.");
  }

  bool placed(Block& block) {
    Page& page = pages_.back();
    const PaperBox space = drawingSpace(page).grown(-kInset), title = titleBox(page).grown(kInset);
    const double right = column_.x + block.width;
    if (right > space.high.x) return false;
    const double bottom = right > title.low.x ? title.low.y : space.high.y;
    const double below = place(block, {column_.x, y_}, bottom, page);
    if (below == y_) return false;
    y_ = below + kGap;
    columnWidth_ = std::max(columnWidth_, block.width);
    return true;
  }

  const Job& job_;
  std::vector<Page> pages_;
  Point2 column_;
  double columnWidth_ = 0;
  double y_ = 0;
};

Page planSheet(const Job& job, std::vector<Block>& later) {
  Page page = emptyPage(job, "P-101", "Reclaim tankage plan");
  const PaperBox space = drawingSpace(page);
  const double columnLeft = space.high.x - kTitleWidth;
  PaperBox region = space.grown(-kInset);
  region.high.x = columnLeft - kInset;
  // The column is kept apart from the drawing by a line down to the title block.
  page.items.push_back(rule({columnLeft, space.low.y}, {columnLeft, space.high.y}, 0.5));
  if (region.width() < 100) {
    throw std::invalid_argument(std::string(job.paper.name) +
                                " is too small for a plan sheet. Choose a larger paper size.");
  }
  std::vector<Block> schedules;
  region.high.y -= placeSchedules(job, region, page, schedules);
  std::vector<std::string> unplaced;
  const std::vector<Mark> marks = planMarks(job.review.plan, job.review.study);
  if (!marks.empty()) unplaced = drawViews(job, region, marks, page);
  const double width = kTitleWidth - 2 * kInset;
  std::vector<Block> column = {legend(job.review, width), symbolKey(job.review, width),
                               generalNotes(job.review, width), cautions(width),
                               findingList(job.review, width)};
  if (!unplaced.empty()) {
    std::string text = "For lack of room on the plan these runs are only in the schedule:";
    for (const std::string& tag : unplaced)
      text += " " + tag;
    column.push_back(paragraphs("NOT LABELLED", {text}, width, false));
  }
  placeColumn(std::move(column),
              {{columnLeft + kInset, space.low.y + kInset},
               {space.high.x - kInset, titleBox(page).low.y - kInset}},
              page, later);
  later.insert(later.begin(), std::make_move_iterator(schedules.begin()),
               std::make_move_iterator(schedules.end()));
  return page;
}

std::string planScale(const Job& job) {
  return job.scale > 0 ? scaleText(job.scale, job.review.plan.project.units) : "As shown";
}

} // namespace

std::vector<Page> composeSheets(const Review& review, const SheetOptions& options) {
  const PaperSize* paper = paperSize(options.paper);
  if (paper == nullptr) {
    std::string known;
    for (const PaperSize& size : paperSizes())
      known += (known.empty() ? "" : ", ") + std::string(size.key);
    throw std::invalid_argument("There is no paper size '" + options.paper +
                                "'. Use one of: " + known + ".");
  }
  const Job job{review, options.catalog != nullptr ? *options.catalog : builtinCatalog(), *paper,
                options.scale};
  std::vector<Block> later;
  std::vector<Page> pages{planSheet(job, later)};
  for (Page& page : Continuation(job).pages(std::move(later)))
    pages.push_back(std::move(page));
  for (std::size_t i = 0; i < pages.size(); ++i) {
    const bool plan = i == 0;
    drawTitleBlock(review.plan.project,
                   {plan ? "Plan" : "Schedules", plan ? planScale(job) : "None",
                    std::string(paper->name), static_cast<int>(i) + 1,
                    static_cast<int>(pages.size())},
                   pages[i]);
  }
  return pages;
}

} // namespace sump
