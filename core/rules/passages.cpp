// What joins chambers and vaults, and what keeps them apart.

#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/down_legs.h"
#include "core/study/hole_gaps.h"
#include "core/study/object_names.h"

#include <algorithm>

namespace sump {

namespace {

struct Band {
  double low = 0;
  double high = 0;
  bool holds(double fraction) const { return fraction >= low && fraction <= high; }
  std::string text() const { return percent(low) + " to " + percent(high); }
};

Band middle(const RuleInput& input) {
  return {input.limits.number("interconnect.low"), input.limits.number("interconnect.high")};
}

double centreInBaffle(const RunStudy& study) {
  const double radius = inMetres(study.insideDiameter) / 2;
  for (const Penetration& p : study.penetrations) {
    if (!p.baffle.empty()) return p.at.z + radius;
  }
  return inMetres(study.startInvert) + radius;
}

/// Where the low-level float stops the pump, in the vault that it draws from.
std::optional<Length> lowWaterIn(const RuleInput& input, const Id& vault) {
  for (const SuctionStudy& suction : input.study.hydraulics.suctions) {
    const Run* run = input.plan.runs.find(suction.run);
    if (run != nullptr && run->from.target == vault && suction.lowWater) return *suction.lowWater;
  }
  return std::nullopt;
}

/// The crown of its bore, or the open end of an upper arm over that.
Length highestOpening(const RuleInput& input, const RunStudy& study, const VaultStudy& vault) {
  Length top = metres(centreInBaffle(study)) + 0.5 * study.insideDiameter;
  for (const UpperArm& arm : upperArms(input.plan, input.catalog, input.study))
    if (arm.run == study.id) top = std::max(top, vault.lidUnderside - arm.underLid);
  return top;
}

/// Open in what floats at low water, an interconnect passes it on.
void checkLowWater(Reporter& out, const RunStudy& study, const VaultStudy& vault) {
  const auto low = lowWaterIn(out.input(), vault.id);
  if (!low) return;
  const Length top = highestOpening(out.input(), study, vault);
  const Length oil = underOil(out.input().plan, *low);
  if (top <= oil + metres(kRounding)) return;
  Finding& finding = out.report("low-water", {study.id, vault.id});
  finding.measured = printElevation(top, out.units());
  finding.required = "at most " + printElevation(oil, out.units());
}

bool isElbow(EndFitting fitting) {
  return fitting == EndFitting::ElbowDown || fitting == EndFitting::ElbowUp;
}

void checkOne(Reporter& out, const Run& run, const RunStudy& study, const VaultStudy& vault) {
  const EndFitting a = run.from.fitting, b = run.to.fitting;
  const bool teeAndElbow =
      (a == EndFitting::Tee && isElbow(b)) || (b == EndFitting::Tee && isElbow(a));
  if (!teeAndElbow) out.report("fittings", {run.id});
  if (!study.resolved) {
    out.needs({run.id, vault.id}, {"levels of " + run.id});
    return;
  }
  checkLowWater(out, study, vault);
  const auto fraction = waterFraction(vault, centreInBaffle(study));
  const Band band = middle(out.input());
  if (!fraction) {
    out.needs({run.id, vault.id}, {levelOf(out.input().plan, vault.id)});
  } else if (!band.holds(*fraction)) {
    Finding& finding = out.report("depth", {run.id, vault.id});
    finding.measured = percent(*fraction);
    finding.required = band.text();
  }
}

void checkInterconnects(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const auto runs = runsOf(input, Service::Interconnect);
  for (std::size_t v = 0; v < input.plan.vaults.size(); ++v) {
    const Vault& vault = input.plan.vaults[v];
    for (int chamber = 1; chamber < chamberCount(vault); ++chamber) {
      bool found = false;
      for (const auto& [run, study] : runs) {
        if (run->from.target != vault.id || run->to.target != vault.id) continue;
        if (run->from.chamber != chamber || run->to.chamber != chamber + 1) continue;
        found = true;
        checkOne(out, *run, *study, input.study.vaults[v]);
      }
      const Id& baffle = vault.baffles[static_cast<std::size_t>(chamber) - 1].id;
      if (!found) out.report("missing", {baffle, vault.id}, {{"vault", called(vault)}});
    }
  }
}

/// Either end may carry the drop: from the middle of the upper water, or to that of the lower.
void checkDrop(Reporter& out, const RunStudy& study, const VaultStudy& from, const VaultStudy& to) {
  const Band band = middle(out.input());
  const auto start = waterFraction(from, inMetres(study.startInvert));
  const auto end = waterFraction(to, inMetres(study.endInvert));
  if ((start && band.holds(*start)) || (end && band.holds(*end))) return;
  Finding& finding = out.report("drop", {study.id});
  if (start && end) finding.measured = percent(*start) + ", " + percent(*end);
  finding.required = band.text();
}

void checkLink(Reporter& out, const Run& run, const RunStudy& study, std::size_t from) {
  const VaultStudy& upper = out.input().study.vaults[from];
  const VaultStudy& lower = out.input().study.vaults[from + 1];
  Needs needs;
  if (!study.resolved) addNeeds(needs, {"levels of " + run.id});
  for (const VaultStudy* vault : {&upper, &lower}) {
    if (!vault->waterLevel) addNeeds(needs, {levelOf(out.input().plan, vault->id)});
  }
  if (!needs.empty()) {
    out.needs({run.id, upper.id}, needs);
    return;
  }
  const auto high =
      std::ranges::max_element(study.points, {}, [](const RunPoint& p) { return p.at.z; });
  const Length below = *upper.waterLevel - metres(high->at.z);
  const Length allowed = out.input().limits.length("link.below-water");
  if (below > allowed) {
    Finding& finding = out.report("low", {run.id});
    finding.measured = printShort(below, out.units());
    finding.required = printShort(allowed, out.units());
  }
  checkDrop(out, study, upper, lower);
}

void checkLinks(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (std::size_t v = 0; v + 1 < input.plan.vaults.size(); ++v) {
    const Id &from = input.plan.vaults[v].id, &to = input.plan.vaults[v + 1].id;
    bool found = false;
    for (const auto& [run, study] : runsOf(input, Service::Link)) {
      if (run->from.target != from || run->to.target != to) continue;
      found = true;
      checkLink(out, *run, *study, v);
    }
    if (!found)
      out.report("missing", {from, to},
                 {{"from", spokenName(input.plan, from)}, {"to", spokenName(input.plan, to)}});
  }
}

void checkBaffles(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const Length allowed = input.limits.length("baffle.gap");
  for (const Vault& vault : input.plan.vaults) {
    if (vault.baffles.empty()) out.report("none", {vault.id});
    for (const Baffle& baffle : vault.baffles) {
      const Length gap = std::max(baffle.bottomGap, baffle.topGap);
      if (gap <= allowed) continue;
      const bool bottom = baffle.bottomGap >= baffle.topGap;
      Finding& finding = out.report(bottom ? "bottom" : "top", {baffle.id, vault.id});
      finding.measured = printShort(gap, out.units());
      finding.required = printShort(allowed, out.units());
    }
  }
}

void checkAirspace(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const Length need = input.limits.length("vault.airspace");
  for (const VaultStudy& vault : input.study.vaults) {
    if (!vault.waterLevel) {
      out.needs({vault.id}, {levelOf(input.plan, vault.id)});
      continue;
    }
    if (vault.lidUnderside - *vault.waterLevel >= need) continue;
    Finding& finding = out.against("vault.airspace", "low", {vault.id});
    finding.measured = printShort(vault.lidUnderside - *vault.waterLevel, out.units());
    finding.required = printShort(need, out.units());
  }
}

/// The first and last chamber of each air space: baffles that reach the lid part them.
std::vector<std::pair<int, int>> airSpaces(const Vault& vault) {
  std::vector<std::pair<int, int>> spaces = {{1, 1}};
  for (const Baffle& baffle : vault.baffles) {
    const int next = spaces.back().second + 1;
    if (baffle.topGap > metres(kRounding)) {
      spaces.back().second = next;
    } else {
      spaces.emplace_back(next, next);
    }
  }
  return spaces;
}

void checkVents(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const auto vents = runsOf(input, Service::Vent);
  if (vents.empty()) return; // lines-present tells
  for (const Vault& vault : input.plan.vaults) {
    for (const auto& [first, last] : airSpaces(vault)) {
      const bool vented = std::ranges::any_of(vents, [&](const auto& vent) {
        const RunEnd& from = vent.first->from;
        return from.target == vault.id && from.chamber >= first && from.chamber <= last;
      });
      if (vented) continue;
      std::string chambers = std::to_string(first);
      if (last > first) chambers += " to " + std::to_string(last);
      out.report("none", {vault.id}, {{"chambers", chambers}}).which = chambers;
    }
  }
}

} // namespace

const Rule kVentAirSpace = {"vent-air-space",  "Each air space that baffles part has a vent",
                            kPractice,         Confidence::CommonPractice,
                            Severity::Warning, checkVents,
                            Trade::Plumbing};

const Rule kInterconnectDepth = {"interconnect-depth",
                                 "Chambers are joined at the middle of the water",
                                 kPractice,
                                 Confidence::CommonPractice,
                                 Severity::Warning,
                                 checkInterconnects,
                                 Trade::Plumbing};

const Rule kVaultLink = {
    "vault-link",      "Vaults are joined high, with a drop to the middle of the water",
    kPractice,         Confidence::CommonPractice,
    Severity::Warning, checkLinks,
    Trade::Plumbing};

const Rule kBaffleFullHeight = {"baffle-full-height",
                                "Baffles stand from floor to lid",
                                kPractice,
                                Confidence::CommonPractice,
                                Severity::Warning,
                                checkBaffles,
                                Trade::SiteWork};

const Rule kLidAirspace = {"lid-airspace",
                           "There is air between water and lid",
                           "NC 15A NCAC 18A .1954(a)(2) (septic tanks, an analogue)",
                           Confidence::Seen,
                           Severity::Warning,
                           checkAirspace,
                           Trade::SiteWork};

} // namespace sump
