#include "core/study/live_load.h"

namespace sump {

namespace {

constexpr double kWheel = 16000 * kNewtonsPerPound; ///< N, half an HS-20 axle
constexpr double kGauge = 6 * kMetresPerFoot;       ///< m between the wheels of an axle
constexpr double kSpread = 1.75;                    ///< side of the square over cover
constexpr double kElevationHair = 1e-9;             ///< m that adding up elevations rounds away

} // namespace

double impactShare(Length cover) {
  const double ft = inMetres(cover) / kMetresPerFoot;
  if (ft <= 1 + kElevationHair) return 0.3;
  if (ft <= 2 + kElevationHair) return 0.2;
  return ft < 3 - kElevationHair ? 0.1 : 0;
}

std::optional<Pressure> livePressure(Length cover) {
  const double h = inMetres(cover);
  if (h < kLeastCoverForSpread - kElevationHair) return std::nullopt;
  const double side = kSpread * h;
  const bool merged = side >= kGauge;
  const double load = merged ? 2 * kWheel : kWheel;
  const double area = merged ? (side + kGauge) * side : side * side;
  return pascals(load * (1 + impactShare(cover)) / area);
}

} // namespace sump
