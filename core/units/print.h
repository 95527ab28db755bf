#pragma once
// Writing quantities for people. Rounding is half away from zero; 15/16+ carries to the inch and
// 12 in carries to the foot, so `11'-12"` can never be printed.

#include "core/units/quantity.h"

#include <string>

namespace sump {

/// `12'-6 1/2"`, `-0'-3"`; inches are always printed; fractions reduced, to 1/denominator
/// (a power of two, 1 to 64).
std::string feetInches(Length v, int denominator = 16);
/// `6 1/2"` for pipe and hole sizes, without feet.
std::string inchesOnly(Length v, int denominator = 16);

/// A length in the project's units: feet-inches to 1/16 in, or metres to the millimetre (`3.810
/// m`).
std::string printLength(Length v, UnitSystem units);
/// A small length (cover, clearances): feet-inches to 1/8 in, or whole millimetres (`150 mm`).
std::string printShort(Length v, UnitSystem units);
/// An elevation on the site datum: decimal feet to 0.01 (`101.25`) or metres to 0.001, no unit.
std::string printElevation(Length v, UnitSystem units);
/// A run length for schedules: decimal feet to 0.1 (`23.4 ft`) or metres to 0.01 (`7.13 m`).
std::string printRunLength(Length v, UnitSystem units);
/// `2,992 gal` or `11.33 m3` (with the superscript three).
std::string printVolume(Volume v, UnitSystem units);
/// A part of a volume, with a digit more, so that parts as printed add up to their total:
/// `785.4 gal`, `2.652 m3`.
std::string printPartVolume(Volume v, UnitSystem units);
/// `45 gpm` or `170 L/min`.
std::string printFlow(Flow v, UnitSystem units);
/// `40 psi` or `276 kPa`.
std::string printPressure(Pressure v, UnitSystem units);
/// `12,500 lb` or `5670 kg`.
std::string printMass(Mass v, UnitSystem units);
/// Rise over run: `1/4 in/ft` when within 2 % of a 1/16 in step, else `0.21 in/ft`; `2.10 %`.
std::string printSlope(double riseOverRun, UnitSystem units);
/// `45°`, `22.5°`: at most one decimal.
std::string printAngle(Angle v);
/// A number with a fixed count of decimals and a point, independent of the locale.
std::string fixed(double v, int decimals);
/// As fixed() with commas between thousands.
std::string grouped(double v, int decimals);

} // namespace sump
