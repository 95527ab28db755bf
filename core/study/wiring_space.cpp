#include "core/study/wiring_space.h"

#include "core/geometry/polygon.h"
#include "core/study/object_names.h"

#include <algorithm>
#include <array>

namespace sump {

namespace {

/// The panel as seen from its front: `across` along the front, `out` away from it, local to the
/// room. It stands with its back to the nearest wall.
struct Front {
  Point2 corner, across, out; ///< corner: at the start of the front
  double width = 0;
  double roomBefore = 0, roomAfter = 0; ///< along the front, to the walls
  double roomOut = 0;                   ///< from the front to the wall opposite
};

Front frontOf(const EquipmentRoom& room, const RoomBox& panel) {
  const double l = inMetres(room.length), w = inMetres(room.width);
  const double x = panel.corner.x, y = panel.corner.y;
  const double dx = inMetres(panel.length), dy = inMetres(panel.depth);
  const std::array<Front, 4> fronts = {
      {{{x, y + dy}, {1, 0}, {0, 1}, dx, x, l - x - dx, w - y - dy},
       {{x + dx, y}, {-1, 0}, {0, -1}, dx, l - x - dx, x, y},
       {{x + dx, y + dy}, {0, -1}, {1, 0}, dy, w - y - dy, y, l - x - dx},
       {{x, y}, {0, 1}, {-1, 0}, dy, y, w - y - dy, x}}};
  const std::array<double, 4> back = {y, w - y - dy, x, l - x - dx}; // gap behind
  const auto nearest = std::ranges::min_element(back);
  return fronts[static_cast<std::size_t>(nearest - back.begin())];
}

struct Obstacle {
  WorkingSpaceObstacle kind;
  double low, high; ///< along the front, from its start
  double near, far; ///< out from the front
};

Obstacle seenFrom(const Front& front, WorkingSpaceObstacle kind, Point2 a, Point2 b) {
  const double s = dot(a - front.corner, front.across), t = dot(b - front.corner, front.across);
  const double u = dot(a - front.corner, front.out), v = dot(b - front.corner, front.out);
  return {kind, std::min(s, t), std::max(s, t), std::min(u, v), std::max(u, v)};
}

/// The square that the door may sweep, whichever way it is hung: hinges are not in the plan.
Obstacle doorSwing(const EquipmentRoom& room, const Front& front) {
  const Door& door = *room.door;
  const double l = inMetres(room.length), w = inMetres(room.width);
  const double from = inMetres(door.offset), to = from + inMetres(door.width);
  const double in = inMetres(door.width);
  Point2 a, b;
  switch (door.side) {
  case Side::South:
    a = {from, 0}, b = {to, in};
    break;
  case Side::East:
    a = {l, from}, b = {l - in, to};
    break;
  case Side::North:
    a = {l - from, w}, b = {l - to, w - in};
    break;
  case Side::West:
    a = {0, w - from}, b = {in, w - to};
    break;
  }
  return seenFrom(front, WorkingSpaceObstacle::DoorSwing, a, b);
}

std::vector<Obstacle> obstaclesOf(const EquipmentRoom& room, const Front& front) {
  std::vector<Obstacle> list;
  const auto add = [&](const std::optional<RoomBox>& box, WorkingSpaceObstacle kind) {
    if (!box) return;
    const Point2 far = box->corner + Point2{inMetres(box->length), inMetres(box->depth)};
    list.push_back(seenFrom(front, kind, box->corner, far));
  };
  add(room.skid, WorkingSpaceObstacle::Skid);
  add(room.plumbingArea, WorkingSpaceObstacle::PlumbingArea);
  if (room.door) list.push_back(doorSwing(room, front));
  return list;
}

constexpr double kRoomHair = 1e-6; ///< m

/// Clear depth over a width that starts at `start` along the front. What a door sweeps is told but
/// does not count as standing there.
double clearDepth(const Front& front, const std::vector<Obstacle>& obstacles, double start,
                  double width) {
  if (start < -front.roomBefore - kRoomHair) return 0;
  if (start + width > front.width + front.roomAfter + kRoomHair) return 0;
  double depth = front.roomOut;
  for (const Obstacle& o : obstacles) {
    if (o.kind == WorkingSpaceObstacle::DoorSwing || o.far <= kRoomHair) continue;
    if (o.low < start + width - kRoomHair && o.high > start + kRoomHair) {
      depth = std::min(depth, std::max(0.0, o.near));
    }
  }
  return depth;
}

/// The width need not be centred on the panel (NEC 110.26(A)(2)): the start that leaves most depth.
double bestStart(const Front& front, const std::vector<Obstacle>& obstacles, double width) {
  const double least = std::min(0.0, front.width - width);
  std::vector<double> starts = {least, 0, least / 2, -front.roomBefore,
                                front.width + front.roomAfter - width};
  for (const Obstacle& o : obstacles) {
    starts.push_back(o.high);
    starts.push_back(o.low - width);
  }
  double best = least / 2;
  double depth = -1;
  for (double start : starts) {
    if (start < least - kRoomHair || start > kRoomHair) continue;
    const double here = clearDepth(front, obstacles, start, width);
    if (here <= depth + kRoomHair) continue;
    depth = here;
    best = start;
  }
  return best;
}

/// Clear width round the panel's front over a depth.
double clearWidth(const Front& front, const std::vector<Obstacle>& obstacles, double depth) {
  double low = -front.roomBefore, high = front.width + front.roomAfter;
  const double middle = front.width / 2;
  for (const Obstacle& o : obstacles) {
    if (o.kind == WorkingSpaceObstacle::DoorSwing) continue;
    if (o.far <= kRoomHair || o.near >= depth - kRoomHair) continue;
    if (o.low < middle && o.high > middle) return 0;
    if (o.high <= middle) low = std::max(low, o.high);
    if (o.low >= middle) high = std::min(high, o.low);
  }
  return std::max(0.0, high - low);
}

Ring zoneAt(const EquipmentRoom& room, const Front& front, double start, double width,
            double depth) {
  const Point2 a = front.corner + front.across * start, b = a + front.across * width;
  Ring zone;
  for (Point2 p : {a, b, b + front.out * depth, a + front.out * depth})
    zone.push_back(room.frame().toSite(p));
  return zone;
}

void addIntrusions(const EquipmentRoom& room, const Front& front,
                   const std::vector<Obstacle>& obstacles, double start, double depth,
                   WorkingSpaceStudy& study) {
  const double end = start + inMetres(study.widthNeeded);
  const Point2 centre =
      room.frame().toSite(front.corner + front.across * ((start + end) / 2) + front.out * depth);
  if (front.roomOut < depth - kRoomHair || start < -front.roomBefore - kRoomHair ||
      end > front.width + front.roomAfter + kRoomHair) {
    study.intrusions.push_back({WorkingSpaceObstacle::Wall, {}, centre});
  }
  for (const Obstacle& o : obstacles) {
    if (o.low >= end - kRoomHair || o.high <= start + kRoomHair) continue;
    if (o.near >= depth - kRoomHair || o.far <= kRoomHair) continue;
    const Point2 at =
        front.corner + front.across * ((o.low + o.high) / 2) + front.out * ((o.near + o.far) / 2);
    study.intrusions.push_back({o.kind, {}, room.frame().toSite(at)});
  }
}

bool lowerThan(const RunStudy& run, std::size_t leg, double top) {
  return std::min(run.points[leg].at.z, run.points[leg + 1].at.z) < top;
}

/// Pipes through the zone under its height, and piping of other trades over the panel.
void addRuns(const EquipmentRoom& room, const Ring& panel, double zoneTop, double spaceTop,
             const std::vector<RunStudy>& runs, WorkingSpaceStudy& study) {
  const double floor = inMetres(room.floor);
  const auto above = [&](const RunStudy& run, std::size_t leg) {
    return std::max(run.points[leg].at.z, run.points[leg + 1].at.z) > floor;
  };
  for (const RunStudy& run : runs) {
    if (isConduit(run.service)) continue;
    bool inZone = false, overPanel = false;
    for (std::size_t leg = 0; leg + 1 < run.points.size(); ++leg) {
      if (!above(run, leg)) continue;
      const Polyline line = {flat(run.points[leg].at), flat(run.points[leg + 1].at)};
      inZone |= lowerThan(run, leg, zoneTop) && passesThrough(line, study.zone);
      overPanel |= lowerThan(run, leg, spaceTop) && distanceLineToRing(line, panel) <= 0;
    }
    if (inZone) {
      study.intrusions.push_back({WorkingSpaceObstacle::Run, run.id, centroid(study.zone)});
    }
    if (overPanel) study.runsOverPanel.push_back(run.id);
  }
}

std::optional<int> highestToGround(const WiringBasis& wiring) {
  std::optional<int> most;
  for (const Supply& supply : wiring.supplies) {
    if (!supply.voltsToGround) return std::nullopt; // one that is not known may be the highest
    most = std::max(most.value_or(0), *supply.voltsToGround);
  }
  return most;
}

Point2 middleOf(const EquipmentRoom& room, const RoomBox& box) {
  return room.frame().toSite(box.corner + Point2{inMetres(box.length), inMetres(box.depth)} * 0.5);
}

bool wallBetween(const Plan& plan, const Polyline& sight) {
  for (const EquipmentRoom& room : plan.rooms) {
    if (!crossings(sight, outline(room)).empty()) return true;
  }
  for (const Building& building : plan.buildings) {
    if (!crossings(sight, building.outline).empty()) return true;
  }
  return false;
}

/// What stands in a room between the disconnect and what is driven or controlled. A box that holds
/// either end is what is looked at, or carries the disconnect. Heights are left out: where the
/// disconnect hangs is not in the plan, and a motor may stand low.
std::optional<SightObstacle> between(const Plan& plan, Point2 from, Point2 to) {
  const Polyline sight = {from, to};
  if (wallBetween(plan, sight)) return SightObstacle::Wall;
  for (const EquipmentRoom& room : plan.rooms) {
    const std::pair<const std::optional<RoomBox>*, SightObstacle> boxes[] = {
        {&room.panel, SightObstacle::Panel},
        {&room.skid, SightObstacle::Skid},
        {&room.plumbingArea, SightObstacle::PlumbingArea}};
    for (const auto& [box, obstacle] : boxes) {
      if (!*box) continue;
      const Point2 size{inMetres((*box)->length), inMetres((*box)->depth)};
      const Ring ring = room.frame().rectangle((*box)->corner, (*box)->corner + size);
      if (contains(ring, from) || contains(ring, to)) continue;
      if (passesThrough(sight, ring)) return obstacle;
    }
  }
  return std::nullopt;
}

} // namespace

Decided<Length> workingDepth(std::optional<int> volts, std::optional<FacingPanel> facing,
                             const Limits& limits) {
  const auto byVoltage = [&](int v) -> Decided<Length> {
    if (v <= 150) return limits.length("wiring.space-depth-low");
    if (v > 600) return undecided<Length>({"the code's depth for more than 600 V to ground"});
    if (!facing) return undecided<Length>({"what stands opposite the panel"});
    if (*facing == FacingPanel::Insulated) return limits.length("wiring.space-depth-low");
    return limits.length(*facing == FacingPanel::Grounded ? "wiring.space-depth-grounded"
                                                          : "wiring.space-depth-live");
  };
  return decide(byVoltage, given(volts, "voltage to ground of every supply"));
}

WorkingSpaceStudy workingSpace(const StudyContext& context, const EquipmentRoom& room,
                               const std::vector<RunStudy>& runs) {
  const Limits& limits = context.limits;
  const RoomBox& panel = *room.panel;
  const Front front = frontOf(room, panel);
  const std::vector<Obstacle> obstacles = obstaclesOf(room, front);
  const WiringBasis& wiring = context.plan.basis.wiring;
  WorkingSpaceStudy study;
  study.room = room.id;
  study.depthNeeded = workingDepth(highestToGround(wiring), wiring.facingPanel, limits);
  study.widthNeeded = std::max(limits.length("wiring.space-width"), metres(front.width));
  study.heightNeeded = std::max(limits.length("wiring.space-height"), panel.height);
  const double width = inMetres(study.widthNeeded);
  const double start = bestStart(front, obstacles, width);
  const Length least = limits.length("wiring.space-depth-low");
  const double depth = inMetres(study.depthNeeded.value.value_or(least));
  study.depthClear = metres(clearDepth(front, obstacles, start, width));
  study.widthClear = metres(clearWidth(front, obstacles, inMetres(least)));
  study.zone = zoneAt(room, front, start, width, depth);
  addIntrusions(room, front, obstacles, start, depth, study);
  const Point2 far = panel.corner + Point2{inMetres(panel.length), inMetres(panel.depth)};
  const double floor = inMetres(room.floor);
  addRuns(room, room.frame().rectangle(panel.corner, far), floor + inMetres(study.heightNeeded),
          floor + inMetres(panel.height + limits.length("wiring.space-above")), runs, study);
  return study;
}

Ring workingZone(const EquipmentRoom& room, const RoomBox& box, Length depth, Length width) {
  const Front front = frontOf(room, box);
  const std::vector<Obstacle> obstacles = obstaclesOf(room, front);
  const double wide = std::max(inMetres(width), front.width), least = front.width - wide;
  // In its middle, as far as that is as clear as any other place.
  constexpr int kSteps = 40;
  double best = least / 2, most = -1;
  for (int i = 0; i <= kSteps; ++i) {
    const int aside = i % 2 == 0 ? i / 2 : -(i + 1) / 2;
    const double start = least * (0.5 + static_cast<double>(aside) / kSteps);
    const double clear = std::min(clearDepth(front, obstacles, start, wide), inMetres(depth));
    if (clear <= most + kRoomHair) continue;
    most = clear;
    best = start;
  }
  return zoneAt(room, front, best, wide, inMetres(depth));
}

SupplyStudy supplyStudy(const StudyContext& context, const Supply& supply) {
  SupplyStudy study;
  study.supply = supply.id;
  study.hasConduit = !supply.run.empty();
  const auto from = given(supply.disconnect, "place of the disconnect of " + called(supply));
  std::optional<Point2> panel, skid;
  for (const EquipmentRoom& room : context.plan.rooms) {
    if (room.panel && !panel) panel = middleOf(room, *room.panel);
    if (room.skid && !skid) skid = middleOf(room, *room.skid);
  }
  // A motor's disconnect is seen from its controller and from the motor (NEC 430.102).
  const bool motor = supply.kind == SupplyKind::Motor3Phase;
  const auto controller = given(panel, "place of the panel");
  const auto driven = motor ? given(skid, "place of the equipment skid") : controller;
  study.disconnectDistance = decide(
      [](Point2 d, Point2 p, Point2 s) { return metres(std::max(distance(d, p), distance(d, s))); },
      from, controller, driven);
  const Length most = context.limits.length("wiring.disconnect");
  if (from && controller && driven) {
    study.hiddenBy = between(context.plan, *from, *driven);
    if (!study.hiddenBy) study.hiddenBy = between(context.plan, *from, *controller);
  }
  study.inSight =
      decide([&](Length far) { return far <= most && !study.hiddenBy; }, study.disconnectDistance);
  return study;
}

} // namespace sump
