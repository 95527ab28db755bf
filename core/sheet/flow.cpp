#include "core/sheet/flow.h"

#include "core/sheet/border.h"
#include "core/sheet/sheet_refs.h"
#include "core/units/print.h"

#include <algorithm>
#include <set>
#include <stdexcept>
#include <utility>

namespace sump {

namespace {

constexpr double kTwoColumns = 340;   // mm of width that takes two
constexpr std::size_t kLeastRows = 4; // of a cut table, so that no heading stands alone

double headHeight(const Block& block) {
  double sum = 0;
  for (const PaperStrip& strip : block.head)
    sum += strip.height;
  return sum;
}

/// The head and the first rows: the least that is worth its heading.
double leastHeight(const Block& block, std::size_t rows) {
  double sum = headHeight(block);
  for (std::size_t i = 0; i < std::min(rows, block.body.size()); ++i)
    sum += block.body[i].height;
  return sum;
}

} // namespace

bool isSmallPaper(const PaperSize& paper) {
  return hasFootTitle(Page{{}, {}, paper.width, paper.height, {}});
}

Page borderedPage(const SheetJob& job) {
  Page page{{}, {}, job.paper.width, job.paper.height, {}};
  drawBorder(page);
  return page;
}

PageFlow::PageFlow(const SheetJob& job, SheetFit fit) : job_(job), fit_(fit) {
  const Page page{{}, {}, job.paper.width, job.paper.height, {}};
  space_ = drawingSpace(page).grown(-kSheetInset);
}

double PageFlow::fullWidth() const {
  return space_.width() / fit_.letters;
}

double PageFlow::columnWidth() const {
  if (isSmallPaper(job_.paper)) {
    const bool two = space_.width() > kTwoColumns;
    return (two ? (space_.width() - kSheetGap) / 2 : space_.width()) / fit_.letters;
  }
  return kTitleWidth - 2 * kSheetInset;
}

Point2 PageFlow::largestFigure() const {
  const Page page{{}, {}, job_.paper.width, job_.paper.height, {}};
  if (isSmallPaper(job_.paper)) {
    return {space_.width(), titleBox(page).low.y - kSheetInset - space_.low.y};
  }
  return {titleBox(page).low.x - kSheetInset - space_.low.x, space_.height()};
}

Point2 PageFlow::figureSize(Point2 least, bool compact) const {
  const Point2 most = largestFigure();
  if (isSmallPaper(job_.paper)) {
    if (!compact || most.x < kTwoColumns) return most;
    least = {(most.x - kSheetGap) / 2, most.y};
  }
  return lerp(Point2{std::min(most.x, least.x), std::min(most.y, least.y)}, most, fit_.figures);
}

Page& PageFlow::page() {
  if (pages_.empty()) turnPage();
  return pages_.back().page;
}

void PageFlow::turnPage() {
  pages_.push_back({borderedPage(job_), {}, {}});
  taken_.push_back({titleBox(pages_.back().page).grown(kSheetInset - kSheetGap)});
}

void PageFlow::markPart(const std::string& part, bool several) {
  pages_.back().anchors.push_back(partAnchor(part));
  if (several) pages_.back().parts.push_back(part);
}

void PageFlow::markKind(std::size_t page) {
  std::vector<std::size_t>& kinds = pages_[page].kinds;
  if (std::find(kinds.begin(), kinds.end(), kind_) == kinds.end()) kinds.push_back(kind_);
}

PaperBox PageFlow::beginDrawing() {
  turnPage();
  markKind(last());
  pages_.back().anchors.push_back(drawingAnchor());
  if (!announced_.empty()) pages_.back().anchors.push_back(std::exchange(announced_, {}));
  const PaperBox region{space_.low, space_.low + largestFigure()};
  take(last(), region);
  if (!isSmallPaper(job_.paper)) {
    const PaperBox space = drawingSpace(page());
    const double left = space.high.x - kTitleWidth;
    page().items.push_back(rule({left, space.low.y}, {left, space.high.y}, 0.5));
    // Nothing may straddle the column's line.
    taken_.back().push_back(
        {{region.high.x, space.low.y}, {left + kSheetInset - kSheetGap, space.high.y}});
  }
  return region;
}

std::optional<Point2> PageFlow::placeFor(std::size_t page, double width, double height) const {
  std::set<double> lefts{space_.low.x}, tops{space_.low.y};
  for (const PaperBox& box : taken_[page]) {
    lefts.insert(box.high.x + kSheetGap);
    tops.insert(box.high.y + kSheetGap);
  }
  const auto isFree = [&](double x, double y) {
    constexpr double kHair = 1e-6;
    const PaperBox box{{x, y}, {x + width, y + height}};
    if (!space_.grown(kHair).holds(box)) return false;
    const PaperBox wide = box.grown(kSheetGap - kHair);
    return std::ranges::none_of(taken_[page], [&](const PaperBox& b) { return b.meets(wide); });
  };
  for (double outer : fit_.inRows ? tops : lefts) {
    for (double inner : fit_.inRows ? lefts : tops) {
      const Point2 at = fit_.inRows ? Point2{inner, outer} : Point2{outer, inner};
      if (isFree(at.x, at.y)) return at;
    }
  }
  return std::nullopt;
}

void PageFlow::take(std::size_t page, const PaperBox& box) {
  taken_[page].push_back(box);
  pages_[page].used += box.width() * box.height() / (space_.width() * space_.height());
}

void PageFlow::put(Block& block, std::size_t page, Point2 at, double height) {
  const double width = block.width; // the rest may be headed by a longer title
  DraftPage& draft = pages_[page];
  const double below = place(block, at, at.y + height, draft.page);
  markKind(page);
  if (!block.run.empty()) draft.runs.push_back(block.run);
  if (block.toScale) draft.anchors.push_back(drawingAnchor());
  if (!block.anchor.empty()) {
    if (block.toScale) draft.views.push_back(block.anchor);
    draft.anchors.push_back(block.anchor);
  }
  take(page, {at, {at.x + width, below}});
}

bool PageFlow::placeWhole(Block& block) {
  const double height = block.height();
  const auto at = placeFor(last(), block.width, height);
  if (at) put(block, last(), *at, height);
  return at.has_value();
}

/// A drawing is found by its number, so it need not stand in the order of the plan.
bool PageFlow::placeOnEarlier(Block& block) {
  if (!block.toScale) return false;
  const double height = block.height();
  for (std::size_t page = 0; page < last(); ++page) {
    const std::vector<std::size_t>& kinds = pages_[page].kinds;
    if (std::find(kinds.begin(), kinds.end(), kind_) == kinds.end()) continue;
    const auto at = placeFor(page, block.width, height);
    if (!at) continue;
    pages_[page].filledLater = true;
    put(block, page, *at, height);
    return true;
  }
  return false;
}

/// As many strips as stand in the place that takes the least part.
bool PageFlow::placePart(Block& block, std::size_t rows) {
  double height = leastHeight(block, rows);
  const auto at = placeFor(last(), block.width, height);
  if (!at) return false;
  std::size_t placed = std::min(rows, block.body.size());
  for (; placed < block.body.size(); ++placed) {
    height += block.body[placed].height;
    const PaperBox wide = PaperBox{*at, {at->x + block.width, at->y + height}}.grown(kSheetGap / 2);
    const bool free =
        wide.high.y <= space_.high.y + kSheetGap / 2 &&
        std::ranges::none_of(taken_.back(), [&](const PaperBox& b) { return b.meets(wide); });
    if (!free) break;
  }
  // A heading over notes alone would look like a table that lost its rows.
  if (placed < block.body.size())
    while (placed > 1 && block.body[placed].note)
      --placed;
  put(block, last(), *at, leastHeight(block, placed));
  return true;
}

void PageFlow::add(Block block) {
  if (block.body.empty()) return;
  if (!block.toScale && fit_.letters != 1) block = enlarged(std::move(block), fit_.letters);
  if (pages_.empty()) turnPage();
  if (placeWhole(block) || placeOnEarlier(block)) return;
  while (!block.body.empty()) {
    if (placePart(block, kLeastRows)) continue;
    const bool empty = taken_.back().size() == 1; // only the title block stands there
    if (!empty) turnPage();
    if (placeWhole(block) || placePart(block, kLeastRows) || placePart(block, 1)) continue;
    throw std::invalid_argument("A table or figure (" + fixed(block.width, 0) + " x " +
                                fixed(leastHeight(block, 1), 0) + " mm) does not fit on " +
                                std::string(job_.paper.name) + ". Choose a larger paper size.");
  }
}

void PageFlow::addAll(std::vector<Block> blocks) {
  for (Block& block : blocks)
    add(std::move(block));
}

} // namespace sump
