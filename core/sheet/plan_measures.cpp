#include "core/sheet/plan_measures.h"

#include "core/geometry/polygon.h"

#include <algorithm>
#include <limits>

namespace sump {

namespace {

/// To the right of a line, 1 m long.
Point2 rightOf(Point2 from, Point2 to) {
  const Point2 along = (to - from) * (1 / std::max(distance(from, to), 1e-9));
  return {along.y, -along.x};
}

// Extension lines start a gap away from the object and run a little past the dimension line; its
// ends have oblique strokes (ISO 129-1, from memory).
void drawLines(const PlanMeasure& m, const LineStyle& style, const SheetView& view,
               LabelBoard& board) {
  constexpr double kGap = 0.8, kPast = 1.2, kStroke = 1.1; // mm on the paper
  const LineStyle thin{Ink::Black, 0.25, {}};
  const Point2 aside = rightOf(m.from, m.to) * m.off;
  const Point2 a = view.toPaper(m.from + aside), b = view.toPaper(m.to + aside);
  if (m.off > 0) {
    for (Point2 object : {m.from, m.to}) {
      const Point2 foot = view.toPaper(object), end = view.toPaper(object + aside);
      const Point2 out = (end - foot) * (1 / std::max(distance(foot, end), 1e-9));
      board.measureLine(foot + out * kGap, end + out * kPast, thin);
    }
  }
  constexpr double kBeside = 25, kTape = 60; // mm that a label on it is disliked
  board.measureLine(a, b, style, m.off > 0 ? kBeside : kTape);
  const Point2 along = (b - a) * (1 / std::max(distance(a, b), 1e-9));
  const Point2 stroke = (along + Point2{along.y, -along.x}) * kStroke;
  for (Point2 end : {a, b})
    board.measureLine(end - stroke, end + stroke, LineStyle{Ink::Black, 0.35, {}});
}

/// Dislike of a dimension line from a to b, `off` beside its object, in metres of distance.
double dislike(Point2 a, Point2 b, double off, const SideRoom& room) {
  constexpr double kOnOther = 1000, kInMark = 100, kByTaken = 50;
  const Point2 middle = lerp(a, b, 0.5);
  double sum = off;
  for (const Ring& other : room.others) {
    const bool on = distance(middle, other) < room.near / 4;
    if (on || !crossings({a, b}, other).empty()) sum += kOnOther;
  }
  for (const Polyline& line : room.taken) {
    // Two in one gap read as one thing measured twice.
    if (distanceToLine(middle, line) < room.near) sum += kByTaken;
  }
  constexpr double kHair = 1e-6;
  for (Point2 end : room.cutEnds) {
    if (off < room.far && nearestOnSegment(end, a, b).distance < off + kHair) sum += kInMark;
  }
  return sum;
}

} // namespace

void drawPlanMeasures(const std::vector<PlanMeasure>& measures, const LineStyle& line,
                      const SheetView& view, LabelBoard& board) {
  constexpr double kReach = 40; // mm
  for (const PlanMeasure& m : measures)
    drawLines(m, line, view, board);
  for (const PlanMeasure& m : measures)
    board.alongLine({{m.text}}, lineOf(m), kReach);
}

Polyline lineOf(const PlanMeasure& measure) {
  const Point2 aside = rightOf(measure.from, measure.to) * measure.off;
  return {measure.from + aside, measure.to + aside};
}

PlanMeasure nearestPair(const Ring& from, const Ring& to) {
  PlanMeasure best{from[0], to[0], 0, {}};
  const auto take = [&](Point2 a, Point2 b) {
    if (distance(a, b) < distance(best.from, best.to)) best = {a, b, 0, {}};
  };
  for (Point2 p : from) {
    for (std::size_t i = 0; i < to.size(); ++i)
      take(p, nearestOnSegment(p, to[i], to[(i + 1) % to.size()]).at);
  }
  for (Point2 p : to) {
    for (std::size_t i = 0; i < from.size(); ++i)
      take(nearestOnSegment(p, from[i], from[(i + 1) % from.size()]).at, p);
  }
  return best;
}

PlanMeasure clearestSide(const Ring& ring, std::size_t side, const SideRoom& room) {
  PlanMeasure best;
  double least = std::numeric_limits<double>::infinity();
  for (const double off : {room.near, room.far}) {
    for (const std::size_t i : {side, side + 2}) {
      const Point2 a = ring[i], b = ring[(i + 1) % ring.size()];
      const Point2 aside = rightOf(a, b) * off;
      const double cost = dislike(a + aside, b + aside, off, room);
      if (cost >= least) continue;
      least = cost;
      best = {a, b, off, {}};
    }
  }
  return best;
}

} // namespace sump
