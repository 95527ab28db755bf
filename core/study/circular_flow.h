#pragma once
// Open flow in a pipe that runs part full. Pure functions.
//
// Manning with one roughness n at all depths: with it a pipe carries most at 0.938 of its diameter,
// 1.076 times what it carries just full. Charts with n rising at part depth give less; they are
// not used here. V = R^(2/3) S^(1/2) / n in metres and seconds (Chow, Open-Channel Hydraulics,
// 1959, from memory).

#include "core/units/quantity.h"

#include <optional>

namespace sump {

/// What water at a depth makes of a round bore. Chow 1959 table 2-2.
struct CircularSection {
  Area area;
  Length wettedPerimeter;
  Length hydraulicRadius; ///< area over wetted perimeter; 0 when dry
  Length surfaceWidth;
};
/// `fill` is depth over diameter and is held to 0..1.
CircularSection circularSection(Length diameter, double fill);

/// The fill at which a round pipe carries most by Manning with constant n.
inline constexpr double kFullestFill = 0.938;

/// `slope` is that of the energy line, 0 or more; `n` above 0, in s/m^(1/3).
Velocity manningVelocity(Length hydraulicRadius, double slope, double n);
Flow manningFlow(Length diameter, double fill, double slope, double n);

/// Depth over diameter of uniform flow, the lower where two would do; nothing when the pipe cannot
/// carry it or does not fall.
std::optional<double> normalFill(Flow flow, Length diameter, double slope, double n);

/// Depth over diameter at which specific energy is least: Q^2 T = g A^3. Below 1 for any flow.
double criticalFill(Flow flow, Length diameter);

/// The same pipe by Darcy-Weisbach with four times the hydraulic radius for the diameter, and
/// Colebrook-White. With the slope given it is explicit:
/// V = -2 sqrt(8 g R S) log10(k / (3.7 x 4R) + 2.51 nu / (4R sqrt(8 g R S))).
/// `kinematicViscosity` in m2/s.
Flow darcyFlow(Length diameter, double fill, double slope, Length roughness,
               double kinematicViscosity);

} // namespace sump
