#include "core/study/room_front.h"

#include "core/geometry/polygon.h"

#include <algorithm>
#include <cmath>

namespace sump {

Front frontOf(const EquipmentRoom& room, const RoomBox& box, Side wall) {
  const double l = inMetres(room.length), w = inMetres(room.width);
  const double x = box.corner.x, y = box.corner.y;
  const double dx = inMetres(box.length), dy = inMetres(box.depth);
  switch (wall) {
  case Side::South:
    return {wall, {x, y + dy}, {1, 0}, {0, 1}, dx, x, l - x - dx, w - y - dy};
  case Side::East:
    return {wall, {x, y}, {0, 1}, {-1, 0}, dy, y, w - y - dy, x};
  case Side::North:
    return {wall, {x + dx, y}, {-1, 0}, {0, -1}, dx, l - x - dx, x, y};
  case Side::West:
    break;
  }
  return {wall, {x + dx, y + dy}, {0, -1}, {1, 0}, dy, w - y - dy, y, l - x - dx};
}

Obstacle seenFrom(const Front& front, WorkingSpaceObstacle kind, Point2 a, Point2 b) {
  const double s = dot(a - front.corner, front.across), t = dot(b - front.corner, front.across);
  const double u = dot(a - front.corner, front.out), v = dot(b - front.corner, front.out);
  return {kind, std::min(s, t), std::max(s, t), std::min(u, v), std::max(u, v)};
}

namespace {

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

} // namespace

std::vector<Obstacle> obstaclesOf(const EquipmentRoom& room, const Front& front) {
  std::vector<Obstacle> list;
  const auto add = [&](const std::optional<RoomBox>& box, WorkingSpaceObstacle kind) {
    if (!box) return;
    list.push_back(seenFrom(front, kind, box->corner, box->high()));
  };
  add(room.skid, WorkingSpaceObstacle::Skid);
  add(room.plumbingArea, WorkingSpaceObstacle::PlumbingArea);
  if (room.door) list.push_back(doorSwing(room, front));
  return list;
}

std::optional<RoomBox> enclosureIn(const EquipmentRoom& room, const Supply& supply,
                                   const Limits& limits) {
  if (!supply.disconnect || !contains(outline(room), *supply.disconnect)) return std::nullopt;
  const double reach = inMetres(limits.length("wiring.enclosure"));
  const Point2 at = room.frame().toLocal(*supply.disconnect);
  const Point2 low{std::max(0.0, at.x - reach), std::max(0.0, at.y - reach)};
  const Point2 high{std::min(inMetres(room.length), at.x + reach),
                    std::min(inMetres(room.width), at.y + reach)};
  return RoomBox{low, metres(high.x - low.x), metres(high.y - low.y), {}};
}

void addDisconnects(const Plan& plan, const Limits& limits, const EquipmentRoom& room,
                    const Front& front, std::vector<Obstacle>& obstacles) {
  for (const Supply& supply : plan.basis.wiring.supplies) {
    const auto box = enclosureIn(room, supply, limits);
    if (!box) continue;
    const Point2 at = room.frame().toLocal(*supply.disconnect);
    if (nearestWall(room, at, at) == front.wall || dot(at - front.corner, front.out) <= 0) continue;
    obstacles.push_back(
        seenFrom(front, WorkingSpaceObstacle::Disconnect, box->corner, box->high()));
  }
}

namespace {

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

/// The width need not be centred (NEC 110.26(A)(2)): the start that leaves most of the depth, the
/// one that a door sweeps least of several, the nearest to the middle of these.
double bestStart(const Front& front, const std::vector<Obstacle>& obstacles, double width,
                 double depth) {
  const double least = std::min(0.0, front.width - width), middle = least / 2;
  std::vector<double> starts = {middle, least, 0, -front.roomBefore,
                                front.width + front.roomAfter - width};
  for (const Obstacle& o : obstacles) {
    starts.push_back(o.high);
    starts.push_back(o.low - width);
  }
  std::ranges::stable_sort(starts, {}, [&](double start) { return std::abs(start - middle); });
  std::vector<Obstacle> standing = obstacles;
  for (Obstacle& o : standing) {
    if (o.kind == WorkingSpaceObstacle::DoorSwing) o.kind = WorkingSpaceObstacle::Wall;
  }
  double best = middle;
  double most = -1, mostUnswept = -1;
  for (double start : starts) {
    if (start < least - kRoomHair || start > kRoomHair) continue;
    const double here = std::min(clearDepth(front, obstacles, start, width), depth);
    const double unswept = std::min(clearDepth(front, standing, start, width), depth);
    if (here < most - kRoomHair) continue;
    if (here <= most + kRoomHair && unswept <= mostUnswept + kRoomHair) continue;
    most = here;
    mostUnswept = unswept;
    best = start;
  }
  return best;
}

/// Clear width round the middle of the front over a depth.
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

} // namespace

void fillSpace(const EquipmentRoom& room, const Front& front,
               const std::vector<Obstacle>& obstacles, Length leastDepth,
               WorkingSpaceStudy& study) {
  const double width = inMetres(study.widthNeeded);
  const double depth = inMetres(study.depthNeeded.value.value_or(leastDepth));
  const double start = bestStart(front, obstacles, width, depth);
  study.depthClear = metres(clearDepth(front, obstacles, start, width));
  study.widthClear = metres(clearWidth(front, obstacles, inMetres(leastDepth)));
  study.zone = zoneAt(room, front, start, width, depth);
  addIntrusions(room, front, obstacles, start, depth, study);
}

bool hasLegOverFloor(const EquipmentRoom& room, const RunStudy& run, double under,
                     const std::function<bool(const Polyline&)>& test) {
  const double floor = inMetres(room.floor);
  for (std::size_t leg = 0; leg + 1 < run.points.size(); ++leg) {
    const Point3 a = run.points[leg].at, b = run.points[leg + 1].at;
    if (std::max(a.z, b.z) <= floor || std::min(a.z, b.z) >= under) continue;
    if (test({flat(a), flat(b)})) return true;
  }
  return false;
}

void addRunsInZone(const EquipmentRoom& room, const std::vector<RunStudy>& runs,
                   WorkingSpaceStudy& study) {
  const double top = inMetres(room.floor + study.heightNeeded);
  const auto inZone = [&](const Polyline& line) { return passesThrough(line, study.zone); };
  for (const RunStudy& run : runs) {
    if (!isConduit(run.service) && hasLegOverFloor(room, run, top, inZone))
      study.intrusions.push_back({WorkingSpaceObstacle::Run, run.id, centroid(study.zone)});
  }
}

} // namespace sump
