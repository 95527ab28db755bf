#include "core/plan/edits_rooms.h"

#include "core/geometry/polygon.h"
#include "core/plan/edits_objects.h"
#include "core/plan/ends.h"
#include "core/plan/service.h"

#include <algorithm>

namespace sump {

namespace {

constexpr double kTouch = 0.01; // metres: boxes this close are set as one

/// For a room that is changed and for one that is only looked at.
template <class Room> auto& slot(Room& room, RoomThing thing) {
  switch (thing) {
  case RoomThing::Skid:
    return room.skid;
  case RoomThing::PlumbingArea:
    return room.plumbingArea;
  case RoomThing::Panel:
    break;
  }
  return room.panel;
}

bool holds(const RoomBox& box, Point2 p) {
  const Point2 high = box.high();
  return p.x >= box.corner.x - kTouch && p.x <= high.x + kTouch && p.y >= box.corner.y - kTouch &&
         p.y <= high.y + kTouch;
}

bool adjoin(const RoomBox& a, const RoomBox& b) {
  const Point2 ah = a.high(), bh = b.high();
  return a.corner.x <= bh.x + kTouch && b.corner.x <= ah.x + kTouch &&
         a.corner.y <= bh.y + kTouch && b.corner.y <= ah.y + kTouch;
}

/// The shift nearest to `by` that keeps low to high within the room.
Point2 heldShift(const EquipmentRoom& room, Point2 low, Point2 high, Point2 by) {
  const auto hold = [](double l, double h, double size, double d) {
    return h - l > size ? -l : std::clamp(d, -l, size - h);
  };
  return {hold(low.x, high.x, inMetres(room.length), by.x),
          hold(low.y, high.y, inMetres(room.width), by.y)};
}

/// The walls from their starts, counter-clockwise round the room.
std::pair<Point2, Point2> wallOf(const EquipmentRoom& room, Side side) {
  const double l = inMetres(room.length), w = inMetres(room.width);
  switch (side) {
  case Side::South:
    return {{0, 0}, {l, 0}};
  case Side::East:
    return {{l, 0}, {l, w}};
  case Side::North:
    return {{l, w}, {0, w}};
  case Side::West:
    break;
  }
  return {{0, w}, {0, 0}};
}

Point2 heldIn(const EquipmentRoom& room, Point2 local) {
  return {std::clamp(local.x, 0.0, inMetres(room.length)),
          std::clamp(local.y, 0.0, inMetres(room.width))};
}

/// What runs between equipment and vaults, wash and supplies, in the order in which it is drawn.
Service serviceWithoutPort(const EquipmentRoom& room) {
  for (Service service : {Service::Suction, Service::SpareSuction, Service::Recirculation,
                          Service::Underflow, Service::Product, Service::MakeUp,
                          Service::FloatConduit, Service::Power, Service::Signal}) {
    if (std::ranges::find(room.ports, service, &Port::service) == room.ports.end()) return service;
  }
  return Service::Suction;
}

} // namespace

const RoomBox* boxOf(const EquipmentRoom& room, RoomThing thing) {
  const std::optional<RoomBox>& box = slot(room, thing);
  return box ? &*box : nullptr;
}

Plan moveRoomBox(const Plan& plan, std::string_view room, RoomThing thing, Point2 corner) {
  const EquipmentRoom* found = plan.rooms.find(room);
  if (found == nullptr || boxOf(*found, thing) == nullptr) return plan;
  EquipmentRoom changed = *found;
  RoomBox& box = *slot(changed, thing);
  const bool together =
      thing == RoomThing::Skid && changed.plumbingArea && adjoin(box, *changed.plumbingArea);
  std::vector<RoomBox*> boxes = {&box};
  if (together) boxes.push_back(&*changed.plumbingArea);
  Point2 low = box.corner, high = box.high();
  for (const RoomBox* b : boxes) {
    low = {std::min(low.x, b->corner.x), std::min(low.y, b->corner.y)};
    high = {std::max(high.x, b->high().x), std::max(high.y, b->high().y)};
  }
  const Point2 by = heldShift(changed, low, high, corner - box.corner);
  const bool water = thing == RoomThing::PlumbingArea || together;
  const RoomBox carrier = water ? *changed.plumbingArea : box;
  for (Port& port : changed.ports) {
    const bool its = isConduit(port.service) ? thing == RoomThing::Panel : water;
    if (its && holds(carrier, port.at)) port.at = port.at + by;
  }
  for (RoomBox* b : boxes)
    b->corner = b->corner + by;
  Plan next = plan;
  next.rooms.put(std::move(changed));
  return next;
}

Door doorNear(const EquipmentRoom& room, const Door& door, Point2 local) {
  Door best = door;
  double least = 1e300;
  for (Side side : {Side::South, Side::East, Side::North, Side::West}) {
    const auto [start, end] = wallOf(room, side);
    const Foot foot = nearestOnSegment(local, start, end);
    const double wall = distance(start, end), width = inMetres(door.width);
    if (foot.distance >= least || width > wall) continue;
    least = foot.distance;
    best.side = side;
    best.offset = metres(std::clamp(foot.along * wall - width / 2, 0.0, wall - width));
  }
  return best;
}

std::pair<Point2, Point2> doorEnds(const EquipmentRoom& room, const Door& door) {
  const auto [start, end] = wallOf(room, door.side);
  const Point2 u = (end - start) * (1 / distance(start, end));
  const Point2 from = start + u * inMetres(door.offset);
  return {from, from + u * inMetres(door.width)};
}

Plan moveDoor(const Plan& plan, std::string_view room, const Door& door) {
  const EquipmentRoom* found = plan.rooms.find(room);
  if (found == nullptr) return plan;
  EquipmentRoom changed = *found;
  changed.door = door;
  Plan next = plan;
  next.rooms.put(std::move(changed));
  return next;
}

Plan addPort(const Plan& plan, std::string_view room, Point2 local, Id& made) {
  const EquipmentRoom* found = plan.rooms.find(room);
  if (found == nullptr) return plan;
  EquipmentRoom changed = *found;
  const Service service = serviceWithoutPort(changed);
  made = freshId(plan, changed.id + "-P");
  // Size and height over the floor are those of a usual suction (common practice, no source).
  changed.ports.push_back(
      {made, std::string(facts(service).name), service, heldIn(changed, local), feet(1.5), "2"});
  Plan next = plan;
  next.rooms.put(std::move(changed));
  return next;
}

Plan erasePort(const Plan& plan, std::string_view port) {
  const EquipmentRoom* room = Locator(plan).roomOfPort(port);
  if (room == nullptr) return plan;
  EquipmentRoom changed = *room;
  std::erase_if(changed.ports, [port](const Port& p) { return p.id == port; });
  Plan next = plan;
  next.rooms.put(std::move(changed));
  return next;
}

Plan eraseDoor(const Plan& plan, std::string_view room) {
  const EquipmentRoom* found = plan.rooms.find(room);
  if (found == nullptr) return plan;
  EquipmentRoom changed = *found;
  changed.door.reset();
  Plan next = plan;
  next.rooms.put(std::move(changed));
  return next;
}

Plan movePort(const Plan& plan, std::string_view port, Point2 local) {
  const Locator where(plan);
  const EquipmentRoom* room = where.roomOfPort(port);
  if (room == nullptr) return plan;
  EquipmentRoom changed = *room;
  const auto it = std::ranges::find(changed.ports, port, &Port::id);
  it->at = heldIn(*room, local);
  Plan next = plan;
  next.rooms.put(std::move(changed));
  return next;
}

} // namespace sump
