#pragma once
// Eductor, suction, product, overflow, make-up and the equipment room, whose back wall is the south
// one: plumbing area x 2 to 4 ft, skid 4 to 8, panel 9 to 11, room 0 to 12.

#include "tests/rules/cases_levels.h"

namespace sump::testing {

template <class F> Edit eductor(F edit) {
  return [=](Plan& p) { changeRun(p, "RC-1", [=](Run& r) { edit(*r.eductor); }); };
}
inline Edit bracketOverWater(double height) {
  return eductor([=](EductorMount& m) { m.bracketFoot = feet(97.25 + height); });
}
inline Edit outletOverWater(double height) {
  return eductor([=](EductorMount& m) { m.outletEnd = feet(97.25 + height); });
}
inline Edit suctionInletAt(double invert) {
  return [=](Plan& p) { changeRun(p, "SU-1", [=](Run& r) { r.from.invert = feet(invert); }); };
}
inline Edit suctionEnd(EndFitting fitting) {
  return [=](Plan& p) { changeRun(p, "SU-1", [=](Run& r) { r.from.fitting = fitting; }); };
}
/// The suction falls by this much on its way to the room.
inline Edit suctionFallsBy(Length fall) {
  return [=](Plan& p) {
    changeRun(p, "SU-1", [=](Run& r) { r.vertices[1].invert = *r.vertices[0].invert - fall; });
  };
}

/// An air gap in place of the valve, and the next upstream manhole's cover at this elevation, ft.
inline Edit manholeAt(std::optional<double> cover) {
  return [=](Plan& p) {
    replacePart(p, "OF-1", PartKind::BackwaterValve, PartKind::AirGap);
    change(p.sewers, "SW-1", [=](SewerConnection& s) {
      s.upstreamManholeRim = cover ? std::optional(feet(*cover)) : std::nullopt;
    });
  };
}

inline std::vector<Case> waterLineCases() {
  const auto warning = Severity::Warning, error = Severity::Error;
  return {
      {"eductor-mount.place",
       warning,
       {"RC-1"},
       [](Plan& p) { changeRun(p, "RC-1", [](Run& r) { r.to.chamber = 1; }); }},
      {"eductor-mount.union",
       warning,
       {"RC-1"},
       [](Plan& p) { dropPart(p, "RC-1", PartKind::Union); }},
      {"eductor-mount.none",
       warning,
       {"RC-1"},
       [](Plan& p) { changeRun(p, "RC-1", [](Run& r) { r.eductor.reset(); }); }},
      {"eductor-mount.none",
       warning,
       {"RC-1"},
       [](Plan& p) { changeRun(p, "RC-1", [](Run& r) { r.to.fitting = EndFitting::Plain; }); }},
      {"eductor-mount.manway", warning, {"RC-1", "V1"}, eductor([](EductorMount& m) {
         m.manway = "V1-M1";
       })},
      {"eductor-mount.port", warning, {"RC-1"}, eductor([](EductorMount& m) {
         m.portSize = "3/4";
       })},
      {"eductor-mount.undecided", warning, {"RC-1", "V1"}, drop("OF-1")},
      // 18 in and 12 in, 3 in more or less.
      {"eductor-mount.bracket", warning, {"RC-1"}, bracketOverWater(1.76), bracketOverWater(1.74)},
      {"eductor-mount.outlet", warning, {"RC-1"}, outletOverWater(0.74), outletOverWater(0.76)},
      {"suction-source.none", error, {}, drop("SU-1")},
      {"suction-source.no-spare", warning, {}, drop("SS-1")},
      {"suction-source.place",
       warning,
       {"SU-1"},
       [](Plan& p) { changeRun(p, "SU-1", [](Run& r) { r.from.chamber = 1; }); }},
      {"suction-source.open-end",
       warning,
       {"SS-1"},
       [](Plan& p) { changeRun(p, "SS-1", [](Run& r) { r.from.fitting = EndFitting::Plain; }); }},
      {"suction-source.open-end",
       warning,
       {"SU-1"},
       suctionEnd(EndFitting::Tee),
       suctionEnd(EndFitting::Strainer)},
      {"suction-source.shallow", warning, {"SU-1"}, suctionInletAt(96.26), suctionInletAt(96.24)},
      {"suction-source.undecided", warning, {"SU-1"}, drop("OF-1")},
      {"suction-rise.pocket",
       error,
       {"SU-1"},
       suctionFallsBy(inches(0.26)),
       suctionFallsBy(inches(0.24))},
      // 3.26 + 10.50 + 5.50 ft with two bends.
      {"suction-rise.long",
       warning,
       {"SU-1"},
       limit("suction.length", 19.25 * kMetresPerFoot),
       limit("suction.length", 19.27 * kMetresPerFoot)},
      {"suction-rise.long",
       warning,
       {"SU-1"},
       limit("suction.bends", 1),
       limit("suction.bends", 2)},
      {"suction-rise.stated", Severity::Note, {"SU-1"}, [](Plan&) {}},
      {"product-size.none", warning, {}, drop("PW-1")},
      {"product-size.reducer",
       warning,
       {"PW-1", "PW-1-9"},
       [](Plan& p) {
         changeRun(p, "PW-1", [](Run& r) {
           r.parts.push_back({"PW-1-9", PartKind::Reducer, 1, 0.5, "1-1/2"});
         });
       },
       [](Plan& p) {
         changeRun(p, "PW-1", [](Run& r) {
           r.parts.push_back({"PW-1-9", PartKind::Reducer, 1, 0.5, "3"});
         });
       }},
      {"product-size.port",
       warning,
       {"PW-1", "P-PW"},
       [](Plan& p) { changeRun(p, "PW-1", [](Run& r) { r.size = "1-1/2"; }); },
       [](Plan& p) { changeRun(p, "PW-1", [](Run& r) { r.size = "3"; }); }},
      {"overflow-backflow.none", warning, {}, drop("OF-1")},
      {"overflow-backflow.not-sewer",
       warning,
       {"OF-1"},
       [](Plan& p) {
         changeRun(p, "OF-1", [](Run& r) { r.to = {EndKind::Free, "", 0, {}, feet(95.8), {}}; });
       }},
      {"overflow-backflow.open",
       warning,
       {"OF-1"},
       [](Plan& p) {
         manholeAt(101.9)(p);
         dropPart(p, "OF-1", PartKind::AirGap);
       },
       manholeAt(101.9)},
      // The drain's rim is at 102 ft.
      {"overflow-backflow.low", error, {"OF-1"}, manholeAt(102.01), manholeAt(101.99)},
      {"overflow-backflow.undecided", warning, {"OF-1", "SW-1"}, manholeAt(std::nullopt)},
      {"make-up-protection.none", warning, {}, drop("MU-1")},
      {"make-up-protection.open",
       error,
       {"MU-1"},
       [](Plan& p) { dropPart(p, "MU-1", PartKind::ReducedPressureAssembly); },
       [](Plan& p) {
         replacePart(p, "MU-1", PartKind::ReducedPressureAssembly, PartKind::AirGap);
       }},
      {"make-up-protection.double-check",
       error,
       {"MU-1"},
       [](Plan& p) {
         replacePart(p, "MU-1", PartKind::ReducedPressureAssembly, PartKind::DoubleCheck);
       }},
  };
}

inline Edit boxAt(std::optional<RoomBox> EquipmentRoom::*box, double x) {
  return [=](Plan& p) {
    changeRoom(p, [=](EquipmentRoom& r) { (r.*box)->corner.x = x * kMetresPerFoot; });
  };
}
inline Edit areaLength(double length) {
  return [=](Plan& p) {
    changeRoom(p, [=](EquipmentRoom& r) { r.plumbingArea->length = feet(length); });
  };
}
inline Edit recirculationPortAt(double x) {
  return [=](Plan& p) {
    changeRoom(p, [=](EquipmentRoom& r) {
      for (Port& port : r.ports)
        if (port.id == "P-RC") port.at.x = x * kMetresPerFoot;
    });
  };
}

inline std::vector<Case> roomCases() {
  const auto warning = Severity::Warning;
  return {
      {"room-clearance.none", warning, {}, [](Plan& p) { p.rooms = {}; }},
      {"room-clearance.undecided",
       warning,
       {"ER-1"},
       [](Plan& p) { changeRoom(p, [](EquipmentRoom& r) { r.skid.reset(); }); }},
      {"room-clearance.outside",
       warning,
       {"ER-1"},
       boxAt(&EquipmentRoom::skid, 8.01),
       boxAt(&EquipmentRoom::skid, 8)},
      {"room-clearance.narrow",
       warning,
       {"ER-1"},
       boxAt(&EquipmentRoom::panel, 5.99),
       boxAt(&EquipmentRoom::panel, 6)},
      {"room-clearance.crowded",
       warning,
       {"ER-1"},
       boxAt(&EquipmentRoom::panel, 7.99),
       boxAt(&EquipmentRoom::panel, 8)},
      {"room-clearance.area-small", warning, {"ER-1"}, areaLength(1.99), areaLength(2)},
      {"room-clearance.port-outside",
       warning,
       {"P-RC", "ER-1"},
       recirculationPortAt(4.01),
       recirculationPortAt(4)},
      {"room-clearance.left", warning, {"ER-1"}, boxAt(&EquipmentRoom::plumbingArea, 8)},
  };
}

} // namespace sump::testing
