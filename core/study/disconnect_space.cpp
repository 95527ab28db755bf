#include "core/study/disconnect_space.h"

#include "core/geometry/polygon.h"
#include "core/study/wiring_space.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

/// Out to the front of a panel on the same wall: how deep a disconnect's enclosure is is not in the
/// plan, and no deeper than the panel's is likely.
void startAtPanel(const EquipmentRoom& room, Length width, Ring& zone) {
  if (!room.panel) return;
  const Ring front = workingZone(room, *room.panel, metres(1), width);
  const Point2 out = front[3] - front[0], own = zone[3] - zone[0];
  constexpr double kSame = 1e-6;
  if (std::abs(dot(out, own) - norm(own)) > kSame) return;
  const double ahead = dot(front[0] - zone[0], out);
  for (Point2& p : zone)
    p = p + out * std::max(0.0, ahead);
}

} // namespace

std::vector<DisconnectSpace> disconnectSpaces(const Plan& plan, const Limits& limits) {
  std::vector<DisconnectSpace> spaces;
  const WiringBasis& wiring = plan.basis.wiring;
  for (const Supply& supply : wiring.supplies) {
    for (const EquipmentRoom& room : plan.rooms) {
      if (!supply.disconnect || !contains(outline(room), *supply.disconnect)) continue;
      DisconnectSpace space;
      space.supply = supply.id;
      space.room = room.id;
      space.depthNeeded = workingDepth(supply.voltsToGround, wiring.facingPanel, limits);
      space.widthNeeded = limits.length("wiring.space-width");
      space.heightNeeded = limits.length("wiring.space-height");
      const Length depth =
          space.depthNeeded.value.value_or(limits.length("wiring.space-depth-low"));
      const RoomBox place{room.frame().toLocal(*supply.disconnect), {}, {}, {}};
      space.zone = workingZone(room, place, depth, space.widthNeeded);
      startAtPanel(room, space.widthNeeded, space.zone);
      spaces.push_back(std::move(space));
    }
  }
  return spaces;
}

} // namespace sump
