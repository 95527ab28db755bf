#include "core/rules/families.h"
#include "core/rules/report.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kHair = 1e-3; // m; what typing in fractions rounds away

bool inside(const EquipmentRoom& room, const RoomBox& box) {
  return box.corner.x >= -kHair && box.corner.y >= -kHair &&
         box.corner.x + inMetres(box.length) <= inMetres(room.length) + kHair &&
         box.corner.y + inMetres(box.depth) <= inMetres(room.width) + kHair;
}

/// The skid backs on the nearer of the two long walls; its right hand is seen when facing it.
bool areaOnRight(const EquipmentRoom& room, const RoomBox& skid, const RoomBox& area) {
  const double toSouth = skid.corner.y;
  const double toNorth = inMetres(room.width) - skid.corner.y - inMetres(skid.depth);
  const double skidMiddle = skid.corner.x + inMetres(skid.length) / 2;
  const double areaMiddle = area.corner.x + inMetres(area.length) / 2;
  return toSouth <= toNorth ? areaMiddle < skidMiddle : areaMiddle > skidMiddle;
}

void checkWidth(Reporter& out, const EquipmentRoom& room, const RoomBox& skid,
                const RoomBox& area) {
  const double low = std::min(skid.corner.x, area.corner.x);
  const double high =
      std::max(skid.corner.x + inMetres(skid.length), area.corner.x + inMetres(area.length));
  const Length have = metres(high - low), need = out.input().limits.length("room.clear-width");
  if (have >= need - metres(kHair)) return;
  Finding& finding = out.report("narrow", {room.id});
  finding.measured = printLength(have, out.units());
  finding.required = printLength(need, out.units());
}

void checkArea(Reporter& out, const EquipmentRoom& room, const RoomBox& area) {
  const Length need = out.input().limits.length("room.plumbing-area");
  const Length least = std::min(area.length, area.depth);
  if (least < need - metres(kHair)) {
    Finding& finding = out.report("area-small", {room.id});
    finding.measured = printLength(least, out.units());
    finding.required = printLength(need, out.units());
  }
  for (const Port& port : room.ports) {
    if (isConduit(port.service)) continue;
    const bool within = port.at.x >= area.corner.x - kHair && port.at.y >= area.corner.y - kHair &&
                        port.at.x <= area.corner.x + inMetres(area.length) + kHair &&
                        port.at.y <= area.corner.y + inMetres(area.depth) + kHair;
    if (!within) out.report("port-outside", {port.id, room.id}, {{"port", port.name}});
  }
}

void check(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  if (input.plan.rooms.empty()) out.report("none", {});
  for (const EquipmentRoom& room : input.plan.rooms) {
    if (!room.skid) out.report("no-skid", {room.id});
    if (!room.plumbingArea) out.report("no-area", {room.id});
    if (!room.skid || !room.plumbingArea) continue;
    if (!inside(room, *room.skid) || !inside(room, *room.plumbingArea)) {
      out.report("outside", {room.id});
    }
    checkWidth(out, room, *room.skid, *room.plumbingArea);
    checkArea(out, room, *room.plumbingArea);
    if (!areaOnRight(room, *room.skid, *room.plumbingArea)) out.report("left", {room.id});
  }
}

} // namespace

const Rule kRoomClearance = {"room-clearance",  "The room has width for the skid and its plumbing",
                             kPractice,         Confidence::CommonPractice,
                             Severity::Warning, check};

} // namespace sump
