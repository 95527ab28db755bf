// The equipment room: what fits in it, how wide the space for skid and plumbing is, and on which
// side of the skid the plumbing rises.

#include "core/rules/families.h"
#include "core/rules/report.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kFractionHair = 1e-3; // m; what typing in fractions rounds away

struct Span {
  double low = 0;
  double high = 0;
};
bool meet(Span a, Span b) {
  return a.low < b.high - kFractionHair && b.low < a.high - kFractionHair;
}
Span around(Span a, Span b) {
  return {std::min(a.low, b.low), std::max(a.high, b.high)};
}

Span alongX(const RoomBox& box) {
  return {box.corner.x, box.corner.x + inMetres(box.length)};
}
Span alongY(const RoomBox& box) {
  return {box.corner.y, box.corner.y + inMetres(box.depth)};
}

/// The wall that the skid backs on: of the two along its longer side, the nearer.
struct BackWall {
  bool runsAlongX = true;
  bool atLowEnd = true; ///< south (along x) or west (along y)
  double length = 0;

  Span along(const RoomBox& box) const { return runsAlongX ? alongX(box) : alongY(box); }
  Span across(const RoomBox& box) const { return runsAlongX ? alongY(box) : alongX(box); }
  /// Who faces south has low x at the right hand, who faces west high y, and so round.
  bool rightIsLow() const { return runsAlongX == atLowEnd; }
};

BackWall backWall(const EquipmentRoom& room, const RoomBox& skid) {
  BackWall wall;
  wall.runsAlongX = skid.length >= skid.depth;
  const double reach = inMetres(wall.runsAlongX ? room.width : room.length);
  const Span across = wall.across(skid);
  wall.atLowEnd = across.low <= reach - across.high;
  wall.length = inMetres(wall.runsAlongX ? room.length : room.width);
  return wall;
}

bool inside(const EquipmentRoom& room, const RoomBox& box) {
  const Span x = alongX(box), y = alongY(box);
  return x.low >= -kFractionHair && y.low >= -kFractionHair &&
         x.high <= inMetres(room.length) + kFractionHair &&
         y.high <= inMetres(room.width) + kFractionHair;
}

bool share(const RoomBox& a, const RoomBox& b) {
  return meet(alongX(a), alongX(b)) && meet(alongY(a), alongY(b));
}

bool crowded(const EquipmentRoom& room) {
  if (share(*room.skid, *room.plumbingArea)) return true;
  return room.panel && (share(*room.panel, *room.skid) || share(*room.panel, *room.plumbingArea));
}

/// The free length of the back wall round skid and plumbing: to the room's walls, or to a panel
/// that stands in the same depth of the room.
double clearWidth(const EquipmentRoom& room, const BackWall& wall) {
  const Span taken = around(wall.along(*room.skid), wall.along(*room.plumbingArea));
  const Span depth = around(wall.across(*room.skid), wall.across(*room.plumbingArea));
  Span clear{0, wall.length};
  if (room.panel && meet(wall.across(*room.panel), depth)) {
    const Span panel = wall.along(*room.panel);
    if (panel.low + panel.high > taken.low + taken.high) {
      clear.high = panel.low;
    } else {
      clear.low = panel.high;
    }
  }
  return std::max(0.0, clear.high - clear.low);
}

void checkWidth(Reporter& out, const EquipmentRoom& room, const BackWall& wall) {
  const Length have = metres(clearWidth(room, wall));
  const Length need = out.input().limits.length("room.clear-width");
  if (have >= need - metres(kFractionHair)) return;
  Finding& finding = out.report("narrow", {room.id});
  finding.measured = printLength(have, out.units());
  finding.required = printLength(need, out.units());
}

void checkRightHand(Reporter& out, const EquipmentRoom& room, const BackWall& wall) {
  const Span skid = wall.along(*room.skid), area = wall.along(*room.plumbingArea);
  const bool low = area.low + area.high < skid.low + skid.high;
  if (low != wall.rightIsLow()) out.report("left", {room.id});
}

void checkArea(Reporter& out, const EquipmentRoom& room, const RoomBox& area) {
  const Length need = out.input().limits.length("room.plumbing-area");
  const Length least = std::min(area.length, area.depth);
  if (least < need - metres(kFractionHair)) {
    Finding& finding = out.report("area-small", {room.id});
    finding.measured = printLength(least, out.units());
    finding.required = printLength(need, out.units());
  }
  for (const Port& port : room.ports) {
    if (isConduit(port.service)) continue;
    const Span x = alongX(area), y = alongY(area);
    const bool within = port.at.x >= x.low - kFractionHair && port.at.y >= y.low - kFractionHair &&
                        port.at.x <= x.high + kFractionHair && port.at.y <= y.high + kFractionHair;
    if (!within) out.report("port-outside", {port.id, room.id}, {{"port", port.name}});
  }
}

void checkRoom(Reporter& out, const EquipmentRoom& room) {
  Needs needs;
  if (!room.skid) needs.push_back("place of the skid");
  if (!room.plumbingArea) needs.push_back("place of the area in which all plumbing rises");
  if (!needs.empty()) {
    out.needs({room.id}, needs);
    return;
  }
  if (!inside(room, *room.skid) || !inside(room, *room.plumbingArea)) {
    out.report("outside", {room.id});
  }
  if (crowded(room)) out.report("crowded", {room.id});
  const BackWall wall = backWall(room, *room.skid);
  checkWidth(out, room, wall);
  checkArea(out, room, *room.plumbingArea);
  checkRightHand(out, room, wall);
}

void checkRoom(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  if (input.plan.rooms.empty()) out.report("none", {});
  for (const EquipmentRoom& room : input.plan.rooms)
    checkRoom(out, room);
}

} // namespace

const Rule kRoomClearance = {"room-clearance",  "The room has width for the skid and its plumbing",
                             kPractice,         Confidence::CommonPractice,
                             Severity::Warning, checkRoom,
                             Trade::General};

} // namespace sump
