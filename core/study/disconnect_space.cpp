#include "core/study/disconnect_space.h"

#include "core/study/room_front.h"
#include "core/study/wiring_space.h"

#include <algorithm>

namespace sump {

namespace {

/// One that hangs on the skid or the panel is worked on before that.
void hangOn(Front& front, std::vector<Obstacle>& obstacles) {
  const double middle = front.width / 2;
  const auto carries = [&](const Obstacle& o) {
    return o.kind != WorkingSpaceObstacle::DoorSwing && o.low < middle && o.high > middle &&
           o.near < 0 && o.far > 0;
  };
  double out = 0;
  for (const Obstacle& o : obstacles)
    if (carries(o)) out = std::max(out, o.far);
  std::erase_if(obstacles, carries);
  front.corner = front.corner + front.out * out;
  front.roomOut -= out;
  for (Obstacle& o : obstacles) {
    o.near -= out;
    o.far -= out;
  }
}

void look(const Plan& plan, const Limits& limits, const EquipmentRoom& room, const RoomBox& box,
          Point2 at, DisconnectSpace& space) {
  Front front = frontOf(room, box, nearestWall(room, at, at));
  std::vector<Obstacle> obstacles = obstaclesOf(room, front);
  if (room.panel) {
    obstacles.push_back(
        seenFrom(front, WorkingSpaceObstacle::Panel, room.panel->corner, room.panel->high()));
  }
  addDisconnects(plan, limits, room, front, obstacles);
  hangOn(front, obstacles);
  space.widthNeeded = std::max(limits.length("wiring.space-width"), metres(front.width));
  fillSpace(room, front, obstacles, limits.length("wiring.space-depth-low"), space);
}

} // namespace

std::vector<DisconnectSpace> disconnectSpaces(const Plan& plan, const Limits& limits,
                                              const std::vector<RunStudy>& runs) {
  std::vector<DisconnectSpace> spaces;
  const WiringBasis& wiring = plan.basis.wiring;
  for (const Supply& supply : wiring.supplies) {
    for (const EquipmentRoom& room : plan.rooms) {
      const auto box = enclosureIn(room, supply, limits);
      if (!box) continue;
      DisconnectSpace space;
      space.supply = supply.id;
      space.room = room.id;
      space.depthNeeded = workingDepth(supply.voltsToGround, wiring.facingPanel, limits);
      space.heightNeeded = limits.length("wiring.space-height");
      look(plan, limits, room, *box, room.frame().toLocal(*supply.disconnect), space);
      addRunsInZone(room, runs, space);
      spaces.push_back(std::move(space));
    }
  }
  return spaces;
}

} // namespace sump
