#pragma once
// Flotation and the dig. Vault 1 covers x 62 to 74, y 47 to 53 ft, vault 2 y 55 to 61 ft; with 2 ft
// of working space their digs are one pit from x 60 to 76, y 45 to 63 ft, shored upright.

#include "core/study/wall_sleeves.h"
#include "tests/rules/cases_peak.h"
#include "tests/rules/cases_vaults.h"

#include <cmath>
#include <utility>

namespace sump::testing {

/// Vault 1 so heavy that this is its factor of safety, with groundwater at 100 ft.
inline Edit flotationFactor(double factor) {
  return [=](Plan& p) {
    p.site.groundwater = feet(100);
    const Review r = reviewed(p);
    const BuoyancyStudy& vault = r.study.earth.buoyancy.front();
    const double add = (factor - *vault.factor) * vault.uplift->value() / 9.80665;
    changeVault(p, "V1", [&](Vault& v) { v.emptyWeight = vault.weight + kilograms(add); });
  };
}
inline Edit kioskTo(double x, std::optional<Length> footing) {
  return [=](Plan& p) {
    p.buildings.put({"B-KIOSK", "Kiosk", ringInFeet(50, 47, x, 53), {}, footing});
  };
}
/// A kiosk whose footing lies this far over the 45 degree plane through the toe of the pit.
inline Edit kioskFootingOverPlane(Length over) {
  return [=](Plan& p) {
    kioskTo(56, std::nullopt)(p);
    const Review r = reviewed(p);
    const FootingCheck& check = r.study.earth.pits.front().footings.front();
    kioskTo(56, check.toe + check.distance + over)(p);
  };
}
inline Edit road(double x) {
  return [=](Plan& p) { p.pavements.put({"PV-NEW", "Lane", ringInFeet(50, 40, x, 70), true}); };
}
inline Edit gasPipe(double y) {
  return [=](Plan& p) {
    constexpr double f = kMetresPerFoot;
    p.utilities.put(
        {"U-GAS", "Gas", UtilityKind::Gas, {{50 * f, y * f}, {90 * f, y * f}}, {}, {}, false});
  };
}
inline Edit wellInPit(double y) {
  return [=](Plan& p) { p.wells.put({"W-NEW", "", {67 * kMetresPerFoot, y * kMetresPerFoot}}); };
}
inline double deepestDig(const Review& r) {
  return inMetres(*r.study.earth.deepest);
}
inline double ladderAway(const Review& r) {
  return inMetres(*r.study.earth.pits.front().egress.farthest);
}
inline double spoilAway(const Review& r) {
  return inMetres(*r.study.earth.spoilClear);
}
/// A square place for this share of what is kept: sides at 1.5 to 1 that meet at the top make a
/// pyramid of a third of side^2 x side / 3.
inline Edit spoilHeapHolding(double share) {
  return [=](Plan& p) {
    limit("dig.spoil-height", 100)(p);
    const double kept = reviewed(p).study.earth.kept->value();
    const double side = std::cbrt(9 * kept * share);
    const Point2 corner = p.basis.earth.spoil.front();
    p.basis.earth.spoil = {corner, corner + Point2{side, 0}, corner + Point2{side, side},
                           corner + Point2{0, side}};
  };
}
inline void noGroundAtAll(Plan& p) {
  p.spots = {};
  p.site.groundDefault.reset();
}
inline Edit unprotected(double share) {
  return [=](Plan& p) {
    limitOf("dig.protection-depth", deepestDig, share)(p);
    p.basis.earth.protection = ProtectiveSystem::None;
  };
}
/// No ladders, in a pit that needs them from this share of its depth on.
inline Edit withoutLadders(double share) {
  return [=](Plan& p) {
    p.basis.earth.ladders.clear();
    limitOf(
        "dig.egress-depth",
        [](const Review& r) { return inMetres(*r.study.earth.pits.front().depth); }, share)(p);
  };
}

inline const TrenchStudy& trenchOf(const Review& r, std::string_view run) {
  return *std::ranges::find(r.study.earth.trenches, run, &TrenchStudy::run);
}
inline double ladderAwayInTrench(const Review& r) {
  return inMetres(*trenchOf(r, "OF-1").egress.farthest);
}
/// No ladders, in a trench that needs them from this share of its depth on.
inline Edit trenchWithoutLadders(double share) {
  return [=](Plan& p) {
    p.basis.earth.ladders.clear();
    limitOf(
        "dig.egress-depth", [](const Review& r) { return inMetres(trenchOf(r, "OF-1").depth); },
        share)(p);
  };
}
/// A 2 in vent, whose trench is OD + 16 in = 18.375 in wide, from x 62 to 74 ft at 97 ft.
inline Edit ventAlong(double y) {
  return [=](Plan& p) {
    constexpr double f = kMetresPerFoot;
    Run vent;
    vent.id = "VT-9";
    vent.service = Service::Vent;
    vent.pipe = "pvc-sch80";
    vent.size = "2";
    vent.from.at = {62 * f, y * f};
    vent.to.at = {74 * f, y * f};
    vent.from.invert = vent.to.invert = feet(97);
    p.runs.put(vent);
  };
}
/// The recirculation, which goes into the pit at 50 ft, comes down so far east.
inline Edit recirculationEastAt(double x) {
  return [=](Plan& p) {
    changeRun(p, "RC-1", [=](Run& r) {
      for (Vertex& vertex : r.vertices)
        if (vertex.at.x > 74 * kMetresPerFoot) vertex.at.x = x * kMetresPerFoot;
    });
  };
}
inline Edit kioskSouthOfVent(double y) {
  return [=](Plan& p) {
    ventAlong(43)(p);
    p.buildings.put({"B-KIOSK", "Kiosk", ringInFeet(60, 38, 76, y), {}, feet(90)});
  };
}

inline WallSleeve powerSleeve(const Review& r) {
  const auto all = wallSleeves(r.plan, buildingParts(r.plan), *r.study.run("PC-1"));
  return *std::ranges::find(all, std::vector<Id>{"B-MAINT"}, &WallSleeve::buildings);
}
inline void footAt(Plan& p, std::optional<Length> level) {
  change(p.buildings, "B-MAINT", [&](Building& b) { b.footing = level; });
}
/// The maintenance building's footing, 12 in thick, ends this far over the sleeve's underside.
inline Edit footingOverSleeve(Length over) {
  return [=](Plan& p) { footAt(p, powerSleeve(reviewed(p)).low - inches(12) + over); };
}
/// The footing's underside stands this far over the sleeve's top.
inline Edit sleeveUnderFooting(Length over) {
  return [=](Plan& p) { footAt(p, powerSleeve(reviewed(p)).high + over); };
}

/// A level 2 in vent along the west wall of the maintenance building, which stands at x 110 ft, its
/// outside so many inches clear of it.
inline Edit ventBesideMaintenance(double clear, double invert) {
  return [=](Plan& p) {
    const double x = 110 * kMetresPerFoot - (clear + 2.375 / 2) * 0.0254;
    Run vent;
    vent.id = "VT-9";
    vent.service = Service::Vent;
    vent.pipe = "pvc-sch80";
    vent.size = "2";
    vent.from.at = {x, 28};
    vent.to.at = {x, 32};
    vent.from.invert = vent.to.invert = metres(invert);
    p.runs.put(vent);
  };
}

inline std::vector<Case> footingPassCases() {
  const auto warning = Severity::Warning;
  const Length hair = millimetres(1);
  const std::vector<Id> power = {"PC-1", "B-MAINT"}, beside = {"VT-9", "B-MAINT"};
  return {
      {"footing-pass.through", warning, power, footingOverSleeve(hair), footingOverSleeve(-hair)},
      {"footing-pass.under", warning, power, sleeveUnderFooting(hair), sleeveUnderFooting(-hair)},
      {"footing-pass.undecided", warning, power, [](Plan& p) { footAt(p, std::nullopt); }},
      // The footing stands from 29.9 m, 12 in high.
      {"footing-pass.beside", warning, beside, ventBesideMaintenance(5.97, 30),
       ventBesideMaintenance(6.03, 30)},
      // 2 in Sch 80 is 0.231 in thick in the catalogue.
      {"footing-pass.beside", warning, beside, ventBesideMaintenance(3, 29.9 + 12.2 * 0.0254),
       ventBesideMaintenance(3, 29.9 + 12.3 * 0.0254)},
      // Its outside top under the underside: 1.913 in and 0.231 in over the invert.
      {"footing-pass.beside", warning, beside, ventBesideMaintenance(3, 29.9 - 2.1 * 0.0254),
       ventBesideMaintenance(3, 29.9 - 2.2 * 0.0254)},
      {"footing-pass.undecided", warning, beside,
       [](Plan& p) {
         ventBesideMaintenance(5.97, 30)(p);
         footAt(p, std::nullopt);
       }},
      {"footing-pass.undecided",
       warning,
       {"VT-1"},
       [](Plan& p) { changeRun(p, "VT-1", [](Run& r) { r.to.invert.reset(); }); }},
  };
}

inline std::vector<Case> buoyancyCases() {
  const auto warning = Severity::Warning, error = Severity::Error;
  const Edit ours = limit("earth.flotation-factor", 1.2);
  return {
      {"buoyancy.floats", error, {"V1"}, flotationFactor(0.999), flotationFactor(1.001)},
      // The generic 1.1 is from memory; a project's own figure is firm.
      {"buoyancy.light", warning, {"V1"}, flotationFactor(1.099), flotationFactor(1.101)},
      {"buoyancy.light",
       error,
       {"V1"},
       [=](Plan& p) {
         flotationFactor(1.199)(p);
         ours(p);
       },
       [=](Plan& p) {
         flotationFactor(1.201)(p);
         ours(p);
       }},
      {"buoyancy.undecided", warning, {"V1"}, [](Plan& p) { p.site.groundwater.reset(); }},
      {"buoyancy.undecided",
       warning,
       {"V1"},
       [](Plan& p) {
         p.site.groundwater = feet(100);
         p.basis.earth.soilHold.reset();
       }},
  };
}

inline std::vector<Case> digCases() {
  const auto warning = Severity::Warning, error = Severity::Error;
  const Length hair = millimetres(2);
  const std::vector<Id> pit = {"V1", "V2"}, kiosk = {"V1", "V2", "B-KIOSK"};
  return {
      {"footing-plane.below", warning, kiosk, kioskFootingOverPlane(hair),
       kioskFootingOverPlane(-hair)},
      {"footing-plane.undecided", warning, kiosk, kioskTo(56, std::nullopt)},
      {"footing-plane.undecided", warning, {"V1"}, noGroundAtAll},
      // A room that no building holds stands on a footing that nobody has told.
      {"footing-plane.undecided",
       warning,
       {"V1", "V2", "ER-1"},
       [](Plan& p) { p.buildings.erase("B-EQ"); }},
      {"dig-overlap.building", warning, kiosk, kioskTo(60.01, feet(90)), kioskTo(59.99, feet(90))},
      {"dig-overlap.boundary", warning, pit, southBoundary(45.01), southBoundary(44.99)},
      {"dig-overlap.road", warning, {"V1", "V2", "PV-NEW"}, road(60.01), road(59.99)},
      {"dig-overlap.well", warning, {"V1", "V2", "W-NEW"}, wellInPit(45.01), wellInPit(44.99)},
      {"dig-overlap.utility", warning, {"V1", "V2", "U-GAS"}, gasPipe(45.01), gasPipe(44.99)},
      // Half of 18.375 in from the pit at 45 ft.
      {"dig-overlap.trench", warning, {"VT-9", "V1", "V2"}, ventAlong(44.24), ventAlong(44.23)},
      // And 2 ft more.
      {"dig-overlap.berm", warning, {"VT-9", "V1", "V2"}, ventAlong(42.24), ventAlong(42.23)},
      {"dig-overlap.berm", warning, {"RC-1", "V1", "V2"}, recirculationEastAt(76.5)},
      {"dig-overlap.trench-building",
       warning,
       {"VT-9", "B-KIOSK"},
       kioskSouthOfVent(42.24),
       kioskSouthOfVent(42.23)},
      {"dig-overlap.undecided", warning, {"V1"}, noGroundAtAll},
      {"dig-protection.none", error, {}, unprotected(0.999), unprotected(1.001)},
      {"dig-protection.engineer",
       error,
       {},
       limitOf("dig.engineer-depth", deepestDig, 0.999),
       limitOf("dig.engineer-depth", deepestDig, 1.001)},
      {"dig-protection.undecided", warning, {}, noGroundAtAll},
      {"dig-egress.none", warning, pit, withoutLadders(0.999), withoutLadders(1.001)},
      {"dig-egress.far", warning, pit, limitOf("dig.egress-travel", ladderAway, 0.999),
       limitOf("dig.egress-travel", ladderAway, 1.001)},
      {"dig-egress.trench-none",
       warning,
       {"OF-1"},
       trenchWithoutLadders(0.999),
       trenchWithoutLadders(1.001)},
      {"dig-egress.trench-far",
       warning,
       {"OF-1"},
       limitOf("dig.egress-travel", ladderAwayInTrench, 0.999),
       limitOf("dig.egress-travel", ladderAwayInTrench, 1.001)},
      {"dig-egress.undecided", warning, {"V1"}, noGroundAtAll},
      {"spoil-edge.near",
       warning,
       {},
       limitOf("dig.spoil-distance", spoilAway, 1.001),
       limitOf("dig.spoil-distance", spoilAway, 0.999)},
      {"spoil-edge.undecided", warning, {}, [](Plan& p) { p.basis.earth.spoil.clear(); }},
      {"spoil-room.small", warning, {}, spoilHeapHolding(0.999), spoilHeapHolding(1.001)},
      {"spoil-room.undecided", warning, {}, [](Plan& p) { p.basis.earth.spoil.clear(); }},
      {"spoil-room.undecided", warning, {}, noGroundAtAll},
  };
}

} // namespace sump::testing
