#pragma once
// The union of outlines, exact on a grid of a tenth of a millimetre (Boost.Polygon, integers), so
// that outlines which share edges, as digs side by side do, cannot confuse it. Areas in m2.

#include "core/geometry/point.h"

#include <vector>

namespace sump {

/// The outer boundaries of all that the outlines cover together, counter-clockwise; one for each
/// connected part. Holes are left out. Outlines within about 100 km of each other.
std::vector<Ring> unionOutlines(const std::vector<Ring>& rings);
/// The same and, after them, the edges of the holes.
std::vector<Ring> unionEdges(const std::vector<Ring>& rings);
/// The area that the outlines cover together, holes not counted.
double unionArea(const std::vector<Ring>& rings);

} // namespace sump
