#include "core/sheet/lines_beside.h"

#include <algorithm>
#include <cmath>

namespace sump {

std::vector<Beside> linesBeside(const std::vector<Polyline>& lines, Point2 a, Point2 b,
                                double most) {
  constexpr double kSame = 0.3, kParallel = 0.02; // mm, sine
  const Point2 u = (b - a) * (1 / distance(a, b));
  std::vector<Beside> found;
  for (const Polyline& line : lines) {
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
      const Point2 from = line[i] - a, to = line[i + 1] - a;
      const double off = cross(u, from);
      if (std::abs(off) < kSame || std::abs(off) > most) continue;
      if (std::abs(cross(u, to - from)) > kParallel * norm(to - from)) continue;
      const auto [low, high] = std::minmax({dot(u, from), dot(u, to)});
      found.push_back({low, high, off});
    }
  }
  return found;
}

} // namespace sump
