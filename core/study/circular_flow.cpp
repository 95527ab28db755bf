#include "core/study/circular_flow.h"

#include "core/study/solve.h"

#include <algorithm>
#include <cmath>

namespace sump {

CircularSection circularSection(Length diameter, double fill) {
  const double d = inMetres(diameter), y = std::clamp(fill, 0.0, 1.0);
  // Half of the angle that the wetted arc subtends at the centre.
  const double half = std::acos(1 - 2 * y), sine = 2 * std::sqrt(y * (1 - y));
  CircularSection section;
  section.area = squareMetres(d * d / 4 * (half - sine * (1 - 2 * y)));
  section.wettedPerimeter = metres(d * half);
  section.surfaceWidth = metres(d * sine);
  if (half > 0) section.hydraulicRadius = section.area / section.wettedPerimeter;
  return section;
}

Velocity manningVelocity(Length hydraulicRadius, double slope, double n) {
  return metresPerSecond(std::pow(std::cbrt(inMetres(hydraulicRadius)), 2) * std::sqrt(slope) / n);
}

Flow manningFlow(Length diameter, double fill, double slope, double n) {
  const CircularSection section = circularSection(diameter, fill);
  return section.area * manningVelocity(section.hydraulicRadius, slope, n);
}

std::optional<double> normalFill(Flow flow, Length diameter, double slope, double n) {
  if (!(slope > 0) || flow > manningFlow(diameter, kFullestFill, slope, n)) return std::nullopt;
  return risingRoot(
      [&](double fill) { return (manningFlow(diameter, fill, slope, n) - flow).value(); }, 0,
      kFullestFill);
}

double criticalFill(Flow flow, Length diameter) {
  const double q = flow.value();
  if (!(q > 0)) return 0;
  // A sqrt(g A / T) rises from 0 without bound as the surface narrows toward the crown.
  return risingRoot(
      [&](double fill) {
        const CircularSection s = circularSection(diameter, fill);
        const double a = s.area.value(), t = inMetres(s.surfaceWidth);
        return a * std::sqrt(kGravity * a) - q * std::sqrt(t);
      },
      1e-9, 1);
}

Flow darcyFlow(Length diameter, double fill, double slope, Length roughness,
               double kinematicViscosity) {
  const CircularSection section = circularSection(diameter, fill);
  const double r = inMetres(section.hydraulicRadius);
  if (!(r > 0) || !(slope > 0)) return cubicMetresPerSecond(0);
  const double root = std::sqrt(8 * kGravity * r * slope); // V sqrt(f)
  const double inside =
      inMetres(roughness) / (3.7 * 4 * r) + 2.51 * kinematicViscosity / (4 * r * root);
  return section.area * metresPerSecond(-2 * root * std::log10(inside));
}

} // namespace sump
