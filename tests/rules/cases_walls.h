#pragma once
// Walls of buildings, vaults and chambers: sleeves beside each other, fittings and lines in walls.

#include "tests/rules/cases_dig.h"

namespace sump::testing {

/// Two 2 in vents through the west wall of the maintenance building, at x 110 ft, side by side: so
/// many inches apart along it and so far off square.
inline Edit ventsIntoMaintenance(double apart, double slant) {
  return [=](Plan& p) {
    constexpr double f = kMetresPerFoot;
    for (const auto& [id, y] : {std::pair{"VT-8", 100.0}, {"VT-9", 100 + apart / 12}}) {
      Run vent;
      vent.id = id;
      vent.service = Service::Vent;
      vent.pipe = "pvc-sch80";
      vent.size = "2";
      const double aside = 4 * std::tan(slant * kPi / 180);
      vent.from.at = {106 * f, (y - aside) * f};
      vent.to.at = {114 * f, (y + aside) * f};
      vent.from.invert = vent.to.invert = feet(101);
      p.runs.put(vent);
    }
  };
}

/// The power conduit rises so far off the inside face of the room's wall.
inline Edit powerRises(double inches) {
  return [=](Plan& p) {
    const double off = inches * 0.0254;
    changeRoom(p, [=](EquipmentRoom& r) {
      for (Port& port : r.ports)
        if (port.id == "P-PC") port.at.y = off;
    });
    changeRun(p, "PC-1", [=](Run& r) { r.vertices.back().at.y = 68 * kMetresPerFoot + off; });
  };
}
/// The float's conduit turns so far off the outside face of its vault.
inline Edit floatTurns(double inches) {
  return [=](Plan& p) {
    changeRun(p, "FC-1", [=](Run& r) {
      r.vertices[0].at.y = r.vertices[1].at.y = 61 * kMetresPerFoot + inches * 0.0254;
    });
  };
}
/// A tee at the start of the float's conduit, so far off the inside face of its vault's wall.
inline Edit floatStartsInTee(double inches) {
  return [=](Plan& p) {
    changeRun(p, "FC-1", [=](Run& r) {
      r.pipe = "pvc-sch80";
      r.size = "6";
      r.from.fitting = EndFitting::Tee;
      r.from.at.y = (inches - 30) * 0.0254;
    });
  };
}

/// The interconnect's tee so many inches before the middle of vault 1.
inline Edit interconnectFrom(double inches) {
  return [=](Plan& p) { changeRun(p, "IC-1", [=](Run& r) { r.from.at.x = -inches * 0.0254; }); };
}

/// A 2 in vent goes level through the west wall of the maintenance building; so many inches before
/// its face a 1 in vent joins it from the south.
inline Edit ventJoinsBeforeMaintenance(double inches) {
  return [=](Plan& p) {
    ventsIntoMaintenance(60, 0)(p);
    const double x = 110 * kMetresPerFoot - inches * 0.0254;
    changeRun(p, "VT-8", [=](Run& r) {
      r.size = "1";
      r.from.at = {x, 95 * kMetresPerFoot};
      r.to.kind = EndKind::Run;
      r.to.target = "VT-9";
      r.to.at = {x, 105 * kMetresPerFoot};
    });
  };
}
/// A 1 in vent that branches off a 2 in one so many inches before the wall, and goes through it.
inline Edit ventLeavesBeforeMaintenance(double inches) {
  return [=](Plan& p) {
    ventsIntoMaintenance(60, 0)(p);
    const double x = 110 * kMetresPerFoot - inches * 0.0254, y = 100 * kMetresPerFoot;
    changeRun(p, "VT-9", [=](Run& r) {
      r.from.at = {x, 95 * kMetresPerFoot};
      r.to.at = {x, 105 * kMetresPerFoot};
    });
    changeRun(p, "VT-8", [=](Run& r) {
      r.size = "1";
      r.from.kind = EndKind::Run;
      r.from.target = "VT-9";
      r.from.at = {x, y};
    });
  };
}

/// A level 2 in vent within the west wall of the maintenance building, so many inches long.
inline Edit ventInWall(double inside, double length) {
  return [=](Plan& p) {
    ventBesideMaintenance(0, 30)(p);
    changeRun(p, "VT-9", [=](Run& r) {
      r.from.at.x = r.to.at.x = 110 * kMetresPerFoot + inside * 0.0254;
      r.to.at.y = r.from.at.y + length * 0.0254;
    });
  };
}

inline std::vector<Case> sleeveCases() {
  const auto warning = Severity::Warning;
  const std::vector<Id> vents = {"VT-8", "VT-9", "B-MAINT"};
  return {
      // Their 3 in sleeves are 3.5 in outside; 2 in of wall between them.
      {"sleeve-room.near", warning, vents, ventsIntoMaintenance(5.47, 0),
       ventsIntoMaintenance(5.53, 0)},
      // At 30 degrees each opening is 3.5 / cos 30 and 8 x tan 30 = 8.66 in wide in a wall of 8 in.
      {"sleeve-room.near", warning, vents, ventsIntoMaintenance(10.63, 30),
       ventsIntoMaintenance(10.69, 30)},
      // A 1-1/2 in sweep of 90 degrees takes 8.25 in, a 1 in one 5.75 in, a 6 in tee 3.875 in.
      {"bend-in-wall.building", warning, {"PC-1", "B-EQ"}, powerRises(8.2), powerRises(8.3)},
      // In a wall of 8 in 16 in are no more than a slanting way through.
      {"wall-along.within", warning, {"VT-9", "B-MAINT"}, ventInWall(4, 16.1), ventInWall(4, 15.9)},
      {"wall-along.within", warning, {"VT-9", "B-MAINT"}, ventInWall(7.9, 40), ventInWall(8.1, 40)},
      {"wall-along.undecided",
       warning,
       {"VT-1"},
       [](Plan& p) { changeRun(p, "VT-1", [](Run& r) { r.to.invert.reset(); }); }},
      // A tee is as large as the line that it stands in: 1-9/16 in in the 2 in vents.
      {"bend-in-wall.building",
       warning,
       {"VT-9", "B-MAINT"},
       ventJoinsBeforeMaintenance(1.51),
       ventJoinsBeforeMaintenance(1.61)},
      {"bend-in-wall.building",
       warning,
       {"VT-8", "B-MAINT"},
       ventLeavesBeforeMaintenance(1.51),
       ventLeavesBeforeMaintenance(1.61)},
      {"bend-in-wall.vault", warning, {"FC-1", "V2"}, floatTurns(5.7), floatTurns(5.8)},
      {"bend-in-wall.vault", warning, {"FC-1", "V2"}, floatStartsInTee(3.8), floatStartsInTee(3.9)},
      // The baffle of 6 in stands in the middle of its vault.
      {"bend-in-wall.baffle",
       warning,
       {"IC-1", "V1-B1"},
       interconnectFrom(6.8),
       interconnectFrom(6.95)},
      {"bend-in-wall.undecided",
       warning,
       {"VT-1"},
       [](Plan& p) { changeRun(p, "VT-1", [](Run& r) { r.to.invert.reset(); }); }},
      {"sleeve-room.undecided",
       warning,
       {"VT-1"},
       [](Plan& p) { changeRun(p, "VT-1", [](Run& r) { r.to.invert.reset(); }); }},
  };
}

} // namespace sump::testing
