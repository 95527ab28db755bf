#pragma once
// Ways down through manways, room for connectors, and lines that join what is in the ground. Vault
// 1 covers x 62 to 74, y 47 to 53 ft about 68, 50; its floor is at 93.25 ft, the underside of its
// lid at 98.25 ft, the top at 98.92 ft. Its manways are 30 in and 24 in wide, 34.8 in from its
// middle.

#include "tests/rules/cases_vaults.h"

#include <cmath>

namespace sump::testing {

/// A 2 in vent (2.375 in outside, ASTM D1785) from chamber 2 of vault 1, straight away from `from`,
/// in inches of the vault's own frame, at one invert in feet.
inline Edit ventFrom(double x, double y, Point2 way, double invert) {
  return [=](Plan& p) {
    constexpr double inch = 0.0254;
    const Vault& vault = *p.vaults.find("V1");
    Run vent;
    vent.id = "VT-9";
    vent.service = Service::Vent;
    vent.pipe = "pvc-sch80";
    vent.size = "2";
    vent.from = {EndKind::Chamber, "V1", 2, Point2{x, y} * inch, feet(invert), {}};
    vent.to.at = vault.frame().toSite(Point2{x, y} * inch + way * 3);
    vent.to.invert = feet(invert);
    p.runs.put(vent);
  };
}
inline Edit ventEast(double y, double invert) {
  return ventFrom(6, y, {1, 0}, invert);
}
/// The end of the inlet straight south of its manway's centre, by so many inches.
inline Edit inletSouthOfManway(double off) {
  return [=](Plan& p) {
    changeRun(p, "WW-1", [=](Run& r) { r.to.at = {-2.9 * kMetresPerFoot, -off * 0.0254}; });
  };
}
/// The same, with the top of its tee in the lid's thickness.
inline Edit highInletSouthOfManway(double off) {
  return [=](Plan& p) {
    inletSouthOfManway(off)(p);
    changeRun(p, "WW-1", [](Run& r) { r.to.invert = feet(97.6); });
  };
}
/// The eductor straight east of its manway's centre, by so many inches, as its line comes in.
inline Edit eductorEastOfManway(double off) {
  return [=](Plan& p) {
    changeRun(p, "RC-1", [=](Run& r) {
      r.to.at.x = 34.8 * 0.0254 + off * 0.0254;
      r.vertices[4].at.x = 68 * kMetresPerFoot + r.to.at.x;
    });
  };
}
/// The recirculation goes through the riser, 12 in from its centre to the inside face, so far off
/// the radius.
inline Edit recirculationOffRadius(double angle) {
  return [=](Plan& p) {
    changeRun(p, "RC-1", [=](Run& r) {
      r.to.at.y = 12 * 0.0254 * std::sin(angle * kPi / 180);
      for (std::size_t i : {3, 4})
        r.vertices[i].at.y = 50 * kMetresPerFoot + r.to.at.y;
    });
  };
}
inline Edit ventOffSquare(double angle) {
  return ventFrom(6, -20, {1, std::tan(angle * kPi / 180)}, 97);
}
/// The recirculation level at this invert, ft.
inline Edit recirculationAt(double invert) {
  return [=](Plan& p) {
    changeRun(p, "RC-1", [=](Run& r) {
      for (Vertex& vertex : r.vertices)
        if (vertex.invert) vertex.invert = feet(invert);
    });
  };
}
inline Edit recirculationUnderRim(double rim) {
  return [=](Plan& p) {
    recirculationAt(99.4)(p);
    changeVault(p, "V1", [=](Vault& v) { v.manways[1].rim = feet(rim); });
  };
}
inline Edit overflowAt(double invert) {
  return [=](Plan& p) { changeRun(p, "OF-1", [=](Run& r) { r.from.invert = feet(invert); }); };
}

inline std::vector<Case> openingCases() {
  const auto warning = Severity::Warning;
  const std::vector<Id> vent = {"VT-9", "V1"};
  return {
      // 12 in and half of 2.375 in.
      {"manway-clear.passes",
       warning,
       {"VT-9", "V1-M2", "V1"},
       ventEast(13.18, 97.5),
       ventEast(13.20, 97.5)},
      // Over the lid, through the riser.
      {"manway-clear.passes",
       warning,
       {"VT-9", "V1-M2", "V1"},
       ventEast(-13.18, 100),
       ventEast(-13.20, 100)},
      // 15 in and the distance, less half of 6.275 in (ASTM D3034), are 16 in.
      {"manway-clear.narrow",
       warning,
       {"V1-M1", "V1"},
       inletSouthOfManway(4.13),
       inletSouthOfManway(4.15)},
      // 12 in and the distance, less half of 1.315 in (ASTM D1785), are 16 in.
      {"manway-clear.eductor",
       warning,
       {"RC-1", "V1-M2", "V1"},
       eductorEastOfManway(4.64),
       eductorEastOfManway(4.67)},
      {"manway-clear.undecided",
       warning,
       {"VT-1"},
       [](Plan& p) { changeRun(p, "VT-1", [](Run& r) { r.to.invert.reset(); }); }},
      {"manway-clear.undecided",
       warning,
       {"V1-M1", "V1"},
       [](Plan& p) {
         p.spots = {};
         p.site.groundDefault.reset();
       }},
      // 2 in Sch 80 has walls of 0.218 in and more (ASTM D1785): its top lies 2.14 in over the
      // invert, its bottom 0.24 in under it.
      {"connector-room.lid", warning, vent, ventEast(-20, 97.83), ventEast(-20, 97.82)},
      {"connector-room.floor", warning, vent, ventEast(-20, 93.51), ventEast(-20, 93.53)},
      // Walls stand 30 in from the middle.
      {"connector-room.corner", warning, vent, ventEast(-25.83, 97), ventEast(-25.79, 97)},
      // The baffle reaches 3 in from the middle.
      {"connector-room.baffle",
       warning,
       {"VT-9", "V1-B1", "V1"},
       ventFrom(7.17, 0, {0, -1}, 97),
       ventFrom(7.20, 0, {0, -1}, 97)},
      // The 3 in vent goes through this wall 21.6 in from the middle; 6 in of wall between them.
      {"connector-room.pipe",
       warning,
       {"VT-1", "VT-9", "V1"},
       ventEast(12.70, 97.74),
       ventEast(12.62, 97.74)},
      // 1 in Sch 80 has walls of 0.179 in and more.
      {"connector-room.riser-foot",
       warning,
       {"RC-1", "V1-M2", "V1"},
       recirculationAt(99.17),
       recirculationAt(99.19)},
      {"connector-room.riser-rim",
       warning,
       {"RC-1", "V1-M2", "V1"},
       recirculationUnderRim(99.73),
       recirculationUnderRim(99.76)},
      // Half a bore, 3-7/8 in and half of 6.625 in are 10.04 in, and 1 in is left under the lid.
      {"connector-room.arm", warning, {"OF-1", "V2"}, overflowAt(97.34), overflowAt(97.32)},
      // Half of 6.275 in (ASTM D3034) off the edge of the opening, 15 in from its middle.
      {"connector-room.edge",
       warning,
       {"WW-1", "V1"},
       highInletSouthOfManway(11.87),
       highInletSouthOfManway(11.86)},
      {"connector-room.slant", warning, vent, ventOffSquare(7.05), ventOffSquare(6.95)},
      {"connector-room.riser-slant",
       warning,
       {"RC-1", "V1-M2", "V1"},
       recirculationOffRadius(7.05),
       recirculationOffRadius(6.95)},
      {"connector-room.undecided",
       warning,
       {"VT-1"},
       [](Plan& p) { changeRun(p, "VT-1", [](Run& r) { r.to.invert.reset(); }); }},
  };
}

/// The suction straight across from its manway's centre, 34.8 in from the vault's middle, by so
/// many inches; its manway is 30 in wide.
inline Edit suctionAsideOfManway(double off) {
  return [=](Plan& p) {
    changeRun(p, "SU-1", [=](Run& r) {
      r.from.at = {34.8 * 0.0254, -off * 0.0254};
      r.vertices[0].at = p.vaults.find("V2")->frame().toSite(r.from.at);
    });
  };
}
/// The union of the suction in the chamber so far along the level leg, in inches, which starts 6 in
/// across and 1.2 in along from the manway's centre.
/// In the level leg, so many inches along it.
inline Edit suctionUnionAt(double inches) {
  return [=](Plan& p) {
    changeRun(p, "SU-1", [=](Run& r) {
      const auto part = std::ranges::find(r.parts, "SU-1-3", &InlinePart::id);
      part->leg = 1;
      part->along = inches / (10.5 * 12);
    });
  };
}
/// The float's end 13.2 in along the vault from its manway's centre and so many inches across.
inline Edit floatAsideOfManway(double off) {
  return [=](Plan& p) { changeRun(p, "FC-1", [=](Run& r) { r.from.at.y = -off * 0.0254; }); };
}

inline std::vector<Case> reachCases() {
  const auto warning = Severity::Warning;
  const std::vector<Id> suction = {"SU-1", "V2"};
  return {
      // 15 in less half of 2.375 in.
      {"chamber-reach.upright", warning, suction, suctionAsideOfManway(13.83),
       suctionAsideOfManway(13.80)},
      {"chamber-reach.no-union", warning, suction,
       [](Plan& p) {
         changeRun(p, "SU-1", [](Run& r) {
           std::erase_if(r.parts, [](const InlinePart& part) { return part.id == "SU-1-3"; });
         });
       }},
      // 21 in from the centre: the root of 21 x 21 less 1.2 x 1.2 is 20.97, less 6 in.
      {"chamber-reach.union", warning, suction, suctionUnionAt(14.99), suctionUnionAt(14.95)},
      // The root of 21 x 21 less 13.2 x 13.2 is 16.33.
      {"chamber-reach.float",
       warning,
       {"FC-1", "V2"},
       floatAsideOfManway(16.35),
       floatAsideOfManway(16.31)},
      {"chamber-reach.undecided",
       warning,
       {"SU-1"},
       [](Plan& p) { changeRun(p, "SU-1", [](Run& r) { r.from.invert.reset(); }); }},
  };
}

/// A water pipe of 2 in that the make-up starts from, at 105 ft.
inline Edit waterAtMakeUp(std::optional<double> level) {
  return [=](Plan& p) {
    const Point2 start = p.runs.find("MU-1")->from.at;
    Utility pipe;
    pipe.id = "U-TAP";
    pipe.kind = UtilityKind::PotableWater;
    pipe.path = {start, start + Point2{0, 3}};
    if (level) pipe.elevation = feet(*level);
    pipe.diameter = inches(2);
    p.utilities.put(pipe);
  };
}

inline std::vector<Case> joiningCases() {
  const auto warning = Severity::Warning;
  const std::vector<Id> joint = {"MU-1", "U-TAP"};
  return {
      // The middle of 1 in Sch 80 lies 0.04 ft over its invert; it may be 1 in off.
      {"tap-level.below", warning, joint, waterAtMakeUp(105.13), waterAtMakeUp(105.115)},
      {"tap-level.above", warning, joint, waterAtMakeUp(104.865), waterAtMakeUp(104.88)},
      {"tap-level.undecided", warning, joint, waterAtMakeUp(std::nullopt)},
  };
}

} // namespace sump::testing
