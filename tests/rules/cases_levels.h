#pragma once
// What must be known, which lines there are, storage, order and slope. The depot's water stands at
// 97.25 ft over a floor at 93.25 ft; its four chambers are 5.25 x 5 ft.

#include "tests/rules/depot.h"

namespace sump::testing {

inline Edit drop(std::string id) {
  return [id](Plan& p) { p.runs.erase(id); };
}
inline Edit limit(std::string id, double value) {
  return [id, value](Plan& p) { p.limits[id] = value; };
}
inline Edit frostless(Edit edit) {
  return [edit](Plan& p) {
    p.site.frostDepth = feet(0);
    edit(p);
  };
}

/// 4 x 5.25 x 5 x 4 ft = 420 cubic feet.
inline const double kDepotVolume = 420 * kMetresPerFoot * kMetresPerFoot * kMetresPerFoot;

inline Edit sewerAt(double invert) {
  return [invert](Plan& p) {
    change(p.sewers, "SW-1", [&](SewerConnection& s) { s.invert = feet(invert); });
  };
}

/// The inlet in this size, its end at 97.6 ft.
inline Edit inletOfSize(std::string size) {
  return [size](Plan& p) {
    changeRun(p, "WW-1", [&](Run& r) {
      r.size = size;
      r.to.invert = feet(97.6);
    });
  };
}

inline std::vector<Case> levelCases() {
  const auto none = Severity::Warning;
  const Edit noGround = [](Plan& p) {
    p.spots = {};
    p.site.groundDefault.reset();
  };
  return {
      {"code-profile.unknown",
       Severity::Error,
       {},
       [](Plan& p) { p.project.profile = "no-such-code"; },
       [](Plan& p) { p.project.profile = "generic"; }},
      {"level-known.run",
       none,
       {"VT-1"},
       [](Plan& p) { changeRun(p, "VT-1", [](Run& r) { r.to.invert.reset(); }); }},
      {"level-known.pipe",
       none,
       {"OF-1"},
       [](Plan& p) { changeRun(p, "OF-1", [](Run& r) { r.size = "7"; }); }},
      {"level-known.water", none, {"V2"}, drop("OF-1")},
      // Water of vault 1 is unknown too: its way out leads to a vault without a level.
      {"level-known.water", none, {"V1"}, drop("OF-1")},
      {"level-known.ground",
       none,
       {},
       noGround,
       [noGround](Plan& p) {
         noGround(p);
         p.site.groundDefault = feet(101);
       }},
      {"lines-present.missing", none, {}, drop("FC-1")},
      {"lines-present.missing",
       none,
       {},
       [](Plan& p) {
         p.runs.erase("VT-1");
         p.runs.erase("VT-2");
       },
       drop("VT-1")},
      {"lines-present.underflow",
       none,
       {"UF-1"},
       [](Plan& p) {
         changeRun(p, "UF-1", [](Run& r) { r.to = {EndKind::Chamber, "V1", 2, {}, feet(98), {}}; });
       },
       [](Plan& p) {
         changeRun(p, "UF-1", [](Run& r) { r.to = {EndKind::Chamber, "V1", 1, {}, feet(98), {}}; });
       }},
      {"lines-present.float",
       none,
       {"FC-1"},
       [](Plan& p) { changeRun(p, "FC-1", [](Run& r) { r.from.chamber = 1; }); }},
  };
}

inline std::vector<Case> storageCases() {
  return {
      {"storage-volume.none",
       Severity::Error,
       {},
       [](Plan& p) {
         p.vaults = {};
         p.runs = {};
       }},
      {"storage-volume.undecided", Severity::Warning, {"V1", "V2"}, drop("OF-1")},
      // 1 % below the demand is the border between short and within the usual rounding.
      {"storage-volume.short",
       Severity::Error,
       {"V1", "V2"},
       limit("storage.minimum", kDepotVolume / 0.9899),
       limit("storage.minimum", kDepotVolume / 0.9901)},
      {"storage-volume.rounding",
       Severity::Note,
       {"V1", "V2"},
       limit("storage.minimum", kDepotVolume * 1.0001),
       limit("storage.minimum", kDepotVolume * 0.9999)},
  };
}

inline std::vector<Case> flowCases() {
  const auto error = Severity::Error, warning = Severity::Warning;
  return {
      {"flow-order.inlet",
       warning,
       {"WW-1"},
       [](Plan& p) { changeRun(p, "WW-1", [](Run& r) { r.to.chamber = 2; }); }},
      {"flow-order.link",
       warning,
       {"LK-1"},
       [](Plan& p) { changeRun(p, "LK-1", [](Run& r) { std::swap(r.from, r.to); }); }},
      // The vaults in the wrong order: the link then leads backward.
      {"flow-order.link", warning, {"LK-1"}, [](Plan& p) { p.vaults.reorder(1, 0); }},
      {"flow-order.link-chamber",
       warning,
       {"LK-1"},
       [](Plan& p) { changeRun(p, "LK-1", [](Run& r) { r.from.chamber = 1; }); }},
      {"flow-order.overflow",
       warning,
       {"OF-1"},
       [](Plan& p) { changeRun(p, "OF-1", [](Run& r) { r.from.target = "V1"; }); }},
      {"flow-order.uphill", error, {"OF-1"}, sewerAt(97.26), sewerAt(97.24)},
      // 32.5 ft and 38.18 ft in plan: 1/8 in/ft is a fall of 0.736 ft.
      {"gravity-slope.flat", error, {"OF-1"}, sewerAt(97.25 - 0.73), sewerAt(97.25 - 0.74)},
      // The inlet falls 1.40 ft in 68.5 ft: enough for 3 in pipe, not for 2 in (1/4 in/ft).
      {"gravity-slope.flat", error, {"WW-1"}, inletOfSize("2"), inletOfSize("3")},
      // 8 in pipe: 1/16 in/ft is 0.368 ft.
      {"gravity-slope.flat",
       error,
       {"OF-1"},
       [](Plan& p) {
         sewerAt(97.25 - 0.36)(p);
         changeRun(p, "OF-1", [](Run& r) { r.size = "8"; });
       },
       [](Plan& p) {
         sewerAt(97.25 - 0.37)(p);
         changeRun(p, "OF-1", [](Run& r) { r.size = "8"; });
       }},
  };
}

} // namespace sump::testing
