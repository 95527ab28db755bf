#pragma once
// Ground surface from spot elevations: a Delaunay triangulation (by way of Boost.Polygon's Voronoi
// diagram) with linear interpolation inside, and the nearest hull point's value outside.

#include "core/geometry/point.h"

#include <array>
#include <memory>
#include <optional>
#include <vector>

namespace sump {

class Surface {
public:
  Surface();
  /// Points closer than 1 mm in plan are merged (their mean is used). 0 points: no surface;
  /// 1 or 2 points, or all in one line: nearest-segment interpolation.
  explicit Surface(const std::vector<Point3>& spots);
  bool empty() const;
  /// Elevation at p; nothing when the surface is empty.
  std::optional<double> elevation(Point2 p) const;
  /// Indices into spots() of each triangle, counter-clockwise.
  const std::vector<std::array<int, 3>>& triangles() const;
  const std::vector<Point3>& spots() const;

private:
  struct Data;
  std::shared_ptr<const Data> data_;
};

} // namespace sump
