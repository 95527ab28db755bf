#include "core/study/spoil_heap.h"

#include "core/geometry/polygon.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <queue>

namespace sump {

namespace {

/// A square of the plan, and how far its middle lies inside the outline (negative: outside).
struct HeapCell {
  Point2 centre;
  double half = 0;
  double inside = 0;
  double other = 0; ///< from the middle to the second nearest side of the outline
  double reach() const { return half * std::numbers::sqrt2; }
  double most() const { return inside + reach(); } ///< no place of it lies deeper
  bool operator<(const HeapCell& than) const { return most() < than.most(); }
};

HeapCell cellAt(Point2 centre, double half, const Ring& outline) {
  double nearest = std::numeric_limits<double>::infinity(), second = nearest;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const double away =
        nearestOnSegment(centre, outline[i], outline[(i + 1) % outline.size()]).distance;
    second = std::min(second, std::max(away, nearest));
    nearest = std::min(nearest, away);
  }
  const bool within = contains(outline, centre);
  return {centre, half, within ? nearest : -nearest, second};
}

template <class Visit> void quarter(const HeapCell& cell, const Ring& outline, Visit visit) {
  const double half = cell.half / 2;
  for (Point2 way : {Point2{-half, -half}, {half, -half}, {half, half}, {-half, half}})
    visit(cellAt(cell.centre + way, half, outline));
}

/// The square round the whole outline.
HeapCell whole(const Ring& outline) {
  Point2 low = outline.front(), high = low;
  for (Point2 p : outline) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  const double half = std::max(high.x - low.x, high.y - low.y) / 2;
  return cellAt(lerp(low, high, 0.5), half, outline);
}

/// How far from the outline the place that lies deepest in it is: the most promising squares are
/// quartered first, and what lies in a square is no deeper than its middle by more than its reach.
double deepestInside(const Ring& outline) {
  constexpr double kClose = 1e-3; // m
  std::priority_queue<HeapCell> open;
  open.push(whole(outline));
  double best = std::max(0.0, open.top().inside);
  while (!open.empty() && open.top().most() > best + kClose) {
    const HeapCell cell = open.top();
    open.pop();
    quarter(cell, outline, [&](const HeapCell& part) {
      best = std::max(best, part.inside);
      if (part.most() > best + kClose) open.push(part);
    });
  }
  return best;
}

/// The integral over the cell of how far its places lie inside, `deepest` at most. A square that
/// lies whole inside and nearest to one side of the outline rises evenly over it: its middle says
/// all. Others are quartered until they are small.
double depths(const HeapCell& cell, const Ring& outline, double deepest, double least) {
  const double area = 4 * cell.half * cell.half, reach = cell.reach();
  if (cell.inside <= -reach) return 0;
  if (cell.inside >= deepest + reach) return area * deepest;
  const bool even = cell.inside >= reach && cell.inside <= deepest - reach &&
                    cell.other - cell.inside >= 2 * reach;
  if (even || cell.half <= least) return area * std::clamp(cell.inside, 0.0, deepest);
  double sum = 0;
  quarter(cell, outline,
          [&](const HeapCell& part) { sum += depths(part, outline, deepest, least); });
  return sum;
}

} // namespace

SpoilHeap spoilHeap(const Ring& outline, double runOverRise, Length highest) {
  constexpr double kFine = 0.05; // m; of the smallest squares, half
  const double height = std::min(inMetres(highest), deepestInside(outline) / runOverRise);
  const HeapCell all = whole(outline);
  const double least = std::max(kFine, all.half / 128);
  const double sum = depths(all, outline, height * runOverRise, least);
  return {cubicMetres(sum / runOverRise), metres(height)};
}

} // namespace sump
