// Earth over the crown of a run, where it lies in the ground.

#include "core/study/context.h"

#include "core/geometry/polygon.h"

#include <cmath>

namespace sump {

namespace {

/// Cover is sampled at least this often; the ground between spot elevations is straight.
constexpr double kStep = 1.0;

void keepLeast(std::optional<CoverCheck>& least, Length cover, Point2 at) {
  if (!least || cover < least->cover) least = CoverCheck{cover, at};
}

bool inAny(const OutlineSet& set, const std::vector<std::size_t>& candidates, Point2 p) {
  for (std::size_t i : candidates) {
    if (contains(set.rings()[i], p)) return true;
  }
  return false;
}

} // namespace

void fillCover(const StudyContext& context, RunStudy& run) {
  // Outside top of pipe over the invert: bore and one wall.
  const double crown = inMetres(run.insideDiameter + run.outsideDiameter) / 2;
  for (std::size_t i = 0; i < run.legs.size(); ++i) {
    if (run.legs[i].vertical || !run.legs[i].outsideVault) continue;
    const Point3 a = run.points[i].at, b = run.points[i + 1].at;
    const Box box = boxOf({flat(a), flat(b)});
    const auto structures = context.structures.touching(box);
    const auto traffic = context.traffic.touching(box);
    const int steps = std::max(1, static_cast<int>(std::ceil(inMetres(run.legs[i].plan) / kStep)));
    for (int step = 0; step <= steps; ++step) {
      const Point3 p = lerp(a, b, static_cast<double>(step) / steps);
      if (inAny(context.structures, structures, flat(p))) continue;
      const auto grade = context.ground.elevation(flat(p));
      if (!grade) continue;
      const Length cover = metres(*grade - p.z - crown);
      keepLeast(run.leastCover, cover, flat(p));
      if (inAny(context.traffic, traffic, flat(p))) {
        keepLeast(run.leastTrafficCover, cover, flat(p));
      }
    }
  }
}

} // namespace sump
