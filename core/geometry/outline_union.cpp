#include "core/geometry/outline_union.h"

#include "core/geometry/polygon.h"

#include <boost/polygon/polygon.hpp>

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

namespace bp = boost::polygon;
using GridPolygon = bp::polygon_with_holes_data<int>;

constexpr double kGridPerMetre = 1e4;

/// Outlines on the grid, relative to a point of theirs so that far-off sites lose no digits.
class GridUnion {
public:
  explicit GridUnion(const std::vector<Ring>& rings) {
    for (const Ring& ring : rings) {
      if (ring.size() < 3) continue;
      if (!any_) origin_ = ring.front();
      any_ = true;
      std::vector<bp::point_data<int>> points;
      points.reserve(ring.size());
      for (Point2 p : ring)
        points.emplace_back(onGrid(p.x - origin_.x), onGrid(p.y - origin_.y));
      set_.insert(bp::polygon_data<int>(points.begin(), points.end()));
    }
  }

  std::vector<GridPolygon> parts() const {
    std::vector<GridPolygon> parts;
    if (any_) set_.get(parts);
    return parts;
  }
  Ring outer(const GridPolygon& part) const {
    Ring ring;
    for (const auto& p : part) {
      ring.push_back(origin_ + Point2{p.x() / kGridPerMetre, p.y() / kGridPerMetre});
    }
    if (ring.size() > 1 && ring.front() == ring.back()) ring.pop_back();
    return ring;
  }

private:
  static int onGrid(double metres) { // clamped so that differences still fit an int
    return static_cast<int>(std::lround(std::clamp(metres * kGridPerMetre, -1e9, 1e9)));
  }

  bp::polygon_set_data<int> set_;
  Point2 origin_;
  bool any_ = false;
};

double signedArea(const Ring& ring) {
  double twice = 0;
  for (std::size_t i = 2; i < ring.size(); ++i)
    twice += cross(ring[i - 1] - ring[0], ring[i] - ring[0]);
  return twice / 2;
}

} // namespace

std::vector<Ring> unionOutlines(const std::vector<Ring>& rings) {
  const GridUnion joined(rings);
  std::vector<Ring> outlines;
  for (const GridPolygon& part : joined.parts()) {
    Ring ring = joined.outer(part);
    if (signedArea(ring) < 0) std::ranges::reverse(ring);
    outlines.push_back(std::move(ring));
  }
  return outlines;
}

double unionArea(const std::vector<Ring>& rings) {
  double sum = 0;
  for (const GridPolygon& part : GridUnion(rings).parts()) {
    sum += static_cast<double>(bp::area(part)); // less its holes
  }
  return sum / (kGridPerMetre * kGridPerMetre);
}

} // namespace sump
