#pragma once
// Cutting marks at the edge of a viewport. Private to core/sheet.

#include "core/geometry/point.h"

#include <algorithm>
#include <vector>

namespace sump {

/// An upright rectangle of paper millimetres, y down: `low` is the top left corner.
struct PaperBox {
  Point2 low;
  Point2 high;
  double width() const { return high.x - low.x; }
  double height() const { return high.y - low.y; }
  Point2 centre() const { return lerp(low, high, 0.5); }
  bool holds(Point2 p) const {
    return p.x >= low.x && p.x <= high.x && p.y >= low.y && p.y <= high.y;
  }
  bool holds(const PaperBox& b) const { return holds(b.low) && holds(b.high); }
  bool meets(const PaperBox& b) const {
    return low.x < b.high.x && b.low.x < high.x && low.y < b.high.y && b.low.y < high.y;
  }
  /// As meets, for boxes that may have no width or height.
  bool touches(const PaperBox& b) const {
    return low.x <= b.high.x && b.low.x <= high.x && low.y <= b.high.y && b.low.y <= high.y;
  }
  PaperBox grown(double by) const { return {{low.x - by, low.y - by}, {high.x + by, high.y + by}}; }
  Ring ring() const { return {low, {high.x, low.y}, high, {low.x, high.y}}; }
};

/// The smallest box around the points; all zero for none.
PaperBox around(const std::vector<Point2>& points);
/// That around two.
inline PaperBox spanned(Point2 a, Point2 b) {
  return {{std::min(a.x, b.x), std::min(a.y, b.y)}, {std::max(a.x, b.x), std::max(a.y, b.y)}};
}

/// The part of a ring inside the box (Sutherland and Hodgman, CACM 17, 1974); empty when outside.
/// A concave ring cut in two keeps a joining edge along the box's side.
Ring clipRing(const Ring& ring, const PaperBox& box);
/// The parts of a line inside the box (Liang and Barsky, ACM TOG 3, 1984).
std::vector<Polyline> clipLine(const Polyline& line, const PaperBox& box);

/// True when any of a-b lies in or on the box.
bool cutsBox(Point2 a, Point2 b, const PaperBox& box);
/// True when a-b meets an edge of the ring.
bool cutsRing(const Ring& ring, Point2 a, Point2 b);

} // namespace sump
