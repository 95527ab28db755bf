#include "core/study/context.h"

#include <algorithm>

namespace sump {

std::optional<HighPocket> highPocket(const std::vector<RunPoint>& points, Length tolerance) {
  if (points.empty()) return std::nullopt;
  Point3 high = points.front().at;
  double low = high.z; // lowest since `high`
  for (const RunPoint& point : points) {
    if (point.at.z > high.z) {
      // The line is above everything before it again: the dip behind `high` is complete.
      if (high.z - low > inMetres(tolerance)) break;
      high = point.at;
      low = high.z;
    }
    low = std::min(low, point.at.z);
  }
  const double fall = high.z - low;
  if (fall <= inMetres(tolerance)) return std::nullopt;
  return HighPocket{high, metres(fall)};
}

} // namespace sump
