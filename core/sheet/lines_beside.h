#pragma once
// Lines that go the same way side by side. Private to core/sheet.

#include "core/geometry/point.h"

#include <vector>

namespace sump {

/// A stretch of a line beside a leg: from where to where along it, and how far off, to the left of
/// it where positive.
struct Beside {
  double from, to, off;
};

/// The legs of lines that go the same way as a-b, on the paper, up to `most` mm beside it.
std::vector<Beside> linesBeside(const std::vector<Polyline>& lines, Point2 a, Point2 b,
                                double most);

} // namespace sump
