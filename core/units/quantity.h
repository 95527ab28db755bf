#pragma once
// Quantities with their dimension in the type (Boost.Units, SI inside).
//
// Everything in core/ that is a length, volume, flow ... is one of these aliases; the stored double
// is in SI base units. Feet, inches and gallons exist only in the factories here and in
// units/parse.h and units/print.h. Plan coordinates (geometry/point.h) are plain doubles in metres.

#include <boost/units/derived_dimension.hpp>
#include <boost/units/quantity.hpp>
#include <boost/units/systems/si/area.hpp>
#include <boost/units/systems/si/dynamic_viscosity.hpp>
#include <boost/units/systems/si/force.hpp>
#include <boost/units/systems/si/length.hpp>
#include <boost/units/systems/si/mass.hpp>
#include <boost/units/systems/si/mass_density.hpp>
#include <boost/units/systems/si/plane_angle.hpp>
#include <boost/units/systems/si/pressure.hpp>
#include <boost/units/systems/si/temperature.hpp>
#include <boost/units/systems/si/time.hpp>
#include <boost/units/systems/si/velocity.hpp>
#include <boost/units/systems/si/volume.hpp>

namespace sump {

namespace bu = boost::units;

using Length = bu::quantity<bu::si::length>;               // m
using Area = bu::quantity<bu::si::area>;                   // m2
using Volume = bu::quantity<bu::si::volume>;               // m3
using Duration = bu::quantity<bu::si::time>;               // s
using Pressure = bu::quantity<bu::si::pressure>;           // Pa
using Angle = bu::quantity<bu::si::plane_angle>;           // rad
using Temperature = bu::quantity<bu::si::temperature>;     // K
using Velocity = bu::quantity<bu::si::velocity>;           // m/s
using Mass = bu::quantity<bu::si::mass>;                   // kg
using Force = bu::quantity<bu::si::force>;                 // N
using Density = bu::quantity<bu::si::mass_density>;        // kg/m3
using Viscosity = bu::quantity<bu::si::dynamic_viscosity>; // Pa s
using FlowDimension =
    bu::derived_dimension<bu::length_base_dimension, 3, bu::time_base_dimension, -1>::type;
using Flow = bu::quantity<bu::unit<FlowDimension, bu::si::system>>; // m3/s

/// Exact definitions: international foot 0.3048 m; US gallon 231 in3 (NIST SP 811, app. B).
inline constexpr double kMetresPerFoot = 0.3048;
inline constexpr double kMetresPerInch = 0.0254;
inline constexpr double kCubicMetresPerGallon =
    231.0 * kMetresPerInch * kMetresPerInch * kMetresPerInch;
/// 1 psi = 1 lbf/in2 = 4.4482216152605 N / 0.0254^2 m2 (NIST SP 811, app. B).
inline constexpr double kPascalsPerPsi = 4.4482216152605 / (kMetresPerInch * kMetresPerInch);
/// 1 lb = 0.45359237 kg exactly; 1 lbf = 4.4482216152605 N (NIST SP 811, app. B).
inline constexpr double kKilogramsPerPound = 0.45359237;
inline constexpr double kNewtonsPerPound = 4.4482216152605;
/// Standard acceleration of free fall, m/s2 (NIST SP 811, app. B).
inline constexpr double kGravity = 9.80665;
inline constexpr double kPi = 3.14159265358979323846;

constexpr Length metres(double v) {
  return Length::from_value(v);
}
constexpr Length millimetres(double v) {
  return Length::from_value(v / 1000.0);
}
constexpr Length feet(double v) {
  return Length::from_value(v * kMetresPerFoot);
}
constexpr Length inches(double v) {
  return Length::from_value(v * kMetresPerInch);
}
constexpr Area squareMetres(double v) {
  return Area::from_value(v);
}
constexpr Volume cubicMetres(double v) {
  return Volume::from_value(v);
}
constexpr Volume gallons(double v) {
  return Volume::from_value(v * kCubicMetresPerGallon);
}
constexpr Flow cubicMetresPerSecond(double v) {
  return Flow::from_value(v);
}
constexpr Flow gallonsPerMinute(double v) {
  return Flow::from_value(v * kCubicMetresPerGallon / 60.0);
}
constexpr Pressure pascals(double v) {
  return Pressure::from_value(v);
}
constexpr Pressure psi(double v) {
  return Pressure::from_value(v * kPascalsPerPsi);
}
constexpr Temperature kelvin(double v) {
  return Temperature::from_value(v);
}
constexpr Temperature celsius(double v) {
  return Temperature::from_value(v + 273.15);
}
constexpr Temperature fahrenheit(double v) {
  return Temperature::from_value((v + 459.67) / 1.8);
}
constexpr Velocity metresPerSecond(double v) {
  return Velocity::from_value(v);
}
constexpr Velocity feetPerSecond(double v) {
  return Velocity::from_value(v * kMetresPerFoot);
}
constexpr Mass kilograms(double v) {
  return Mass::from_value(v);
}
constexpr Mass pounds(double v) {
  return Mass::from_value(v * kKilogramsPerPound);
}
constexpr Force newtons(double v) {
  return Force::from_value(v);
}
constexpr Density kilogramsPerCubicMetre(double v) {
  return Density::from_value(v);
}
constexpr Viscosity pascalSeconds(double v) {
  return Viscosity::from_value(v);
}
constexpr Duration seconds(double v) {
  return Duration::from_value(v);
}
constexpr Angle radians(double v) {
  return Angle::from_value(v);
}
constexpr Angle degrees(double v) {
  return Angle::from_value(v * kPi / 180.0);
}

constexpr double inMetres(Length v) {
  return v.value();
}
constexpr double inMillimetres(Length v) {
  return v.value() * 1000.0;
}
constexpr double inFeet(Length v) {
  return v.value() / kMetresPerFoot;
}
constexpr double inInches(Length v) {
  return v.value() / kMetresPerInch;
}
constexpr double inGallons(Volume v) {
  return v.value() / kCubicMetresPerGallon;
}
constexpr double inGallonsPerMinute(Flow v) {
  return v.value() * 60.0 / kCubicMetresPerGallon;
}
constexpr double inPsi(Pressure v) {
  return v.value() / kPascalsPerPsi;
}
constexpr double inCelsius(Temperature v) {
  return v.value() - 273.15;
}
constexpr double inFahrenheit(Temperature v) {
  return v.value() * 1.8 - 459.67;
}
constexpr double inFeetPerSecond(Velocity v) {
  return v.value() / kMetresPerFoot;
}
constexpr double inPounds(Mass v) {
  return v.value() / kKilogramsPerPound;
}
constexpr double inPoundsForce(Force v) {
  return v.value() / kNewtonsPerPound;
}
constexpr double inRadians(Angle v) {
  return v.value();
}
constexpr double inDegrees(Angle v) {
  return v.value() * 180.0 / kPi;
}

/// Which units a person reads and types. Values inside are SI whichever is chosen.
enum class UnitSystem { UsCustomary, Metric };

} // namespace sump
