#pragma once
// Edits of what stands in an equipment room: a Plan in, a Plan out. Places are local to the room;
// everything is held within its walls. An unknown id leaves the plan as it is.

#include "core/plan/plan.h"

#include <string_view>

namespace sump {

enum class RoomThing { Skid, PlumbingArea, Panel };

/// The box of the room, or null where it has none.
const RoomBox* boxOf(const EquipmentRoom& room, RoomThing thing);

/// Puts the box's low corner at the place nearest to `corner` that the walls leave. Ports over it
/// go along (water with the plumbing area, cables with the panel), and the plumbing area goes with
/// a skid that it adjoins, since the two are set as one.
Plan moveRoomBox(const Plan& plan, std::string_view room, RoomThing thing, Point2 corner);

/// Where the wall nearest to a local place would take the door, its middle at the place.
Door doorNear(const EquipmentRoom& room, const Door& door, Point2 local);
/// The ends of the door's opening, local to the room.
std::pair<Point2, Point2> doorEnds(const EquipmentRoom& room, const Door& door);
Plan moveDoor(const Plan& plan, std::string_view room, const Door& door);

/// A port at a local place, held within the walls. It is for the first line that equipment usually
/// has and none of the room's ports serves, else for suction; the new id is returned in `made`.
Plan addPort(const Plan& plan, std::string_view room, Point2 local, Id& made);
Plan erasePort(const Plan& plan, std::string_view port);
Plan eraseDoor(const Plan& plan, std::string_view room);
Plan movePort(const Plan& plan, std::string_view port, Point2 local);

} // namespace sump
