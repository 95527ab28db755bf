#include "app/canvas/label_places.h"

#include <QTransform>

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

/// How far a convex outline reaches along an axis.
std::pair<double, double> span(const QPolygonF& shape, QPointF axis) {
  double low = 1e300, high = -1e300;
  for (const QPointF& corner : shape) {
    const double along = QPointF::dotProduct(axis, corner);
    low = std::min(low, along);
    high = std::max(high, along);
  }
  return {low, high};
}

/// By one of the edges of the first.
bool separated(const QPolygonF& a, const QPolygonF& b) {
  for (qsizetype i = 0; i < a.size(); ++i) {
    const QPointF edge = a[(i + 1) % a.size()] - a[i];
    const QPointF axis(-edge.y(), edge.x());
    if (axis.isNull()) continue; // a closed outline ends where it began
    const auto [lowA, highA] = span(a, axis);
    const auto [lowB, highB] = span(b, axis);
    if (highA <= lowB || highB <= lowA) return true;
  }
  return false;
}

QLineF edgeOf(const QPolygonF& outline, qsizetype i) {
  return {outline[i], outline[(i + 1) % outline.size()]};
}

/// Middles of `size` evenly over `length`, no more than `most`.
std::vector<double> evenly(double from, double length, double size, int most) {
  const double room = length - size;
  if (room <= 0) return {from + length / 2};
  const int count = std::clamp(static_cast<int>(room / (size / 3)) + 1, 2, most);
  std::vector<double> all;
  for (int i = 0; i < count; ++i)
    all.push_back(from + size / 2 + room * i / (count - 1));
  return all;
}

} // namespace

bool convexOverlap(const QPolygonF& a, const QPolygonF& b) {
  return !separated(a, b) && !separated(b, a);
}

QPolygonF turnedBox(QPointF centre, double angle, QSizeF size) {
  const double w = size.width() / 2, h = size.height() / 2;
  QTransform turn;
  turn.translate(centre.x(), centre.y());
  turn.rotate(-angle);
  return turn.map(QPolygonF({{-w, -h}, {w, -h}, {w, h}, {-w, h}}));
}

bool liesWithin(const QPolygonF& box, const QPolygonF& outline) {
  for (const QPointF& corner : box) {
    if (!outline.containsPoint(corner, Qt::OddEvenFill)) return false;
  }
  for (qsizetype i = 0; i < box.size(); ++i) {
    for (qsizetype k = 0; k < outline.size(); ++k) {
      if (edgeOf(box, i).intersects(edgeOf(outline, k), nullptr) == QLineF::BoundedIntersection)
        return false;
    }
  }
  return true;
}

/// Liang and Barsky: cut by one side after the other.
QLineF clipped(const QLineF& line, const QRectF& area) {
  double from = 0, to = 1;
  const auto cut = [&](double direction, double room) {
    if (direction == 0) {
      if (room < 0) to = -1;
    } else if (direction < 0) {
      from = std::max(from, room / direction);
    } else {
      to = std::min(to, room / direction);
    }
  };
  cut(-line.dx(), line.x1() - area.left());
  cut(line.dx(), area.right() - line.x1());
  cut(-line.dy(), line.y1() - area.top());
  cut(line.dy(), area.bottom() - line.y1());
  return to > from ? QLineF(line.pointAt(from), line.pointAt(to)) : QLineF();
}

double uprightAngle(const QLineF& line) {
  double angle = line.angle(); // degrees counter-clockwise on the screen
  if (angle > 90.5 && angle < 270.5) angle -= 180;
  if (angle >= 270.5) angle -= 360;
  return angle;
}

QLineF longestEdge(const QPolygonF& outline) {
  QLineF longest;
  for (qsizetype i = 0; i < outline.size(); ++i) {
    if (edgeOf(outline, i).length() > longest.length()) longest = edgeOf(outline, i);
  }
  return longest;
}

std::vector<QPointF> spreadOver(const QRectF& area, QSizeF size, QPointF wish) {
  constexpr int kMost = 7;
  std::vector<QPointF> all;
  for (double x : evenly(area.left(), area.width(), size.width(), kMost)) {
    for (double y : evenly(area.top(), area.height(), size.height(), kMost))
      all.emplace_back(x, y);
  }
  std::ranges::stable_sort(all, {}, [wish](QPointF p) { return QLineF(p, wish).length(); });
  return all;
}

QLineF wayTo(const QPolygonF& outline, const QRectF& box) {
  const auto onEdge = [](const QLineF& edge, QPointF p) {
    const QPointF d = edge.p2() - edge.p1(), off = p - edge.p1();
    const double square = QPointF::dotProduct(d, d);
    const double along = square > 0 ? QPointF::dotProduct(off, d) / square : 0;
    return edge.p1() + d * std::clamp(along, 0.0, 1.0);
  };
  const auto onBox = [&box](QPointF p) {
    return QPointF(std::clamp(p.x(), box.left(), box.right()),
                   std::clamp(p.y(), box.top(), box.bottom()));
  };
  QLineF best;
  double least = 1e300;
  for (qsizetype i = 0; i < outline.size(); ++i) {
    const QPointF end = onEdge(edgeOf(outline, i), onBox(onEdge(edgeOf(outline, i), box.center())));
    const QLineF way(onBox(end), end);
    if (way.length() >= least) continue;
    least = way.length();
    best = way;
  }
  return best;
}

QLineF shortestBetween(const QRectF& box, const QRectF& other) {
  // Where their sides overlap the line stands square to them, in the middle of the overlap.
  const auto between = [](double lowA, double highA, double lowB, double highB) {
    if (highA < lowB) return std::pair(highA, lowB);
    if (highB < lowA) return std::pair(lowA, highB);
    const double middle = (std::max(lowA, lowB) + std::min(highA, highB)) / 2;
    return std::pair(middle, middle);
  };
  const auto [x1, x2] = between(box.left(), box.right(), other.left(), other.right());
  const auto [y1, y2] = between(box.top(), box.bottom(), other.top(), other.bottom());
  return {x1, y1, x2, y2};
}

template <typename Visit> void TakenBoxes::eachCell(const QRectF& bounds, Visit visit) {
  constexpr double kCell = 96; // pixels: about as long as a run's label
  const auto cell = [](double at) { return static_cast<qint64>(std::floor(at / kCell)); };
  for (qint64 x = cell(bounds.left()); x <= cell(bounds.right()); ++x)
    for (qint64 y = cell(bounds.top()); y <= cell(bounds.bottom()); ++y)
      visit(x * 100'003 + y);
}

bool TakenBoxes::isFree(const QRectF& bounds, const QPolygonF* box) const {
  bool free = true;
  eachCell(bounds, [&](qint64 cell) {
    const auto near = cells_.constFind(cell);
    if (!free || near == cells_.cend()) return;
    free = std::ranges::none_of(*near, [&](std::size_t i) {
      return bounds.adjusted(-1, -1, 1, 1).intersects(bounds_[i]) &&
             convexOverlap(box != nullptr ? *box : QPolygonF(bounds), boxes_[i]);
    });
  });
  return free;
}

void TakenBoxes::take(const QPolygonF& box) {
  const QRectF bounds = box.boundingRect();
  eachCell(bounds, [&](qint64 cell) { cells_[cell].push_back(boxes_.size()); });
  boxes_.push_back(box);
  bounds_.push_back(bounds);
}

void TakenBoxes::take(const QLineF& line) {
  constexpr double kWide = 3; // pixels
  take(turnedBox(line.center(), line.angle(), {line.length(), kWide}));
}

} // namespace sump
