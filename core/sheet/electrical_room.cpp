#include "core/sheet/electrical_room.h"

#include "core/sheet/clip_marks.h"
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
#include <set>

namespace sump {

namespace {

/// Pipes with their parts and ports: another trade's, but for what is wired.
std::set<Id> piping(const Plan& plan) {
  std::set<Id> ids = pipeIds(plan);
  for (const Run& run : plan.runs) {
    for (const InlinePart& part : run.parts)
      if (part.kind == PartKind::SolenoidValve) ids.erase(part.id);
  }
  for (const EquipmentRoom& room : plan.rooms) {
    for (const Port& port : room.ports) {
      if (!isConduit(port.service)) ids.insert(port.id);
    }
  }
  return ids;
}

constexpr const char* kFloorKey = "Conduit over the floor: full lines; under it or in the ground: "
                                  "narrow dashes.";

std::vector<Mark> marksFor(const SheetJob& job, const EquipmentRoom& room, const PaperBox& box,
                           Point2 most) {
  return roomMarks(tellHidden(job, room, electricalMarks(job, piping(job.plan()))), room, box, most,
                   job.units());
}

/// Ports of conduits with the circuits in them.
void addConduits(const SheetJob& job, const EquipmentRoom& room, Drawing& d) {
  for (const Port& port : room.ports) {
    if (!isConduit(port.service)) continue;
    Callout callout = portCallout(job, port, port.at);
    callout.lines.back() = circuitsIn(job, runAt(job, port.id));
    if (callout.lines.back().empty()) callout.lines.pop_back();
    d.callouts.push_back(std::move(callout));
  }
}

void addDisconnects(const SheetJob& job, const EquipmentRoom& room, bool all, Drawing& d) {
  for (const RoomDisconnect& at : disconnectsIn(job, room)) {
    if (all || isBesidePanel(room, at.local))
      d.callouts.push_back({disconnectLines(*at.supply), at.local, Ink::ServiceRed, false, true});
  }
}

/// What is wired in a pipe.
void addValves(const SheetJob& job, const EquipmentRoom& room, Drawing& d) {
  for (const RoomPart& p : partsIn(job, room)) {
    if (p.part->kind == PartKind::SolenoidValve)
      d.callouts.push_back({{p.what, p.part->id}, p.local, Ink::ServiceRed, false, true});
  }
}

/// What of the plumber's stands in the room, by name.
void namePlumbing(const SheetJob& job, const EquipmentRoom& room, Drawing& d) {
  if (room.floorDrain)
    d.callouts.push_back({{"Floor drain"}, *room.floorDrain, Ink::Black, false, true});
  if (!room.plumbingArea || isSmallPaper(job.paper)) return;
  const RoomBox& area = *room.plumbingArea;
  d.callouts.push_back({{"Pipes rise in here"},
                        area.corner + Point2{0, inMetres(area.depth)},
                        Ink::Black,
                        false,
                        true});
}

void addSpaces(const SheetJob& job, const EquipmentRoom& room, Drawing& d) {
  for (const Ring& site : clearSpaces(job, room.id)) {
    Polyline edge;
    for (Point2 p : site)
      edge.push_back(room.frame().toLocal(p));
    // Outline and diagonals: no words stand in it.
    const PaperBox box = around(edge);
    d.uncut.push_back(box.ring());
    d.uncut.back().push_back(box.low);
    d.uncut.push_back({box.low, box.high});
    d.uncut.push_back({{box.low.x, box.high.y}, {box.high.x, box.low.y}});
    // On small paper the table has its sizes.
    d.callouts.push_back({isSmallPaper(job.paper)
                              ? std::vector<std::string>{"WORKING SPACE,", "KEEP CLEAR"}
                              : spaceLines(job, room.id),
                          lerp(box.low, box.high, 0.7), Ink::ServiceRed, true, true});
  }
}

/// Panel and disconnects, with what is between them and their wall.
PaperBox aboutPanel(const SheetJob& job, const EquipmentRoom& room, const WallFrame& wall) {
  constexpr double kSides = 0.15, kBehind = 0.12, kBefore = 0.2; // m
  const PaperBox panel = onWall(wall, *room.panel);
  std::vector<Point2> points{panel.low, panel.high};
  for (const RoomDisconnect& at : disconnectsIn(job, room))
    if (isBesidePanel(room, at.local)) points.push_back(wall.toWall(at.local));
  const PaperBox box = around(points);
  return around({wall.toRoom({box.low.x - kSides, -kBehind}),
                 wall.toRoom({box.high.x + kSides, box.high.y + kBefore})});
}

/// From disconnect to panel to disconnect.
void measurePanel(const SheetJob& job, const EquipmentRoom& room, const WallFrame& wall,
                  Drawing& d) {
  constexpr double kLeast = 0.02, kOff = 26; // m; mm
  const PaperBox panel = onWall(wall, *room.panel);
  std::vector<double> stops{panel.low.x, panel.high.x};
  for (const RoomDisconnect& at : disconnectsIn(job, room))
    if (isBesidePanel(room, at.local)) stops.push_back(wall.toWall(at.local).x);
  std::ranges::sort(stops);
  for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
    if (stops[i + 1] - stops[i] < kLeast) continue;
    Point2 from = wall.toRoom({stops[i], 0}), to = wall.toRoom({stops[i + 1], 0});
    if (!wall.onTheRight()) std::swap(from, to);
    d.measures.push_back(
        {from, to, -kOff, printLength(metres(stops[i + 1] - stops[i]), job.units())});
  }
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
                          "ELECTRICAL PLAN OF " + called(room),
                          marksFor(job, room, insideOf(room).grown(kAboutRoom), most));
  drawCircuits(circuitLines(job, room), d);
  if (room.panel) d.callouts.push_back(boxCallout(room, *room.panel, "Panel", units));
  if (room.skid)
    d.callouts.push_back(boxCallout(room, *room.skid, "Equipment skid with motors", units));
  addSpaces(job, room, d);
  addDisconnects(job, room, true, d);
  addValves(job, room, d);
  namePlumbing(job, room, d);
  // Small paper has no room for the conduits between panel and disconnects; the wall's elevation
  // has.
  std::string note = "Circuits: wide dashes, as the schedule numbers them.";
  if (!isSmallPaper(job.paper))
    note += " Conduits: view " + viewOf(panelAnchor(job.plan(), room.id)) + ".";
  d.notes.push_back(std::move(note));
  d.notes.emplace_back(kFloorKey);
  return figure(d, units, most);
}

Block panelPlan(const SheetJob& job, const EquipmentRoom& room, Point2 most) {
  const WallFrame wall(room, *room.panel);
  Drawing d;
  d.anchor = panelAnchor(job.plan(), room.id);
  d.title = "PLAN AT THE PANEL";
  constexpr double kEnlarged = 4; // 1 to so much
  d.finest = kEnlarged;
  d.north = job.plan().site.north - room.angle;
  d.marks = marksFor(job, room, aboutPanel(job, room, wall), most);
  d.uncut = roomLines(room);
  drawCircuits(circuitLines(job, room), d);
  const PaperBox shown = aboutPanel(job, room, wall);
  std::vector<Mark> inside;
  for (const Mark& mark : d.marks)
    keepOpenInside(mark, shown, inside);
  d.marks = std::move(inside);
  for (NamedLine& named : d.named) {
    const auto parts = clipLine(named.line, shown);
    named.line = parts.empty() ? Polyline() : parts.front();
  }
  std::erase_if(d.named, [](const NamedLine& named) { return named.line.size() < 2; });
  for (Polyline& line : d.uncut) {
    const auto parts = clipLine(line, shown);
    line = parts.empty() ? Polyline() : parts.front();
  }
  Callout panel = boxCallout(room, *room.panel, "Panel", job.units());
  panel.lines.pop_back();
  d.callouts.push_back(std::move(panel));
  measurePanel(job, room, wall, d);
  addDisconnects(job, room, false, d);
  addConduits(job, room, d);
  return figure(d, job.units(), most);
}

} // namespace sump
