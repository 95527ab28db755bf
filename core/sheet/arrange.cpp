#include "core/sheet/arrange.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kGap = 6;              // mm between views
constexpr double kSiteMargin = 9;       // mm of paper about the site
constexpr double kTankMargin = 34;      // about the tankage: room for labels and leaders
constexpr double kEnlargedWeight = 1.6; // how much more the tankage's scale counts than the site's
constexpr double kLeastGain = 1.9;      // an enlarged view is at least this much larger

Point2 sizeOnPaper(const PaperBox& site, double scale, double margin) {
  return {site.width() * 1000 / scale + 2 * margin, site.height() * 1000 / scale + 2 * margin};
}

bool fitsIn(Point2 size, const PaperBox& box) {
  return size.x <= box.width() && size.y <= box.height();
}

PaperBox withoutTitle(PaperBox box) {
  box.high.y -= kViewTitle;
  return box;
}

double largestScale(const PaperBox& site, const PaperBox& frame, double margin, UnitSystem units) {
  const auto& scales = standardScales(units);
  for (double scale : scales) {
    if (fitsIn(sizeOnPaper(site, scale, margin), frame)) return scale;
  }
  // Beyond the standard ones: whatever still shows it all.
  return std::ceil(std::max(site.width() * 1000 / std::max(frame.width() - 2 * margin, 1.0),
                            site.height() * 1000 / std::max(frame.height() - 2 * margin, 1.0)));
}

/// The site view's frame, wide enough for its title, scale bar and north arrow.
Point2 sitePaper(const Extents& e, double scale) {
  constexpr double kTitleRoom = 165;
  const Point2 size = sizeOnPaper(e.site, scale, kSiteMargin);
  return {std::max(size.x, kTitleRoom), size.y};
}

/// The region cut for a site view of this size: beside the rest, or above it.
std::pair<PaperBox, PaperBox> cut(const PaperBox& region, Point2 site, bool beside) {
  PaperBox first = region, rest = region;
  if (beside) {
    first.high.x = first.low.x + site.x;
    rest.low.x = first.high.x + kGap;
  } else {
    first.high.y = first.low.y + site.y + kViewTitle;
    rest.low.y = first.high.y + kGap;
  }
  return {first, rest};
}

struct Split {
  PaperBox rest; ///< the part of the region that the site view leaves to the tankage
  double siteScale, tankScale, score;
};

std::optional<Split> trySplit(const Extents& e, const PaperBox& region, UnitSystem units,
                              double siteScale, bool beside) {
  const Point2 size = sitePaper(e, siteScale);
  const auto [first, rest] = cut(region, size, beside);
  if (rest.width() < 80 || rest.height() < 80) return std::nullopt;
  if (!fitsIn(size, withoutTitle(first).grown(1e-6))) {
    return std::nullopt;
  }
  const double tank = largestScale(*e.tankage, withoutTitle(rest), kTankMargin, units);
  if (tank * kLeastGain > siteScale) return std::nullopt;
  return Split{rest, siteScale, tank, -std::log(siteScale) - kEnlargedWeight * std::log(tank)};
}

std::optional<Split> bestSplit(const Extents& e, const PaperBox& region, UnitSystem units) {
  std::optional<Split> best;
  for (double siteScale : standardScales(units)) {
    for (bool beside : {true, false}) {
      const auto split = trySplit(e, region, units, siteScale, beside);
      if (split && (!best || split->score > best->score)) best = split;
    }
  }
  return best;
}

PaperBox onPaper(const SheetView& view, const PaperBox& site) {
  return spanned(view.toPaper(site.low), view.toPaper(site.high));
}

/// How far to move a span on the paper so that it lies in another.
double intoSpan(double low, double high, double from, double to) {
  return low < from ? from - low : std::min(0.0, to - high);
}

/// Moves the enlarged view so that what its frame would cut in two is seen whole, as far as the
/// tankage keeps its margin in what stays free.
void showWhole(const Extents& e, const PaperBox& free, SheetView& view) {
  constexpr double kAir = 6; // mm between it and the frame
  const PaperBox frame = view.frame.grown(-kAir), room = free.grown(-kTankMargin);
  for (const PaperBox& thing : e.beside) {
    const PaperBox box = onPaper(view, thing), tankage = onPaper(view, *e.tankage);
    if (!box.meets(view.frame) || frame.holds(box)) continue;
    const Point2 by{intoSpan(box.low.x, box.high.x, frame.low.x, frame.high.x),
                    intoSpan(box.low.y, box.high.y, frame.low.y, frame.high.y)};
    if (!room.holds(PaperBox{tankage.low + by, tankage.high + by})) continue;
    view.centre = view.centre + Point2{-by.x, by.y} * (view.scale / 1000);
  }
}

/// The site view in the region's upper left corner; the enlarged view takes the whole region, runs
/// on under it, and has the tankage in the middle of what stays free.
std::vector<SheetView> splitViews(const Extents& e, const PaperBox& region, const Split& split) {
  const Point2 size = sitePaper(e, split.siteScale);
  SheetView site{
      "1", "SITE PLAN", {region.low, region.low + size}, e.site.centre(), split.siteScale};
  SheetView tankage{"2", "ENLARGED PLAN OF TANKAGE", withoutTitle(region), e.tankage->centre(),
                    split.tankScale};
  const PaperBox free = withoutTitle(split.rest);
  tankage.centre = tankage.centre + tankage.centre - tankage.toSite(free.centre());
  showWhole(e, free, tankage);
  tankage.hidden =
      PaperBox{region.low, {region.low.x + size.x, region.low.y + size.y + kViewTitle}};
  return {site, tankage};
}

} // namespace

Extents extents(const Plan& plan, const std::vector<Mark>& marks) {
  std::vector<Point2> all, tankage;
  for (const Mark& mark : marks)
    all.insert(all.end(), mark.points.begin(), mark.points.end());
  for (const Vault& vault : plan.vaults) {
    const Ring ring = outline(vault);
    tankage.insert(tankage.end(), ring.begin(), ring.end());
  }
  Extents result{around(all), std::nullopt, {}};
  if (tankage.empty()) return result;
  for (const EquipmentRoom& room : plan.rooms) {
    const Ring ring = outline(room);
    tankage.insert(tankage.end(), ring.begin(), ring.end());
  }
  result.tankage = around(tankage);
  for (const Basin& basin : plan.basins)
    result.beside.push_back(around(outline(basin)));
  for (const WashEquipment& wash : plan.washes)
    result.beside.push_back(around(outline(wash)));
  return result;
}

std::vector<SheetView> arrangeViews(const Extents& e, const PaperBox& region, UnitSystem units,
                                    double scale) {
  const PaperBox frame = withoutTitle(region);
  if (scale > 0) {
    const bool whole = !e.tankage || fitsIn(sizeOnPaper(e.site, scale, 0), frame);
    return {{"1", "PLAN", frame, (whole ? e.site : *e.tankage).centre(), scale}};
  }
  const double alone = largestScale(e.site, frame, kSiteMargin, units);
  if (e.tankage) {
    const auto split = bestSplit(e, region, units);
    if (split && split->tankScale * kLeastGain <= alone) {
      return splitViews(e, region, *split);
    }
  }
  return {{"1", "PLAN", frame, e.site.centre(), alone}};
}

} // namespace sump
