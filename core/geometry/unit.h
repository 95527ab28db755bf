#pragma once
// The way from one place to another.

#include "core/geometry/point.h"

namespace sump {

/// Of length 1; zero where both are one place.
inline Point2 unitWay(Point2 a, Point2 b) {
  const double length = distance(a, b);
  return length > 0 ? (b - a) * (1 / length) : Point2{};
}

} // namespace sump
