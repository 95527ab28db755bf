#include "core/plan/carry.h"

#include "core/geometry/polygon.h"

#include <algorithm>

namespace sump {

namespace {

/// Applies `change` to every listed object of the ids.
template <class T, class Change>
void changeEach(Items<T>& items, const std::set<Id>& ids, Change change) {
  for (const Id& id : ids) {
    if (const T* found = items.find(id)) {
      T copy = *found;
      change(copy);
      items.put(std::move(copy));
    }
  }
}

/// Of a local place across an object's middle line.
void turnRound(Point2& local) {
  local.y = -local.y;
}

void carryVault(Vault& vault, const Motion& motion) {
  vault.centre = motion(vault.centre);
  vault.angle = motion(vault.angle);
  if (!motion.mirrored()) return;
  for (Manway& manway : vault.manways)
    turnRound(manway.at);
}

void turnBoxRound(std::optional<RoomBox>& box, const EquipmentRoom& room) {
  if (box) box->corner.y = inMetres(room.width) - box->corner.y - inMetres(box->depth);
}

/// The door keeps its place in the wall, which is walked the other way round.
void turnDoorRound(Door& door, const EquipmentRoom& room) {
  const bool alongLength = door.side == Side::South || door.side == Side::North;
  const Length wall = alongLength ? room.length : room.width;
  door.offset = std::max(wall - door.offset - door.width, Length());
  if (door.side == Side::South) {
    door.side = Side::North;
  } else if (door.side == Side::North) {
    door.side = Side::South;
  }
}

/// The frame stands in a corner, so a mirrored room is measured from its other long wall.
void carryRoom(EquipmentRoom& room, const Motion& motion) {
  const double width = inMetres(room.width);
  const Point2 corner = room.frame().toSite({0, motion.mirrored() ? width : 0});
  room.corner = motion(motion.mirrored() ? corner : room.corner);
  room.angle = motion(room.angle);
  if (!motion.mirrored()) return;
  for (auto* box : {&room.skid, &room.plumbingArea, &room.panel})
    turnBoxRound(*box, room);
  for (Port& port : room.ports)
    port.at.y = width - port.at.y;
  if (room.floorDrain) room.floorDrain->y = width - room.floorDrain->y;
  if (room.door) turnDoorRound(*room.door, room);
}

void carryObjects(Plan& plan, const std::set<Id>& ids, const Motion& motion) {
  const auto points = [&motion](std::vector<Point2>& list) {
    for (Point2& p : list)
      p = motion(p);
  };
  const auto at = [&motion](auto& object) { object.at = motion(object.at); };
  const auto box = [&motion](auto& object) {
    object.at = motion(object.at);
    object.angle = motion(object.angle);
  };
  changeEach(plan.buildings, ids, [&](Building& b) { points(b.outline); });
  changeEach(plan.pavements, ids, [&](Pavement& p) { points(p.outline); });
  changeEach(plan.utilities, ids, [&](Utility& u) { points(u.path); });
  changeEach(plan.spots, ids, at);
  changeEach(plan.wells, ids, at);
  changeEach(plan.basins, ids, box);
  changeEach(plan.sewers, ids, at);
  changeEach(plan.washes, ids, box);
  changeEach(plan.rooms, ids, [&](EquipmentRoom& room) { carryRoom(room, motion); });
  changeEach(plan.vaults, ids, [&](Vault& vault) { carryVault(vault, motion); });
  if (!motion.mirrored()) changeEach(plan.underlays, ids, box);
}

/// The outline within which corners follow the object; empty for what holds none.
Ring holdOutline(const Locator& locator, const Id& id) {
  if (const Vault* v = locator.vault(id)) return outline(*v);
  if (const EquipmentRoom* r = locator.room(id)) return outline(*r);
  return {};
}

/// Carries the unbroken row of corners next to an end that stand inside `ring`.
template <class Iterator>
void carryRow(Iterator first, Iterator last, const Ring& ring, const Motion& motion) {
  for (; first != last && contains(ring, first->at); ++first)
    first->at = motion(first->at);
}

/// Works out who moves in `before` and carries runs and notes accordingly.
class Carrier {
public:
  Carrier(const Plan& before, const std::set<Id>& ids, const Motion& motion)
      : before_(before), locator_(before), ids_(ids), moved_(ids), motion_(motion) {
    findWholeRuns();
  }
  void runs(Plan& plan) const;
  void notes(Plan& plan) const;

private:
  bool goes(const RunEnd& end) const { return moved_.contains(holder(locator_, end)); }
  void findWholeRuns();
  void carryEnd(RunEnd& end, bool whole) const;
  void carryInside(Run& run, const RunEnd& end, bool atStart) const;
  bool carryEnd(NoteEnd& end, bool chosen) const;
  void carryOffset(DimensionNote& note, const DimensionNote& was) const;

  const Plan& before_;
  Locator locator_;
  const std::set<Id>& ids_;
  std::set<Id> moved_; ///< and the runs that go whole
  const Motion& motion_;
};

/// A run between two things that go goes too, and may carry others.
void Carrier::findWholeRuns() {
  for (bool again = true; again;) {
    again = false;
    for (const Run& run : before_.runs) {
      if (goes(run.from) && goes(run.to)) again = moved_.insert(run.id).second || again;
    }
  }
}

/// `whole`: the run goes as a whole, with its site points.
void Carrier::carryEnd(RunEnd& end, bool whole) const {
  if (end.kind == EndKind::Free) {
    if (whole) end.at = motion_(end.at);
  } else if (end.kind == EndKind::Run) {
    if (whole || goes(end)) end.at = motion_(end.at);
  } else if (!goes(end)) {
    return;
  } else if (end.kind == EndKind::Sewer) {
    end.at = motion_.vector(end.at);
  } else if (motion_.mirrored()) {
    turnRound(end.at);
  }
}

/// For a run of which one end is carried.
void Carrier::carryInside(Run& run, const RunEnd& end, bool atStart) const {
  const Ring ring = holdOutline(locator_, holder(locator_, end));
  if (ring.empty()) return;
  if (atStart) {
    carryRow(run.vertices.begin(), run.vertices.end(), ring, motion_);
  } else {
    carryRow(run.vertices.rbegin(), run.vertices.rend(), ring, motion_);
  }
}

void Carrier::runs(Plan& plan) const {
  for (const Run& run : before_.runs) {
    const bool whole = moved_.contains(run.id);
    Run next = run;
    if (whole) {
      for (Vertex& v : next.vertices)
        v.at = motion_(v.at);
    } else if (goes(run.from)) {
      carryInside(next, run.from, true);
    } else if (goes(run.to)) {
      carryInside(next, run.to, false);
    }
    carryEnd(next.from, whole);
    carryEnd(next.to, whole);
    if (!(next == run)) plan.runs.put(std::move(next));
  }
}

/// True if the end goes. Objects with a frame of their own take it along in local coordinates.
bool Carrier::carryEnd(NoteEnd& end, bool chosen) const {
  if (end.object.empty()) {
    if (chosen) end.at = motion_(end.at);
    return chosen;
  }
  const std::optional<ObjectPlace> place = locator_.find(end.object);
  if (!place || !moved_.contains(end.object)) return false;
  switch (place->kind) {
  case ObjectKind::Vault:
  case ObjectKind::Basin:
  case ObjectKind::Wash:
    if (motion_.mirrored()) turnRound(end.at);
    break;
  case ObjectKind::Room:
    if (motion_.mirrored()) end.at.y = inMetres(before_.rooms[place->index].width) - end.at.y;
    break;
  case ObjectKind::Sewer:
    end.at = motion_.vector(end.at);
    break;
  default:
    end.at = motion_(end.at);
  }
  return true;
}

/// A note that is moved while what it measures stays is set off by another distance.
void Carrier::carryOffset(DimensionNote& note, const DimensionNote& was) const {
  const std::optional<Point2> from = locator_.position(was.from), to = locator_.position(was.to);
  if (!from || !to || motion_.mirrored()) return;
  const double length = distance(*from, *to);
  if (length <= 0) return;
  const Point2 along = (*to - *from) * (1 / length), left{-along.y, along.x};
  const Point2 line = lerp(*from, *to, 0.5) + left * inMetres(was.offset);
  note.offset = was.offset + metres(dot(motion_(line) - line, left));
}

void Carrier::notes(Plan& plan) const {
  for (const DimensionNote& note : before_.notes) {
    const bool chosen = ids_.contains(note.id);
    DimensionNote next = note;
    const bool from = carryEnd(next.from, chosen);
    const bool to = carryEnd(next.to, chosen);
    if (from && to && motion_.mirrored()) next.offset = -note.offset;
    if (chosen && !from && !to) carryOffset(next, note);
    if (!(next == note)) plan.notes.put(std::move(next));
  }
}

/// What the target knew of the end's level, for an end that loses it.
std::optional<Length> knownInvert(const Locator& locator, const RunEnd& end) {
  if (end.invert) return end.invert;
  if (const Basin* b = locator.basin(end.target)) return b->outletInvert;
  if (const SewerConnection* s = locator.sewer(end.target)) return s->invert;
  if (const WashEquipment* w = locator.wash(end.target)) return w->inletElevation;
  if (const Port* p = locator.port(end.target)) {
    return locator.roomOfPort(end.target)->floor + p->height;
  }
  return std::nullopt;
}

} // namespace

Id holder(const Locator& locator, const RunEnd& end) {
  if (end.kind == EndKind::Free) return {};
  const EquipmentRoom* room = locator.roomOfPort(end.target);
  return room != nullptr ? room->id : end.target;
}

void freeEnd(const Locator& locator, RunEnd& end) {
  const std::optional<Point2> at = locator.position(end);
  RunEnd freed;
  freed.at = at.value_or(end.at);
  freed.invert = knownInvert(locator, end);
  freed.fitting = end.fitting;
  end = freed;
}

Plan carried(const Plan& plan, const std::set<Id>& ids, const Motion& motion) {
  Plan next = plan;
  carryObjects(next, ids, motion);
  const Carrier carrier(plan, ids, motion);
  carrier.runs(next);
  carrier.notes(next);
  return next;
}

} // namespace sump
