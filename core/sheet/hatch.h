#pragma once
// Hatching as lines, so that every printer and viewer draws the same.

#include "core/sheet/style.h"

#include <utility>
#include <vector>

namespace sump {

/// Line segments of the hatch inside the ring (even-odd), `spacing` apart in the ring's own unit.
/// Lines stand on a fixed raster, so neighbouring areas join. Dots come as very short lines.
std::vector<std::pair<Point2, Point2>> hatchLines(const Ring& ring, Hatch hatch, double spacing);

} // namespace sump
