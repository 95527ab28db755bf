#include "app/canvas/handles.h"

#include "core/geometry/polygon.h"
#include "core/plan/edits_group.h"
#include "core/plan/edits_outlines.h"
#include "core/plan/edits_parts.h"
#include "core/plan/edits_rooms.h"
#include "core/plan/ends.h"

#include <algorithm>

namespace sump {

namespace {

/// Below this many pixels a metre a 2 ft opening is a dot: what is inside is not taken by accident.
constexpr double kInsideScale = 26;
/// A leg shorter than this on the screen has no room for a handle in its middle.
constexpr double kLeastLegPixels = 44;
/// How far above what is selected its turning handle stands.
constexpr double kTurnPixels = 30;

Handle handle(HandleKind kind, const Id& object, Point2 at, std::size_t index = 0,
              const Id& part = {}, std::vector<Point2> reach = {}) {
  return {kind, object, part, index, at, std::move(reach)};
}

void addLegs(const std::vector<Point2>& points, bool closed, const Id& id, double scale,
             std::vector<Handle>& out) {
  const std::size_t legs = closed ? points.size() : points.size() - 1;
  for (std::size_t i = 0; i < legs; ++i) {
    const Point2 next = points[(i + 1) % points.size()];
    if (distance(points[i], next) * scale < kLeastLegPixels) continue;
    out.push_back(handle(HandleKind::Leg, id, lerp(points[i], next, 0.5), i));
  }
}

void addCorners(const Plan& plan, const Id& id, double scale, std::vector<Handle>& out) {
  const std::optional<Corners> corners = cornersOf(plan, id);
  if (!corners || corners->points.size() < 2) return;
  for (std::size_t i = 0; i < corners->points.size(); ++i)
    out.push_back(handle(HandleKind::Corner, id, corners->points[i], i));
  addLegs(corners->points, corners->closed, id, scale, out);
}

void addParts(const Run& run, const Polyline& line, std::vector<Handle>& out) {
  for (std::size_t i = 0; i < run.parts.size(); ++i) {
    if (const auto at = stationOf(line, run.parts[i]))
      out.push_back(handle(HandleKind::Part, run.id, at->at, i, run.parts[i].id));
  }
}

void addRun(const Locator& where, const Run& run, double scale, std::vector<Handle>& out) {
  const std::optional<Polyline> line = where.centreline(run);
  if (!line) return;
  out.push_back(handle(HandleKind::RunEnd, run.id, line->front(), 0));
  out.push_back(handle(HandleKind::RunEnd, run.id, line->back(), 1));
  for (std::size_t i = 0; i < run.vertices.size(); ++i) {
    const bool drop = i > 0 && run.vertices[i].at == run.vertices[i - 1].at; // has a handle already
    if (!drop) out.push_back(handle(HandleKind::Corner, run.id, run.vertices[i].at, i));
  }
  addParts(run, *line, out);
  addLegs(*line, false, run.id, scale, out);
}

void addBaffles(const Vault& vault, std::vector<Handle>& out) {
  const double low = -inMetres(vault.length) / 2 + inMetres(vault.wall);
  const double half = inMetres(vault.width) / 2 - inMetres(vault.wall);
  const Frame frame = vault.frame();
  for (std::size_t i = 0; i < vault.baffles.size(); ++i) {
    const Baffle& b = vault.baffles[i];
    const double near = low + inMetres(b.offset), far = near + inMetres(b.thickness);
    out.push_back(handle(HandleKind::Baffle, vault.id, frame.toSite({(near + far) / 2, 0}), i, b.id,
                         frame.rectangle({near, -half}, {far, half})));
  }
}

void addManways(const Vault& vault, std::vector<Handle>& out) {
  for (std::size_t i = 0; i < vault.manways.size(); ++i) {
    out.push_back(handle(HandleKind::Manway, vault.id, vault.frame().toSite(vault.manways[i].at), i,
                         vault.manways[i].id));
  }
}

void addRoom(const EquipmentRoom& room, std::vector<Handle>& out) {
  const Frame frame = room.frame();
  for (std::size_t i = 0; i < room.ports.size(); ++i)
    out.push_back(
        handle(HandleKind::Port, room.id, frame.toSite(room.ports[i].at), i, room.ports[i].id));
  if (room.door) {
    const auto [from, to] = doorEnds(room, *room.door);
    out.push_back(handle(HandleKind::Door, room.id, frame.toSite(lerp(from, to, 0.5)), 0, {},
                         {frame.toSite(from), frame.toSite(to)}));
  }
  const std::pair<RoomThing, HandleKind> things[] = {
      {RoomThing::Skid, HandleKind::Skid},
      {RoomThing::Panel, HandleKind::Panel},
      {RoomThing::PlumbingArea, HandleKind::PlumbingArea}};
  for (const auto& [thing, kind] : things) {
    const RoomBox* box = boxOf(room, thing);
    if (box == nullptr) continue;
    out.push_back(handle(kind, room.id, frame.toSite(lerp(box->corner, box->high(), 0.5)), 0, {},
                         outline(room, *box)));
  }
}

/// Points and lines have no direction of their own.
bool turns(const Plan& plan, const Id& id) {
  return plan.spots.find(id) == nullptr && plan.wells.find(id) == nullptr &&
         plan.sewers.find(id) == nullptr && plan.runs.find(id) == nullptr &&
         plan.notes.find(id) == nullptr;
}

void addTurn(const Plan& plan, const std::set<Id>& ids, double scale, std::vector<Handle>& out) {
  const bool any = std::ranges::any_of(ids, [&plan](const Id& id) { return turns(plan, id); });
  const std::optional<Box> box = any ? extentOf(plan, ids) : std::nullopt;
  if (!box) return;
  const Point2 top{(box->low.x + box->high.x) / 2, box->high.y + kTurnPixels / scale};
  out.push_back(handle(HandleKind::Turn, *ids.begin(), top));
}

double sizeOf(const std::vector<Point2>& reach) {
  return reach.size() < 3 ? 0 : area(reach);
}

/// Distance to the line, or 0 within the area.
double distanceToReach(Point2 at, const std::vector<Point2>& reach) {
  if (reach.size() == 2) return nearestOnSegment(at, reach[0], reach[1]).distance;
  return distance(at, Ring(reach));
}

} // namespace

std::vector<Handle> handlesOf(const Plan& plan, const std::set<Id>& selection, double scale) {
  std::vector<Handle> out;
  if (selection.empty()) {
    addCorners(plan, {}, scale, out);
    return out;
  }
  const std::set<Id> ids = unlocked(plan, selection);
  if (ids.empty()) return out;
  if (selection.size() == 1) {
    const Id& id = *ids.begin();
    addCorners(plan, id, scale, out);
    if (const Run* run = plan.runs.find(id)) addRun(Locator(plan), *run, scale, out);
    const bool roomy = scale >= kInsideScale;
    if (const Vault* vault = plan.vaults.find(id); vault != nullptr && roomy) {
      addManways(*vault, out);
      addBaffles(*vault, out);
    }
    if (const EquipmentRoom* room = plan.rooms.find(id); room != nullptr && roomy)
      addRoom(*room, out);
  }
  addTurn(plan, ids, scale, out);
  return out;
}

std::vector<Handle> handlesOf(const Plan& plan, HandleKind kind) {
  std::vector<Handle> out;
  if (kind == HandleKind::Baffle || kind == HandleKind::Manway) {
    for (const Vault& vault : plan.vaults)
      kind == HandleKind::Baffle ? addBaffles(vault, out) : addManways(vault, out);
  } else if (kind == HandleKind::Part) {
    const Locator where(plan);
    for (const Run& run : plan.runs) {
      if (run.parts.empty()) continue;
      if (const auto line = where.centreline(run)) addParts(run, *line, out);
    }
  }
  std::erase_if(out, [&plan](const Handle& h) { return isLocked(plan, h.object); });
  return out;
}

const Handle* handleAt(const std::vector<Handle>& handles, Point2 at, double reach) {
  const Handle* best = nullptr;
  double least = reach;
  for (const Handle& h : handles) {
    // The middle of a box is no mark: the whole of it is.
    if (h.reach.size() > 2 && h.kind != HandleKind::Baffle) continue;
    // Of marks at one place the corner or end wins over the leg.
    const double d = distance(h.at, at);
    if (d < least || (d == least && best == nullptr)) {
      least = d;
      best = &h;
    }
  }
  if (best != nullptr) return best;
  double size = 1e300;
  for (const Handle& h : handles) {
    if (h.reach.empty()) continue;
    const double slack = h.reach.size() == 2 || h.kind == HandleKind::Baffle ? reach * 0.6 : 0;
    if (distanceToReach(at, h.reach) > slack || sizeOf(h.reach) >= size) continue;
    size = sizeOf(h.reach);
    best = &h;
  }
  return best;
}

} // namespace sump
