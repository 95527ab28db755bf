#pragma once
// Reading quantities that a person typed. Decimal point and decimal comma are both accepted; a
// bare number takes the unit named by the caller's UnitSystem.
//
// A comma before three digits is read as its unit is usually written: `5,280 ft` and `2,992 gal`
// are thousands, `3,810 m` is a decimal comma; `1,234,567` and `1,234.5` are thousands in both, and
// `0,125` and `12,5` decimals in both. Slopes and angles always take the decimal comma.

#include "core/units/quantity.h"

#include <optional>
#include <string>
#include <string_view>

namespace sump {

/// Either a value or one sentence that says what is wrong with the text and what would be accepted.
template <class Q> struct Parsed {
  std::optional<Q> value;
  std::string error;
  explicit operator bool() const { return value.has_value(); }
};

/// Lengths: `12'-6 1/2"`, `12' 6.5"`, `6 1/2"`, `12.54'`, `12.54 ft`, `150 in`, `-1'-3"`, `3.81 m`,
/// `3810 mm`, `381 cm`. A bare number is feet (US) or metres (metric).
Parsed<Length> parseLength(std::string_view text, UnitSystem bare);
/// Volumes: `3000 gal`, `11.4 m3`, `11400 L`, `105 ft3`. A bare number is gallons or cubic metres.
Parsed<Volume> parseVolume(std::string_view text, UnitSystem bare);
/// Flows: `45 gpm`, `2.8 L/s`, `170 L/min`, `10 m3/h`. A bare number is gpm or L/min.
Parsed<Flow> parseFlow(std::string_view text, UnitSystem bare);
/// Pressures: `40 psi`, `280 kPa`, `2.8 bar`, `92 ft` is not a pressure. Bare: psi or kPa.
Parsed<Pressure> parsePressure(std::string_view text, UnitSystem bare);
/// Masses: `12,500 lb`, `5.7 t` (metric tonnes), `5670 kg`. A bare number is lb or kg.
Parsed<Mass> parseMass(std::string_view text, UnitSystem bare);
/// Slopes as rise over run: `1/4 in/ft`, `1/8"/ft`, `2 %`, `1:50`, `20 mm/m`. Bare: in/ft or %.
Parsed<double> parseSlope(std::string_view text, UnitSystem bare);
/// Angles: `45`, `22 1/2`, `22.5 deg`, `-30°`. A bare number is degrees in both systems.
Parsed<Angle> parseAngle(std::string_view text);

} // namespace sump
