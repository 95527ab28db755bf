#include "core/study/settling.h"

#include "core/study/solve.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace sump {

namespace {

/// Weight under water of a unit volume, N/m3.
double submergedWeight(const Settling& in) {
  return kGravity * std::abs((in.particle - in.water).value());
}

/// Drag at speed v less the weight, both over the particle's volume; rises with v.
double excessDrag(double v, double size, const Settling& in) {
  if (!(v > 0)) return -submergedWeight(in);
  const double re = particleReynolds(metresPerSecond(v), metres(size), in);
  return 0.75 * dragCoefficient(re) * in.water.value() * v * v / size - submergedWeight(in);
}

struct FactorRow {
  double ratio, factor;
};
constexpr std::array<FactorRow, 5> kFactors = {
    {{3, 1.28}, {6, 1.37}, {10, 1.52}, {15, 1.64}, {20, 1.74}}};

} // namespace

double particleReynolds(Velocity v, Length size, const Settling& in) {
  return v.value() * inMetres(size) * in.water.value() / in.viscosity.value();
}

double dragCoefficient(double reynolds) {
  return 24 / reynolds + 3 / std::sqrt(reynolds) + 0.34;
}

Velocity stokesVelocity(Length size, const Settling& in) {
  const double d = inMetres(size);
  return metresPerSecond(submergedWeight(in) * d * d / (18 * in.viscosity.value()));
}

Velocity settlingVelocity(Length size, const Settling& in) {
  const Velocity stokes = stokesVelocity(size, in);
  if (particleReynolds(stokes, size, in) <= kStokesReynolds) return stokes;
  return metresPerSecond(
      risingRoot([&](double v) { return excessDrag(v, inMetres(size), in); }, 0, stokes.value()));
}

Length smallestKept(Velocity v, const Settling& in) {
  const Length stokes =
      metres(std::sqrt(18 * in.viscosity.value() * v.value() / submergedWeight(in)));
  if (particleReynolds(v, stokes, in) <= kStokesReynolds) return stokes;
  // The larger the particle at one speed, the less its drag over its weight.
  const auto excessWeight = [&](double size) { return -excessDrag(v.value(), size, in); };
  double high = inMetres(stokes);
  while (excessWeight(high) < 0)
    high *= 2;
  return metres(risingRoot(excessWeight, inMetres(stokes), high));
}

double shareKept(Velocity settling, Velocity overflowRate) {
  return std::min(1.0, (settling / overflowRate).value());
}

std::optional<double> turbulenceFactor(double ratio) {
  if (ratio <= kFactors.front().ratio) return kFactors.front().factor;
  for (std::size_t i = 1; i < kFactors.size(); ++i) {
    const FactorRow &a = kFactors[i - 1], &b = kFactors[i];
    if (ratio > b.ratio) continue;
    return a.factor + (ratio - a.ratio) / (b.ratio - a.ratio) * (b.factor - a.factor);
  }
  return std::nullopt;
}

Velocity horizontalCap(Velocity rise) {
  return std::min(kRiseRatioCap * rise, oilVelocityCap());
}

std::optional<Velocity> slowestRiseKept(Velocity overflowRate, Velocity horizontal) {
  if (horizontal > oilVelocityCap()) return std::nullopt;
  const double rate = overflowRate.value(), along = horizontal.value();
  const double within = along / kRiseRatioCap;
  const auto excess = [&](double rise) {
    return rise - rate * turbulenceFactor(along / rise).value_or(kFactors.back().factor);
  };
  const double least = rate * kFactors.front().factor, most = rate * kFactors.back().factor;
  if (!(rate > 0)) return metresPerSecond(within);
  return metresPerSecond(std::max(within, risingRoot(excess, least, most)));
}

} // namespace sump
