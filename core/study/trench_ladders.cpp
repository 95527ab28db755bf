// Ways out of trenches (29 CFR 1926.651(c)(2)).

#include "core/geometry/polygon.h"
#include "core/study/trench.h"
#include "core/study/trench_outline.h"

#include <algorithm>

namespace sump {

namespace {

/// Ladders of the plan that stand in a trench, and where along it.
struct TrenchLadders {
  const std::vector<Point2>& all;
  std::vector<bool> stands = std::vector<bool>(all.size());
  std::vector<double> stations{};

  void look(const Ring& outline, Point2 from, Point2 to, double station) {
    for (std::size_t k = 0; k < all.size(); ++k) {
      if (outline.empty() || !contains(outline, all[k])) continue;
      stands[k] = true;
      const Foot foot = nearestOnSegment(all[k], from, to);
      stations.push_back(station + distance(from, foot.at));
    }
  }
};

} // namespace

void fillTrenchLadders(const TrenchGround& ground, TrenchStudy& trench) {
  TrenchLadders ladders{ground.context.plan.basis.earth.ladders};
  if (!trench.egress.needed || ladders.all.empty()) return;
  constexpr double kHair = 1e-9; // m of depth, as that of the deep length
  const double deepFrom = inMetres(ground.figures.egressFrom) - kHair;
  std::vector<WayPart> deep;
  std::optional<Point2> last;
  double station = 0;
  for (const TrenchStretch& stretch : trench.stretches) {
    if (last) station += distance(*last, stretch.front().at);
    for (std::size_t i = 1; i < stretch.size(); ++i) {
      const TrenchPoint &a = stretch[i - 1], &b = stretch[i];
      ladders.look(trenchOutline(a, b), a.at, b.at, station);
      const double end = station + distance(a.at, b.at);
      if (i + 1 < stretch.size()) ladders.look(trenchCorner(a, b, stretch[i + 1]), b.at, b.at, end);
      if (std::max(a.depth, b.depth) >= deepFrom) deep.push_back({station, end});
      station = end;
    }
    last = stretch.back().at;
  }
  for (std::size_t k = 0; k < ladders.all.size(); ++k) {
    if (ladders.stands[k]) trench.egress.ladders.push_back(static_cast<int>(k) + 1);
  }
  if (const auto far = farthestAlong(deep, ladders.stations)) trench.egress.farthest = metres(*far);
}

} // namespace sump
