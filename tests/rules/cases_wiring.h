#pragma once
// Supplies, conduits, and the room at the panel, whose front looks north into the room.

#include "tests/rules/cases_peak.h"

#include <numbers>

namespace sump::testing {

inline Edit wiring(std::function<void(WiringBasis&)> edit) {
  return [=](Plan& p) { edit(p.basis.wiring); };
}
inline Edit withoutSupply(std::string id) {
  return wiring([=](WiringBasis& w) {
    std::erase_if(w.supplies, [&](const Supply& s) { return s.id == id; });
  });
}
inline Edit controlWires(int count) {
  return [=](Plan& p) { changeRun(p, "PC-1", [=](Run& r) { r.conductors.back().count = count; }); };
}
inline Edit oneMoreWire(CircuitKind kind) {
  return [=](Plan& p) {
    changeRun(p, "PC-1", [=](Run& r) { r.conductors.push_back({"14", 2, kind}); });
  };
}
inline double mostTurns(const Review& r) {
  for (const ConduitStudy& conduit : r.study.wiring.conduits)
    if (conduit.run == "SG-1") return conduit.mostDegrees * std::numbers::pi / 180;
  return 0;
}
inline double depthAtPanel(const Review& r) {
  return inMetres(r.study.wiring.spaces.front().depthClear);
}
inline double widthAtPanel(const Review& r) {
  return inMetres(r.study.wiring.spaces.front().widthClear);
}
inline double disconnectAway(const Review& r) {
  return inMetres(*r.study.wiring.supplies.front().disconnectDistance);
}
/// The door in the east wall this far from the south one, ft. What it sweeps is 3 ft square.
inline Edit doorAt(double offset) {
  return [=](Plan& p) { changeRoom(p, [=](EquipmentRoom& r) { r.door->offset = feet(offset); }); };
}
/// A vent this high over the floor across the room, above the panel or in front of it, ft.
inline Edit pipeInRoom(double y, double height) {
  return [=](Plan& p) {
    const EquipmentRoom& room = *p.rooms.find("ER-1");
    constexpr double f = kMetresPerFoot;
    Run vent;
    vent.id = "VT-9";
    vent.service = Service::Vent;
    vent.pipe = "pvc-sch80";
    vent.size = "2";
    vent.from.at = room.frame().toSite({8.5 * f, y * f});
    vent.to.at = room.frame().toSite({11.5 * f, y * f});
    vent.from.invert = vent.to.invert = room.floor + feet(height);
    p.runs.put(vent);
  };
}
inline Edit disconnectAt(Point2 at) {
  return wiring([=](WiringBasis& w) { w.supplies.front().disconnect = at; });
}

/// In feet from the room's low corner.
inline Edit disconnectInRoom(double x, double y) {
  return [=](Plan& p) {
    const Point2 local = Point2{x, y} * kMetresPerFoot;
    disconnectAt(p.rooms.find("ER-1")->frame().toSite(local))(p);
  };
}

/// The other one hangs on the opposite wall, out of the way.
inline Edit aloneInRoom(double x, double y) {
  return [=](Plan& p) {
    disconnectInRoom(x, y)(p);
    p.basis.wiring.supplies.back().disconnect =
        p.rooms.find("ER-1")->frame().toSite(Point2{2, 11.6} * kMetresPerFoot);
  };
}

inline std::vector<Case> wiringCases() {
  const auto warning = Severity::Warning, error = Severity::Error;
  const Edit noLevels = [](Plan& p) {
    changeRun(p, "SG-1", [](Run& r) {
      r.to = {EndKind::Free, "", 0, r.to.at, {}, {}};
      r.from = {EndKind::Free, "", 0, r.from.at, {}, {}};
    });
  };
  const Edit noRooms = [](Plan& p) { p.rooms = {}; };
  return {
      {"supplies-known.control", warning, {}, withoutSupply("SP-C")},
      {"supplies-known.motor", warning, {}, withoutSupply("SP-M")},
      {"supplies-known.signal", warning, {}, wiring([](WiringBasis& w) {
         w.signalCircuits.erase(w.signalCircuits.begin());
       })},
      {"supplies-known.undecided", warning, {}, wiring([](WiringBasis& w) { w.supplies.clear(); })},
      {"supplies-known.undecided", warning, {}, wiring([](WiringBasis& w) {
         w.signalCircuits.clear();
       })},
      {"conduit-bends.many",
       warning,
       {"SG-1"},
       limitOf("wiring.bends", mostTurns, 0.999),
       limitOf("wiring.bends", mostTurns, 1.001)},
      {"conduit-bends.undecided", warning, {"SG-1"}, noLevels},
      // 1-1/2 in Sch 80: 40 % of 1.711 square inches are 0.684; four 8 AWG take 0.146 and each
      // 12 AWG 0.0133 (NEC chapter 9 tables 4 and 5, from memory).
      {"conduit-fill.full", warning, {"PC-1"}, controlWires(41), controlWires(40)},
      {"conduit-fill.undecided",
       warning,
       {"PC-1"},
       [](Plan& p) { changeRun(p, "PC-1", [](Run& r) { r.conductors.clear(); }); }},
      {"mixed-raceway.mixed",
       error,
       {"PC-1"},
       oneMoreWire(CircuitKind::Class2),
       oneMoreWire(CircuitKind::Control)},
      {"mixed-raceway.voltages",
       Severity::Note,
       {"PC-1"},
       wiring([](WiringBasis& w) { w.supplies.back().volts = 459; }),
       wiring([](WiringBasis& w) { w.supplies.back().volts = 460; })},
      {"mixed-raceway.undecided",
       warning,
       {"SG-1"},
       [](Plan& p) {
         changeRun(p, "SG-1", [](Run& r) { r.conductors.clear(); });
         p.basis.wiring.signalCircuits.front().run.clear();
       }},
      {"working-space.shallow",
       error,
       {"ER-1"},
       limitOf("wiring.space-depth-grounded", depthAtPanel, 1.001),
       limitOf("wiring.space-depth-grounded", depthAtPanel, 0.999)},
      {"working-space.narrow",
       error,
       {"ER-1"},
       limitOf("wiring.space-width", widthAtPanel, 1.001),
       limitOf("wiring.space-width", widthAtPanel, 0.999)},
      // Between the skid, which ends 8 ft into the room, and the panel from 9 ft on there is 1 ft;
      // 2.5 ft are asked for. On the wall opposite nothing stands.
      {"working-space.niche",
       error,
       {"SP-M", "ER-1"},
       disconnectInRoom(8.4, 0.4),
       disconnectInRoom(8.4, 11.6)},
      // Right of the panel, which ends 11 ft into the room, 1 ft is left to the wall.
      {"working-space.niche",
       error,
       {"SP-M", "ER-1"},
       aloneInRoom(11.6, 0.4),
       aloneInRoom(11.7, 2.5)},
      // On the west wall, its front 0.9 ft into the room: the plumbing area stands 2 ft into it, as
      // far north as 2 ft.
      {"working-space.opposite",
       warning,
       {"SP-M", "ER-1"},
       disconnectInRoom(0.4, 1),
       disconnectInRoom(0.4, 4)},
      // 78 in high, as at the panel.
      {"working-space.taken",
       error,
       {"SP-M", "ER-1", "VT-9"},
       pipeInRoom(3, 6.4),
       pipeInRoom(3, 6.6)},
      // The panel is 18 in deep; 42 in before it end 5 ft from the wall.
      {"working-space.intrusion", error, {"ER-1"}, doorAt(4.99), doorAt(5.01)},
      // 78 in high.
      {"working-space.intrusion", error, {"ER-1", "VT-9"}, pipeInRoom(3, 6.4), pipeInRoom(3, 6.6)},
      // The panel is 6.5 ft high, and 6 ft over it are kept free.
      {"working-space.piping",
       warning,
       {"VT-9", "ER-1"},
       pipeInRoom(0.4, 12.4),
       pipeInRoom(0.4, 12.6)},
      {"working-space.undecided", warning, {"ER-1"}, wiring([](WiringBasis& w) {
         w.facingPanel.reset();
       })},
      {"working-space.undecided",
       warning,
       {"ER-1"},
       [](Plan& p) { changeRoom(p, [](EquipmentRoom& r) { r.panel.reset(); }); }},
      {"working-space.undecided", warning, {}, noRooms},
      {"disconnect-in-sight.far",
       warning,
       {"SP-M"},
       limitOf("wiring.disconnect", disconnectAway, 0.999),
       limitOf("wiring.disconnect", disconnectAway, 1.001)},
      // Just outside the room's east wall, and just inside.
      {"disconnect-in-sight.behind",
       warning,
       {"SP-M"},
       disconnectAt({22.6, 22}),
       disconnectAt({22.5, 22})},
      // The panel's near front corner stands 9 ft, 1.5 ft into the room, the skid's middle
      // 6 ft, 1 ft: at 11.5 ft the line between passes 1.917 ft.
      {"disconnect-in-sight.behind",
       warning,
       {"SP-M"},
       disconnectInRoom(11.5, 1.91),
       disconnectInRoom(11.5, 1.92)},
      // The skid's far corner stands 8 ft, 2 ft into the room, the panel's middle 10 ft, 0.75 ft.
      // The line between passes 5.75 ft.
      {"disconnect-in-sight.behind",
       warning,
       {"SP-M"},
       disconnectInRoom(2, 5.74),
       disconnectInRoom(2, 5.76)},
      {"disconnect-in-sight.undecided", warning, {"SP-M"}, wiring([](WiringBasis& w) {
         w.supplies.front().disconnect.reset();
       })},
      {"disconnect-in-sight.undecided", warning, {}, withoutSupply("SP-M")},
  };
}

} // namespace sump::testing
