// What can be put into an equipment room where the pointer is.

#include "app/canvas/tools/insert_tool.h"

#include "core/plan/edits_rooms.h"

namespace sump {

namespace {

/// Its walls count as the room.
constexpr double kWall = 0.3; // metres

const EquipmentRoom* roomUnder(const ToolHost& host, const InsertAsk& ask, QString& why) {
  for (const EquipmentRoom& room : host.plan().rooms) {
    const Point2 local = room.frame().toLocal(ask.pointer.site);
    if (local.x >= -kWall && local.x <= inMetres(room.length) + kWall && local.y >= -kWall &&
        local.y <= inMetres(room.width) + kWall)
      return &room;
  }
  why = toolText("Point at the equipment room where it is to go.");
  return nullptr;
}

std::optional<Insertion> portAt(const ToolHost& host, const InsertAsk& ask, QString& why) {
  const EquipmentRoom* room = roomUnder(host, ask, why);
  if (room == nullptr) return std::nullopt;
  Insertion in;
  in.plan = addPort(host.plan(), room->id, room->frame().toLocal(ask.pointer.site), in.made);
  in.at = ask.pointer.site;
  in.shown = {room->id};
  return in;
}

std::optional<Insertion> doorAt(const ToolHost& host, const InsertAsk& ask, QString& why) {
  const EquipmentRoom* room = roomUnder(host, ask, why);
  if (room == nullptr) return std::nullopt;
  const Door usual{Side::South, {}, feet(3)}; // common practice, no source
  Insertion in;
  in.plan = moveDoor(
      host.plan(), room->id,
      doorNear(*room, room->door.value_or(usual), room->frame().toLocal(ask.pointer.site)));
  in.at = ask.pointer.site;
  in.shown = {room->id};
  return in;
}

} // namespace

Insertable insertablePort() {
  Insertable what;
  what.step = toolText("Place port");
  what.at = portAt;
  return what;
}

Insertable insertableDoor() {
  Insertable what;
  what.step = toolText("Place door");
  what.at = doorAt;
  return what;
}

} // namespace sump
