#include "app/canvas/drawn_lines.h"

#include "app/canvas/label_places.h"

#include <cmath>
#include <set>

namespace sump {

namespace {

constexpr double kCell = 64;      // pixels
constexpr double kHalfWide = 1.5; // of a usual line, pixels

int cellOf(double at) {
  return static_cast<int>(std::floor(at / kCell));
}

/// Fills without an edge, like the hatching of traffic areas, are read through; arrows and symbols
/// are not.
bool isLine(const Mark& mark) {
  return mark.points.size() > 1 &&
         (mark.line || mark.layer == Layer::Symbol || mark.layer == Layer::Part);
}

} // namespace

void DrawnLines::gather(const Mark& mark, std::size_t index, const QRectF& cell,
                        std::vector<Piece>& into) const {
  const auto add = [&](const QPolygonF& shape) {
    const QRectF bounds = shape.boundingRect();
    if (bounds.intersects(cell)) into.push_back({shape, bounds, index});
  };
  if (mark.round) {
    const QPointF middle = view_.toScreen(mark.points[0]);
    const double r = distance(mark.points[0], mark.points[1]) * view_.scale();
    return add(QPolygonF(QRectF(middle - QPointF(r, r), QSizeF(2 * r, 2 * r))));
  }
  const std::size_t count = mark.points.size(), last = mark.closed ? count : count - 1;
  for (std::size_t i = 0; i < last; ++i) {
    const QLineF line(view_.toScreen(mark.points[i]), view_.toScreen(mark.points[(i + 1) % count]));
    add(turnedBox(line.center(), line.angle(), {line.length(), 2 * kHalfWide}));
  }
}

const std::vector<DrawnLines::Piece>& DrawnLines::cell(int x, int y) const {
  const qint64 key = x * qint64(1'000'003) + y;
  const auto known = cells_.constFind(key);
  if (known != cells_.cend()) return *known;
  std::vector<Piece> pieces;
  const QRectF area(x * kCell, y * kCell, kCell, kCell);
  const QRectF wide = area.adjusted(-kHalfWide, -kHalfWide, kHalfWide, kHalfWide);
  const Box site{view_.toSite(wide.bottomLeft()), view_.toSite(wide.topRight())};
  for (std::size_t i : scene_.visible(site)) {
    if (isLine(scene_.marks()[i])) gather(scene_.marks()[i], i, area, pieces);
  }
  return *cells_.insert(key, std::move(pieces));
}

bool DrawnLines::counts(const Piece& piece, const But& but) const {
  const Mark& mark = scene_.marks()[piece.mark];
  if (but.paving && mark.layer == Layer::Paving) return false;
  const bool line = mark.layer == Layer::Run || mark.layer == Layer::Utility;
  return !line || but.line.empty() || mark.object != but.line;
}

/// Until `visit` says that it has seen enough.
template <typename Visit> void DrawnLines::eachNear(const QPolygonF& box, Visit visit) const {
  const QRectF bounds = box.boundingRect().adjusted(-0.5, -0.5, 0.5, 0.5); // of upright lines too
  for (int x = cellOf(bounds.left()); x <= cellOf(bounds.right()); ++x) {
    for (int y = cellOf(bounds.top()); y <= cellOf(bounds.bottom()); ++y) {
      for (const Piece& piece : cell(x, y)) {
        if (piece.bounds.intersects(bounds) && convexOverlap(box, piece.shape) && visit(piece))
          return;
      }
    }
  }
}

bool DrawnLines::cross(const QPolygonF& box, const But& but) const {
  bool found = false;
  eachNear(box, [&](const Piece& piece) { return found = counts(piece, but); });
  return found;
}

int DrawnLines::count(const QPolygonF& box, const But& but) const {
  std::set<std::size_t> marks;
  eachNear(box, [&](const Piece& piece) {
    if (counts(piece, but)) marks.insert(piece.mark);
    return false;
  });
  return static_cast<int>(marks.size());
}

} // namespace sump
