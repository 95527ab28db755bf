#pragma once
// Links, interconnects, baffles, airspace, lids, access and what stands near. Vault 1 covers
// x 62 to 74, y 47 to 53 ft; vault 2 y 55 to 61 ft.

#include "tests/rules/cases_levels.h"

namespace sump::testing {

/// The link with its high part and its start at these inverts, ft.
inline Edit linkAt(double start, double high) {
  return [=](Plan& p) {
    changeRun(p, "LK-1", [=](Run& r) {
      r.from.invert = feet(start);
      r.vertices[0].invert = feet(high);
      r.to.invert = feet(high - 0.04);
    });
  };
}
inline Edit interconnectAt(double invert, std::string_view id = "IC-1") {
  return [=](Plan& p) {
    changeRun(p, id, [=](Run& r) { r.from.invert = r.to.invert = feet(invert); });
  };
}
inline Edit gaps(Length bottom, Length top) {
  return [=](Plan& p) {
    changeVault(p, "V1", [=](Vault& v) {
      v.baffles[0].bottomGap = bottom;
      v.baffles[0].topGap = top;
    });
  };
}
inline Edit interconnectEnds(EndFitting from, EndFitting to) {
  return [=](Plan& p) {
    changeRun(p, "IC-1", [=](Run& r) {
      r.from.fitting = from;
      r.to.fitting = to;
    });
  };
}
inline Edit insideHeight(double height) {
  return [=](Plan& p) { changeVault(p, "V2", [=](Vault& v) { v.insideHeight = feet(height); }); };
}

inline std::vector<Case> passageCases() {
  const auto warning = Severity::Warning;
  return {
      {"vault-link.missing", warning, {"V1", "V2"}, drop("LK-1")},
      // 6 in under the water at 97.25 ft.
      {"vault-link.low", warning, {"LK-1"}, linkAt(95.25, 96.74), linkAt(95.25, 96.76)},
      // 65 % of 4 ft over the floor is 95.85 ft; 35 % is 94.65 ft.
      {"vault-link.drop", warning, {"LK-1"}, linkAt(95.86, 97), linkAt(95.84, 97)},
      {"vault-link.drop", warning, {"LK-1"}, linkAt(94.64, 97), linkAt(94.66, 97)},
      {"vault-link.undecided", warning, {"LK-1", "V1"}, drop("OF-1")},
      {"interconnect-depth.missing", warning, {"V1-B1", "V1"}, drop("IC-1")},
      {"interconnect-depth.fittings",
       warning,
       {"IC-1"},
       interconnectEnds(EndFitting::Tee, EndFitting::Plain),
       interconnectEnds(EndFitting::ElbowDown, EndFitting::Tee)},
      {"interconnect-depth.fittings",
       warning,
       {"IC-1"},
       interconnectEnds(EndFitting::Tee, EndFitting::Tee)},
      // 6 in Sch 80 has a bore of 5.71 in (ASTM D1785: 6.625 less twice 0.432, less tolerance), so
      // its centre lies 0.24 ft over the invert.
      {"interconnect-depth.depth",
       warning,
       {"IC-1", "V1"},
       interconnectAt(94.65 - 0.25),
       interconnectAt(94.65 - 0.23)},
      {"interconnect-depth.depth",
       warning,
       {"IC-1", "V1"},
       interconnectAt(95.85 - 0.23),
       interconnectAt(95.85 - 0.25)},
      // The tee's upper arm ends 0.238 + (3.875 + 6.625/2)/12 = 0.837 ft over the invert; low water
      // stands 33 in over the floor of 93.25 ft, its 2 in of oil reach down to 95.833 ft.
      {"interconnect-depth.low-water",
       warning,
       {"IC-2", "V2"},
       interconnectAt(95.00, "IC-2"),
       interconnectAt(94.99, "IC-2")},
      {"interconnect-depth.undecided", warning, {"IC-1", "V1"}, drop("OF-1")},
      {"baffle-full-height.none",
       warning,
       {"V1"},
       [](Plan& p) { changeVault(p, "V1", [](Vault& v) { v.baffles.clear(); }); }},
      {"baffle-full-height.bottom",
       warning,
       {"V1-B1", "V1"},
       gaps(inches(1.01), inches(0)),
       gaps(inches(0.99), inches(0))},
      {"baffle-full-height.top",
       warning,
       {"V1-B1", "V1"},
       gaps(inches(0), inches(1.01)),
       gaps(inches(0), inches(0.99))},
      {"lid-airspace.low", warning, {"V2"}, insideHeight(4.74), insideHeight(4.76)},
  };
}

inline Edit manwayWidth(Length diameter) {
  return
      [=](Plan& p) { changeVault(p, "V1", [=](Vault& v) { v.manways[0].diameter = diameter; }); };
}
inline Edit kioskWestOfVault1By(double clear) {
  return [=](Plan& p) {
    p.buildings.put({"B-KIOSK", "Kiosk", ringInFeet(50, 47, 62 - clear, 53), {}, {}});
  };
}
inline Edit southBoundary(double y) {
  return [=](Plan& p) { p.site.boundary = ringInFeet(0, y, 200, 140); };
}
inline Edit plainLid(bool trafficPavement) {
  return [=](Plan& p) {
    changeVault(p, "V1", [](Vault& v) { v.trafficLid = false; });
    change(p.pavements, "PV-YARD", [=](Pavement& y) { y.traffic = trafficPavement; });
  };
}
inline Edit plainCover(bool trafficPavement) {
  return [=](Plan& p) {
    changeVault(p, "V1", [](Vault& v) { v.manways[0].trafficCover = false; });
    change(p.pavements, "PV-YARD", [=](Pavement& y) { y.traffic = trafficPavement; });
  };
}
/// A corner of the boundary at y 47.5 ft points into the middle of vault 1's south side.
inline void notchedBoundary(Plan& p) {
  constexpr double f = kMetresPerFoot;
  p.site.boundary = {{0, 0},       {67 * f, 0},        {68 * f, 47.5 * f}, {69 * f, 0},
                     {200 * f, 0}, {200 * f, 140 * f}, {0, 140 * f}};
}

inline std::vector<Case> siteCases() {
  const auto error = Severity::Error;
  return {
      {"traffic-lid.lid", error, {"V1", "PV-YARD"}, plainLid(true), plainLid(false)},
      {"traffic-lid.cover", error, {"V1-M1", "V1"}, plainCover(true), plainCover(false)},
      {"manway-per-chamber.missing",
       error,
       {"V1"},
       manwayWidth(inches(17.9)),
       manwayWidth(inches(18))},
      {"manway-per-chamber.missing",
       error,
       {"V2"},
       [](Plan& p) { changeVault(p, "V2", [](Vault& v) { v.manways.pop_back(); }); }},
      {"vault-clash.overlap",
       error,
       {"V1", "V2"},
       [](Plan& p) { changeVault(p, "V2", [](Vault& v) { v.centre.y -= 2.01 * kMetresPerFoot; }); },
       [](Plan& p) {
         changeVault(p, "V2", [](Vault& v) { v.centre.y -= 1.99 * kMetresPerFoot; });
       }},
      {"vault-clash.overlap",
       error,
       {"V1", "B-KIOSK"},
       kioskWestOfVault1By(-0.01),
       kioskWestOfVault1By(0.01)},
      {"vault-clash.near",
       error,
       {"V1", "B-KIOSK"},
       kioskWestOfVault1By(4.99),
       kioskWestOfVault1By(5)},
      {"vault-clash.near",
       error,
       {"V2", "ER-1"},
       [](Plan& p) { changeRoom(p, [](EquipmentRoom& r) { r.corner.y = 65.9 * kMetresPerFoot; }); },
       [](Plan& p) {
         changeRoom(p, [](EquipmentRoom& r) { r.corner.y = 66.1 * kMetresPerFoot; });
       }},
      {"vault-clash.boundary", error, {"V1"}, southBoundary(42.01), southBoundary(42)},
      {"vault-clash.outside", error, {"V1"}, southBoundary(47.01), southBoundary(46.99)},
      {"vault-clash.outside", error, {"V1"}, notchedBoundary},
  };
}

} // namespace sump::testing
