#include "app/window/guided_plan.h"

#include "app/canvas/tools/new_objects.h"

namespace sump {

namespace {

// Where things are put when the site's size was left out. Any place will do: it is moved anyway.
constexpr Length kPlaceLength = metres(30);
constexpr Length kPlaceWidth = metres(20);
constexpr double kFromEdge = 1; ///< of the room, m

// The skid takes 6 to 7 ft of clear width; common practice, no source.
constexpr Length kRoomLength = feet(12);
constexpr Length kRoomWidth = feet(7);

Point2 roomCorner(Side side, Point2 site) {
  const Point2 size{inMetres(kRoomLength), inMetres(kRoomWidth)};
  const Point2 middle{(site.x - size.x) / 2, (site.y - size.y) / 2};
  switch (side) {
  case Side::South:
    return {middle.x, kFromEdge};
  case Side::North:
    return {middle.x, site.y - kFromEdge - size.y};
  case Side::West:
    return {kFromEdge, middle.y};
  case Side::East:
    break;
  }
  return {site.x - kFromEdge - size.x, middle.y};
}

/// On the edge across from the equipment room.
Point2 sewerPlace(std::optional<Side> room, Point2 site) {
  switch (room.value_or(Side::East)) {
  case Side::South:
    return {site.x / 2, site.y};
  case Side::North:
    return {site.x / 2, 0};
  case Side::West:
    return {site.x, site.y / 2};
  case Side::East:
    break;
  }
  return {0, site.y / 2};
}

} // namespace

GuidedProblem problemOf(const GuidedAnswers& answers) {
  const Length none{};
  if (answers.siteLength && *answers.siteLength <= none) return {GuidedProblem::SiteLength};
  if (answers.siteWidth && *answers.siteWidth <= none) return {GuidedProblem::SiteWidth};
  if (answers.washFlow && *answers.washFlow <= Flow()) return {GuidedProblem::WashFlow};
  if (answers.sewerInvert && answers.ground && *answers.sewerInvert >= *answers.ground) {
    return {GuidedProblem::SewerInvert};
  }
  return {};
}

Plan guidedPlan(const GuidedAnswers& answers) {
  Plan plan;
  plan.project.units = answers.units;
  plan.site.groundDefault = answers.ground;
  const Point2 site{inMetres(answers.siteLength.value_or(kPlaceLength)),
                    inMetres(answers.siteWidth.value_or(kPlaceWidth))};
  if (answers.siteLength && answers.siteWidth) {
    plan.site.boundary = {{0, 0}, {site.x, 0}, site, {0, site.y}};
  }
  const Surface flat;
  if (answers.washFlow) {
    const WashEquipment wash = newWash(plan, flat, {site.x / 2, site.y / 2}, {});
    plan.washes.append(wash);
    WashDevice device;
    device.id = wash.id + "-D1";
    device.name = "Wash equipment";
    device.wash = wash.id;
    device.flow = *answers.washFlow;
    plan.basis.demand.devices.push_back(device);
  }
  if (answers.sewerInvert) {
    SewerConnection sewer = newSewer(plan, flat, sewerPlace(answers.equipmentSide, site));
    sewer.invert = *answers.sewerInvert;
    plan.sewers.append(sewer);
  }
  if (answers.equipmentSide) {
    plan.rooms.append(
        newRoom(plan, flat, kRoomLength, kRoomWidth, roomCorner(*answers.equipmentSide, site), {}));
  }
  return plan;
}

} // namespace sump
