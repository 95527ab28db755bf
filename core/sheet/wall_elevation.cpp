#include "core/sheet/wall_elevation.h"

#include "core/geometry/polygon.h"
#include "core/sheet/clip_marks.h"
#include "core/sheet/fitted_symbols.h"
#include "core/sheet/flow.h"
#include "core/sheet/part_symbol.h"
#include "core/sheet/plan_views.h"
#include "core/sheet/room_circuits.h"
#include "core/sheet/room_figure.h"
#include "core/sheet/room_parts.h"
#include "core/sheet/room_tables.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"
#include "core/sheet/wall_pipes.h"
#include "core/units/print.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kEnlarged = 4; ///< the largest scale, 1 to so much, of what is shown by itself
const LineStyle kRoomWall{Ink::Black, 0.7, {}};
const LineStyle kLine{Ink::Black, 0.35, {}};
const LineStyle kArea{Ink::Black, 0.35, {2, 1}};

Ring boxOn(const EquipmentRoom& room, const WallView& wall, const RoomBox& box) {
  const double a = wall.right(room, box.corner);
  const double b = wall.right(room, box.high());
  const double top = inMetres(box.height);
  return {{std::min(a, b), 0}, {std::max(a, b), 0}, {std::max(a, b), top}, {std::min(a, b), top}};
}

void addElevationBox(const EquipmentRoom& room, const WallView& wall,
                     const std::optional<RoomBox>& box, const LineStyle& line,
                     const std::string& name, UnitSystem units, Drawing& d) {
  if (!box) return;
  const Ring ring = boxOn(room, wall, *box);
  const bool area = !line.dash.empty();
  MarkPen(d.marks, room.id, area ? Layer::Note : Layer::Room)
      .ring(ring, line, area ? std::optional<FillStyle>() : FillStyle{Ink::PaleGrey});
  if (!area) d.uncut.push_back({ring[0], ring[1], ring[2], ring[3], ring[0]});
  // Its top edge, where no pipe stands before it.
  std::vector<Point2> pipes;
  for (const Port& port : room.ports)
    pipes.push_back({wall.right(room, port.at), ring[2].y});
  d.callouts.push_back({{name, printLength(box->height, units) + " high"},
                        freePlace({ring[3], ring[2]}, pipes),
                        Ink::Black,
                        true,
                        true});
}

/// Dashed, where another pipe stands before it.
Callout hiddenBehind(Callout callout, const std::string& hidden) {
  if (!hidden.empty()) callout.lines.push_back("behind " + hidden);
  return callout;
}

/// What an elevation shows of pipe and conduit.
enum class Shown { All, Conduits, Pipes };

bool isShown(Shown shown, Service service) {
  return shown == Shown::All || isConduit(service) == (shown == Shown::Conduits);
}

/// What hides the foot of an upright pipe whose end is seen over it.
std::string risesBehind(const SheetJob& job, const std::vector<WallPipe>& pipes,
                        const WallPort& port) {
  constexpr double kFoot = 0.05; // m over the floor
  if (!port.upright) return {};
  return standsBefore(pipes, runAt(job, port.port->id), {port.centre.x, kFoot}, port.off);
}

/// `SU-1`, `Pump suction, 2"`, ... instead of `SU-1  Pump suction, 2"`, ...
void breakFirst(Callout& callout) {
  std::string& first = callout.lines.front();
  const std::size_t gap = first.find("  ");
  if (gap == std::string::npos) return;
  const std::string rest = first.substr(gap + 2);
  first.erase(gap);
  callout.lines.insert(callout.lines.begin() + 1, rest);
}

void tellPorts(const SheetJob& job, const std::vector<WallPipe>& pipes,
               const std::vector<WallPort>& ports, Shown shown, Drawing& d) {
  for (const WallPort& port : ports) {
    const std::string hidden =
        standsBefore(pipes, runAt(job, port.port->id), port.centre, port.off);
    if (!hidden.empty()) {
      const LineStyle line = hiddenLine(port.port->service);
      MarkPen pen(d.marks, port.port->id, Layer::Part);
      const Point2 half{port.radius, 0};
      if (port.upright) {
        pen.path({port.centre - half, port.centre + half}, line);
      } else {
        pen.circle(port.centre, port.radius, line);
      }
    }
    if (!isShown(shown, port.port->service)) {
      // Told in full in the other view; here the tag finds it there.
      const Ink color = ink(facts(port.port->service).color);
      if (shown == Shown::Conduits)
        d.callouts.push_back({{runAt(job, port.port->id)}, port.centre, color, false, true});
      continue;
    }
    Callout callout = portCallout(job, *port.port, port.centre);
    callout.leader = true;
    if (isSmallPaper(job.paper)) callout.lines.pop_back();
    if (shown == Shown::Pipes) breakFirst(callout); // there is little room between pipes
    if (const std::string before = risesBehind(job, pipes, port); hidden.empty() && !before.empty())
      callout.lines.push_back("rises behind " + before);
    d.callouts.push_back(hiddenBehind(std::move(callout), hidden));
  }
}

/// The pipe that a part stands in, where it is not seen end on.
const WallPipe* pipeOf(const std::vector<WallPipe>& pipes, const Id& run, Point2 at, double off) {
  const auto found = std::ranges::find_if(pipes, [&](const WallPipe& pipe) {
    return pipe.run == run && !pipe.endOn() && pipe.covers(at) &&
           std::abs(pipe.off - off) < pipe.radius;
  });
  return found == pipes.end() ? nullptr : &*found;
}

Angle directionAt(const WallPipe& pipe, Point2 at) {
  std::size_t best = 0;
  double least = 1e9;
  for (std::size_t i = 0; i + 1 < pipe.line.size(); ++i) {
    const double far = nearestOnSegment(at, pipe.line[i], pipe.line[i + 1]).distance;
    if (far >= least) continue;
    least = far;
    best = i;
  }
  const Point2 along = pipe.line[best + 1] - pipe.line[best];
  return radians(std::atan2(along.y, along.x));
}

/// One that another pipe hides as its outline only, dashed.
void drawWallPart(const RoomPart& p, Point2 at, Angle direction, bool hidden, Drawing& d) {
  std::vector<Mark> own;
  SymbolPen pen(MarkPen(own, p.part->id, Layer::Part), Frame{at, direction}, partSymbolSize(*p.run),
                {ink(facts(p.run->service).color), 0.35, {}});
  drawPart(pen, p.part->kind);
  for (Mark& mark : own) {
    if (!hidden) continue;
    mark.fill.reset();
    if (mark.line) mark.line->dash = {1, 0.7};
  }
  addSymbols(std::move(own), d.marks);
}

/// Valves in pipes along the wall's plane; those in pipes seen end on are in the table and the
/// plan.
void addParts(const SheetJob& job, const EquipmentRoom& room, const WallView& wall,
              const std::vector<WallPipe>& pipes, bool told, Drawing& d) {
  for (const RoomPart& p : partsIn(job, room)) {
    const double r = nominalInches(p.size).value_or(1) * kMetresPerInch / 2;
    const Point2 at{wall.right(room, p.local), p.upright ? p.height : p.height + r};
    const double off = wall.off(room, p.local);
    const WallPipe* pipe = pipeOf(pipes, p.run->id, at, off);
    if (pipe == nullptr) continue;
    const std::string hidden = standsBefore(pipes, pipe->tag, at, off);
    drawWallPart(p, at, directionAt(*pipe, at), !hidden.empty(), d);
    if (told) {
      d.callouts.push_back(
          hiddenBehind({{p.part->id}, at, ink(facts(p.run->service).color), false, true}, hidden));
    }
  }
}

/// At the height of a hand: the plan does not say how high they hang.
void addWallDisconnects(const SheetJob& job, const EquipmentRoom& room, const WallView& wall,
                        Drawing& d) {
  constexpr double kNear = 0.5;                           // m off the wall
  constexpr double kFoot = 1.2, kTop = 1.6, kHalf = 0.12; // m, common practice, no source
  for (const RoomDisconnect& at : disconnectsIn(job, room)) {
    if (wall.off(room, at.local) > kNear) continue;
    const double x = wall.right(room, at.local);
    MarkPen(d.marks, at.supply->id, Layer::Part)
        .ring({{x - kHalf, kFoot}, {x + kHalf, kFoot}, {x + kHalf, kTop}, {x - kHalf, kTop}},
              LineStyle{Ink::ServiceRed, 0.35, {2, 1}}, FillStyle{Ink::White});
    std::vector<std::string> lines = disconnectLines(*at.supply);
    lines.push_back("height by the electrician");
    d.callouts.push_back({std::move(lines), {x, kTop}, Ink::ServiceRed, false, true});
  }
}

/// As wide and high as is kept clear before panel and disconnects at this wall.
void addWallSpaces(const SheetJob& job, const EquipmentRoom& room, const WallView& wall,
                   Drawing& d) {
  if (!room.panel || job.study().wiring.spaces.empty()) return;
  constexpr double kNear = 0.5; // m off the wall
  for (const WorkingSpaceStudy& space : job.study().wiring.spaces) {
    if (space.room != room.id) continue;
    for (const Ring& zone : clearSpaces(job, room.id)) {
      std::vector<Point2> seen;
      double near = 1e9;
      for (Point2 p : zone) {
        const Point2 local = room.frame().toLocal(p);
        seen.push_back({wall.right(room, local), 0});
        near = std::min(near, wall.off(room, local));
      }
      if (near > kNear) continue;
      const PaperBox box = around(seen);
      const double top = inMetres(space.heightNeeded);
      MarkPen(d.marks, room.id, Layer::Note)
          .path({{box.low.x, 0}, {box.low.x, top}, {box.high.x, top}, {box.high.x, 0}},
                LineStyle{Ink::ServiceRed, 0.5, {4, 1.5}});
      d.callouts.push_back({{"WORKING SPACE, KEEP CLEAR"},
                            {lerp(box.low, box.high, 0.9).x, top},
                            Ink::ServiceRed,
                            true,
                            true});
    }
  }
}

/// What stands within the box; what goes on beyond it is cut.
void keepIn(const PaperBox& box, Drawing& d) {
  std::vector<Mark> kept;
  for (const Mark& mark : d.marks)
    keepOpenInside(mark, box, kept);
  d.marks = std::move(kept);
  std::erase_if(d.callouts, [&](const Callout& callout) { return !box.holds(callout.at); });
}

/// Ports of pipe and the parts in it, with air about them.
PaperBox aboutPipes(const SheetJob& job, const EquipmentRoom& room, const WallView& wall,
                    const std::vector<WallPort>& ports) {
  constexpr double kAir = 0.12, kBelowFloor = 0.12; // m
  std::vector<Point2> points;
  for (const WallPort& port : ports) {
    if (isConduit(port.port->service)) continue;
    points.push_back(port.centre);
    points.push_back({port.centre.x, 0});
  }
  for (const RoomPart& p : partsIn(job, room)) {
    if (p.upright) points.push_back({wall.right(room, p.local), p.height});
  }
  PaperBox box = around(points);
  box = box.grown(kAir);
  box.low.y = -kBelowFloor;
  return box;
}

/// Words on a pipe would be read as its own.
void keepWordsOff(const std::vector<WallPipe>& pipes, const PaperBox& shown, Drawing& d) {
  for (const WallPipe& pipe : pipes) {
    if (pipe.endOn() || isConduit(pipe.service)) continue;
    // Twice, so that leaders rather go round them, too.
    for (const Polyline& line : clipLine(pipe.line, shown))
      d.uncut.insert(d.uncut.end(), 2, line);
  }
}

/// What of the skid is seen beside the pipes; its height is told where it is whole.
void nameSkidEnd(const EquipmentRoom& room, const WallView& wall, const PaperBox& shown,
                 Drawing& d) {
  if (!room.skid) return;
  const Ring seen = clipRing(boxOn(room, wall, *room.skid), shown);
  if (seen.empty()) return;
  const PaperBox box = around(seen);
  d.callouts.push_back({{"Equipment skid"}, lerp(box.low, box.high, 0.5), Ink::Black, true, true});
}

void fitSymbols(const PaperBox& shown, Point2 most, UnitSystem units, Drawing& d) {
  constexpr double kCallouts = 40; // mm about the drawing
  d.marks = fittedSymbols(std::move(d.marks), fittedScale(shown, {{0, 0}, most}, kCallouts, units));
}

} // namespace

std::string areaLabel(const SheetJob& job, const EquipmentRoom& room) {
  const std::string outside = risersOutside(job, room);
  return outside.empty() ? "All pipes rise in here" : "Pipes rise in here, but " + outside;
}

Callout portCallout(const SheetJob& job, const Port& port, Point2 at) {
  const std::string run = runAt(job, port.id);
  const std::string height = (endsUpright(job, port.id) ? "end " : "inv. ") +
                             printShort(port.height, job.units()) + " over floor";
  if (isSmallPaper(job.paper)) return {{run, height}, at, ink(facts(port.service).color)};
  return {{run + "  " + called(port) + ", " + sizeText(port.size), height},
          at,
          ink(facts(port.service).color)};
}

Drawing wallElevation(const SheetJob& job, const EquipmentRoom& room, Point2 most) {
  const UnitSystem units = job.units();
  const WallView wall = wallOf(room);
  Drawing d;
  d.anchor = elevationAnchor(job.plan(), room.id);
  static constexpr const char* kSides[] = {"SOUTH", "EAST", "NORTH", "WEST"};
  d.title = std::string("WALL ELEVATION, LOCAL ") + kSides[static_cast<std::size_t>(wall.side)] +
            ", SEEN FROM INSIDE " + called(room);
  double top = 2.1; // m; drawn wall, where nothing is higher
  for (const auto& box : {room.skid, room.plumbingArea, room.panel}) {
    if (box) top = std::max(top, inMetres(box->height) + 0.15);
  }
  MarkPen shell(d.marks, room.id, Layer::Room);
  shell.path({{0, top}, {0, 0}, {wall.length, 0}, {wall.length, top}}, kRoomWall);
  addElevationBox(room, wall, room.skid, kLine, "Equipment skid", units, d);
  addElevationBox(room, wall, room.panel, kLine, "Panel", units, d);
  addElevationBox(room, wall, room.plumbingArea, kArea, areaLabel(job, room), units, d);
  // Large paper tells of the pipes in a view of their own.
  const bool small = isSmallPaper(job.paper);
  const std::vector<WallPipe> pipes = wallPipes(job, room, wall);
  const std::vector<WallPort> ports = wallPorts(job, room, wall);
  drawWallPipes(pipes, ports, d.marks);
  tellPorts(job, pipes, ports, small ? Shown::All : Shown::Conduits, d);
  addParts(job, room, wall, pipes, small, d);
  if (!small) {
    addWallDisconnects(job, room, wall, d);
    addWallSpaces(job, room, wall, d);
  }
  fitSymbols({{0, 0}, {wall.length, top}}, most, units, d);
  d.uncut.push_back({{0, top}, {0, 0}, {wall.length, 0}, {wall.length, top}});
  d.levels = {{0, wall.length, printElevation(room.floor, units), "floor"}};
  d.measures = {{{0, 0}, {wall.length, 0}, -24, printLength(metres(wall.length), units)}};
  if (room.plumbingArea) {
    const Ring area = boxOn(room, wall, *room.plumbingArea);
    d.measures.push_back(
        {area[0], area[1], -16, printLength(metres(area[1].x - area[0].x), units)});
    d.measures.push_back(
        {area[1], {wall.length, 0}, -16, printLength(metres(wall.length - area[1].x), units)});
  }
  return d;
}

Drawing riserElevation(const SheetJob& job, const EquipmentRoom& room, Point2 most) {
  const WallView wall = wallOf(room);
  Drawing d;
  d.anchor = riserAnchor(job.plan(), room.id);
  d.title = "RISING PIPES, ENLARGED FROM VIEW " + viewOf(elevationAnchor(job.plan(), room.id));
  d.finest = kEnlarged;
  const std::vector<WallPipe> pipes = wallPipes(job, room, wall);
  const std::vector<WallPort> ports = wallPorts(job, room, wall);
  const PaperBox shown = aboutPipes(job, room, wall, ports);
  MarkPen(d.marks, room.id, Layer::Room).path({{0, 0}, {wall.length, 0}}, kRoomWall);
  addElevationBox(room, wall, room.skid, kLine, "Equipment skid", job.units(), d);
  d.callouts.clear();
  nameSkidEnd(room, wall, shown, d);
  drawWallPipes(pipes, ports, d.marks);
  tellPorts(job, pipes, ports, Shown::Pipes, d);
  addParts(job, room, wall, pipes, true, d);
  keepIn(shown, d);
  fitSymbols(shown, most, job.units(), d);
  d.uncut = {{{shown.low.x, 0}, {shown.high.x, 0}}}; // the floor: what stands over it is told there
  keepWordsOff(pipes, shown, d);
  d.levels = {{0, shown.high.x, printElevation(room.floor, job.units()), "floor"}};
  return d;
}

} // namespace sump
