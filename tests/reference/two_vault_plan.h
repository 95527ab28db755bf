#pragma once
// The plan that two_vault_plan.md works by hand. Change both or neither.

#include "tests/support/plan_parts.h"

namespace sump::test {

/// Feet and inches of elevation.
constexpr Length level(double wholeFeet, double inchesMore = 0) {
  return Length::from_value((wholeFeet + inchesMore / 12) * kMetresPerFoot);
}

inline void addTwoVaultSite(Plan& plan) {
  // Grade 97.00 at x = 0, falling east by 1 in 100.
  for (const auto& [id, x, y] : {std::tuple("S1", -40.0, -40.0),
                                 {"S2", 100.0, -40.0},
                                 {"S3", 100.0, 60.0},
                                 {"S4", -40.0, 60.0}}) {
    plan.spots.put(spot(id, ft(x, y), feet(97 - x / 100)));
  }
  plan.basins.put({"CB", "Catch basin", BasinKind::CatchBasin, ft(-20, 22), degrees(0), feet(2),
                   feet(2), level(97), level(95)});
  plan.sewers.put({"SW", "Sewer", ft(84.5, -10), level(93, 0.875), std::nullopt});
  EquipmentRoom room;
  room.id = "ER";
  room.corner = ft(36, 20);
  room.length = feet(10);
  room.width = feet(8);
  room.floor = level(97);
  room.ports = {{"P-SU", "Suction", Service::Suction, ft(2.5, 1), feet(1), "2"},
                {"P-FC", "Float", Service::FloatConduit, ft(1.5, 2), feet(1.5), "1"}};
  plan.rooms.put(room);
}

inline void addTwoVaults(Plan& plan) {
  Vault first = twoChamberVault("V1", ft(20, 10), level(90));
  first.manways = {{"V1-M1", ft(-2.75, 0), inches(24), std::nullopt, false},
                   {"V1-M2", ft(2.75, 0), inches(24), level(97), false}};
  Vault second = twoChamberVault("V2", ft(34.5, 10), level(89, 9));
  plan.vaults.put(first);
  plan.vaults.put(second);
}

inline Run interconnect(const Id& id, const Id& vault, Length invert) {
  return makeRun(id, Service::Interconnect, "pvc-sch80", "6",
                 inChamber(vault, 1, ft(-1.25, 0), invert, EndFitting::Tee),
                 inChamber(vault, 2, ft(1.25, 0), invert, EndFitting::ElbowDown));
}

inline void addTwoVaultGravityRuns(Plan& plan) {
  plan.runs.put(makeRun("IN", Service::Inlet, "pvc-sdr35", "6", at(EndKind::Basin, "CB", ft(1, 0)),
                        inChamber("V1", 1, ft(-4, 0), level(94, 3), EndFitting::Tee),
                        {{ft(12, 22), std::nullopt}, {ft(16, 18), std::nullopt}}));
  plan.runs.put(interconnect("IC-1", "V1", level(91, 9)));
  plan.runs.put(makeRun("LK", Service::Link, "pvc-sch80", "6",
                        inChamber("V1", 2, ft(4, 0), level(94), EndFitting::Tee),
                        inChamber("V2", 1, ft(-4, 0), level(91, 9)),
                        {{ft(30.5, 10), level(93, 11)}}));
  plan.runs.put(interconnect("IC-2", "V2", level(91, 6)));
  Run overflow = makeRun("OF", Service::Overflow, "pvc-sch80", "6",
                         inChamber("V2", 2, ft(4, -1), level(93, 9), EndFitting::Tee),
                         at(EndKind::Sewer, "SW"), {{ft(38.5, -10), std::nullopt}});
  overflow.parts = {part("OF-BV", PartKind::BackwaterValve, 1, 0.25)};
  plan.runs.put(overflow);
}

inline void addTwoVaultEquipmentRuns(Plan& plan) {
  Run suction = makeRun("SU", Service::Suction, "pvc-sch80", "2",
                        inChamber("V2", 2, ft(4, 1), level(91), EndFitting::FootValve),
                        at(EndKind::Port, "P-SU"),
                        {{ft(38.5, 11), level(94, 3)}, {ft(38.5, 21), level(94, 4.5)}});
  suction.parts = {part("SU-UN", PartKind::Union, 2, 0.5)};
  plan.runs.put(suction);
  plan.runs.put(makeRun("FC", Service::FloatConduit, "pvc-conduit-sch80", "1",
                        inChamber("V2", 2, ft(3, 2), level(94, 4)), at(EndKind::Port, "P-FC"),
                        {{ft(37.5, 22), level(94, 4)}}));
}

inline Plan twoVaultPlan() {
  Plan plan;
  addTwoVaultSite(plan);
  addTwoVaults(plan);
  addTwoVaultGravityRuns(plan);
  addTwoVaultEquipmentRuns(plan);
  return plan;
}

} // namespace sump::test
