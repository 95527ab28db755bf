#include "app/canvas/tools/new_objects.h"

#include "core/plan/edits_objects.h"

#include <array>

namespace sump {

namespace {

constexpr Length kEarthOverLid = feet(1);
constexpr Length kManwayDiameter = inches(24);

Length firstFloor(const Plan& plan, const Surface& ground, const Vault& vault) {
  if (!plan.vaults.empty()) return plan.vaults.back().floor;
  return gradeAt(plan, ground, vault.centre) - kEarthOverLid - vault.lidThickness -
         vault.insideHeight;
}

void addBaffles(Vault& vault, const VaultModel& model) {
  for (std::size_t i = 0; i < model.baffleOffsets.size(); ++i) {
    vault.baffles.push_back({vault.id + "-B" + std::to_string(i + 1),
                             model.baffleOffsets[i],
                             model.baffleThickness,
                             {},
                             {}});
  }
}

void addManways(Vault& vault) {
  for (const ChamberBox& box : chambers(vault)) {
    vault.manways.push_back({vault.id + "-M" + std::to_string(box.number),
                             lerp(box.low, box.high, 0.5), kManwayDiameter, std::nullopt,
                             vault.trafficLid});
  }
}

struct UsualPort {
  const char* suffix;
  const char* name;
  Service service;
  double x, y; ///< of the plumbing area or the panel, as fractions
  double heightInches;
  const char* size;
};

// Where lines come up: water in the plumbing area, cables at the panel.
constexpr std::array<UsualPort, 9> kPorts = {{
    {"SU", "Pump suction", Service::Suction, 0.6, 0.5, 18, "2"},
    {"SS", "Spare suction", Service::SpareSuction, 0.2, 0.5, 18, "2"},
    {"RC", "Recirculation", Service::Recirculation, 0.85, 0.25, 30, "1"},
    {"UF", "Underflow", Service::Underflow, 0.85, 0.75, 12, "1-1/2"},
    {"PW", "Product water", Service::Product, 0.6, 0.85, 36, "2"},
    {"MU", "Make-up", Service::MakeUp, 0.2, 0.85, 36, "1"},
    {"FC", "Float", Service::FloatConduit, 0.25, 0.5, 24, "1"},
    {"SG", "Wash demand", Service::Signal, 0.5, 0.5, 26, "1"},
    {"PC", "Supply", Service::Power, 0.75, 0.5, 24, "1-1/2"},
}};

void addPorts(EquipmentRoom& room) {
  for (const UsualPort& p : kPorts) {
    const RoomBox& box = isConduit(p.service) ? *room.panel : *room.plumbingArea;
    const Point2 at = box.corner + Point2{p.x * inMetres(box.length), p.y * inMetres(box.depth)};
    room.ports.push_back(
        {room.id + "-" + p.suffix, p.name, p.service, at, inches(p.heightInches), p.size});
  }
}

/// Working depth of a usual vault: 4 ft of water in 5 ft.
Length restLevel(const Vault& vault) {
  return vault.floor + std::min(feet(4), 0.8 * vault.insideHeight);
}

Length chamberInvert(const Vault& vault, Service service, bool atStart) {
  const Length water = restLevel(vault);
  const Length middle = vault.floor + 0.5 * (water - vault.floor);
  const Length underLid = vault.floor + vault.insideHeight - inches(8);
  switch (service) {
  case Service::Suction:
  case Service::SpareSuction:
    return vault.floor + inches(15);
  case Service::Interconnect:
    return middle;
  case Service::Link:
    return atStart ? middle : water - inches(1);
  case Service::Overflow:
    return water;
  case Service::Inlet:
  case Service::Underflow:
    return water + inches(4);
  case Service::Recirculation:
    return water + inches(12); // the eductor's outlet end
  default:
    return underLid;
  }
}

} // namespace

Length gradeAt(const Plan& plan, const Surface& ground, Point2 at) {
  if (const std::optional<double> z = ground.elevation(at)) return metres(*z);
  return plan.site.groundDefault.value_or(Length());
}

Vault newVault(const Plan& plan, const Surface& ground, const VaultModel& model, Point2 centre,
               Angle angle) {
  Vault vault;
  vault.id = freshId(plan, "V");
  vault.name = "Vault " + std::to_string(plan.vaults.size() + 1);
  vault.model = model.key;
  vault.centre = centre;
  vault.angle = angle;
  vault.length = model.length;
  vault.width = model.width;
  vault.wall = model.wall;
  vault.lidThickness = model.lid;
  vault.floorThickness = model.floor;
  vault.insideHeight = model.insideHeight;
  vault.trafficLid = model.trafficClass == "traffic";
  vault.floor = firstFloor(plan, ground, vault);
  addBaffles(vault, model);
  addManways(vault);
  return vault;
}

EquipmentRoom newRoom(const Plan& plan, const Surface& ground, Length length, Length width,
                      Point2 corner, Angle angle) {
  EquipmentRoom room;
  room.id = freshId(plan, "ER");
  room.name = "Equipment room";
  room.corner = corner;
  room.angle = angle;
  room.length = length;
  room.width = width;
  room.floor = gradeAt(plan, ground, room.frame().toSite({inMetres(length) / 2, 0})) + inches(6);
  room.door = Door{Side::East, 0.25 * width, feet(3)};
  // Skid 4 ft x 2 ft x 4 ft 4 in with its plumbing area, 2 ft square, beside it; both need 6 ft.
  room.plumbingArea = RoomBox{{inMetres(feet(2)), 0}, feet(2), feet(2), feet(8)};
  room.skid = RoomBox{{inMetres(feet(4)), 0}, feet(4), feet(2), inches(52)};
  room.panel = RoomBox{{inMetres(feet(9)), 0}, feet(2), inches(9), inches(78)};
  addPorts(room);
  return room;
}

Basin newBasin(const Plan& plan, const Surface& ground, BasinKind kind, Point2 at, Angle angle) {
  const bool trench = kind == BasinKind::TrenchDrain;
  Basin basin;
  basin.id = freshId(plan, trench ? "TD" : "CB");
  basin.name = trench ? "Trench drain" : "Catch basin";
  basin.kind = kind;
  basin.at = at;
  basin.angle = angle;
  basin.length = trench ? feet(20) : feet(2);
  basin.width = feet(2);
  basin.rim = gradeAt(plan, ground, at);
  basin.outletInvert = basin.rim - feet(3);
  return basin;
}

SewerConnection newSewer(const Plan& plan, const Surface& ground, Point2 at) {
  SewerConnection sewer;
  sewer.id = freshId(plan, "SW");
  sewer.name = "Sewer connection";
  sewer.at = at;
  sewer.invert = gradeAt(plan, ground, at) - feet(6);
  return sewer;
}

WashEquipment newWash(const Plan& plan, const Surface& ground, Point2 at, Angle angle) {
  WashEquipment wash;
  wash.id = freshId(plan, "WA");
  wash.name = "Wash equipment";
  wash.at = at;
  wash.angle = angle;
  wash.length = feet(16);
  wash.width = feet(3);
  wash.inletElevation = gradeAt(plan, ground, at) + feet(8);
  wash.inletSize = "2";
  return wash;
}

SpotElevation newSpot(const Plan& plan, const Surface& ground, Point2 at) {
  return {freshId(plan, "SP"), at, gradeAt(plan, ground, at)};
}

UsualPipe usualPipe(Service service) {
  switch (service) {
  case Service::Inlet:
    return {"pvc-sdr35", "6"};
  case Service::Interconnect:
  case Service::Link:
  case Service::Overflow:
    return {"pvc-sch80", "6"};
  case Service::Vent:
    return {"pvc-sch80", "3"};
  case Service::Recirculation:
  case Service::MakeUp:
    return {"pvc-sch80", "1"};
  case Service::Underflow:
    return {"pvc-sch80", "1-1/2"};
  case Service::Power:
    return {"pvc-conduit-sch80", "1-1/2"};
  case Service::FloatConduit:
  case Service::Signal:
    return {"pvc-conduit-sch80", "1"};
  case Service::Suction:
  case Service::SpareSuction:
  case Service::Product:
    break;
  }
  return {"pvc-sch80", "2"};
}

Length usualInvert(const Plan& plan, const Surface& ground, Service service, const RunEnd& end,
                   bool atStart) {
  if (end.kind == EndKind::Chamber) {
    if (const Vault* v = plan.vaults.find(end.target)) return chamberInvert(*v, service, atStart);
  }
  // In the open: a vent stands 10 ft up; everything else lies 2 ft down.
  const Length grade = gradeAt(plan, ground, end.at);
  return service == Service::Vent && !atStart ? grade + feet(10) : grade - feet(2);
}

EndFitting usualFitting(Service service, const RunEnd& end, bool atStart) {
  if (end.kind == EndKind::Chamber) {
    switch (service) {
    case Service::Suction:
    case Service::SpareSuction:
      return atStart ? EndFitting::FootValve : EndFitting::Plain;
    case Service::Interconnect:
      return atStart ? EndFitting::Tee : EndFitting::ElbowDown;
    case Service::Inlet:
    case Service::Link:
      return atStart ? EndFitting::Plain : EndFitting::Tee;
    case Service::Overflow:
      return atStart ? EndFitting::Tee : EndFitting::Plain;
    case Service::Recirculation:
      return atStart ? EndFitting::Plain : EndFitting::Eductor;
    default:
      return EndFitting::Plain;
    }
  }
  return service == Service::Vent && !atStart ? EndFitting::ScreenedVent : EndFitting::Plain;
}

} // namespace sump
