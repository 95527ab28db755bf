#pragma once
// Drinking water near drains and vaults, wells, buried depth. The overflow leaves vault 2 at 57 ft
// north, going west from 63.5 ft with an invert of 97.25 ft; 6 in Sch 80 is 6.625 in outside.

#include "tests/rules/cases_levels.h"

namespace sump::testing {

struct WaterPipe {
  double x, y, X, Y; ///< ft
  std::optional<Length> elevation = feet(97.5);
  std::optional<Length> diameter = inches(2);
  bool main = false;
};
inline Edit waterPipe(WaterPipe pipe) {
  return [=](Plan& p) {
    constexpr double f = kMetresPerFoot;
    Utility utility;
    utility.id = "U-NEW";
    utility.kind = UtilityKind::PotableWater;
    utility.path = {{pipe.x * f, pipe.y * f}, {pipe.X * f, pipe.Y * f}};
    utility.elevation = pipe.elevation;
    utility.diameter = pipe.diameter;
    utility.publicMain = pipe.main;
    p.utilities.put(utility);
  };
}
/// Beside the overflow, this far from it from outside to outside.
inline WaterPipe beside(double clear) {
  const double y = 57 + clear + (6.625 / 2 + 1) / 12;
  return {40, y, 50, y};
}
/// Square over the overflow at 45 ft east, this far over its top from outside to outside. There it
/// has fallen by 18.5/70.68 of 1.47 ft (97.25 to 95.78 ft) to an invert of 96.865 ft; the outside
/// top stands 5.709/2 + 6.625/2 in over that.
inline WaterPipe over(double clear) {
  WaterPipe pipe{45, 40, 45, 70};
  pipe.elevation = feet(96.865 + (5.709 / 2 + 6.625 / 2 + 1) / 12 + clear);
  return pipe;
}
inline WaterPipe publicMain(WaterPipe pipe) {
  pipe.main = true;
  return pipe;
}
/// South of vault 1 (47 ft), its near side this far away; high enough over the inlet.
inline WaterPipe mainSouth(double clear) {
  const double y = 47 - clear - 1.0 / 12;
  return {66, y, 70, y, feet(101), inches(2), true};
}
inline WaterPipe unknown(WaterPipe pipe) {
  pipe.elevation.reset();
  return pipe;
}
inline WaterPipe unmeasured(WaterPipe pipe) {
  pipe.diameter.reset();
  return pipe;
}
inline Edit wellAt(double y) {
  return [=](Plan& p) { p.wells.put({"W-NEW", "", {67 * kMetresPerFoot, y * kMetresPerFoot}}); };
}
/// Vault 1 out of traffic, designed by nobody, with this much cover as the most allowed.
inline Edit plainBurial(std::optional<Length> most) {
  return [=](Plan& p) {
    change(p.pavements, "PV-YARD", [](Pavement& y) { y.traffic = false; });
    changeVault(p, "V1", [](Vault& v) { v.engineered = false; });
    if (most) {
      p.limits["vault.burial"] = inMetres(*most);
    } else {
      p.spots = {};
      p.site.groundDefault.reset();
    }
  };
}
inline Length coverOfV1() {
  const Review review = reviewed(depot());
  const VaultStudy& vault = review.study.vaults.front();
  return *vault.gradeHigh - vault.lidTop;
}

inline std::vector<Case> nearCases() {
  const auto warning = Severity::Warning, error = Severity::Error;
  const std::vector<Id> pair = {"U-NEW", "OF-1"};
  return {
      {"water-sewer-apart.near", error, pair, waterPipe(beside(4.99)), waterPipe(beside(5.01))},
      // Over the drain 12 in are enough; under it never.
      {"water-sewer-apart.near", error, pair, waterPipe(over(0.97)), waterPipe(over(1.03))},
      {"water-sewer-apart.near", error, pair, waterPipe(over(-4))},
      {"water-sewer-apart.undecided", warning, pair, waterPipe(unknown(beside(4.9))),
       waterPipe(unknown(beside(5.1)))},
      {"water-sewer-apart.undecided", warning, pair, waterPipe(unmeasured(beside(4.9)))},
      {"crossing-clearance.tight", error, pair, waterPipe(over(0.97)), waterPipe(over(1.03))},
      {"crossing-clearance.tight", error, pair, waterPipe(publicMain(over(1.47))),
       waterPipe(publicMain(over(1.53)))},
      {"crossing-clearance.undecided", warning, pair, waterPipe(unknown(over(1)))},
      {"main-distance.near",
       warning,
       {"U-NEW", "V1"},
       waterPipe(mainSouth(9.99)),
       waterPipe(mainSouth(10.01))},
      {"main-distance.near", warning, pair, waterPipe(publicMain(beside(9.99))),
       waterPipe(publicMain(beside(10.01)))},
      {"main-distance.undecided", warning, pair, waterPipe(publicMain(unknown(beside(8))))},
      {"main-distance.undecided",
       warning,
       {"U-NEW", "V1"},
       waterPipe(unmeasured(mainSouth(11))),
       waterPipe(unmeasured(mainSouth(14)))},
      {"water-over-tank.crosses",
       warning,
       {"U-NEW", "V1"},
       waterPipe({70, 44, 70, 47.1}),
       waterPipe({70, 44, 70, 46.9})},
      {"vault-clash.well", error, {"V1", "W-NEW"}, wellAt(47 - 49.99), wellAt(47 - 50.01)},
      {"deep-burial.deep",
       warning,
       {"V1"},
       plainBurial(coverOfV1() - inches(0.1)),
       plainBurial(coverOfV1() + inches(0.1))},
      {"deep-burial.undecided", warning, {"V1"}, plainBurial(std::nullopt)},
      {"traffic-lid.engineer",
       error,
       {"V1", "PV-YARD"},
       [](Plan& p) { changeVault(p, "V1", [](Vault& v) { v.engineered = false; }); }},
  };
}

} // namespace sump::testing
