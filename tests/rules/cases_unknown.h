#pragma once
// What cannot be decided where the other families have no such case of their own, and what follows
// from shares that a project chose.

#include "tests/rules/cases_dig.h"
#include "tests/rules/cases_pump.h"
#include "tests/rules/cases_tank.h"

namespace sump::testing {

/// A free start without a level.
inline Edit startsNowhere(std::string run) {
  return [=](Plan& p) {
    changeRun(p, run, [](Run& r) { r.from = {EndKind::Free, "", 0, r.from.at, {}, {}}; });
  };
}
inline Edit startsUnknown(std::string run) {
  return [=](Plan& p) { changeRun(p, run, [](Run& r) { r.from.invert.reset(); }); };
}
/// Vault 1 in three equal chambers.
inline void threeChambers(Plan& p) {
  changeVault(p, "V1", [](Vault& v) {
    v.baffles = {{"V1-B1", feet(3.33), inches(3), inches(0), inches(1)},
                 {"V1-B2", feet(6.92), inches(3), inches(0), inches(1)}};
  });
}
inline Edit portSize(std::string size) {
  return [=](Plan& p) {
    changeRoom(p, [=](EquipmentRoom& r) {
      for (Port& port : r.ports)
        if (port.id == "P-PW") port.size = size;
    });
  };
}

inline std::vector<Case> unknownCases() {
  const auto warning = Severity::Warning;
  return {
      {"flow-order.undecided", warning, {"OF-1"}, startsUnknown("OF-1")},
      {"vault-link.undecided", warning, {"LK-1", "V1"}, startsUnknown("LK-1")},
      {"interconnect-depth.undecided", warning, {"IC-1", "V1"}, startsUnknown("IC-1")},
      {"suction-source.undecided", warning, {"SU-1"}, startsUnknown("SU-1")},
      {"suction-rise.undecided", warning, {"SU-1"}, startsUnknown("SU-1")},
      {"product-size.undecided", warning, {"PW-1"}, startsNowhere("PW-1")},
      {"product-size.undecided", warning, {"PW-1"}, portSize("")},
      {"room-clearance.undecided",
       warning,
       {"ER-1"},
       [](Plan& p) { changeRoom(p, [](EquipmentRoom& r) { r.plumbingArea.reset(); }); }},
      {"pipe-cover.undecided", warning, {}, noGroundAtAll},
      {"pipe-cover.undecided", warning, {"OF-1"}, startsUnknown("OF-1")},
      {"conduit-cover.undecided", warning, {}, noGroundAtAll},
      {"conduit-cover.undecided", warning, {"FC-1"}, startsUnknown("FC-1")},
      {"vault-clash.undecided", warning, {}, [](Plan& p) { p.site.boundary.clear(); }},
      {"water-sewer-apart.undecided", warning, {"OF-1"}, startsUnknown("OF-1")},
      {"crossing-clearance.undecided", warning, {"OF-1"}, startsUnknown("OF-1")},
      {"main-distance.undecided", warning, {"OF-1"}, startsUnknown("OF-1")},
      {"water-over-tank.undecided", warning, {"MU-1"}, startsNowhere("MU-1")},
      {"short-pipe.undecided", warning, {"OF-1"}, startsUnknown("OF-1")},
      {"stock-bend.undecided", warning, {"OF-1"}, startsUnknown("OF-1")},
  };
}

inline std::vector<Case> shareCases() {
  return {
      // A figure for the first of two chambers; of three it is told, unless a project chose it.
      {"first-chamber-share.several", Severity::Note, {"V1"}, threeChambers},
      {"first-chamber-share.small",
       Severity::Warning,
       {"V1"},
       [](Plan& p) {
         threeChambers(p);
         p.limits["chamber.first.low"] = 0.51;
       },
       threeChambers},
      {"first-chamber-share.large",
       Severity::Warning,
       {"V1"},
       [](Plan& p) {
         firstShare(0.70)(p);
         p.project.profile = "tank-a";
       },
       firstShare(0.70)},
      // The trench drain's rim is at 102 ft.
      {"overflow-backflow.higher",
       Severity::Warning,
       {"OF-1", "TD-1"},
       [](Plan& p) {
         change(p.sewers, "SW-1", [](SewerConnection& s) { s.upstreamManholeRim = feet(101.99); });
       },
       [](Plan& p) {
         change(p.sewers, "SW-1", [](SewerConnection& s) { s.upstreamManholeRim = feet(102); });
       }},
  };
}

} // namespace sump::testing
