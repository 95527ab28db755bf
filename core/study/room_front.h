#pragma once
// What stands in front of a panel or a disconnect in its room, and the space left to work there
// (NEC 110.26). Private to core/study and its tests.

#include "core/catalog/limits.h"
#include "core/study/study.h"

#include <functional>

namespace sump {

/// Something with its back to a wall as seen from its front: `across` along the front, `out` away
/// from it, local to the room.
struct Front {
  Side wall = Side::South;    ///< behind it
  Point2 corner, across, out; ///< corner: at the start of the front
  double width = 0;
  double roomBefore = 0, roomAfter = 0; ///< along the front, to the walls
  double roomOut = 0;                   ///< from the front to the wall opposite
};
Front frontOf(const EquipmentRoom& room, const RoomBox& box, Side wall);

struct Obstacle {
  WorkingSpaceObstacle kind;
  double low, high; ///< along the front, from its start
  double near, far; ///< out from the front
};
Obstacle seenFrom(const Front& front, WorkingSpaceObstacle kind, Point2 a, Point2 b);
/// Skid, plumbing area and what the door sweeps.
std::vector<Obstacle> obstaclesOf(const EquipmentRoom& room, const Front& front);

/// A disconnect as far as it is taken to reach from its place in the plan; nothing when it is not
/// in the room. Its enclosure is the electrician's choice.
std::optional<RoomBox> enclosureIn(const EquipmentRoom& room, const Supply& supply,
                                   const Limits& limits);
/// The disconnects of a room that hang before this front, but for those on its own wall: what is
/// wired on one wall may stand side by side, each about as far out as the other.
void addDisconnects(const Plan& plan, const Limits& limits, const EquipmentRoom& room,
                    const Front& front, std::vector<Obstacle>& obstacles);

/// Clear depth and width in front, the zone that fits best and what stands in it; the needed sizes
/// are set before.
void fillSpace(const EquipmentRoom& room, const Front& front,
               const std::vector<Obstacle>& obstacles, Length leastDepth, WorkingSpaceStudy& study);
/// Is there a leg over the floor, some of it lower than `under`, whose line in plan does `test`?
bool hasLegOverFloor(const EquipmentRoom& room, const RunStudy& run, double under,
                     const std::function<bool(const Polyline&)>& test);
/// Pipes over the floor through the zone under its height.
void addRunsInZone(const EquipmentRoom& room, const std::vector<RunStudy>& runs,
                   WorkingSpaceStudy& study);

} // namespace sump
