#include "core/geometry/outline_union.h"

#include "core/geometry/polygon.h"

#include <boost/polygon/polygon.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace sump {

namespace {

namespace bp = boost::polygon;
using GridPolygon = bp::polygon_with_holes_data<int>;

constexpr double kGridPerMetre = 1e4;

int onGrid(double metres) { // clamped so that differences still fit an int
  return static_cast<int>(std::lround(std::clamp(metres * kGridPerMetre, -1e9, 1e9)));
}

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
  /// Of a part or of a hole in one.
  template <class Points> Ring outer(const Points& part) const {
    Ring ring;
    for (const auto& p : part) {
      ring.push_back(origin_ + Point2{p.x() / kGridPerMetre, p.y() / kGridPerMetre});
    }
    if (ring.size() > 1 && ring.front() == ring.back()) ring.pop_back();
    return ring;
  }

private:
  bp::polygon_set_data<int> set_;
  Point2 origin_;
  bool any_ = false;
};

/// Rectangles that all lie along one direction, as digs in a row do, on the grid of that direction:
/// a union of upright boxes takes a fraction of the time of one of any outlines.
class UprightUnion {
public:
  explicit UprightUnion(const std::vector<Ring>& rings) {
    for (const Ring& ring : rings) {
      if (ring.size() < 3) continue;
      if (!any_) begin(ring);
      any_ = true;
      upright_ = upright_ && add(ring);
      if (!upright_) return;
    }
  }

  /// Nothing when some outline is no such rectangle.
  std::optional<double> area() const {
    if (!upright_) return std::nullopt;
    return static_cast<double>(bp::area(set_)) / (kGridPerMetre * kGridPerMetre);
  }

private:
  void begin(const Ring& ring) {
    origin_ = ring[0];
    const Point2 side = ring[1] - ring[0];
    const double length = norm(side);
    if (length > 0) along_ = side * (1 / length);
  }
  Point2 turned(Point2 p) const { return {dot(along_, p - origin_), cross(along_, p - origin_)}; }

  bool add(const Ring& ring) {
    if (ring.size() != 4) return false;
    std::array<Point2, 4> p;
    for (std::size_t i = 0; i < 4; ++i)
      p[i] = turned(ring[i]);
    for (std::size_t i = 0; i < 4; ++i) { // each side goes along the one way or the other
      const Point2 side = p[(i + 1) % 4] - p[i];
      if (std::min(std::abs(side.x), std::abs(side.y)) > kHair) return false;
    }
    const auto [left, right] = std::minmax(p[0].x, p[2].x);
    const auto [low, high] = std::minmax(p[0].y, p[2].y);
    set_.insert(bp::rectangle_data<int>(onGrid(left), onGrid(low), onGrid(right), onGrid(high)));
    return true;
  }

  static constexpr double kHair = 1e-6; ///< m

  bp::polygon_90_set_data<int> set_{bp::HORIZONTAL};
  Point2 origin_, along_{1, 0};
  bool any_ = false, upright_ = true;
};

double signedArea(const Ring& ring) {
  double twice = 0;
  for (std::size_t i = 2; i < ring.size(); ++i)
    twice += cross(ring[i - 1] - ring[0], ring[i] - ring[0]);
  return twice / 2;
}

std::vector<Ring> outlinesOf(const GridUnion& joined, const std::vector<GridPolygon>& parts) {
  std::vector<Ring> outlines;
  for (const GridPolygon& part : parts) {
    Ring ring = joined.outer(part);
    if (signedArea(ring) < 0) std::ranges::reverse(ring);
    outlines.push_back(std::move(ring));
  }
  return outlines;
}

} // namespace

std::vector<Ring> unionOutlines(const std::vector<Ring>& rings) {
  const GridUnion joined(rings);
  return outlinesOf(joined, joined.parts());
}

std::vector<Ring> unionEdges(const std::vector<Ring>& rings) {
  const GridUnion joined(rings);
  const std::vector<GridPolygon> parts = joined.parts();
  std::vector<Ring> edges = outlinesOf(joined, parts);
  for (const GridPolygon& part : parts) {
    for (auto hole = part.begin_holes(); hole != part.end_holes(); ++hole)
      edges.push_back(joined.outer(*hole));
  }
  return edges;
}

double unionArea(const std::vector<Ring>& rings) {
  if (const auto area = UprightUnion(rings).area()) return *area;
  double sum = 0;
  for (const GridPolygon& part : GridUnion(rings).parts()) {
    sum += static_cast<double>(bp::area(part)); // less its holes
  }
  return sum / (kGridPerMetre * kGridPerMetre);
}

} // namespace sump
