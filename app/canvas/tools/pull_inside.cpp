// Handles inside a vault or an equipment room, dragged in its own frame.

#include "app/canvas/tools/pull.h"

#include "core/plan/edits_rooms.h"
#include "core/plan/edits_vaults.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kPullPixels = 8;

double insideHalf(Length outside, const Vault& v) {
  return inMetres(outside) / 2 - inMetres(v.wall);
}

/// `v` or the nearest of the candidates within reach.
double caughtBy(double v, std::initializer_list<double> candidates, double reach) {
  double best = v, least = reach;
  for (double c : candidates) {
    if (std::abs(c - v) >= least) continue;
    least = std::abs(c - v);
    best = c;
  }
  return best;
}

/// How far a drag goes in the frame of the object.
Point2 localShift(const Frame& frame, const Pointer& start, const Pointer& now) {
  return frame.toLocal(now.site) - frame.toLocal(start.site);
}

double reachOf(const ToolHost& host, const Pointer& now) {
  return fineStep(host, now) > 0 ? kPullPixels / host.view().scale() : 0;
}

Pull pulledBaffle(const ToolHost& host, const Handle& handle, const Pointer& start,
                  const Pointer& now, const Entry& typed) {
  const Plan& plan = host.plan();
  const Vault& vault = *plan.vaults.find(handle.object);
  const Baffle& baffle = vault.baffles[handle.index];
  const std::vector<ChamberBox> boxes = chambers(vault);
  const double low = boxes.front().low.x, thick = inMetres(baffle.thickness);
  const double wanted = inMetres(baffle.offset) + localShift(vault.frame(), start, now).x;
  // Where the chambers on both sides are equally long.
  const double equal =
      (boxes[handle.index].low.x + boxes[handle.index + 1].high.x - thick) / 2 - low;
  const double stepped = onFineStep(wanted, fineStep(host, now));
  double offset = caughtBy(wanted, {equal}, reachOf(host, now));
  const bool caught = offset == equal && offset != wanted;
  if (!caught) offset = stepped;
  offset = typedValue(typed, EntryKey::Distance).value_or(offset);
  Pull pull;
  pull.plan = moveBaffle(plan, baffle.id, metres(offset));
  const Vault& moved = *pull.plan.vaults.find(vault.id);
  const double near = low + inMetres(moved.baffles[handle.index].offset);
  pull.at = vault.frame().toSite({near + thick / 2, 0});
  if (caught) pull.tag = toolText("equal chambers");
  pull.gaps = chamberSpans(moved);
  return pull;
}

Pull pulledManway(const ToolHost& host, const Handle& handle, const Pointer& start,
                  const Pointer& now, const Entry& typed) {
  const Plan& plan = host.plan();
  const Vault& vault = *plan.vaults.find(handle.object);
  const Manway& manway = vault.manways[handle.index];
  const Point2 wanted = manway.at + localShift(vault.frame(), start, now);
  const double step = fineStep(host, now), reach = reachOf(host, now);
  Point2 at{onFineStep(wanted.x, step), onFineStep(wanted.y, step)};
  for (const ChamberBox& box : chambers(vault)) {
    const double middle = (box.low.x + box.high.x) / 2;
    if (std::abs(wanted.x - middle) < reach) at.x = middle;
  }
  if (std::abs(wanted.y) < reach) at.y = 0;
  at.x = typedValue(typed, EntryKey::Along).value_or(at.x);
  at.y = typedValue(typed, EntryKey::Across).value_or(at.y);
  Pull pull;
  pull.plan = moveManway(plan, manway.id, at);
  at = pull.plan.vaults.find(vault.id)->manways[handle.index].at;
  const Frame frame = vault.frame();
  pull.at = frame.toSite(at);
  const double x = insideHalf(vault.length, vault), y = insideHalf(vault.width, vault);
  pull.gaps = {{frame.toSite({-x, at.y}), pull.at}, {frame.toSite({at.x, -y}), pull.at}};
  return pull;
}

RoomThing thingOf(HandleKind kind) {
  if (kind == HandleKind::Skid) return RoomThing::Skid;
  return kind == HandleKind::Panel ? RoomThing::Panel : RoomThing::PlumbingArea;
}

/// From the walls that the room is measured from to a place in it.
std::vector<Span> wallSpans(const Frame& frame, Point2 local) {
  std::vector<Span> spans;
  if (local.x > 0.01) spans.push_back({frame.toSite({0, local.y}), frame.toSite(local)});
  if (local.y > 0.01) spans.push_back({frame.toSite({local.x, 0}), frame.toSite(local)});
  return spans;
}

/// A place in the room on the fine step, or as typed.
Point2 roomPlace(const ToolHost& host, const Pointer& now, const Entry& typed, Point2 wanted) {
  const double step = fineStep(host, now);
  return {typedValue(typed, EntryKey::Along).value_or(onFineStep(wanted.x, step)),
          typedValue(typed, EntryKey::Across).value_or(onFineStep(wanted.y, step))};
}

Pull pulledDoor(const ToolHost& host, const EquipmentRoom& room, const Pointer& now,
                const Entry& typed) {
  Door door = doorNear(room, *room.door, room.frame().toLocal(now.site));
  const Point2 start = doorEnds(room, {door.side, {}, door.width}).first;
  const bool alongLength = door.side == Side::South || door.side == Side::North;
  const double space = inMetres((alongLength ? room.length : room.width) - door.width);
  const double wanted = onFineStep(inMetres(door.offset), fineStep(host, now));
  door.offset = metres(std::clamp(typedValue(typed, EntryKey::Distance).value_or(wanted), 0.0,
                                  std::max(space, 0.0)));
  Pull pull;
  pull.plan = moveDoor(host.plan(), room.id, door);
  const auto [from, to] = doorEnds(room, door);
  pull.at = room.frame().toSite(lerp(from, to, 0.5));
  if (distance(start, from) > 0.01)
    pull.gaps = {{room.frame().toSite(start), room.frame().toSite(from)}};
  return pull;
}

} // namespace

std::vector<Span> chamberSpans(const Vault& vault) {
  std::vector<Span> spans;
  for (const ChamberBox& box : chambers(vault)) {
    const double y = box.low.y + 0.25 * (box.high.y - box.low.y);
    spans.push_back({vault.frame().toSite({box.low.x, y}), vault.frame().toSite({box.high.x, y})});
  }
  return spans;
}

Pull pulledInVault(const ToolHost& host, const Handle& handle, const Pointer& start,
                   const Pointer& now, const Entry& typed) {
  return handle.kind == HandleKind::Baffle ? pulledBaffle(host, handle, start, now, typed)
                                           : pulledManway(host, handle, start, now, typed);
}

Pull pulledInRoom(const ToolHost& host, const Handle& handle, const Pointer& start,
                  const Pointer& now, const Entry& typed) {
  const Plan& plan = host.plan();
  const EquipmentRoom& room = *plan.rooms.find(handle.object);
  if (handle.kind == HandleKind::Door) return pulledDoor(host, room, now, typed);
  const Frame frame = room.frame();
  const Point2 by = localShift(frame, start, now);
  Pull pull;
  if (handle.kind == HandleKind::Port) {
    pull.plan =
        movePort(plan, handle.part, roomPlace(host, now, typed, room.ports[handle.index].at + by));
    const Point2 at = pull.plan.rooms.find(room.id)->ports[handle.index].at;
    pull.at = frame.toSite(at);
    pull.gaps = wallSpans(frame, at);
    return pull;
  }
  const RoomThing thing = thingOf(handle.kind);
  const Point2 corner = roomPlace(host, now, typed, boxOf(room, thing)->corner + by);
  pull.plan = moveRoomBox(plan, room.id, thing, corner);
  const RoomBox& box = *boxOf(*pull.plan.rooms.find(room.id), thing);
  pull.at = frame.toSite(box.corner + Point2{inMetres(box.length) / 2, inMetres(box.depth) / 2});
  pull.gaps = wallSpans(frame, box.corner);
  return pull;
}

} // namespace sump
