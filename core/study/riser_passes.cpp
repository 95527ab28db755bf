// Pipe that comes into a vault through the side of a manway's riser, over the lid: the eductor's
// bracket hangs there. The wall of the riser needs a connector as the vault's wall does.

#include "core/study/riser_passes.h"

#include <cmath>

namespace sump {

std::vector<double> circleCrossings(Point2 a, Point2 b, Point2 centre, double radius) {
  const Point2 d = b - a, f = a - centre;
  const double square = d.x * d.x + d.y * d.y, half = f.x * d.x + f.y * d.y;
  const double rest = f.x * f.x + f.y * f.y - radius * radius;
  const double root = half * half - square * rest;
  std::vector<double> found;
  if (square < 1e-12 || root <= 0) return found;
  for (double sign : {-1.0, 1.0}) {
    const double t = (-half + sign * std::sqrt(root)) / square;
    if (t >= 0 && t <= 1) found.push_back(t);
  }
  return found;
}

std::vector<RiserPass> riserPasses(const RunStudy& run, const VaultStudy& vault,
                                   const ManwayStudy& manway, Length diameter) {
  std::vector<RiserPass> found;
  const double low = inMetres(vault.lidTop);
  for (std::size_t i = 0; i + 1 < run.points.size(); ++i) {
    const Point3 a = run.points[i].at, b = run.points[i + 1].at;
    for (double t : circleCrossings(flat(a), flat(b), manway.at, inMetres(diameter) / 2)) {
      const Point3 p = lerp(a, b, t);
      if (p.z < low || (manway.rim && p.z > inMetres(*manway.rim))) continue;
      const Point2 way = flat(b) - flat(a), radius = flat(p) - manway.at;
      found.push_back(
          {p, run.legs[i].size,
           radians(std::atan2(std::abs(cross(way, radius)), std::abs(dot(way, radius))))});
    }
  }
  return found;
}

} // namespace sump
