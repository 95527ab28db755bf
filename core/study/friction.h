#pragma once
// Friction of full round pipe. Pure functions.

#include "core/units/quantity.h"

namespace sump {

Velocity velocityIn(Flow flow, Length inside);
/// v^2 / 2g.
Length velocityHead(Velocity v);

/// v d rho / mu.
double reynoldsNumber(Velocity v, Length inside, Density rho, Viscosity mu);

/// Up to here flow is taken as laminar, and from there as turbulent; between them the friction
/// factor is drawn straight from one to the other, since no formula holds there (limits as in
/// White, Fluid Mechanics, from memory).
inline constexpr double kLaminarReynolds = 2300;
inline constexpr double kTurbulentReynolds = 4000;

/// Darcy friction factor: 64/Re in laminar flow; in turbulent flow the solution of Colebrook-White,
/// 1/sqrt(f) = -2 log10(k/(3.7 d) + 2.51/(Re sqrt(f))), by Newton's method to the last digits.
/// 0 for no flow. `relativeRoughness` is k/d.
double frictionFactor(double reynolds, double relativeRoughness);

/// Darcy-Weisbach: f L/d v^2/2g, a head of the flowing liquid.
Length darcyLoss(double frictionFactor, Length length, Length inside, Velocity v);

/// Hazen-Williams as printed in US units, ft of water in 100 ft: form A, 0.2083 (100/C)^1.852
/// Q^1.852 / d^4.8655 (gpm, in), is the one of plastic pipe makers and the one that the study uses.
/// Form B, 1043.94 Q^1.852 / (C^1.852 d^4.8655), is 0.9 % below it and serves to check against
/// tables made with it.
enum class HazenWilliams { FormA, FormB };
Length hazenWilliamsLoss(Flow flow, Length inside, double c, Length length,
                         HazenWilliams form = HazenWilliams::FormA);

} // namespace sump
