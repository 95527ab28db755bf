// What the pump can lift and deliver. Screening from the plan's own figures: the pump maker's
// selection and a licensed designer decide.

#include "core/rules/families.h"
#include "core/rules/report.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

/// The float must trip before the suction draws air, and only after water has gone.
void checkLowWater(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (const SuctionStudy& suction : input.study.hydraulics.suctions) {
    const auto room = decide([](Length rest, Length low) { return rest - low; }, suction.highWater,
                             suction.lowWater);
    Needs needs = suction.submergence.needs;
    addNeeds(needs, room.needs);
    if (!needs.empty()) {
      out.needs({suction.run}, needs);
    } else if (*suction.submergence <= metres(0)) {
      Finding& finding = out.impossible("air", {suction.run});
      finding.measured = printShort(*suction.submergence, out.units());
      finding.required = "over 0";
    } else if (*room <= metres(0)) {
      Finding& finding = out.impossible("always", {suction.run});
      finding.measured = printShort(*room, out.units());
      finding.required = "over 0";
    }
  }
}

std::string printMinutes(Duration time) {
  return fixed(std::ceil(time.value() / 60 - 1e-9), 0) + " min";
}

/// How much a hose has to fill before the pump is started.
void statePriming(Reporter& out, const SuctionStudy& suction) {
  Needs needs = suction.primingVolume.needs;
  addNeeds(needs, suction.primingTime.needs);
  if (!needs.empty()) {
    out.undecided("priming-undecided", {suction.run}, {{"needs", needsText(needs)}});
    return;
  }
  out.note("priming", {suction.run},
           {{"volume", printVolume(*suction.primingVolume, out.units())},
            {"time", printMinutes(*suction.primingTime)}});
}

void checkLift(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (const SuctionStudy& suction : input.study.hydraulics.suctions) {
    statePriming(out, suction);
    const auto spare = decide([](Length lift, Length limit) { return limit - lift; },
                              suction.suctionLift, suction.liftLimit);
    if (!spare) {
      out.needs({suction.run}, spare.needs);
    } else if (*spare < metres(0)) {
      Finding& finding = out.against("suction.lift", "high", {suction.run});
      finding.measured = printRunLength(*suction.suctionLift, out.units());
      finding.required = "at most " + printRunLength(*suction.liftLimit, out.units());
    }
  }
}

void checkNpsh(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const double ratio = input.limits.number("suction.npsh-ratio");
  for (const SuctionStudy& suction : input.study.hydraulics.suctions) {
    if (!suction.npshRatio) {
      out.needs({suction.run}, suction.npshRatio.needs);
    } else if (*suction.npshRatio < ratio) {
      // Below what the pump requires it cavitates whatever margin is asked for.
      const bool cavitates = *suction.npshRatio < 1;
      Finding& finding = cavitates ? out.impossible("cavitates", {suction.run})
                                   : out.against("suction.npsh-ratio", "margin", {suction.run});
      finding.measured = printRunLength(*suction.npshAvailable, out.units());
      const double times = cavitates ? 1 : ratio;
      finding.required = printRunLength(times * *suction.npshRequired, out.units());
    }
  }
}

void checkSpeed(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (const PressureRun& run : input.study.hydraulics.runs) {
    if (!run.loss) {
      out.needs({run.run}, run.loss.needs);
    } else if (run.loss->fastest > run.ceiling) {
      const bool suction = facts(run.service).drive == Drive::Suction;
      Finding& finding =
          out.against(suction ? "velocity.suction" : "velocity.pressure", "fast", {run.run});
      finding.measured = printSpeed(run.loss->fastest, out.units());
      finding.required = "at most " + printSpeed(run.ceiling, out.units());
    }
  }
}

/// What the eductor wants, and that make-up gets up to its end at all.
void checkLine(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (const PressureRun& run : input.study.hydraulics.runs) {
    if (run.service != Service::Recirculation && run.service != Service::MakeUp) continue;
    const auto short_ =
        decide([](Pressure have, Pressure want) { return have < want; }, run.atEnd, run.wanted);
    if (!short_) {
      out.needs({run.run}, short_.needs);
    } else if (*short_) {
      Finding& finding =
          out.report(run.service == Service::MakeUp ? "make-up" : "eductor", {run.run});
      finding.measured = printPressure(*run.atEnd, out.units());
      finding.required = printPressure(*run.wanted, out.units());
    }
  }
}

void checkPressure(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const auto& devices = input.study.hydraulics.devices;
  if (devices.empty()) out.needs({}, {"wash devices on product water"});
  for (const DevicePressure& device : devices) {
    const auto low = decide([](Pressure have, Pressure need) { return have < need; },
                            device.available, device.required);
    std::vector<Id> objects = {device.device};
    if (!device.run.empty()) objects.push_back(device.run);
    if (!low) {
      out.needs(objects, low.needs);
    } else if (*low) {
      Finding& finding = out.report("low", objects, {{"device", device.device}});
      finding.measured = printPressure(*device.available, out.units());
      finding.required = printPressure(*device.required, out.units());
    }
  }
}

void checkReclaim(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const double need = input.limits.number("reclaim.share");
  const Decided<double>& have = input.study.hydraulics.demand.reclaimShare;
  if (!have) {
    out.needs({}, have.needs);
  } else if (*have < need) {
    Finding& finding = out.against("reclaim.share", "low", {});
    finding.measured = percent(*have);
    finding.required = percent(need);
  }
}

} // namespace

const Rule kLowWater = {"low-water",          "The float trips before the suction draws air",
                        "levels of the plan", Confidence::CommonPractice,
                        Severity::Error,      checkLowWater,
                        Trade::Plumbing};

const Rule kSuctionLift = {
    "suction-lift",
    "The pump is not set higher than it can lift",
    "self-priming pump maker's general information (arroyoprocess.com): about 25 ft at sea level, "
    "less what altitude and warm water take away",
    Confidence::Seen,
    Severity::Warning,
    checkLift,
    Trade::Plumbing};

const Rule kNpshMargin = {"npsh-margin",
                          "There is more suction head than the pump requires",
                          "Crane TP-410 example 7-32, margin ratio 1.3",
                          Confidence::SeenSecondHand,
                          Severity::Warning,
                          checkNpsh,
                          Trade::Plumbing};

const Rule kLineSpeed = {
    "line-speed",
    "Water moves no faster than the line should carry it",
    "pump maker's manual (suction), plastic pipe maker's design data (pressure)",
    Confidence::Seen,
    Severity::Warning,
    checkSpeed,
    Trade::Plumbing};

const Rule kLinePressure = {"line-pressure",
                            "Recirculation and make-up arrive with the pressure that they need",
                            "the pump's curve or the supply, less the losses of the line",
                            Confidence::CommonPractice,
                            Severity::Warning,
                            checkLine,
                            Trade::Plumbing};

const Rule kProductPressure = {"product-pressure",
                               "Each wash device gets the pressure that it needs",
                               "the pump's curve and the losses of the line",
                               Confidence::CommonPractice,
                               Severity::Warning,
                               checkPressure,
                               Trade::Plumbing};

const Rule kReclaimShare = {
    "reclaim-share",
    "Enough of the wash water is used again",
    "California Water Code 10951 (in-bay and conveyor washes permitted after 2013)",
    Confidence::Seen,
    Severity::Warning,
    checkReclaim,
    Trade::General};

} // namespace sump
