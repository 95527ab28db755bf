#include "core/sheet/room_figure.h"

#include "core/geometry/outline_union.h"
#include "core/geometry/polygon.h"
#include "core/sheet/clip_marks.h"
#include "core/sheet/fitted_symbols.h"
#include "core/sheet/flow.h"
#include "core/sheet/plan_views.h"
#include "core/sheet/room_circuits.h"
#include "core/sheet/set_tables.h"
#include "core/sheet/tags.h"
#include "core/sheet/wall_pipes.h"
#include "core/study/disconnect_space.h"
#include "core/study/part_place.h"
#include "core/units/print.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace sump {

namespace {

/// What stands at a port is told by the port's own square and callout.
bool isAtPort(const Mark& mark, const EquipmentRoom& room) {
  constexpr double kSame = 0.01; // m
  return std::ranges::any_of(room.ports, [&](const Port& port) {
    return mark.symbol.number != 0 && mark.object != port.id &&
           distance(mark.symbol.at, port.at) < kSame;
  });
}

/// The stroke across the skid, which names itself here.
bool isSkidStroke(const Mark& mark, const EquipmentRoom& room) {
  if (!room.skid || mark.object != room.id || mark.closed || mark.points.size() != 2) return false;
  constexpr double kSame = 1e-6; // m
  return distance(mark.points[0], room.skid->corner) < kSame &&
         distance(mark.points[1], room.skid->high()) < kSame;
}

/// Stops along a wall from its start, each once.
void addStops(std::vector<double> stops, Point2 start, Point2 along, double offset,
              UnitSystem units, Drawing& d) {
  constexpr double kLeast = 0.02; // m
  std::sort(stops.begin(), stops.end());
  for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
    if (stops[i + 1] - stops[i] < kLeast) continue;
    d.measures.push_back({start + along * stops[i], start + along * stops[i + 1], offset,
                          printLength(metres(stops[i + 1] - stops[i]), units)});
  }
}

struct Stops {
  std::vector<double> south, east, north, west; ///< from the local low corner
};

void addDoor(const EquipmentRoom& room, Stops& stops) {
  if (!room.door) return;
  const double x = inMetres(room.length), y = inMetres(room.width);
  const double from = inMetres(room.door->offset), to = from + inMetres(room.door->width);
  const auto put = [](std::vector<double>& side, double a, double b, double end) {
    for (double stop : {0.0, a, b, end})
      side.push_back(stop);
  };
  switch (room.door->side) {
  case Side::South:
    return put(stops.south, from, to, x);
  case Side::East:
    return put(stops.east, from, to, y);
  case Side::North:
    return put(stops.north, x - to, x - from, x);
  case Side::West:
    return put(stops.west, y - to, y - from, y);
  }
}

/// From the corners, of those that the plan at the panel does not show.
void addDisconnectStops(const SheetJob& job, const EquipmentRoom& room, Stops& stops) {
  const double x = inMetres(room.length), y = inMetres(room.width);
  for (const RoomDisconnect& at : disconnectsIn(job, room)) {
    if (!room.panel || isBesidePanel(room, at.local)) continue;
    const Point2 p = at.local;
    std::vector<double>* const sides[] = {&stops.south, &stops.east, &stops.north, &stops.west};
    const auto wall = static_cast<std::size_t>(nearestWall(room, p, p)); // in the order of `sides`
    const bool along = wall % 2 == 0;                                    // of x
    for (double stop : {0.0, along ? p.x : p.y, along ? x : y})
      sides[wall]->push_back(stop);
  }
}

/// Square to the walls of the room that it stands in.
void markDisconnect(const Plan& plan, const Supply& supply, std::vector<Mark>& marks) {
  if (!supply.disconnect) return;
  constexpr double kHalf = 0.12;
  Frame frame{*supply.disconnect, {}};
  for (const EquipmentRoom& room : plan.rooms) {
    if (contains(outline(room), *supply.disconnect)) frame.angle = room.angle;
  }
  MarkPen pen(marks, supply.id, Layer::Symbol);
  const LineStyle line{Ink::ServiceRed, 0.35, {}};
  pen.beginSymbol(frame.origin, kHalf);
  const Ring square = frame.rectangle({-kHalf, -kHalf}, {kHalf, kHalf});
  pen.ring(square, line, FillStyle{Ink::White});
  pen.path({square[0], square[2]}, line);
}

/// The run's line in stretches over the floor and under it; an upright leg has none.
void markByFloor(const RunStudy& run, const Mark& like, double floor, std::vector<Mark>& marks) {
  const LineStyle seen{ink(facts(run.service).color), isConduit(run.service) ? 0.35 : 0.5, {}};
  std::vector<double> overFloor;
  for (const RunPoint& point : run.points)
    overFloor.push_back(point.at.z - floor);
  for (FloorStretch& stretch : stretchesByFloor(planLine(run), overFloor)) {
    marks.push_back(like);
    marks.back().points = std::move(stretch.line);
    marks.back().line = stretch.under ? hiddenLine(run.service) : seen;
  }
}

} // namespace

std::vector<Mark> tellHidden(const SheetJob& job, const EquipmentRoom& room,
                             const std::vector<Mark>& marks) {
  std::vector<Mark> told;
  for (const Mark& mark : marks) {
    const RunStudy* run = mark.layer == Layer::Run ? job.study().run(mark.object) : nullptr;
    if (run == nullptr || !run->resolved) {
      told.push_back(mark);
    } else {
      markByFloor(*run, mark, inMetres(room.floor), told);
    }
  }
  return told;
}

std::vector<Mark> roomMarks(const std::vector<Mark>& marks, const EquipmentRoom& room,
                            const PaperBox& box, Point2 most, UnitSystem units) {
  constexpr double kCallouts = 40; // mm about the drawing
  const PaperBox inside = insideOf(room);
  const bool whole = box.holds(inside);
  std::vector<Mark> local;
  for (Mark mark : marks) {
    if (mark.layer < Layer::Room || mark.layer == Layer::Vault) continue;
    for (Point2& p : mark.points)
      p = room.frame().toLocal(p);
    mark.symbol.at = room.frame().toLocal(mark.symbol.at);
    // The arrows of what comes and goes outside are told on the plan of the site.
    const bool arrow = mark.layer == Layer::Symbol && mark.symbol.number != 0;
    if (arrow && !inside.holds(mark.symbol.at)) continue;
    if (!isAtPort(mark, room) && !isSkidStroke(mark, room)) local.push_back(std::move(mark));
  }
  const double scale = fittedScale(box, {{0, 0}, most}, kCallouts, units);
  std::vector<Mark> kept;
  for (Mark& mark : wholeSymbols(fittedSymbols(std::move(local), scale), box)) {
    if (mark.object == room.id && whole) {
      kept.push_back(std::move(mark));
    } else {
      keepOpenInside(mark, box, kept);
    }
  }
  return kept;
}

PaperBox insideOf(const EquipmentRoom& room) {
  return {{0, 0}, {inMetres(room.length), inMetres(room.width)}};
}

Drawing roomDrawing(const SheetJob& job, const EquipmentRoom& room, std::string anchor,
                    std::string title, std::vector<Mark> marks) {
  Drawing d;
  d.anchor = std::move(anchor);
  d.title = std::move(title);
  d.north = job.plan().site.north - room.angle;
  d.marks = std::move(marks);
  measureRoom(job, room, d);
  d.uncut = roomLines(room);
  return d;
}

void measureRoom(const SheetJob& job, const EquipmentRoom& room, Drawing& d) {
  const UnitSystem units = job.units();
  const double x = inMetres(room.length), y = inMetres(room.width);
  // mm off the walls
  const double near = isSmallPaper(job.paper) ? 7 : 12, far = isSmallPaper(job.paper) ? 13 : 22;
  d.measures.push_back({{0, 0}, {x, 0}, -far, printLength(room.length, units)});
  d.measures.push_back({{0, y}, {0, 0}, -far, printLength(room.width, units)});
  Stops stops;
  for (const auto& box : {room.plumbingArea, room.skid, room.panel}) {
    if (!box) continue;
    const Point2 end = box->high();
    for (double stop : {0.0, box->corner.x, end.x, x})
      stops.south.push_back(stop);
    for (double stop : {0.0, box->corner.y, end.y, y})
      stops.west.push_back(stop);
  }
  addDoor(room, stops);
  addDisconnectStops(job, room, stops);
  addStops(stops.south, {0, 0}, {1, 0}, -near, units, d);
  addStops(stops.east, {x, 0}, {0, 1}, -near, units, d);
  addStops(stops.north, {0, y}, {1, 0}, near, units, d);
  addStops(stops.west, {0, 0}, {0, 1}, near, units, d);
}

std::vector<Polyline> roomLines(const EquipmentRoom& room) {
  std::vector<Polyline> lines;
  const auto add = [&](Point2 low, Point2 high) {
    lines.push_back({low, {high.x, low.y}, high, {low.x, high.y}, low});
  };
  add({0, 0}, {inMetres(room.length), inMetres(room.width)});
  for (const auto& box : {room.skid, room.panel, room.plumbingArea}) {
    if (box) add(box->corner, box->high());
  }
  return lines;
}

Point2 freePlace(const PaperBox& box, const std::vector<Point2>& ports) {
  constexpr int kSteps = 8;
  constexpr double kClear = 0.12; // m
  Point2 best = box.centre();
  double least = std::numeric_limits<double>::max();
  for (int i = 1; i < kSteps; ++i) {
    for (int k = 1; k < kSteps; ++k) {
      const Point2 at = box.low + Point2{box.width() * i / kSteps, box.height() * k / kSteps};
      double cost = distance(at, box.centre());
      for (Point2 port : ports)
        cost += 10 * std::max(0.0, kClear - distance(at, port));
      if (cost >= least - 1e-9) continue;
      least = cost;
      best = at;
    }
  }
  return best;
}

Callout boxCallout(const EquipmentRoom& room, const RoomBox& box, const std::string& name,
                   UnitSystem units) {
  std::vector<Point2> ports;
  for (const Port& port : room.ports)
    ports.push_back(port.at);
  return {{name, printLength(box.length, units) + " x " + printLength(box.depth, units) + ", " +
                     printLength(box.height, units) + " high"},
          freePlace({box.corner, box.high()}, ports),
          Ink::Black,
          true};
}

std::vector<Ring> clearSpaces(const SheetJob& job, const Id& room) {
  std::vector<Ring> zones;
  for (const WorkingSpaceStudy& space : job.study().wiring.spaces) {
    if (space.room == room && !space.zone.empty()) zones.push_back(space.zone);
  }
  for (DisconnectSpace& space : disconnectSpaces(job.plan(), job.review.limits, job.study().runs)) {
    if (space.room == room) zones.push_back(std::move(space.zone));
  }
  return zones.size() == 1 ? zones : unionOutlines(zones);
}

void markPowerSpaces(const SheetJob& job, bool hatched, std::vector<Mark>& marks) {
  for (const EquipmentRoom& room : job.plan().rooms) {
    for (const Ring& zone : clearSpaces(job, room.id)) {
      MarkPen(marks, room.id, Layer::Note)
          .ring(zone, LineStyle{Ink::ServiceRed, 0.5, {4, 1.5}},
                hatched ? std::optional(FillStyle{Ink::ServiceRed, Hatch::Diagonal})
                        : std::nullopt);
    }
  }
  for (const Supply& supply : job.plan().basis.wiring.supplies)
    markDisconnect(job.plan(), supply, marks);
}

std::vector<std::string> spaceLines(const SheetJob& job, const Id& room) {
  const auto print = [&](Length v) { return printLength(v, job.units()); };
  const auto sizes = [&](const auto& space) {
    return "depth " + decidedText(space.depthNeeded, print) + ", width " +
           print(space.widthNeeded) + ", height " + print(space.heightNeeded);
  };
  std::vector<std::string> lines{"WORKING SPACE, KEEP CLEAR"};
  for (const WorkingSpaceStudy& space : job.study().wiring.spaces) {
    if (space.room == room) lines.push_back("panel: " + sizes(space));
  }
  for (const DisconnectSpace& space :
       disconnectSpaces(job.plan(), job.review.limits, job.study().runs)) {
    if (space.room != room) continue;
    for (const Supply& supply : job.plan().basis.wiring.supplies) {
      if (supply.id != space.supply) continue;
      lines.push_back("disconnect, " + supplyName(supply) + ": " + sizes(space));
    }
  }
  return lines;
}

std::vector<std::string> disconnectLines(const Supply& supply) {
  return {"Disconnect,", supplyName(supply)};
}

} // namespace sump
