#pragma once
// The drains and the vault train at the peak. Flows, levels and times are those that the study
// finds: here only the comparison is tried, they themselves are tried in tests/study.

#include "tests/rules/cases_levels.h"

namespace sump::testing {

/// Other inflow so that this much reaches the drains at the peak.
inline Edit peakOf(std::function<Flow(const Review&)> peak) {
  return [=](Plan& p) {
    const Review review = reviewed(p);
    const Flow have = *review.study.train.peakInflow;
    p.basis.demand.otherInflow = *p.basis.demand.otherInflow + peak(review) - have;
  };
}
/// The inlet carries the flush of UF-1, too.
inline Edit peakOfFullInlet(double share) {
  return peakOf([=](const Review& r) {
    return *r.study.train.gravityOf("WW-1")->fullFlow * share - *r.plan.basis.pump.underflow;
  });
}
inline Edit peakOfGallonsPerMinute(double gpm) {
  return peakOf([=](const Review&) { return gallonsPerMinute(gpm); });
}
/// The limit is this share of what the depot has.
inline Edit limitOf(std::string id, std::function<double(const Review&)> have, double share) {
  return [=](Plan& p) {
    const Review review = reviewed(p);
    p.limits[id] = have(review) * share;
  };
}
inline double fullSpeed(const Review& r) {
  return r.study.train.gravityOf("WW-1")->fullVelocity->value();
}
inline double detentionMinutes(const Review& r) {
  double sum = 0;
  for (const ChamberDuty& chamber : r.study.train.chambers)
    sum += chamber.detention->value() / 60;
  return sum;
}
inline double pumpOutDays(const Review& r) {
  return r.study.train.pumpOutFirst->value() / 86400;
}
inline void unknownLoss(Plan& p) {
  p.basis.demand.lostFraction.reset();
}
/// The lid of vault 1 this far over the peak level of its first chamber.
inline Edit lidOverPeak(Length over) {
  return [=](Plan& p) {
    const Review review = reviewed(p);
    const Length level = review.study.train.pumpStopped->chamber("V1", 1)->level;
    changeVault(p, "V1", [&](Vault& v) { v.insideHeight = level + over - v.floor; });
  };
}
inline Edit rimOverPeak(Length over) {
  return [=](Plan& p) {
    const Review review = reviewed(p);
    const Length level = review.study.train.pumpStopped->basins.front().level;
    change(p.basins, "TD-1", [&](Basin& b) { b.rim = level + over; });
  };
}

inline std::vector<Case> peakCases() {
  const auto warning = Severity::Warning, error = Severity::Error, note = Severity::Note;
  const Length hair = millimetres(1);
  return {
      {"drain-capacity.full", error, {"WW-1"}, peakOfFullInlet(1.001), peakOfFullInlet(0.999)},
      {"drain-capacity.undecided", warning, {"WW-1"}, unknownLoss},
      {"drain-speed.slow",
       warning,
       {"WW-1"},
       limitOf("gravity.velocity", fullSpeed, 1.001),
       limitOf("gravity.velocity", fullSpeed, 0.999)},
      {"drain-speed.silt",
       note,
       {"WW-1"},
       limitOf("gravity.velocity.silt", fullSpeed, 1.001),
       limitOf("gravity.velocity.silt", fullSpeed, 0.999)},
      {"drain-speed.undecided",
       warning,
       {"WW-1"},
       [](Plan& p) { changeRun(p, "WW-1", [](Run& r) { r.to.invert.reset(); }); }},
      {"peak-level.lid", error, {"V1"}, lidOverPeak(-hair), lidOverPeak(hair)},
      {"peak-level.basin", error, {"TD-1", "WW-1"}, rimOverPeak(-hair), rimOverPeak(hair)},
      {"peak-level.undecided", warning, {}, unknownLoss},
      {"peak-detention.short",
       warning,
       {"V1", "V2"},
       limitOf("duty.detention", detentionMinutes, 1.001),
       limitOf("duty.detention", detentionMinutes, 0.999)},
      {"peak-detention.undecided",
       warning,
       {"V1", "V2"},
       [](Plan& p) { p.basis.water.sludgeDepth.reset(); }},
      // The first chamber has 26.25 square feet: 4, and 22 for the 110 gal/min over 20, are within.
      {"sand-area.small",
       warning,
       {"V1"},
       peakOfGallonsPerMinute(130.1),
       peakOfGallonsPerMinute(129.9)},
      {"sand-area.undecided", warning, {"V1"}, unknownLoss},
      {"sludge-interval.often",
       warning,
       {"V1"},
       limitOf("duty.pump-out-days", pumpOutDays, 1.001),
       limitOf("duty.pump-out-days", pumpOutDays, 0.999)},
      {"sludge-interval.stated", note, {"V1"}, [](Plan&) {}},
      {"sludge-interval.undecided",
       warning,
       {"V1"},
       [](Plan& p) { p.basis.water.oilDepth.reset(); }},
  };
}

} // namespace sump::testing
