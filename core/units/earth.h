#pragma once
// Earth, concrete and paving, which the trade measures and pays in cubic and square yards where
// lengths are in feet.

#include "core/units/quantity.h"

#include <string>

namespace sump {

inline constexpr double kCubicMetresPerCubicYard =
    27 * kMetresPerFoot * kMetresPerFoot * kMetresPerFoot;

inline constexpr double kSquareMetresPerSquareYard = 9 * kMetresPerFoot * kMetresPerFoot;

constexpr double inCubicYards(Volume v) {
  return v.value() / kCubicMetresPerCubicYard;
}

/// `128.4 yd³`, `138.23 m³`
std::string earthText(Volume v, UnitSystem units);

} // namespace sump
