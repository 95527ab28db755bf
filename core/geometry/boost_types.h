#pragma once
// Boost.Geometry's view of our types. Private to core/geometry's .cpp files.

#include "core/geometry/point.h"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/register/point.hpp>

BOOST_GEOMETRY_REGISTER_POINT_2D(sump::Point2, double, boost::geometry::cs::cartesian, x, y)

namespace sump::bg {

namespace geometry = boost::geometry;
/// Clockwise and closed, as Boost.Geometry expects by default.
using Polygon = geometry::model::polygon<Point2>;
using Line = geometry::model::linestring<Point2>;

inline Polygon polygon(const Ring& ring) {
  Polygon result;
  result.outer().assign(ring.begin(), ring.end());
  geometry::correct(result);
  return result;
}

inline Line line(const Polyline& points) {
  return Line(points.begin(), points.end());
}

/// The outline as a closed line.
inline Line edge(const Ring& ring) {
  Line result(ring.begin(), ring.end());
  if (!ring.empty()) result.push_back(ring.front());
  return result;
}

} // namespace sump::bg
