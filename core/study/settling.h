#pragma once
// How fast grit settles and oil rises, and what a chamber keeps. Pure functions.
//
// A single round particle in still water. Stokes, v = g (rho_s - rho) d^2 / (18 mu), holds up to
// Re = v d rho / mu of 1; beyond it the drag of the transition range, CD = 24/Re + 3/sqrt(Re) +
// 0.34 (as printed in a water treatment design text's grit example), up to about Re 10,000. The
// transition formula gives about an eighth more drag at Re 1, so the settling speed has a step
// there. Particles that hinder each other, flakes and stirred-up sludge are not in it.

#include "core/units/quantity.h"

#include <optional>

namespace sump {

struct Settling {
  Density particle; ///< grit or oil
  Density water;
  Viscosity viscosity;
};

inline constexpr double kStokesReynolds = 1;

double particleReynolds(Velocity v, Length size, const Settling& in);
double dragCoefficient(double reynolds);
/// Stokes alone, whatever the Reynolds number. Up or down: the difference of densities counts.
Velocity stokesVelocity(Length size, const Settling& in);
/// Stokes within its range, transition drag beyond it.
Velocity settlingVelocity(Length size, const Settling& in);
/// The smallest particle that settles (or rises) at least this fast.
Length smallestKept(Velocity v, const Settling& in);

/// Share of particles of this settling speed that an ideal basin keeps (Hazen 1904, from memory):
/// speed over overflow rate, 1 at most.
double shareKept(Velocity settling, Velocity overflowRate);

/// Turbulence and short-circuit factor F of API 421 at the ratio of horizontal to rise velocity:
/// 3: 1.28, 6: 1.37, 10: 1.52, 15: 1.64, 20: 1.74, drawn straight between, 1.28 below 3. Nothing
/// above 20. Seen on a public calculation page; confirm against API 421.
std::optional<double> turbulenceFactor(double ratio);

/// Caps of API 421 on horizontal velocity: 15 times the rise velocity, and 3 ft/min.
inline constexpr double kRiseRatioCap = 15;
constexpr Velocity oilVelocityCap() {
  return feetPerSecond(3.0 / 60);
}
/// The horizontal velocity that both caps allow.
Velocity horizontalCap(Velocity rise);

/// The slowest rise that a separator with this overflow rate and horizontal velocity keeps: F times
/// the overflow rate, and within 15 times. Nothing when the water goes faster than 3 ft/min: the
/// guide does not hold.
std::optional<Velocity> slowestRiseKept(Velocity overflowRate, Velocity horizontal);

} // namespace sump
