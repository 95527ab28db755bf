#include "core/sheet/wall_elevation.h"

#include "core/sheet/fitted_symbols.h"
#include "core/sheet/flow.h"
#include "core/sheet/part_symbol.h"
#include "core/sheet/plan_views.h"
#include "core/sheet/room_figure.h"
#include "core/sheet/room_parts.h"
#include "core/sheet/room_tables.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"
#include "core/units/print.h"

#include <algorithm>

namespace sump {

namespace {

const LineStyle kWall{Ink::Black, 0.7, {}};
const LineStyle kLine{Ink::Black, 0.35, {}};
const LineStyle kArea{Ink::Black, 0.35, {2, 1}};

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

/// The pipe at a port, on the wall's plane: heights are over the floor.
struct Upright {
  const Port* port;
  std::string run;
  Point2 centre; ///< of the port
  double radius, low, high;
  double off; ///< the wall; what stands farther off stands before the others
  bool covers(Point2 p) const {
    return std::abs(p.x - centre.x) < radius && p.y > low - radius && p.y < high + radius;
  }
};

/// As far as its run goes up or down within a hand's breadth of the port, but no deeper than is
/// worth drawing.
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

/// Those at the wall first, so that what stands before them is drawn over them.
std::vector<Upright> uprights(const SheetJob& job, const EquipmentRoom& room,
                              const WallView& wall) {
  std::vector<Upright> all;
  for (const Port& port : room.ports) {
    const double r = nominalInches(port.size).value_or(1) * kMetresPerInch / 2;
    const auto [low, high] = riser(job, room, port);
    all.push_back({&port,
                   runAt(job, port.id),
                   {wall.right(room, port.at), inMetres(port.height) + r},
                   r,
                   low,
                   high,
                   wall.off(room, port.at)});
  }
  std::ranges::stable_sort(all, {}, &Upright::off);
  return all;
}

/// What stands before this place, off the wall by so much.
std::string before(const std::vector<Upright>& all, Point2 at, double off) {
  constexpr double kHair = 1e-6;
  std::string runs;
  for (const Upright& other : all) {
    if (other.off > off + kHair && other.covers(at)) runs += (runs.empty() ? "" : ", ") + other.run;
  }
  return runs;
}

/// With a gap in what it crosses.
void drawUpright(const Upright& upright, std::vector<Mark>& marks) {
  constexpr double kGap = 0.012; // m
  const double r = upright.radius;
  const Point2 c = upright.centre;
  const auto box = [&](double more) {
    return Ring{{c.x - r - more, upright.low},
                {c.x + r + more, upright.low},
                {c.x + r + more, upright.high},
                {c.x - r - more, upright.high}};
  };
  MarkPen pen(marks, upright.port->id, Layer::Part);
  const LineStyle line{ink(facts(upright.port->service).color), 0.35, {}};
  pen.circle(c, r + kGap, std::nullopt, FillStyle{Ink::White});
  if (upright.high - upright.low > r) {
    pen.ring(box(kGap), std::nullopt, FillStyle{Ink::White});
    pen.ring(box(0), line, FillStyle{Ink::White});
  }
  pen.circle(c, r, line, FillStyle{Ink::White});
}

void addUprights(const SheetJob& job, const std::vector<Upright>& all, Drawing& d) {
  for (const Upright& upright : all)
    drawUpright(upright, d.marks);
  for (const Upright& upright : all) {
    d.callouts.push_back(portCallout(job, *upright.port, upright.centre));
    d.callouts.back().leader = true;
    if (isSmallPaper(job.paper)) d.callouts.back().lines.pop_back();
    const std::string hidden = before(all, upright.centre, upright.off);
    if (hidden.empty()) continue;
    d.callouts.back().lines.push_back("behind " + hidden);
    const LineStyle dashed{ink(facts(upright.port->service).color), 0.35, {1, 0.7}};
    MarkPen(d.marks, upright.port->id, Layer::Part).circle(upright.centre, upright.radius, dashed);
  }
}

/// Valves in the pipes that stand; what other pipes hide is only in the table.
void addParts(const SheetJob& job, const EquipmentRoom& room, const WallView& wall,
              const std::vector<Upright>& all, Drawing& d) {
  for (const RoomPart& p : partsIn(job, room)) {
    const double r = nominalInches(p.size).value_or(1) * kMetresPerInch / 2;
    const Point2 at{wall.right(room, p.local), p.height + r};
    const double off = wall.off(room, p.local);
    const bool drawn = std::ranges::any_of(
        all, [&](const Upright& u) { return u.covers(at) && std::abs(u.off - off) < u.radius; });
    if (!p.upright || !drawn || !before(all, at, off).empty()) continue;
    SymbolPen pen(MarkPen(d.marks, p.part->id, Layer::Part), Frame{at, degrees(90)},
                  partSymbolSize(*p.run), {ink(facts(p.run->service).color), 0.35, {}});
    drawPart(pen, p.part->kind);
    d.callouts.push_back({{p.part->id}, at, ink(facts(p.run->service).color), false, true});
  }
}

} // namespace

std::string areaLabel(const SheetJob& job, const EquipmentRoom& room) {
  const std::string outside = risersOutside(job, room);
  return outside.empty() ? "All pipes rise in here" : "Pipes rise in here, but " + outside;
}

Callout portCallout(const SheetJob& job, const Port& port, Point2 at) {
  const std::string run = runAt(job, port.id);
  const std::string height = "inv. " + printShort(port.height, job.units()) + " over floor";
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
  shell.path({{0, top}, {0, 0}, {wall.length, 0}, {wall.length, top}}, kWall);
  addElevationBox(room, wall, room.skid, kLine, "Equipment skid", units, d);
  addElevationBox(room, wall, room.panel, kLine, "Panel", units, d);
  addElevationBox(room, wall, room.plumbingArea, kArea, areaLabel(job, room), units, d);
  const std::vector<Upright> pipes = uprights(job, room, wall);
  addUprights(job, pipes, d);
  addParts(job, room, wall, pipes, d);
  constexpr double kCallouts = 40; // mm about the drawing
  d.marks = fittedSymbols(std::move(d.marks), fittedScale({{0, 0}, {wall.length, top}},
                                                          {{0, 0}, most}, kCallouts, units));
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

} // namespace sump
