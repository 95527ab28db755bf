// P-4: each equipment room in plan and its wall with the rising pipes, with the ports' places.

#include "core/sheet/fitted_symbols.h"
#include "core/sheet/flow.h"
#include "core/sheet/plan_views.h"
#include "core/sheet/room_circuits.h"
#include "core/sheet/room_figure.h"
#include "core/sheet/room_parts.h"
#include "core/sheet/room_tables.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"
#include "core/sheet/wall_elevation.h"
#include "core/units/print.h"

#include <algorithm>
#include <limits>

namespace sump {

namespace {

/// What is in the level pipes; the wall's elevation and the table tell of the others.
void addParts(const SheetJob& job, const EquipmentRoom& room, Drawing& d) {
  for (const RoomPart& p : partsIn(job, room, isSmallPaper(job.paper) ? 0 : kAboutRoom)) {
    if (p.upright) continue;
    d.callouts.push_back({{p.part->id + (isSmallPaper(job.paper) ? "" : "  " + p.what)},
                          p.local,
                          ink(facts(p.run->service).color),
                          false,
                          true});
  }
}

/// Disconnects and the outline of the space that pipe keeps clear of.
void addPower(const SheetJob& job, const EquipmentRoom& room, Drawing& d) {
  for (const RoomDisconnect& at : disconnectsIn(job, room))
    d.callouts.push_back({disconnectLines(*at.supply), at.local, Ink::ServiceRed, false, true});
  for (const Ring& site : clearSpaces(job, room.id)) {
    Ring zone;
    for (Point2 p : site)
      zone.push_back(room.frame().toLocal(p));
    const PaperBox box = around(zone);
    d.callouts.push_back(
        {{"WORKING SPACE, KEEP CLEAR"}, {box.centre().x, box.high.y}, Ink::ServiceRed, true});
  }
}

/// From the nearest of two walls that meet; of two as near the far one from the local low corner.
void addFloorDrain(const EquipmentRoom& room, UnitSystem units, Drawing& d) {
  if (!room.floorDrain) return;
  const Point2 at = *room.floorDrain, size{inMetres(room.length), inMetres(room.width)};
  const auto from = [&](Point2 wall) {
    d.measures.push_back({wall, at, 0, printLength(metres(distance(wall, at)), units)});
  };
  from({2 * at.x < size.x ? 0 : size.x, at.y});
  from({at.x, 2 * at.y < size.y ? 0 : size.y});
  d.callouts.push_back({{"Floor drain"}, at, Ink::Black, true, true});
}

std::vector<Mark> marksFor(const SheetJob& job, const EquipmentRoom& room, Point2 most) {
  std::vector<Mark> marks = tellHidden(
      job, room, marksOf(job.marks, [](const Mark& mark) { return mark.layer != Layer::Note; }));
  std::vector<Mark> power;
  if (!isSmallPaper(job.paper)) markPowerSpaces(job, false, power);
  addSymbols(std::move(power), marks);
  return roomMarks(marks, room, insideOf(room).grown(kAboutRoom), most, job.units());
}

/// The corner or middle of a side of the area that stands clearest of ports and parts.
Point2 clearestEdge(const SheetJob& job, const EquipmentRoom& room, const RoomBox& area) {
  std::vector<Point2> taken;
  for (const Port& port : room.ports)
    taken.push_back(port.at);
  for (const RoomPart& part : partsIn(job, room))
    taken.push_back(part.local);
  const double x = inMetres(area.length), y = inMetres(area.depth);
  Point2 best{0, y};
  double most = -1;
  for (Point2 edge : {Point2{0, y}, {x, y}, {0, 0}, {x, 0}, {0, y / 2}, {x / 2, y}, {x, y / 2}}) {
    double least = std::numeric_limits<double>::infinity();
    for (Point2 place : taken)
      least = std::min(least, distance(area.corner + edge, place));
    if (least <= most + 1e-6) continue;
    most = least;
    best = edge;
  }
  return area.corner + best;
}

Drawing roomPlan(const SheetJob& job, const EquipmentRoom& room, Point2 most) {
  const UnitSystem units = job.units();
  Drawing d = roomDrawing(job, room, roomAnchor(job.plan(), room.id), "PLAN OF " + called(room),
                          marksFor(job, room, most));
  if (!room.ports.empty()) {
    static constexpr Point2 kSights[] = {{0, -1}, {1, 0}, {0, 1}, {-1, 0}};
    d.elevations = {{insideOf(room), kSights[static_cast<std::size_t>(wallOf(room).side)],
                     elevationAnchor(job.plan(), room.id)}};
  }
  if (room.skid) d.callouts.push_back(boxCallout(room, *room.skid, "Equipment skid", units));
  if (room.panel) d.callouts.push_back(boxCallout(room, *room.panel, "Panel", units));
  if (room.plumbingArea && !isSmallPaper(job.paper)) { // there the elevation says it
    const RoomBox& area = *room.plumbingArea;
    d.callouts.push_back({{areaLabel(job, room), printLength(area.length, units) + " x " +
                                                     printLength(area.depth, units)},
                          clearestEdge(job, room, area),
                          Ink::Black,
                          true});
  }
  addFloorDrain(room, units, d);
  for (const Port& port : room.ports) {
    Callout callout = portCallout(job, port, port.at);
    callout.lines.pop_back();
    d.callouts.push_back(std::move(callout));
  }
  // Small paper has no room for what the electrician's plan of the room shows, too.
  if (!isSmallPaper(job.paper)) addPower(job, room, d);
  addParts(job, room, d);
  return d;
}

/// The rising pipes' view stands beside the others, however large those are.
Point2 risersSize(const PageFlow& flow) {
  const Point2 most = flow.largestFigure();
  return {std::min(most.x, 280.0), std::min(most.y, 400.0)};
}

bool hasPipePorts(const EquipmentRoom& room) {
  return std::ranges::any_of(room.ports, [](const Port& port) { return !isConduit(port.service); });
}

} // namespace

void roomSheet(const SheetJob& job, PageFlow& flow) {
  const Point2 most = flow.figureSize({420, 340}, false), tall = risersSize(flow);
  const double column = flow.columnWidth();
  for (const EquipmentRoom& room : job.plan().rooms) {
    flow.add(figure(roomPlan(job, room, most), job.units(), most));
    if (!room.ports.empty()) {
      flow.add(figure(wallElevation(job, room, most), job.units(), most));
      if (!isSmallPaper(job.paper) && hasPipePorts(room))
        flow.add(figure(riserElevation(job, room, tall), job.units(), tall));
      flow.add(portTable(job, room, std::min(flow.fullWidth(), 1.4 * column)));
    }
    if (Block parts = roomPartTable(job, room, column); !parts.body.empty())
      flow.add(std::move(parts));
  }
  if (job.plan().rooms.empty()) return;
  if (Block supports = supportTable(job, column); !supports.body.empty())
    flow.add(std::move(supports));
  flow.add(paragraphs("NOTES", roomNotes(job), column, true));
}

} // namespace sump
