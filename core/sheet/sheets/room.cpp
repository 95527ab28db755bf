// P-4: each equipment room in plan and its wall with the rising pipes, with the ports' places.

#include "core/geometry/polygon.h"
#include "core/sheet/clip_marks.h"
#include "core/sheet/figure.h"
#include "core/sheet/fitted_symbols.h"
#include "core/sheet/flow.h"
#include "core/sheet/plan_views.h"
#include "core/sheet/room_tables.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"
#include "core/units/print.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace sump {

namespace {

const LineStyle kWall{Ink::Black, 0.7, {}};
const LineStyle kLine{Ink::Black, 0.35, {}};
const LineStyle kArea{Ink::Black, 0.35, {2, 1}};

/// What stands at a port is told by the port's own circle and callout.
bool isAtPort(const Mark& mark, const EquipmentRoom& room) {
  constexpr double kSame = 0.01; // m
  return std::ranges::any_of(room.ports, [&](const Port& port) {
    return mark.symbol.number != 0 && mark.object != port.id &&
           distance(mark.symbol.at, port.at) < kSame;
  });
}

/// The marks in and near the room, in its own frame and for a figure no larger than `most` mm; its
/// door's swing whole.
std::vector<Mark> roomMarks(const SheetJob& job, const EquipmentRoom& room, Point2 most) {
  constexpr double kAbout = 0.6;   // m of what is outside
  constexpr double kCallouts = 40; // mm about the drawing
  const PaperBox box{{-kAbout, -kAbout},
                     {inMetres(room.length) + kAbout, inMetres(room.width) + kAbout}};
  const PaperBox inside{{0, 0}, {inMetres(room.length), inMetres(room.width)}};
  std::vector<Mark> local;
  for (Mark mark : job.marks) {
    if (mark.layer < Layer::Room || mark.layer == Layer::Note || mark.layer == Layer::Vault)
      continue;
    for (Point2& p : mark.points)
      p = room.frame().toLocal(p);
    mark.symbol.at = room.frame().toLocal(mark.symbol.at);
    // The arrows of what comes and goes outside are told on the plan of the site.
    const bool arrow = mark.layer == Layer::Symbol && mark.symbol.number != 0;
    if (arrow && !inside.holds(mark.symbol.at)) continue;
    if (!isAtPort(mark, room)) local.push_back(std::move(mark));
  }
  const double scale = fittedScale(box, {{0, 0}, most}, kCallouts, job.units());
  std::vector<Mark> kept;
  for (Mark& mark : wholeSymbols(fittedSymbols(std::move(local), scale), box)) {
    if (mark.object == room.id) {
      kept.push_back(std::move(mark));
    } else {
      keepInside(std::move(mark), box, kept);
    }
  }
  return kept;
}

std::string areaLabel(const SheetJob& job, const EquipmentRoom& room) {
  const std::string outside = risersOutside(job, room);
  return outside.empty() ? "All pipes rise in here" : "Pipes rise in here, but " + outside;
}

/// A name and the height of its middle text on the plan: what a port is and where it stands.
Callout portCallout(const SheetJob& job, const Port& port, Point2 at) {
  return {{runAt(job, port.id) + "  " + called(port) + ", " + sizeText(port.size),
           "inv. " + printShort(port.height, job.units()) + " over floor"},
          at,
          ink(facts(port.service).color)};
}

/// The place nearest to the box's middle that no port is near.
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

void addBox(const EquipmentRoom& room, const std::optional<RoomBox>& box, const char* name,
            UnitSystem units, Drawing& d) {
  if (!box) return;
  const Point2 size{inMetres(box->length), inMetres(box->depth)};
  std::vector<Point2> ports;
  for (const Port& port : room.ports)
    ports.push_back(port.at);
  d.callouts.push_back(
      {{name, printLength(box->length, units) + " x " + printLength(box->depth, units)},
       freePlace({box->corner, box->corner + size}, ports),
       Ink::Black,
       true});
}

/// Along the wall with the rising pipes where that is the plan's low side: from the corner to each
/// end of what stands there.
void measureAlong(const EquipmentRoom& room, UnitSystem units, Drawing& d) {
  std::vector<double> stops{0, inMetres(room.length)};
  for (const auto& box : {room.plumbingArea, room.skid, room.panel}) {
    if (!box) continue;
    stops.push_back(box->corner.x);
    stops.push_back(box->corner.x + inMetres(box->length));
  }
  std::sort(stops.begin(), stops.end());
  for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
    constexpr double kLeast = 0.02; // m
    if (stops[i + 1] - stops[i] < kLeast) continue;
    d.measures.push_back({{stops[i], 0},
                          {stops[i + 1], 0},
                          -12,
                          printLength(metres(stops[i + 1] - stops[i]), units)});
  }
}

Drawing roomPlan(const SheetJob& job, const EquipmentRoom& room, Point2 most) {
  const UnitSystem units = job.units();
  Drawing d;
  d.anchor = roomAnchor(job.plan(), room.id);
  d.title = "PLAN OF " + called(room);
  d.north = job.plan().site.north - room.angle;
  d.marks = roomMarks(job, room, most);
  const double x = inMetres(room.length), y = inMetres(room.width);
  d.measures = {{{0, 0}, {x, 0}, -22, printLength(room.length, units)},
                {{0, y}, {0, 0}, -18, printLength(room.width, units)}};
  measureAlong(room, units, d);
  if (!room.ports.empty()) {
    static constexpr Point2 kSights[] = {{0, -1}, {1, 0}, {0, 1}, {-1, 0}};
    d.elevations = {{{{0, 0}, {x, y}},
                     kSights[static_cast<std::size_t>(wallOf(room).side)],
                     elevationAnchor(job.plan(), room.id)}};
  }
  addBox(room, room.skid, "Equipment skid", units, d);
  addBox(room, room.panel, "Panel", units, d);
  if (room.plumbingArea) {
    const RoomBox& area = *room.plumbingArea;
    d.callouts.push_back({{areaLabel(job, room), printLength(area.length, units) + " x " +
                                                     printLength(area.depth, units)},
                          area.corner + Point2{0, inMetres(area.depth)},
                          Ink::Black,
                          true});
  }
  for (const Port& port : room.ports) {
    Callout callout = portCallout(job, port, port.at);
    callout.lines.pop_back();
    d.callouts.push_back(std::move(callout));
  }
  return d;
}

Ring boxOn(const EquipmentRoom& room, const WallView& wall, const RoomBox& box) {
  const double a = wall.right(room, box.corner);
  const double b = wall.right(room, box.corner + Point2{inMetres(box.length), inMetres(box.depth)});
  const double top = inMetres(box.height);
  return {{std::min(a, b), 0}, {std::max(a, b), 0}, {std::max(a, b), top}, {std::min(a, b), top}};
}

void addElevationBox(const EquipmentRoom& room, const WallView& wall,
                     const std::optional<RoomBox>& box, const LineStyle& line,
                     const std::string& name, UnitSystem units, Drawing& d) {
  if (!box) return;
  const Ring ring = boxOn(room, wall, *box);
  const bool area = !line.dash.empty();
  MarkPen(d.marks, room.id, Layer::Room)
      .ring(ring, line, area ? std::optional<FillStyle>() : FillStyle{Ink::PaleGrey});
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

/// The upright pipe at a port, heights over the floor: as far as its run goes up or down within a
/// hand's breadth of the port, but no deeper than is worth drawing.
std::pair<double, double> riser(const SheetJob& job, const EquipmentRoom& room, const Port& port) {
  constexpr double kNear = 0.1, kBelow = 0.12; // m
  const double bore = nominalInches(port.size).value_or(1) * kMetresPerInch;
  double low = inMetres(port.height) + bore / 2, high = low;
  for (const RunStudy& run : job.study().runs) {
    const Run& given = *job.plan().runs.find(run.id);
    if (given.from.target != port.id && given.to.target != port.id) continue;
    for (const RunPoint& p : run.points) {
      if (distance(room.frame().toLocal(flat(p.at)), port.at) > kNear) continue;
      const double z = p.at.z - inMetres(room.floor) + bore / 2;
      low = std::min(low, std::max(z, -kBelow));
      high = std::max(high, z);
    }
  }
  return {low, high};
}

Drawing wallElevation(const SheetJob& job, const EquipmentRoom& room) {
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
  shell.path({{0, top}, {0, 0}, {wall.length, 0}, {wall.length, top}}, kWall);
  addElevationBox(room, wall, room.skid, kLine, "Equipment skid", units, d);
  addElevationBox(room, wall, room.panel, kLine, "Panel", units, d);
  addElevationBox(room, wall, room.plumbingArea, kArea, areaLabel(job, room), units, d);
  for (const Port& port : room.ports) {
    const double r = nominalInches(port.size).value_or(1) * kMetresPerInch / 2;
    const Point2 c{wall.right(room, port.at), inMetres(port.height) + r};
    MarkPen pen(d.marks, port.id, Layer::Part);
    const LineStyle line{ink(facts(port.service).color), 0.35, {}};
    if (const auto [low, high] = riser(job, room, port); high - low > r) {
      pen.ring({{c.x - r, low}, {c.x + r, low}, {c.x + r, high}, {c.x - r, high}}, line,
               FillStyle{Ink::White});
    }
    pen.circle(c, r, line, FillStyle{Ink::White});
    d.callouts.push_back(portCallout(job, port, c));
    d.callouts.back().leader = true;
  }
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

} // namespace

void roomSheet(const SheetJob& job, PageFlow& flow) {
  const Point2 most = flow.figureSize({360, 280}, false);
  for (const EquipmentRoom& room : job.plan().rooms) {
    flow.add(figure(roomPlan(job, room, most), job.units(), most));
    if (!room.ports.empty()) {
      flow.add(figure(wallElevation(job, room), job.units(), most));
      flow.add(portTable(job, room, flow.columnWidth()));
    }
  }
  if (!job.plan().rooms.empty()) {
    flow.add(paragraphs("NOTES", roomNotes(job), flow.columnWidth(), true));
  }
}

} // namespace sump
