#include "app/canvas/gaps.h"

#include "core/geometry/polygon.h"

#include <algorithm>
#include <limits>

namespace sump {

namespace {

struct Neighbour {
  Id id;
  Ring ring;
};

std::vector<Neighbour> neighbours(const Plan& plan) {
  std::vector<Neighbour> all;
  for (const Vault& v : plan.vaults)
    all.push_back({v.id, outline(v)});
  for (const EquipmentRoom& r : plan.rooms)
    all.push_back({r.id, outline(r)});
  for (const Basin& b : plan.basins)
    all.push_back({b.id, outline(b)});
  for (const WashEquipment& w : plan.washes)
    all.push_back({w.id, outline(w)});
  for (const Building& b : plan.buildings)
    all.push_back({b.id, b.outline});
  return all;
}

/// From each corner of `a` to the edges of `b`.
void corners(const Ring& a, const Ring& b, bool swapped, Gap& best) {
  for (Point2 p : a) {
    for (std::size_t i = 0; i < b.size(); ++i) {
      const Foot foot = nearestOnSegment(p, b[i], b[(i + 1) % b.size()]);
      if (foot.distance >= best.distance) continue;
      best.distance = foot.distance;
      best.from = swapped ? foot.at : p;
      best.to = swapped ? p : foot.at;
    }
  }
}

} // namespace

Gap gapBetween(const Ring& a, const Ring& b) {
  Gap best;
  best.distance = std::numeric_limits<double>::infinity();
  corners(a, b, false, best);
  corners(b, a, true, best);
  return best;
}

std::vector<Gap> nearestGaps(const Plan& plan, const std::set<Id>& objects, std::size_t most) {
  std::vector<Gap> gaps;
  const std::vector<Neighbour> all = neighbours(plan);
  for (const Neighbour& mine : all) {
    if (!objects.contains(mine.id) || plan.buildings.find(mine.id) != nullptr) continue;
    for (const Neighbour& other : all) {
      if (objects.contains(other.id) || mine.ring.size() < 3 || other.ring.size() < 3) continue;
      if (distance(mine.ring, other.ring) <= 0) continue;
      Gap gap = gapBetween(mine.ring, other.ring);
      gap.object = mine.id;
      gap.neighbour = other.id;
      gaps.push_back(gap);
    }
  }
  std::ranges::sort(gaps, {}, &Gap::distance);
  if (gaps.size() > most) gaps.resize(most);
  return gaps;
}

} // namespace sump
