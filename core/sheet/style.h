#pragma once
// Line and fill conventions of the drawing, shared by the sheet and the canvas. Colours follow the
// APWA Uniform Color Code and are never alone: every service has a letter code and a line pattern.

#include "core/plan/plan.h"

#include <cstdint>
#include <vector>

namespace sump {

struct Color {
  std::uint8_t red = 0, green = 0, blue = 0;
  bool operator==(const Color&) const = default;
};

/// Named by meaning, so that a dark screen can map them otherwise than paper does.
enum class Ink {
  Black,
  Grey,
  PaleGrey,
  White,
  ServiceRed,
  ServiceYellow,
  ServiceOrange,
  ServiceBlue,
  ServicePurple,
  ServiceGreen,
  Concrete,
  Water,
  Paving,
  Building,
};
Color paperColor(Ink ink);
Ink ink(UtilityColor color);

struct LineStyle {
  Ink ink = Ink::Black;
  double width = 0.25;      ///< paper mm (ISO 128-2 series)
  std::vector<double> dash; ///< paper mm on, off, ...; empty: continuous
  bool operator==(const LineStyle&) const = default;
};
enum class Hatch { None, Diagonal, Cross, Dots };
struct FillStyle {
  Ink ink = Ink::White;
  Hatch hatch = Hatch::None;
  bool operator==(const FillStyle&) const = default;
};

LineStyle serviceLine(Service service);

} // namespace sump
