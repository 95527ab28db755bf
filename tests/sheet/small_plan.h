#pragma once
// A small depot with two vaults and every service, for the sheet's tests: made here so that they do
// not change when a sample does.

#include "core/plan/plan.h"

namespace sump::testing {

/// All in feet; the ground at +100 to +101.
inline Plan smallPlan() {
  const auto at = [](double x, double y) { return Point2{x * kMetresPerFoot, y * kMetresPerFoot}; };
  const auto ring = [&](double x, double y, double X, double Y) {
    return Ring{at(x, y), at(X, y), at(X, Y), at(x, Y)};
  };
  Plan p;
  p.project = {"Quarry Lane wash pad",
               "Reclaim tankage",
               "Quarry Lane Transport",
               "12 Quarry Lane",
               "QL-0042",
               "B",
               "2026-03-02",
               "R. Osei",
               "M. Lindqvist",
               "For review",
               UnitSystem::UsCustomary,
               {}};
  p.site.boundary = ring(0, 0, 120, 80);
  p.site.datum = "Finished floor of the wash building = 100.00";
  p.site.groundDefault = feet(100);
  p.buildings.put({"B1", "Wash building", ring(60, 50, 110, 75), feet(100.5), {}});
  p.pavements.put({"PV1", "Wash apron", ring(10, 20, 110, 50), true});
  p.utilities.put({"U1",
                   "City water main",
                   UtilityKind::PotableWater,
                   {at(0, 6), at(120, 6)},
                   feet(96),
                   inches(6),
                   true});
  p.spots.put({"S1", at(5, 15), feet(100.2)});
  p.spots.put({"S2", at(115, 15), feet(100.0)});
  p.spots.put({"S3", at(5, 70), feet(101.0)});
  p.spots.put({"S4", at(115, 70), feet(100.6)});
  p.wells.put({"W1", "Test well", at(112, 64)});
  p.basins.put({"CB1", "Trench drain", BasinKind::TrenchDrain, at(20, 35), degrees(90), feet(20),
                feet(1.5), feet(100), feet(97.6)});
  p.sewers.put({"SW1", "Sewer wye", at(100, 4), feet(94.5), {}});
  p.washes.put({"WE1", "Wash arch", at(20, 47), {}, feet(8), feet(2), feet(101), "2"});
  EquipmentRoom room{"R1",
                     "Equipment room",
                     at(62, 51),
                     {},
                     feet(12),
                     feet(9),
                     feet(100.5),
                     Door{Side::West, feet(3), feet(3)},
                     RoomBox{at(3, 6), feet(4), feet(2), feet(4.2)},
                     RoomBox{at(7.5, 5.5), feet(2), feet(2), feet(6)},
                     RoomBox{at(10.5, 0.2), feet(1.2), feet(0.6), feet(4)},
                     {}};
  const Service services[] = {Service::Suction,   Service::SpareSuction, Service::Recirculation,
                              Service::Underflow, Service::FloatConduit, Service::MakeUp,
                              Service::Product,   Service::Power,        Service::Signal};
  int i = 0;
  for (Service s : services) {
    room.ports.push_back({"PT-" + std::string(facts(s).code), std::string(facts(s).name), s,
                          at(7.7 + 0.2 * i++, 6), feet(2), isConduit(s) ? "1" : "2"});
  }
  p.rooms.put(room);
  for (int v = 0; v < 2; ++v) {
    const std::string n = std::to_string(v + 1);
    Vault vault{"V" + n,
                "Vault " + n,
                "",
                at(60 + v * 15, 38),
                {},
                feet(12),
                feet(6),
                inches(6),
                inches(6),
                inches(6),
                feet(6),
                feet(91.5),
                true,
                {},
                {},
                {},
                {{"BF" + n, feet(5.25), inches(6), {}, {}}},
                {}};
    vault.manways.push_back({"M" + n + "A", at(-3, 0), inches(24), {}, true});
    vault.manways.push_back({"M" + n + "B", at(3, 0), inches(24), {}, true});
    p.vaults.put(vault);
  }
  const auto chamber = [&](const char* vault, int number, double x, double y,
                           std::optional<Length> invert, EndFitting fitting = EndFitting::Plain) {
    return RunEnd{EndKind::Chamber, vault, number, at(x, y), invert, fitting};
  };
  const auto port = [&](const char* id) {
    return RunEnd{EndKind::Port, id, 0, {}, {}, EndFitting::Plain};
  };
  p.runs.put({"R-WW",
              "",
              Service::Inlet,
              "pvc-sdr35",
              "6",
              {EndKind::Basin, "CB1", 0, at(0, -0.75), {}, EndFitting::Plain},
              chamber("V1", 1, -5.5, 1.5, feet(97.0), EndFitting::Tee),
              {{at(40, 39.5), {}}},
              {},
              {},
              {}});
  for (int v = 0; v < 2; ++v) {
    const std::string n = std::to_string(v + 1);
    p.runs.put({"R-IC" + n,
                "",
                Service::Interconnect,
                "pvc-sch80",
                "6",
                chamber(("V" + n).c_str(), 1, -0.75, 1, feet(94), EndFitting::Tee),
                chamber(("V" + n).c_str(), 2, 0.75, 1, feet(94), EndFitting::ElbowDown),
                {},
                {},
                {},
                {}});
  }
  p.runs.put({"R-LK",
              "",
              Service::Link,
              "pvc-sch80",
              "6",
              chamber("V1", 2, 5, -1, feet(96.2), EndFitting::Tee),
              chamber("V2", 1, -5, -1, feet(94)),
              {{at(70, 37), feet(96.1)}, {at(70, 37), feet(94)}},
              {},
              {},
              {}});
  p.runs.put({"R-SU",
              "",
              Service::Suction,
              "pvc-sch80",
              "2",
              chamber("V2", 2, 3, 1.5, feet(92.5), EndFitting::FootValve),
              port("PT-SU"),
              {{at(78, 39.5), feet(98)}, {at(78, 47), {}}, {at(69.7, 47), {}}},
              {{"P-U1", PartKind::Union, 2, 0.5, ""}},
              {},
              {}});
  p.runs.put({"R-SS",
              "",
              Service::SpareSuction,
              "pvc-sch80",
              "2",
              chamber("V2", 2, 4, 1.5, feet(92.5), EndFitting::FootValve),
              port("PT-SS"),
              {{at(79, 39.5), feet(98)}, {at(79, 48), {}}, {at(69.9, 48), {}}},
              {},
              {},
              {}});
  p.runs.put({"R-RC",
              "",
              Service::Recirculation,
              "pvc-sch80",
              "1",
              port("PT-RC"),
              chamber("V1", 2, 2, 0.5, feet(97.2), EndFitting::Eductor),
              {{at(70.1, 46), feet(98.5)}, {at(62, 46), {}}},
              {{"P-U2", PartKind::Union, 2, 0.4, ""}},
              {},
              {}});
  p.runs.put({"R-UF",
              "",
              Service::Underflow,
              "pvc-sch80",
              "2",
              port("PT-UF"),
              chamber("V1", 1, -3, 1, feet(97)),
              {{at(70.3, 45), feet(98.3)}, {at(57, 45), {}}},
              {{"P-BV", PartKind::BallValve, 2, 0.5, ""}},
              {},
              {}});
  p.runs.put({"R-FC",
              "",
              Service::FloatConduit,
              "pvc-conduit-sch40",
              "1",
              chamber("V2", 2, 2, 2, feet(97)),
              port("PT-FC"),
              {{at(77, 46.5), feet(98)}, {at(70.5, 46.5), {}}},
              {{"P-PB", PartKind::PullBox, 2, 0.3, ""}},
              {},
              {}});
  p.runs.put(
      {"R-OF",
       "",
       Service::Overflow,
       "pvc-sdr35",
       "6",
       chamber("V2", 2, 5.5, -1, feet(96), EndFitting::Tee),
       {EndKind::Sewer, "SW1", 0, {}, {}, EndFitting::Plain},
       {{at(100, 37), {}}},
       {{"P-BW", PartKind::BackwaterValve, 1, 0.3, ""}, {"P-CO", PartKind::Cleanout, 0, 0.7, ""}},
       {},
       {}});
  p.runs.put({"R-MU",
              "",
              Service::MakeUp,
              "pvc-sch80",
              "1",
              {EndKind::Free, "", 0, at(90, 56), feet(103), EndFitting::Plain},
              port("PT-MU"),
              {{at(90, 52), {}}, {at(70.7, 52), {}}},
              {{"P-RP", PartKind::ReducedPressureAssembly, 1, 0.4, ""}},
              {},
              {}});
  p.runs.put({"R-PW",
              "",
              Service::Product,
              "pvc-sch80",
              "2",
              port("PT-PW"),
              {EndKind::Wash, "WE1", 0, at(4, 0), {}, EndFitting::Plain},
              {{at(70.9, 49), feet(98)}, {at(30, 49), feet(98)}, {at(30, 47), {}}},
              {},
              {},
              {}});
  p.runs.put({"R-VT",
              "",
              Service::Vent,
              "pvc-sch80",
              "2",
              chamber("V1", 1, -4, 2, feet(97.3)),
              {EndKind::Free, "", 0, at(56, 54), feet(110), EndFitting::ScreenedVent},
              {{at(56, 40), {}}},
              {},
              {},
              {}});
  p.runs.put({"R-PC",
              "",
              Service::Power,
              "pvc-conduit-sch40",
              "1",
              {EndKind::Free, "", 0, at(108, 54), feet(102), EndFitting::Plain},
              port("PT-PC"),
              {{at(108, 51.5), {}}, {at(71.1, 51.5), {}}},
              {},
              {},
              {}});
  p.runs.put({"R-SG",
              "",
              Service::Signal,
              "pvc-conduit-sch40",
              "1",
              {EndKind::Wash, "WE1", 0, at(3, 1), feet(100), EndFitting::Plain},
              port("PT-SG"),
              {{at(23, 49.6), feet(98)}, {at(71.3, 49.6), feet(98)}},
              {},
              {},
              {}});
  return p;
}

} // namespace sump::testing
