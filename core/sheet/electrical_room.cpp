#include "core/sheet/electrical_room.h"

#include "core/sheet/circuits.h"
#include "core/sheet/fitted_symbols.h"
#include "core/sheet/flow.h"
#include "core/sheet/plan_views.h"
#include "core/sheet/room_figure.h"
#include "core/sheet/room_tables.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"
#include "core/sheet/wall_elevation.h"
#include "core/units/print.h"

#include <algorithm>
#include <set>

namespace sump {

namespace {

const LineStyle kCircuit{Ink::ServiceRed, 0.35, {2, 1}};

/// Pipes with their parts and ports: another trade's.
std::set<Id> piping(const Plan& plan) {
  std::set<Id> ids = pipeIds(plan);
  for (const EquipmentRoom& room : plan.rooms) {
    for (const Port& port : room.ports) {
      if (!isConduit(port.service)) ids.insert(port.id);
    }
  }
  return ids;
}

Point2 middle(const RoomBox& box) {
  return box.corner + Point2{inMetres(box.length), inMetres(box.depth)} * 0.5;
}

/// A way along the wall that the panel stands nearest to, `off` m from it.
Polyline alongWall(const EquipmentRoom& room, Point2 from, Point2 to, double off) {
  const double x = inMetres(room.length), y = inMetres(room.width);
  const Point2 panel = middle(*room.panel);
  const double gaps[] = {panel.y, y - panel.y, panel.x, x - panel.x};
  const double places[] = {off, y - off, off, x - off};
  const auto nearest = static_cast<std::size_t>(std::ranges::min_element(gaps) - std::begin(gaps));
  const double wall = places[nearest];
  if (nearest < 2) return {from, {from.x, wall}, {to.x, wall}, to};
  return {from, {wall, from.y}, {wall, to.y}, to};
}

/// From the panel over each disconnect in the room to the skid. Their way is the electrician's;
/// drawn along the wall, so that they can be told apart.
void drawCircuits(const SheetJob& job, const EquipmentRoom& room, Drawing& d) {
  constexpr double kToDisconnect = 0.035, kToLoad = 0.075; // m off the wall
  const std::vector<Circuit> circuits = circuitsOf(job);
  for (std::size_t i = 0; i < circuits.size(); ++i) {
    if (!circuits[i].inRoom || !room.panel) continue;
    for (const Supply& supply : job.plan().basis.wiring.supplies) {
      if (supply.id != circuits[i].of || !supply.disconnect) continue;
      const Point2 at = room.frame().toLocal(*supply.disconnect);
      if (!insideOf(room).holds(at)) continue;
      MarkPen pen(d.marks, supply.id, Layer::Run);
      pen.path(alongWall(room, middle(*room.panel), at, kToDisconnect), kCircuit);
      if (supply.kind == SupplyKind::Motor3Phase && room.skid)
        pen.path(alongWall(room, at, middle(*room.skid), kToLoad), kCircuit);
      std::vector<std::string> lines = disconnectLines(supply);
      lines.push_back("circuit " + std::to_string(i + 1));
      d.callouts.push_back({std::move(lines), at, Ink::ServiceRed, false, true});
    }
  }
}

std::vector<Mark> marksFor(const SheetJob& job, const EquipmentRoom& room, Point2 most) {
  return roomMarks(electricalMarks(job, piping(job.plan())), room, most, job.units());
}

} // namespace

std::vector<Mark> electricalMarks(const SheetJob& job, const std::set<Id>& pipes) {
  std::vector<Mark> marks = marksOf(job.marks, [&](const Mark& mark) {
    return !pipes.contains(mark.object) && mark.layer != Layer::Note;
  });
  std::vector<Mark> power;
  markPowerSpaces(job, true, power);
  addSymbols(std::move(power), marks);
  return marks;
}

std::set<Id> pipeIds(const Plan& plan) {
  std::set<Id> ids;
  for (const Run& run : plan.runs) {
    if (isConduit(run.service)) continue;
    ids.insert(run.id);
    for (const InlinePart& part : run.parts)
      ids.insert(part.id);
  }
  return ids;
}

Block electricalRoom(const SheetJob& job, const EquipmentRoom& room, Point2 most) {
  const UnitSystem units = job.units();
  Drawing d = roomDrawing(job, room, powerRoomAnchor(job.plan(), room.id),
                          "ELECTRICAL PLAN OF " + called(room), marksFor(job, room, most));
  if (room.panel) d.callouts.push_back(boxCallout(room, *room.panel, "Panel", units));
  if (room.skid)
    d.callouts.push_back(boxCallout(room, *room.skid, "Equipment skid with motors", units));
  for (const WorkingSpaceStudy& space : job.study().wiring.spaces) {
    if (space.room != room.id || space.zone.empty()) continue;
    Ring zone;
    for (Point2 p : space.zone)
      zone.push_back(room.frame().toLocal(p));
    // Outline and diagonals: no words stand in it.
    d.uncut.push_back({zone[0], zone[1], zone[2], zone[3], zone[0], zone[2]});
    d.uncut.push_back({zone[1], zone[3]});
    d.callouts.push_back(
        {spaceLines(space, units), around(zone).centre(), Ink::ServiceRed, true, true});
  }
  drawCircuits(job, room, d);
  for (const Port& port : room.ports) {
    // Small paper has no room for them between panel and disconnects; the wall's elevation has.
    if (!isConduit(port.service) || isSmallPaper(job.paper)) continue;
    Callout callout = portCallout(job, port, port.at);
    callout.lines.pop_back();
    d.callouts.push_back(std::move(callout));
  }
  return figure(d, units, most);
}

} // namespace sump
