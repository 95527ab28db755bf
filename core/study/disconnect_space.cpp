#include "core/study/disconnect_space.h"

#include "core/geometry/polygon.h"
#include "core/study/wiring_space.h"

#include <algorithm>
#include <cmath>
#include <functional>

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

/// A place in the room as seen from its wall: x along that, y off it.
using SeenFromWall = std::function<Point2(Point2)>;

SeenFromWall nearestWall(const EquipmentRoom& room, Point2 local) {
  const double l = inMetres(room.length), w = inMetres(room.width);
  const SeenFromWall walls[] = {[](Point2 p) { return p; },
                                [=](Point2 p) {
                                  return Point2{p.y, l - p.x};
                                },
                                [=](Point2 p) {
                                  return Point2{p.x, w - p.y};
                                },
                                [](Point2 p) {
                                  return Point2{p.y, p.x};
                                }};
  return *std::ranges::min_element(walls, {},
                                   [&](const SeenFromWall& wall) { return wall(local).y; });
}

std::optional<Length> nicheAt(const EquipmentRoom& room, Point2 local) {
  constexpr double kEnclosure = 0.15; // m from its place to its front: common practice, no source
  const SeenFromWall wall = nearestWall(room, local);
  const Point2 at = wall(local);
  const Point2 ends[] = {wall({0, 0}), wall({inMetres(room.length), inMetres(room.width)})};
  double low = std::min(ends[0].x, ends[1].x), high = std::max(ends[0].x, ends[1].x);
  bool beside = false;
  for (const std::optional<RoomBox>& box : {room.panel, room.skid, room.plumbingArea}) {
    if (!box) continue;
    const Point2 a = wall(box->corner);
    const Point2 b = wall(box->corner + Point2{inMetres(box->length), inMetres(box->depth)});
    const auto [from, to] = std::minmax(a.x, b.x);
    const auto [near, far] = std::minmax(a.y, b.y);
    if (near > at.y || far <= at.y + kEnclosure) continue;
    if (from < at.x && to > at.x) return std::nullopt; // it hangs on that
    beside = true;
    if (to <= at.x) low = std::max(low, to);
    if (from >= at.x) high = std::min(high, from);
  }
  return beside ? std::optional(metres(high - low)) : std::nullopt;
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
      space.niche = nicheAt(room, place.corner);
      spaces.push_back(std::move(space));
    }
  }
  return spaces;
}

} // namespace sump
