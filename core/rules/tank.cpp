// What septic-tank codes ask of a tank's inside, as an analogue: where pipes come in, how deep they
// dip, how deep the water is and how it is shared out. A reclaim vault is no septic tank.

#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/down_legs.h"

#include <algorithm>
#include <array>

namespace sump {

namespace {

struct Range {
  double low = 0;
  double high = 0;
  bool holds(double v) const { return v >= low - 1e-9 && v <= high + 1e-9; }
  std::string text() const { return percent(low) + " to " + percent(high); }
};

Range range(const RuleInput& input, std::string_view low, std::string_view high) {
  return {input.limits.number(low), input.limits.number(high)};
}

void checkDrop(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const Length need = input.limits.length("inlet.drop");
  for (const auto& [run, study] : runsOf(input, Service::Inlet)) {
    const auto place = chamberPlace(input, run->to);
    if (!place) continue; // flow-order tells where it should go
    const VaultStudy& vault = input.study.vaults[place->vault];
    if (!study->resolved || !vault.waterLevel) {
      out.needs({run->id, vault.id},
                {study->resolved ? levelOf(input.plan, vault.id) : "invert of " + run->id});
      continue;
    }
    const Length drop = invertBeforeDrop(*study, true) - *vault.waterLevel;
    if (drop >= need - metres(kRounding)) continue;
    Finding& finding = out.against("inlet.drop", "low", {run->id, vault.id});
    finding.measured = printShort(drop, out.units());
    finding.required = printShort(need, out.units());
  }
}

/// One end of a run in a chamber, and how deep it reaches below the water there.
struct Dip {
  const Run& run;
  const VaultStudy& vault;
  EndFitting fitting;
  Length depth;              ///< of the water
  std::optional<Length> tip; ///< below the water, of a drop that is drawn or a down leg
  /// The leg's end is worked out from what is asked here.
  bool isAsAsked = false;
  double fraction() const { return inMetres(*tip) / inMetres(depth); }
};

/// Nothing where the plan does not know enough, which is reported.
std::optional<Dip> dipOf(Reporter& out, const Run& run, const RunStudy& study, bool atEnd) {
  const RunEnd& end = atEnd ? run.to : run.from;
  const auto place = chamberPlace(out.input(), end);
  if (!place) return std::nullopt;
  const VaultStudy& vault = out.input().study.vaults[place->vault];
  if (!study.resolved || !vault.waterLevel || *vault.waterLevel <= vault.floor) {
    out.needs({run.id, vault.id},
              {study.resolved ? levelOf(out.input().plan, vault.id) : "invert of " + run.id});
    return std::nullopt;
  }
  Dip dip{run, vault, end.fitting, *vault.waterLevel - vault.floor, {}};
  const Length tip = atEnd ? study.endInvert : study.startInvert;
  if (tip < invertBeforeDrop(study, atEnd)) dip.tip = *vault.waterLevel - tip;
  if (const DownLeg* leg = downLeg(study, !atEnd)) {
    dip.tip = *vault.waterLevel - leg->end;
    dip.isAsAsked = !leg->stated && leg->piece.has_value();
  }
  return dip;
}

/// A fitting of a size that the catalogue does not have has no known leg, which `level-known`
/// tells.
bool isDone(const std::optional<Dip>& dip) {
  return !dip || dip->isAsAsked || (!dip->tip && turnsDown(dip->fitting));
}

/// Over what is left of the water when the float has stopped the pump, less what floats on it, the
/// open end takes in oil, which the next overflow carries off; common practice, no source.
void checkLowEnd(Reporter& out, const Dip& dip) {
  const RuleInput& input = out.input();
  const auto oil = lowestOil(input.plan, input.study, dip.vault.id, dip.run.from.chamber);
  if (!oil || !dip.tip) return;
  const Length end = *dip.vault.waterLevel - *dip.tip;
  if (end <= *oil + metres(kRounding)) return;
  Finding& finding = out.report("low-water", {dip.run.id, dip.vault.id});
  finding.measured = printElevation(end, out.units());
  finding.required = "at most " + printElevation(*oil, out.units());
}

void checkOutletDip(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const Range band = range(input, "outlet.dip.low", "outlet.dip.high");
  for (const auto& [run, study] : runsOf(input, Service::Overflow)) {
    const auto dip = dipOf(out, *run, *study, false);
    if (dip) checkLowEnd(out, *dip);
    if (isDone(dip)) continue;
    if (!dip->tip) {
      out.report("none", {run->id, dip->vault.id}).required = band.text();
    } else if (!band.holds(dip->fraction())) {
      Finding& finding = out.against("outlet.dip.low", "depth", {run->id, dip->vault.id});
      finding.measured = percent(dip->fraction());
      finding.required = band.text();
    }
  }
}

void checkInletDip(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const Length least = input.limits.length("inlet.dip.least");
  const Range band = range(input, "inlet.dip.low", "inlet.dip.high");
  for (const auto& [run, study] : runsOf(input, Service::Inlet)) {
    const auto dip = dipOf(out, *run, *study, true);
    if (isDone(dip)) continue;
    if (!dip->tip) {
      out.report("none", {run->id, dip->vault.id}).required = printShort(least, out.units());
    } else if (*dip->tip < least - metres(kRounding)) {
      Finding& finding = out.against("inlet.dip.least", "shallow", {run->id, dip->vault.id});
      finding.measured = printShort(*dip->tip, out.units());
      finding.required = printShort(least, out.units());
    } else if (!band.holds(dip->fraction())) {
      Finding& finding = out.against("inlet.dip.low", "depth", {run->id, dip->vault.id});
      finding.measured = percent(dip->fraction());
      finding.required = band.text();
    }
  }
}

/// A code's figure for two chambers says little of three, unless a profile or the project chose it.
bool isChosen(const RuleInput& input, std::string_view limit) {
  const Limit &here = input.limits.at(limit), &generic = input.catalog.limits.at(limit);
  return here.citation != generic.citation || here.value != generic.value;
}

void checkShare(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  if (input.study.vaults.empty()) return;
  const VaultStudy& first = input.study.vaults.front();
  if (first.chambers.size() < 2) return; // baffle-full-height asks for a baffle
  if (!first.waterLevel || first.workingVolume.value() <= 0) {
    out.needs({first.id}, {levelOf(input.plan, first.id)});
    return;
  }
  const double share = first.chambers.front().volume / first.workingVolume;
  const Range band = range(input, "chamber.first.low", "chamber.first.high");
  if (band.holds(share)) return;
  const std::string_view limit = share < band.low ? "chamber.first.low" : "chamber.first.high";
  const bool ours = first.chambers.size() == 2 || isChosen(input, limit);
  Finding& finding =
      ours ? out.against(limit, share < band.low ? "small" : "large", {first.id})
           : out.note("several", {first.id}, {{"count", std::to_string(first.chambers.size())}});
  finding.measured = percent(share);
  finding.required = band.text();
}

void checkDepth(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const Length least = input.limits.length("liquid.least"),
               most = input.limits.length("liquid.most");
  for (const VaultStudy& vault : input.study.vaults) {
    if (!vault.waterLevel) {
      out.needs({vault.id}, {levelOf(input.plan, vault.id)});
      continue;
    }
    const Length depth = *vault.waterLevel - vault.floor;
    const bool shallow = depth < least - metres(kRounding);
    if (!shallow && depth <= most + metres(kRounding)) continue;
    Finding& finding = out.against(shallow ? "liquid.least" : "liquid.most",
                                   shallow ? "shallow" : "deep", {vault.id});
    finding.measured = printShort(depth, out.units());
    finding.required = printShort(shallow ? least : most, out.units());
  }
}

void checkSludge(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const WaterBasis& water = input.plan.basis.water;
  const double most = input.limits.number("duty.sludge-share");
  for (const VaultStudy& vault : input.study.vaults) {
    const auto share = decide(
        [&](Length sludge, Length oil, Length level) {
          return inMetres(sludge + oil) / std::max(inMetres(level - vault.floor), kRounding);
        },
        given(water.sludgeDepth, "sludge allowance"), given(water.oilDepth, "oil allowance"),
        given(vault.waterLevel, levelOf(input.plan, vault.id)));
    if (!share) {
      out.needs({vault.id}, share.needs);
    } else if (*share >= most) {
      Finding& finding = out.against("duty.sludge-share", "much", {vault.id});
      finding.measured = percent(*share);
      finding.required = "under " + percent(most);
    }
  }
}

} // namespace

const Rule kInletAboveOutlet = {
    "inlet-above-outlet",
    "Wash water comes in above the water at rest",
    "WAC 246-272C-0220; MN Rules 7080.1920; NC 15A NCAC 18A .1954 (septic tanks, an analogue)",
    Confidence::Seen,
    Severity::Error,
    checkDrop,
    Trade::Plumbing};

const Rule kOutletDip = {"outlet-dip",
                         "The overflow draws from below what floats",
                         "WAC 246-272C; NC 15A NCAC 18A .1954 (septic tanks, an analogue)",
                         Confidence::Seen,
                         Severity::Warning,
                         checkOutletDip,
                         Trade::Plumbing};

const Rule kInletDip = {"inlet-dip",
                        "The inlet turns down into the water",
                        "WAC 246-272C-0220(2)(a) (septic tanks, an analogue)",
                        Confidence::Seen,
                        Severity::Warning,
                        checkInletDip,
                        Trade::Plumbing};

const Rule kFirstChamberShare = {"first-chamber-share",
                                 "The first chamber holds its share of the first vault",
                                 "WAC 246-272C; TN 0400-48-01-.09 (septic tanks, an analogue)",
                                 Confidence::Seen,
                                 Severity::Warning,
                                 checkShare,
                                 Trade::SiteWork};

const Rule kLiquidDepth = {"liquid-depth",
                           "The water is neither too shallow to settle nor too deep",
                           "MN Rules 7080.1920 (septic tanks, an analogue)",
                           Confidence::Seen,
                           Severity::Warning,
                           checkDepth,
                           Trade::SiteWork};

const Rule kSludgeShare = {
    "sludge-share",
    "Sludge and oil together leave water to work in",
    "Dallas City Code, traps and interceptors: pumped out at 25 % of the wetted height",
    Confidence::Seen,
    Severity::Warning,
    checkSludge,
    Trade::General};

} // namespace sump
