#pragma once
// Water and air: what temperature and altitude make of them. Pure functions; outside the stated
// range there is no value.
//
// Water is reckoned as clean: what wash water carries changes these figures by less than the
// temperature that is assumed for it.

#include "core/units/quantity.h"

#include <optional>

namespace sump {

/// Saturation (vapour) pressure of water, IAPWS-IF97 region 4, equation 30. 273.15 to 647.096 K.
std::optional<Pressure> saturationPressure(Temperature t);

/// Specific volume of liquid water in m3/kg, IAPWS-IF97 region 1, equation 7. 273.15 to 623.15 K,
/// from the saturation pressure to 100 MPa.
std::optional<double> liquidSpecificVolume(Temperature t, Pressure p);
/// 1 / liquidSpecificVolume, at 101,325 Pa where no pressure is given.
std::optional<Density> waterDensity(Temperature t);
std::optional<Density> waterDensity(Temperature t, Pressure p);

/// Dynamic viscosity of water and steam, IAPWS R12-08 without the critical enhancement (which is
/// below 2 % outside the neighbourhood of the critical point). 273.15 to 1173.15 K, above 0 to
/// 1200 kg/m3.
std::optional<Viscosity> waterViscosity(Temperature t, Density rho);
/// Of liquid water at 101,325 Pa.
std::optional<Viscosity> waterViscosity(Temperature t);

/// Air pressure of the US Standard Atmosphere 1976 (equation 33a, lowest layer) at a geopotential
/// altitude of -5 to 11 km.
std::optional<Pressure> pressureAtGeopotential(Length h);
/// The same at an altitude above mean sea level (geometric; equation 18 of the standard makes it
/// geopotential).
std::optional<Pressure> atmosphericPressure(Length altitude);

/// Height of a column of water of this density that stands for a pressure, and back.
constexpr Length headOf(Pressure p, Density rho) {
  return metres(p.value() / (rho.value() * kGravity));
}
constexpr Pressure pressureOf(Length head, Density rho) {
  return pascals(head.value() * rho.value() * kGravity);
}

} // namespace sump
