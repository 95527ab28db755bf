#pragma once
// What the pump lifts and delivers, and the marking of what it delivers. Heads and pressures are
// those that the study finds and tests/study tries.

#include "tests/rules/cases_peak.h"

namespace sump::testing {

inline const SuctionStudy& suctionOf(const Review& r) {
  return *r.study.hydraulics.suction("SU-1");
}
inline const PressureRun& pressureRun(const Review& r, const char* id) {
  return *r.study.hydraulics.run(id);
}
/// The float of the last vault, whose floor is at 93.25 ft, at this elevation, ft.
inline Edit floatAt(double elevation) {
  return [=](Plan& p) { p.basis.water.lowLevel = feet(elevation - 93.25); };
}
/// The limit of lift leaves this much over the lift.
inline Edit liftToSpare(Length spare) {
  return [=](Plan& p) {
    const Review r = reviewed(p);
    const SuctionStudy& suction = suctionOf(r);
    p.limits["suction.lift"] = inMetres(r.limits.length("suction.lift") - *suction.liftLimit +
                                        *suction.suctionLift + spare);
  };
}
/// The pump requires so much that this is the ratio.
inline Edit npshRatioOf(double ratio) {
  return [=](Plan& p) {
    const double have = *suctionOf(reviewed(p)).npshRatio;
    for (PumpPoint& point : p.basis.pump.curve)
      point.npshRequired = *point.npshRequired * (have / ratio);
  };
}
inline double npshRatio(const Review& r) {
  return *suctionOf(r).npshRatio;
}
inline std::function<double(const Review&)> feetASecond(const char* run) {
  return [=](const Review& r) { return inFeetPerSecond(pressureRun(r, run).loss->fastest); };
}
inline Edit eductorWants(double share) {
  return [=](Plan& p) {
    const Review r = reviewed(p);
    p.basis.pump.eductorPressure = *pressureRun(r, "RC-1").atEnd * share;
  };
}
/// The supply so that this pressure is left at the end of the make-up.
inline Edit makeUpEndsAt(Pressure left) {
  return [=](Plan& p) {
    const Review r = reviewed(p);
    p.basis.makeUp.pressure = *p.basis.makeUp.pressure - *pressureRun(r, "MU-1").atEnd + left;
  };
}
inline Edit sideBarsNeed(double share) {
  return [=](Plan& p) {
    const Review r = reviewed(p);
    p.basis.demand.devices.front().pressure = *r.study.hydraulics.devices.front().available * share;
  };
}
inline double reclaimed(const Review& r) {
  return *r.study.hydraulics.demand.reclaimShare;
}
inline Edit productNote(std::string text) {
  return [=](Plan& p) {
    p.notes = {};
    if (!text.empty()) p.notes.put({"N-NEW", {"PW-1", {}}, {"PW-1", {}}, feet(0), text});
  };
}
/// The end of a run that has a level by its target hangs free without one.
inline Edit endsNowhere(std::string run) {
  return [=](Plan& p) {
    changeRun(p, run, [](Run& r) { r.to = {EndKind::Free, "", 0, r.to.at, {}, r.to.fitting}; });
  };
}

inline std::vector<Case> pumpCases() {
  const auto warning = Severity::Warning, error = Severity::Error, note = Severity::Note;
  const std::vector<Id> side = {"D-SIDE", "PW-1"};
  const Edit noEquipment = [](Plan& p) { p.basis.pump.equipmentLoss.reset(); };
  return {
      {"low-water.air",
       error,
       {"SU-1"},
       [](Plan& p) {
         const Length inlet = *p.runs.find("SU-1")->from.invert;
         floatAt(inMetres(inlet) / kMetresPerFoot - 0.01)(p);
       },
       [](Plan& p) {
         const Length inlet = *p.runs.find("SU-1")->from.invert;
         floatAt(inMetres(inlet) / kMetresPerFoot + 0.01)(p);
       }},
      // At rest the water stands at 97.25 ft.
      {"low-water.always", error, {"SU-1"}, floatAt(97.26), floatAt(97.24)},
      {"low-water.undecided", warning, {"SU-1"}, [](Plan& p) { p.basis.water.lowLevel.reset(); }},
      {"suction-lift.high",
       warning,
       {"SU-1"},
       liftToSpare(millimetres(-1)),
       liftToSpare(millimetres(1))},
      {"suction-lift.priming", note, {"SU-1"}, [](Plan&) {}},
      {"suction-lift.priming-undecided",
       warning,
       {"SU-1"},
       [](Plan& p) { p.basis.pump.primingHose.reset(); }},
      {"suction-lift.undecided",
       warning,
       {"SU-1"},
       [](Plan& p) { p.basis.water.temperature.reset(); }},
      {"npsh-margin.cavitates", error, {"SU-1"}, npshRatioOf(0.999), npshRatioOf(1.001)},
      {"npsh-margin.margin", warning, {"SU-1"}, npshRatioOf(1.299), npshRatioOf(1.301)},
      {"npsh-margin.margin",
       warning,
       {"SU-1"},
       limitOf("suction.npsh-ratio", npshRatio, 1.001),
       limitOf("suction.npsh-ratio", npshRatio, 0.999)},
      {"npsh-margin.undecided",
       warning,
       {"SU-1"},
       [](Plan& p) {
         for (PumpPoint& point : p.basis.pump.curve)
           point.npshRequired.reset();
       }},
      {"line-speed.fast",
       warning,
       {"SU-1"},
       limitOf("velocity.suction", feetASecond("SU-1"), 0.999),
       limitOf("velocity.suction", feetASecond("SU-1"), 1.001)},
      {"line-speed.fast",
       warning,
       {"PW-1"},
       limitOf("velocity.pressure", feetASecond("PW-1"), 0.999),
       limitOf("velocity.pressure", feetASecond("PW-1"), 1.001)},
      {"line-speed.undecided", warning, {"UF-1"}, [](Plan& p) { p.basis.pump.underflow.reset(); }},
      {"line-pressure.eductor", warning, {"RC-1"}, eductorWants(1.001), eductorWants(0.999)},
      {"line-pressure.make-up",
       warning,
       {"MU-1"},
       makeUpEndsAt(pascals(-10)),
       makeUpEndsAt(pascals(10))},
      {"line-pressure.undecided",
       warning,
       {"MU-1"},
       [](Plan& p) { p.basis.makeUp.pressure.reset(); }},
      {"line-pressure.undecided",
       warning,
       {"RC-1"},
       [](Plan& p) { p.basis.pump.eductorPressure.reset(); }},
      {"product-pressure.low", warning, side, sideBarsNeed(1.001), sideBarsNeed(0.999)},
      {"product-pressure.undecided", warning, side, noEquipment},
      {"product-pressure.undecided", warning, {}, [](Plan& p) { p.basis.demand.devices.clear(); }},
      {"reclaim-share.low",
       warning,
       {},
       limitOf("reclaim.share", reclaimed, 1.001),
       limitOf("reclaim.share", reclaimed, 0.999)},
      {"reclaim-share.undecided", warning, {}, unknownLoss},
      {"reclaimed-marking.unmarked",
       warning,
       {"PW-1"},
       productNote(""),
       productNote("CAUTION: NONPOTABLE WATER - DO NOT DRINK")},
      {"reclaimed-marking.unmarked",
       warning,
       {"PW-1"},
       productNote("2 in, 150 mm under the slab"),
       productNote("Non-potable")},
      {"reclaimed-marking.stated", note, {"PW-1"}, [](Plan&) {}},
      {"reclaimed-marking.undecided", warning, {"PW-1"}, endsNowhere("PW-1")},
  };
}

} // namespace sump::testing
