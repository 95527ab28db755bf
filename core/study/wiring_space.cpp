#include "core/study/wiring_space.h"

#include "core/geometry/polygon.h"
#include "core/study/object_names.h"
#include "core/study/room_front.h"

#include <algorithm>

namespace sump {

namespace {

std::optional<int> highestToGround(const WiringBasis& wiring) {
  std::optional<int> most;
  for (const Supply& supply : wiring.supplies) {
    if (!supply.voltsToGround) return std::nullopt; // one that is not known may be the highest
    most = std::max(most.value_or(0), *supply.voltsToGround);
  }
  return most;
}

Point2 middleOf(const EquipmentRoom& room, const RoomBox& box) {
  return room.frame().toSite(lerp(box.corner, box.high(), 0.5));
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
      const Ring ring = outline(room, **box);
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
  const Front front = frontOf(room, panel, nearestWall(room, panel.corner, panel.high()));
  std::vector<Obstacle> obstacles = obstaclesOf(room, front);
  addDisconnects(context.plan, limits, room, front, obstacles);
  const WiringBasis& wiring = context.plan.basis.wiring;
  WorkingSpaceStudy study;
  study.room = room.id;
  study.depthNeeded = workingDepth(highestToGround(wiring), wiring.facingPanel, limits);
  study.widthNeeded = std::max(limits.length("wiring.space-width"), metres(front.width));
  study.heightNeeded = std::max(limits.length("wiring.space-height"), panel.height);
  fillSpace(room, front, obstacles, limits.length("wiring.space-depth-low"), study);
  addRunsInZone(room, runs, study);
  const double spaceTop = inMetres(room.floor + panel.height + limits.length("wiring.space-above"));
  const auto overPanel = [&](const Polyline& line) {
    return distanceLineToRing(line, outline(room, panel)) <= 0;
  };
  for (const RunStudy& run : runs) {
    if (!isConduit(run.service) && hasLegOverFloor(room, run, spaceTop, overPanel))
      study.runsOverPanel.push_back(run.id);
  }
  return study;
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
