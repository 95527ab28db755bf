#include "core/study/friction.h"

#include <cmath>

namespace sump {

namespace {

/// Colebrook-White in x = 1/sqrt(f): F(x) = x + 2 log10(a + b x) rises and is concave, so that
/// Newton's method from Haaland's formula is at the root after three steps; six are safe.
double colebrook(double reynolds, double relativeRoughness) {
  const double a = relativeRoughness / 3.7, b = 2.51 / reynolds;
  double x = -1.8 * std::log10(std::pow(a, 1.11) + 6.9 / reynolds);
  for (int step = 0; step < 6; ++step) {
    const double inner = a + b * x;
    x -= (x + 2 * std::log10(inner)) / (1 + 2 * b / (std::log(10.0) * inner));
  }
  return 1 / (x * x);
}

} // namespace

Velocity velocityIn(Flow flow, Length inside) {
  return metresPerSecond(4 * flow.value() / (kPi * inside.value() * inside.value()));
}

Length velocityHead(Velocity v) {
  return metres(v.value() * v.value() / (2 * kGravity));
}

double reynoldsNumber(Velocity v, Length inside, Density rho, Viscosity mu) {
  return v.value() * inside.value() * rho.value() / mu.value();
}

double frictionFactor(double reynolds, double relativeRoughness) {
  if (!(reynolds > 0)) return 0;
  if (reynolds <= kLaminarReynolds) return 64 / reynolds;
  if (reynolds >= kTurbulentReynolds) return colebrook(reynolds, relativeRoughness);
  const double t = (reynolds - kLaminarReynolds) / (kTurbulentReynolds - kLaminarReynolds);
  return std::lerp(64 / kLaminarReynolds, colebrook(kTurbulentReynolds, relativeRoughness), t);
}

Length darcyLoss(double frictionFactor, Length length, Length inside, Velocity v) {
  return frictionFactor * (length / inside).value() * velocityHead(v);
}

Length hazenWilliamsLoss(Flow flow, Length inside, double c, Length length, HazenWilliams form) {
  const double q = std::pow(inGallonsPerMinute(flow), 1.852);
  const double d = std::pow(inInches(inside), 4.8655);
  const double feetIn100 = form == HazenWilliams::FormA ? 0.2083 * std::pow(100 / c, 1.852) * q / d
                                                        : 1043.94 * q / (std::pow(c, 1.852) * d);
  return length * (feetIn100 / 100);
}

} // namespace sump
