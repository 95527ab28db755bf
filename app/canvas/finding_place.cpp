#include "app/canvas/finding_place.h"

#include "app/canvas/gaps.h"

#include "core/geometry/polygon.h"

namespace sump {

namespace {

/// Empty for what has none.
Ring outlineOf(const Plan& plan, const Id& id) {
  if (const Vault* vault = plan.vaults.find(id)) return outline(*vault);
  if (const EquipmentRoom* room = plan.rooms.find(id)) return outline(*room);
  if (const Basin* basin = plan.basins.find(id)) return outline(*basin);
  if (const WashEquipment* wash = plan.washes.find(id)) return outline(*wash);
  if (const Building* building = plan.buildings.find(id)) return building->outline;
  return {};
}

} // namespace

std::optional<Point2> signPlace(const Plan& plan, const Finding& finding) {
  if (finding.place) return finding.place;
  if (finding.objects.empty()) return std::nullopt;
  const Ring first = outlineOf(plan, finding.objects.front());
  if (first.size() < 3) return std::nullopt;
  if (finding.objects.size() != 2) return centroid(first);
  const Ring other = outlineOf(plan, finding.objects.back());
  if (other.size() < 3) return centroid(first);
  if (distance(first, other) <= 0) return lerp(centroid(first), centroid(other), 0.5);
  const Gap gap = gapBetween(first, other);
  return lerp(gap.from, gap.to, 0.5);
}

} // namespace sump
