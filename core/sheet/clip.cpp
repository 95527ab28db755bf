#include "core/sheet/clip.h"

#include "core/geometry/polygon.h"

#include <algorithm>
#include <optional>

namespace sump {

namespace {

/// Signed distance inside one side of the box: 0 left, 1 right, 2 top, 3 bottom.
double inside(Point2 p, const PaperBox& box, int side) {
  switch (side) {
  case 0:
    return p.x - box.low.x;
  case 1:
    return box.high.x - p.x;
  case 2:
    return p.y - box.low.y;
  default:
    return box.high.y - p.y;
  }
}

Ring cutSide(const Ring& ring, const PaperBox& box, int side) {
  Ring kept;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point2 a = ring[i], b = ring[(i + 1) % ring.size()];
    const double da = inside(a, box, side), db = inside(b, box, side);
    if (da >= 0) kept.push_back(a);
    if ((da >= 0) != (db >= 0)) kept.push_back(lerp(a, b, da / (da - db)));
  }
  return kept;
}

/// Fractions of a-b between which it lies inside the box.
std::optional<std::pair<double, double>> stretch(Point2 a, Point2 b, const PaperBox& box) {
  double enter = 0, leave = 1;
  for (int side = 0; side < 4; ++side) {
    const double da = inside(a, box, side), db = inside(b, box, side);
    if (da < 0 && db < 0) return std::nullopt;
    if (da < 0) enter = std::max(enter, da / (da - db));
    if (db < 0) leave = std::min(leave, da / (da - db));
  }
  if (enter > leave) return std::nullopt;
  return std::pair{enter, leave};
}

} // namespace

PaperBox around(const std::vector<Point2>& points) {
  if (points.empty()) return {};
  PaperBox box{points.front(), points.front()};
  for (Point2 p : points) {
    box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
    box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
  }
  return box;
}

Ring clipRing(const Ring& ring, const PaperBox& box) {
  Ring kept = ring;
  for (int side = 0; side < 4 && !kept.empty(); ++side)
    kept = cutSide(kept, box, side);
  return kept;
}

std::vector<Polyline> clipLine(const Polyline& line, const PaperBox& box) {
  std::vector<Polyline> parts;
  bool open = false; // the last part may go on
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const auto found = stretch(line[i], line[i + 1], box);
    if (!found) {
      open = false;
      continue;
    }
    const auto [enter, leave] = *found;
    if (!open || enter > 0) parts.push_back({lerp(line[i], line[i + 1], enter)});
    parts.back().push_back(lerp(line[i], line[i + 1], leave));
    open = leave >= 1;
  }
  return parts;
}

bool cutsBox(Point2 a, Point2 b, const PaperBox& box) {
  return spanned(a, b).touches(box) && stretch(a, b, box).has_value();
}

bool cutsRing(const Ring& ring, Point2 a, Point2 b) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    if (crossSegments(a, b, ring[i], ring[(i + 1) % ring.size()])) return true;
  }
  return false;
}

} // namespace sump
