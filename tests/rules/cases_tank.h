#pragma once
// The inside of the vaults: where pipes come in, dips, depth, shares, vents; access to drains.
// Water at rest stands at 97.25 ft, 4 ft over the floors; the inlet comes in at 97.60 ft.

#include "core/plan/ends.h"
#include "tests/rules/cases_levels.h"

namespace sump::testing {

inline Edit inletAt(double invert) {
  return [=](Plan& p) { changeRun(p, "WW-1", [=](Run& r) { r.to.invert = feet(invert); }); };
}
inline Edit inletFitting(EndFitting fitting) {
  return [=](Plan& p) {
    changeRun(p, "WW-1", [=](Run& r) {
      r.to.fitting = fitting;
      if (!turnsDown(fitting)) r.to.legEnd.reset();
    });
  };
}
inline Edit overflowFitting(EndFitting fitting) {
  return [=](Plan& p) {
    changeRun(p, "OF-1", [=](Run& r) {
      r.from.fitting = fitting;
      if (!turnsDown(fitting)) r.from.legEnd.reset();
    });
  };
}
/// The inlet drops to this invert inside the vault, at the place where it ends.
inline Edit inletDropsTo(double invert) {
  return [=](Plan& p) {
    const Point2 end = *sitePosition(p, p.runs.find("WW-1")->to);
    changeRun(p, "WW-1", [=](Run& r) {
      r.vertices.push_back({end, r.to.invert});
      r.to.invert = feet(invert);
      r.to.legEnd.reset();
    });
  };
}
inline Edit inletLegTo(double level) {
  return [=](Plan& p) { changeRun(p, "WW-1", [=](Run& r) { r.to.legEnd = feet(level); }); };
}
inline Edit overflowLegTo(double level) {
  return [=](Plan& p) { changeRun(p, "OF-1", [=](Run& r) { r.from.legEnd = feet(level); }); };
}
/// The overflow rises from this invert to where it leaves the vault.
inline Edit overflowRisesFrom(double invert) {
  return [=](Plan& p) {
    const Point2 start = *sitePosition(p, p.runs.find("OF-1")->from);
    changeRun(p, "OF-1", [=](Run& r) {
      r.vertices.insert(r.vertices.begin(), Vertex{start, r.from.invert});
      r.from.invert = feet(invert);
      r.from.legEnd.reset();
      for (InlinePart& part : r.parts)
        ++part.leg;
    });
  };
}
/// The baffle of vault 1 so that the first chamber takes this share of the 10.5 ft.
inline Edit firstShare(double share) {
  return [=](Plan& p) {
    changeVault(p, "V1", [=](Vault& v) { v.baffles[0].offset = feet(10.5 * share); });
  };
}
inline Edit floorOfV2(double floor) {
  return [=](Plan& p) { changeVault(p, "V2", [=](Vault& v) { v.floor = feet(floor); }); };
}
inline Edit sludge(double inch) {
  return [=](Plan& p) {
    p.basis.water.sludgeDepth = inches(inch);
    p.basis.water.oilDepth = inches(2);
  };
}
inline Edit topGapOfV1(Length gap) {
  return [=](Plan& p) { changeVault(p, "V1", [=](Vault& v) { v.baffles[0].topGap = gap; }); };
}

inline Edit roofOf(const Id& building, std::optional<double> level) {
  return [=](Plan& p) {
    change(p.buildings, building,
           [=](Building& b) { b.roof = level ? std::optional(feet(*level)) : std::nullopt; });
  };
}

inline std::vector<Case> tankCases() {
  const auto warning = Severity::Warning, error = Severity::Error, note = Severity::Note;
  const std::vector<Id> inlet = {"WW-1", "V1"}, overflow = {"OF-1", "V2"};
  return {
      // 2 in over 97.25 ft is 97.417 ft. At the wall, a hand before its end, it is a little higher.
      {"inlet-above-outlet.low", error, inlet, inletAt(97.40), inletAt(97.42)},
      {"inlet-above-outlet.low", error, inlet, inletAt(97.20)},
      {"inlet-above-outlet.undecided", warning, inlet, drop("OF-1")},
      {"inlet-dip.none", warning, inlet, inletFitting(EndFitting::Plain),
       inletFitting(EndFitting::ElbowDown)},
      // 8 in under the water is 96.583 ft; 20 and 40 % of 4 ft are 96.45 and 95.65 ft.
      {"inlet-dip.shallow", warning, inlet, inletDropsTo(96.60), inletDropsTo(96.45)},
      {"inlet-dip.depth", warning, inlet, inletDropsTo(96.46), inletDropsTo(96.44)},
      {"inlet-dip.depth", warning, inlet, inletDropsTo(95.64), inletDropsTo(95.66)},
      {"inlet-dip.shallow", warning, inlet, inletLegTo(96.60), inletLegTo(96.45)},
      {"inlet-dip.depth", warning, inlet, inletLegTo(96.46), inletLegTo(96.44)},
      {"inlet-dip.depth", warning, inlet, inletLegTo(95.64), inletLegTo(95.66)},
      {"inlet-dip.undecided", warning, inlet, drop("OF-1")},
      {"outlet-dip.none", warning, overflow, overflowFitting(EndFitting::Plain),
       overflowFitting(EndFitting::ElbowDown)},
      // 25 and 40 % of 4 ft under 97.25 ft: 96.25 and 95.65 ft.
      {"outlet-dip.depth", warning, overflow, overflowRisesFrom(96.26), overflowRisesFrom(96.24)},
      {"outlet-dip.depth", warning, overflow, overflowRisesFrom(95.64), overflowRisesFrom(95.66)},
      {"outlet-dip.depth", warning, overflow, overflowLegTo(96.26), overflowLegTo(96.24)},
      {"outlet-dip.depth", warning, overflow, overflowLegTo(95.64), overflowLegTo(95.66)},
      // Low water stands at 96.00 ft with 2 in of oil on it.
      {"outlet-dip.low-water", warning, overflow, overflowLegTo(95.84), overflowLegTo(95.83)},
      {"outlet-dip.undecided", warning, overflow,
       [](Plan& p) { changeRun(p, "OF-1", [](Run& r) { r.from.invert.reset(); }); }},
      {"first-chamber-share.small", warning, {"V1"}, firstShare(0.495), firstShare(0.505)},
      {"first-chamber-share.large", warning, {"V1"}, firstShare(0.755), firstShare(0.745)},
      {"first-chamber-share.undecided", warning, {"V1"}, drop("OF-1")},
      // 30 in under 97.25 ft is 94.75 ft, 84 in 90.25 ft.
      {"liquid-depth.shallow", warning, {"V2"}, floorOfV2(94.76), floorOfV2(94.74)},
      {"liquid-depth.deep", warning, {"V2"}, floorOfV2(90.24), floorOfV2(90.26)},
      {"liquid-depth.undecided", warning, {"V2"}, drop("OF-1")},
      // 25 % of 48 in is 12 in, of which 2 in are oil.
      {"sludge-share.much", warning, {"V1"}, sludge(10.01), sludge(9.99)},
      {"sludge-share.undecided",
       warning,
       {"V1"},
       [](Plan& p) { p.basis.water.sludgeDepth.reset(); }},
      {"lid-airspace.undecided", warning, {"V2"}, drop("OF-1")},
      {"vent-air-space.none", warning, {"V1"}, topGapOfV1(inches(0)), topGapOfV1(inches(0.5))},
      // The vent ends at 120.5 ft: half a foot over 120 ft.
      {"vent-over-roof.low",
       warning,
       {"VT-1", "B-BAY"},
       roofOf("B-BAY", 120.02),
       roofOf("B-BAY", 120)},
      // The equipment building's corner is 79 - 74.5 = 4.5 ft west of it.
      {"vent-over-roof.low",
       warning,
       {"VT-1", "B-EQ"},
       roofOf("B-EQ", 120.02),
       roofOf("B-EQ", 112)},
      {"vent-over-roof.undecided",
       warning,
       {"VT-1", "B-BAY"},
       roofOf("B-BAY", {}),
       roofOf("B-BAY", 120)},
      // Too far off to matter.
      {"vent-over-roof.undecided",
       warning,
       {"VT-1", "B-EQ"},
       roofOf("B-EQ", {}),
       roofOf("B-MAINT", {})},
      {"manway-per-chamber.narrow",
       note,
       {"V1"},
       [](Plan& p) {
         changeVault(p, "V1", [](Vault& v) { v.manways[0].diameter = inches(23.5); });
       },
       [](Plan& p) {
         changeVault(p, "V1", [](Vault& v) { v.manways[0].diameter = millimetres(600); });
       }},
  };
}

/// The overflow turns square to the south at 4 ft east; the cleanout lies at this share of its
/// first leg, which is 59.5 ft long.
inline Edit squareOverflow(double cleanoutAt) {
  return [=](Plan& p) {
    changeRun(p, "OF-1", [=](Run& r) {
      r.vertices[0].at.x = 4 * kMetresPerFoot;
      for (InlinePart& part : r.parts)
        if (part.kind == PartKind::Cleanout) part.along = cleanoutAt;
    });
  };
}
inline Edit unknownOverflow() {
  return [](Plan& p) { changeRun(p, "OF-1", [](Run& r) { r.from.invert.reset(); }); };
}

inline std::vector<Case> accessCases() {
  const auto warning = Severity::Warning, error = Severity::Error;
  return {
      // From the cleanout at 0.3 of 32.5 ft on: 22.75 and 38.18 ft, 60.93 ft together.
      {"cleanout-spacing.far",
       error,
       {"OF-1"},
       limit("cleanout.spacing", 60.8 * kMetresPerFoot),
       limit("cleanout.spacing", 61.1 * kMetresPerFoot)},
      {"cleanout-spacing.far",
       error,
       {"OF-1"},
       [](Plan& p) {
         dropPart(p, "OF-1", PartKind::Cleanout);
         p.limits["cleanout.spacing"] = 70 * kMetresPerFoot;
       },
       limit("cleanout.spacing", 70 * kMetresPerFoot)},
      {"cleanout-spacing.undecided", warning, {"OF-1"}, unknownOverflow()},
      // 40 ft before the turn is 19.5 ft from the start: 0.328 of the leg.
      {"cleanout-turn.far", warning, {"OF-1"}, squareOverflow(0.31), squareOverflow(0.34)},
      {"cleanout-turn.undecided", warning, {"OF-1"}, unknownOverflow()},
      {"gravity-slope.undecided", warning, {"OF-1"}, unknownOverflow()},
  };
}

} // namespace sump::testing
