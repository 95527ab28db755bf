#pragma once
// Cover and bends. Covers are those that the study finds: here only the comparison is tried, the
// covers themselves are tried in tests/study.

#include "tests/rules/cases_levels.h"

#include <cmath>

namespace sump::testing {

/// The demand is this much more than the depot's own cover of the run.
inline Edit coverDemand(std::string id, std::string run, Length more, bool traffic = false) {
  return [=](Plan& p) {
    const Review review = reviewed(p);
    const RunStudy& study = *review.study.run(run);
    const CoverCheck& have = traffic ? *study.leastTrafficCover : *study.leastCover;
    p.limits[id] = inMetres(have.cover + more);
  };
}
inline Edit frostReaches(std::string run, Length more) {
  return [=](Plan& p) {
    const Review review = reviewed(p);
    p.site.frostDepth = review.study.run(run)->leastCover->cover - inches(6) + more;
  };
}
/// The overflow turns by this much toward the sewer connection, 27 ft south of its first leg.
inline Edit overflowTurns(double turn) {
  return [=](Plan& p) {
    changeRun(p, "OF-1", [=](Run& r) {
      r.vertices[0].at.x = (4 + 27 / std::tan(turn * kPi / 180)) * kMetresPerFoot;
    });
  };
}

/// The suction's union this far after its valve, on the leg of 66 in up to the pump. Of the way
/// between their centres the union takes 1.45/2 in and the valve 5.9/2 in, together 3.675 in, and
/// the two sockets of 2 in pipe 1-1/2 in each.
inline Edit unionAfterValve(double inches) {
  return [=](Plan& p) {
    changeRun(p, "SU-1", [=](Run& r) { r.parts[1].along = r.parts[0].along + inches / 66; });
  };
}

/// The power conduit at these inverts, ft: at the maintenance building, and from the yard on.
inline Edit powerAt(double building, double yard) {
  return [=](Plan& p) {
    changeRun(p, "PC-1", [=](Run& r) {
      for (Vertex& vertex : r.vertices)
        vertex.invert = feet(yard);
      r.vertices.front().invert = feet(building);
    });
  };
}

inline std::vector<Case> groundCases() {
  const auto warning = Severity::Warning, error = Severity::Error;
  const Length over = inches(0.1), under = inches(0.05); // compared to 1/16 in
  return {
      {"pipe-cover.shallow",
       error,
       {"RC-1"},
       coverDemand("cover.pipe", "RC-1", over),
       coverDemand("cover.pipe", "RC-1", under)},
      {"pipe-cover.frost",
       error,
       {"RC-1"},
       frostReaches("RC-1", over),
       frostReaches("RC-1", under)},
      {"pipe-cover.traffic",
       error,
       {"RC-1"},
       coverDemand("cover.pipe.traffic", "RC-1", over, true),
       coverDemand("cover.pipe.traffic", "RC-1", under, true)},
      // A drain has no frost or water-pipe demand, but vehicles press on it too.
      {"pipe-cover.traffic",
       error,
       {"OF-1"},
       coverDemand("cover.pipe.traffic", "OF-1", over, true),
       coverDemand("cover.pipe.traffic", "OF-1", under, true)},
      {"pipe-cover.undecided",
       warning,
       {},
       [](Plan& p) { p.site.frostDepth.reset(); },
       [](Plan& p) { p.site.frostDepth = feet(0); }},
      {"conduit-cover.shallow",
       error,
       {"PC-1"},
       coverDemand("cover.conduit", "PC-1", over),
       coverDemand("cover.conduit", "PC-1", under)},
      {"conduit-cover.traffic",
       error,
       {"PC-1"},
       coverDemand("cover.conduit.traffic", "PC-1", over, true),
       coverDemand("cover.conduit.traffic", "PC-1", under, true)},
      // 3 degrees either side of a stock 45.
      {"stock-bend.odd", warning, {"OF-1"}, overflowTurns(48.1), overflowTurns(47.9)},
      {"stock-bend.odd", warning, {"OF-1"}, overflowTurns(41.9), overflowTurns(42.1)},
      // 3.675 in, and 3 in for the sockets.
      {"short-pipe.none", warning, {"SU-1"}, unionAfterValve(3.6), unionAfterValve(3.75)},
      {"short-pipe.short", warning, {"SU-1"}, unionAfterValve(6.6), unionAfterValve(6.75)},
      {"stock-bend.none",
       warning,
       {"OF-1"},
       [](Plan& p) { changeRun(p, "OF-1", [](Run& r) { r.pipe = "unknown-pipe"; }); }},
  };
}

} // namespace sump::testing
