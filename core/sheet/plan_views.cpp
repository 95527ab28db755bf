#include "core/sheet/plan_views.h"

#include "core/sheet/fitted_symbols.h"
#include "core/sheet/match_lines.h"
#include "core/sheet/note_marks.h"
#include "core/sheet/sheet_refs.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <stdexcept>

namespace sump {

namespace {

constexpr double kTankageMargin = 30; // mm of paper about the tankage, for labels
constexpr double kPartMargin = 18;    // the same where there are several parts
constexpr double kMatchRoom = 5;      // mm about a part, for the words at its match lines
constexpr double kFrameAir = 0.5;     // mm between a symbol and the frame
constexpr int kMostTiles = 60;

std::string tileName(const Tile& tile) {
  return std::string(1, static_cast<char>('A' + tile.row)) + std::to_string(tile.column + 1);
}

/// A heavy broken line along a side that another page goes on from, with that page's part.
struct MatchSide {
  Point2 a, b;
  int column, row; ///< of the part beyond
  Point2 out;      ///< away from the view
};

void drawMatchSide(const MatchSide& side, const Tiling& tiling, Page& page) {
  if (side.column < 0 || side.row < 0) return;
  if (side.column >= tiling.columns || side.row >= tiling.rows) return;
  page.items.push_back(
      PageShape{{side.a, side.b}, false, false, LineStyle{Ink::Black, 1.0, {12, 3, 3, 3}}, {}});
  const bool upright = side.out.x != 0;
  const std::string beyond = tileName({{}, side.column, side.row});
  // The baseline of the text, so that its box stays within the strip kept beside the view.
  const double off = side.out.x + side.out.y > 0 ? 4.0 : -1.4;
  PageText text{lerp(side.a, side.b, 0.5),
                "MATCH LINE, SEE PART " + beyond + ", SHEET " + sheetOf(partAnchor(beyond)),
                kTextHeight,
                Align::Centre,
                upright ? 90.0 : 0.0,
                true,
                Ink::Black};
  text.at = text.at + (upright ? Point2{off, 0} : Point2{0, off});
  page.items.push_back(std::move(text));
}

void drawMatchLines(const SheetView& view, const Tile& tile, const Tiling& tiling, Page& page) {
  const Point2 low = view.frame.low, high = view.frame.high;
  const int c = tile.column, r = tile.row;
  drawMatchSide({low, {low.x, high.y}, c - 1, r, {-1, 0}}, tiling, page);
  drawMatchSide({{high.x, low.y}, high, c + 1, r, {1, 0}}, tiling, page);
  drawMatchSide({low, {high.x, low.y}, c, r - 1, {0, -1}}, tiling, page);
  drawMatchSide({{low.x, high.y}, high, c, r + 1, {0, 1}}, tiling, page);
}

/// No more of the paper than the part fills, so that nothing is shown twice.
PaperBox partFrame(const PaperBox& most, const Tile& tile, double scale) {
  const double k = 1000 / scale;
  return {most.low, most.low + Point2{std::min(most.width(), tile.site.width() * k),
                                      std::min(most.height(), tile.site.height() * k)}};
}

} // namespace

double leastLegibleScale(UnitSystem units) {
  return units == UnitSystem::Metric ? 100 : 128;
}

double fittedScale(const PaperBox& site, const PaperBox& frame, double margin, UnitSystem units) {
  const double wide = frame.width() - 2 * margin, high = frame.height() - 2 * margin;
  for (double scale : standardScales(units)) {
    if (site.width() * 1000 / scale <= wide && site.height() * 1000 / scale <= high) return scale;
  }
  return std::ceil(std::max(site.width() * 1000 / std::max(wide, 1.0),
                            site.height() * 1000 / std::max(high, 1.0)));
}

Tiling tiling(const PaperBox& site, const PaperBox& frame, double scale) {
  const double wide = frame.width() * scale / 1000, high = frame.height() * scale / 1000;
  Tiling result;
  result.columns = std::max(1, static_cast<int>(std::ceil(site.width() / wide - 1e-9)));
  result.rows = std::max(1, static_cast<int>(std::ceil(site.height() / high - 1e-9)));
  if (result.columns * result.rows > kMostTiles) {
    throw std::invalid_argument("At 1:" + std::to_string(std::lround(scale)) + " the plan takes " +
                                std::to_string(result.columns * result.rows) +
                                " sheets. Choose a smaller scale or larger paper.");
  }
  // All tiles together stand about the middle of what they show.
  const Point2 upperLeft =
      site.centre() + Point2{-wide * result.columns / 2, high * result.rows / 2};
  for (int row = 0; row < result.rows; ++row) {
    for (int column = 0; column < result.columns; ++column) {
      const Point2 low{upperLeft.x + wide * column, upperLeft.y - high * (row + 1)};
      result.tiles.push_back({{low, low + Point2{wide, high}}, column, row});
    }
  }
  return result;
}

std::vector<Mark> viewMarks(const SheetJob& job, const SheetView& view,
                            const std::vector<Mark>& marks) {
  std::set<Id> lettered;
  for (const NoteDrawing& note : noteDrawings(job.plan())) {
    if (note.lettered) lettered.insert(note.id);
  }
  const PaperBox site = view.site();
  std::optional<PaperBox> hidden;
  if (view.hidden) hidden = around({view.toSite(view.hidden->low), view.toSite(view.hidden->high)});
  return wholeSymbols(
      fittedSymbols(marksOf(marks,
                            [&](const Mark& mark) {
                              if (mark.layer == Layer::Note && lettered.contains(mark.object))
                                return false;
                              return mark.symbol.number == 0 || site.holds(mark.symbol.at);
                            }),
                    view.scale),
      site.grown(-kFrameAir * view.scale / 1000), hidden);
}

void drawSiteView(const SheetJob& job, const SheetView& view, const std::vector<Mark>& marks,
                  const DrawLabels& label, Page& page, double below,
                  const std::vector<SectionCut>& cuts) {
  std::vector<Mark> shown = viewMarks(job, view, marks);
  addCutMarks(cuts, view, shown);
  drawView(view, shown, page);
  label(view, shown, page);
  SheetView titled = view;
  titled.frame.high.y += below;
  drawViewTitle(titled, job.units(), job.plan().site.north, page);
}

std::vector<SheetView> drawTiledView(const SheetJob& job, const std::string& title,
                                     const PaperBox& site, const std::vector<Mark>& marks,
                                     const DrawLabels& label, PageFlow& flow,
                                     const std::vector<SectionCut>& cuts) {
  PaperBox frame{{}, flow.largestFigure()};
  frame.high.y -= kViewTitle;
  double scale = job.scale > 0 ? job.scale : fittedScale(site, frame, kTankageMargin, job.units());
  const double margin = kTankageMargin * scale / 1000;
  PaperBox shown = site.grown(margin);
  if (job.scale <= 0 && scale > leastLegibleScale(job.units())) {
    scale = leastLegibleScale(job.units());
    shown = site.grown(kPartMargin * scale / 1000);
  }
  Tiling parts = tiling(shown, frame, scale);
  const bool one = parts.tiles.size() == 1;
  const double inset = one ? 0 : kMatchRoom;
  if (!one) parts = gentleTiling(shown, frame.grown(-inset), scale, job);
  std::vector<Point2> corners;
  for (const Tile& tile : parts.tiles)
    corners.insert(corners.end(), {tile.site.low, tile.site.high});
  std::vector<SheetView> views;
  for (const Tile& tile : parts.tiles) {
    PaperBox region = flow.beginDrawing();
    region.high.y -= kViewTitle;
    flow.markPart(tileName(tile), !one);
    if (!one) region = partFrame(region.grown(-inset), tile, scale);
    SheetView view{"1", one ? title : title + ", PART " + tileName(tile), region,
                   tile.site.centre(), scale};
    if (!one) view.whole = around(corners);
    drawSiteView(job, view, marks, label, flow.page(), inset, cuts);
    if (!one) drawMatchLines(view, tile, parts, flow.page());
    views.push_back(std::move(view));
  }
  return views;
}

std::vector<Mark> marksOf(const std::vector<Mark>& marks,
                          const std::function<bool(const Mark&)>& keep) {
  std::vector<Mark> kept;
  std::copy_if(marks.begin(), marks.end(), std::back_inserter(kept), keep);
  return kept;
}

} // namespace sump
