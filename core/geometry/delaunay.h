#pragma once
// Triangles over scattered points. Private to core/geometry: surface.h is what others use.

#include "core/geometry/point.h"

#include <array>
#include <optional>
#include <vector>

namespace sump {

/// Indices into the points they were made from.
using Triangle = std::array<int, 3>;
using Edge = std::array<int, 2>;

/// Points this close (metres) are one; triangles this flat on the rim are none.
inline constexpr double kSamePlace = 1e-3;

/// The Delaunay triangulation, counter-clockwise. Points must be at least kSamePlace apart, within
/// 100 km of the first, and not all in one line.
std::vector<Triangle> delaunay(const std::vector<Point3>& points);

/// Edges that belong to one triangle only.
std::vector<Edge> hull(const std::vector<Triangle>& triangles);

/// The points in order along the line that all of them lie on, to within kSamePlace; nothing when
/// they do not. One point or two always do.
std::optional<std::vector<int>> orderAlongLine(const std::vector<Point3>& points);

} // namespace sump
