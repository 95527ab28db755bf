// What the vault train does at the peak.

#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/duty.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

std::string printWholeMinutes(Duration time) {
  return fixed(time.value() / 60, 0) + " min";
}

/// The whole train: the sum over its chambers, which the water passes one after the other. Dead
/// water, which nothing passes, holds none up.
Decided<Duration> detention(const TrainStudy& train) {
  Decided<Duration> sum = seconds(0);
  for (const ChamberDuty& chamber : train.chambers) {
    if (chamber.throughflow && chamber.throughflow->value() <= 0) continue;
    sum = decide([](Duration a, Duration b) { return a + b; }, sum, chamber.detention);
  }
  return sum;
}

std::vector<Id> vaultIds(const Plan& plan) {
  std::vector<Id> ids;
  for (const Vault& vault : plan.vaults)
    ids.push_back(vault.id);
  return ids;
}

void checkDetention(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  if (input.plan.vaults.empty()) return; // storage-volume tells
  const Duration need = seconds(60 * input.limits.number("duty.detention"));
  const Decided<Duration> have = detention(input.study.train);
  if (!have) {
    out.needs(vaultIds(input.plan), have.needs);
  } else if (*have < need) {
    Finding& finding = out.against("duty.detention", "short", vaultIds(input.plan));
    finding.measured = printWholeMinutes(*have);
    finding.required = printWholeMinutes(need);
  }
}

/// Each worst over both cases; the pump standing still is the higher of them.
void checkSurcharge(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  if (input.plan.vaults.empty()) return;
  const Decided<TrainLevels>& levels = input.study.train.pumpStopped;
  if (!levels) {
    out.needs({}, levels.needs);
    return;
  }
  for (const ChamberLevel& chamber : levels->chambers) {
    if (chamber.airspace > metres(0)) continue;
    Finding& finding =
        out.impossible("lid", {chamber.vault}, {{"chamber", std::to_string(chamber.chamber)}});
    finding.measured = printShort(chamber.airspace, out.units());
    finding.required = "over 0";
    finding.which = std::to_string(chamber.chamber);
  }
  for (const BasinLevel& basin : levels->basins) {
    if (basin.freeboard > metres(0)) continue;
    Finding& finding = out.impossible("basin", {basin.basin, basin.run});
    finding.measured = printShort(basin.freeboard, out.units());
    finding.required = "over 0";
  }
}

void checkDrain(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (const GravityStudy& drain : input.study.train.gravity) {
    if (!drain.share) {
      out.needs({drain.run}, drain.share.needs);
    } else if (*drain.share > 1) {
      Finding& finding = out.impossible("full", {drain.run});
      finding.measured = printFlow(*drain.peak, out.units());
      finding.required = "at most " + printFlow(*drain.fullFlow, out.units());
    }
  }
}

/// Drains are self-cleaning when they run fast enough half full, where the speed is that of full.
void checkScour(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const Velocity least = metresPerSecond(input.limits.number("gravity.velocity"));
  const Velocity silt = metresPerSecond(input.limits.number("gravity.velocity.silt"));
  for (const GravityStudy& drain : input.study.train.gravity) {
    const Run* run = input.plan.runs.find(drain.run);
    if (run == nullptr || run->service != Service::Inlet) continue; // silt stays in the vaults
    if (!drain.fullVelocity) {
      out.needs({drain.run}, drain.fullVelocity.needs);
      continue;
    }
    const bool slow = *drain.fullVelocity < least;
    if (!slow && *drain.fullVelocity >= silt) continue;
    // With silt some authorities ask for more: told, not blamed.
    Finding& finding =
        slow ? out.against("gravity.velocity", "slow", {drain.run}) : out.note("silt", {drain.run});
    finding.measured = printSpeed(*drain.fullVelocity, out.units());
    finding.required = printSpeed(slow ? least : silt, out.units());
  }
}

std::string printDays(Duration time) {
  return fixed(time.value() / kSecondsPerDay, 1) + " days";
}

/// As if all settled in the first chamber, which fills first.
void checkInterval(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  if (input.study.vaults.empty()) return;
  const std::vector<Id> first = {input.study.vaults.front().id};
  const Decided<Duration>& have = input.study.train.pumpOutFirst;
  const Duration need = seconds(kSecondsPerDay * input.limits.number("duty.pump-out-days"));
  if (!have) {
    out.needs(first, have.needs);
    return;
  }
  Finding& finding =
      *have < need ? out.against("duty.pump-out-days", "often", first) : out.note("stated", first);
  finding.measured = printDays(*have);
  finding.required = printDays(need);
}

/// UPC 1016.3 as printed from memory: 4 ft2, and 1 ft2 for each 5 gpm beyond 20.
void checkSandArea(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  if (input.study.vaults.empty() || input.study.vaults.front().chambers.empty()) return;
  const VaultStudy& vault = input.study.vaults.front();
  const Decided<Flow>& peak = input.study.train.peakInflow;
  if (!peak) {
    out.needs({vault.id}, peak.needs);
    return;
  }
  constexpr double kSquareFoot = kMetresPerFoot * kMetresPerFoot;
  const double over = std::max(0.0, inGallonsPerMinute(*peak) - 20);
  const double need = 4 + std::ceil(over / 5 - 1e-9);
  const double have = vault.chambers.front().area.value() / kSquareFoot;
  if (have >= need) return;
  const bool metric = out.units() == UnitSystem::Metric;
  const auto print = [&](double squareFeet) {
    return metric ? fixed(squareFeet * kSquareFoot, 2) + " m\u00B2"
                  : fixed(squareFeet, 1) + " ft\u00B2";
  };
  Finding& finding = out.report("small", {vault.id}, {{"flow", printFlow(*peak, out.units())}});
  finding.measured = print(have);
  finding.required = print(need);
}

} // namespace

const Rule kPeakDetention = {"peak-detention",
                             "Water stays in the vaults long enough at the peak",
                             "Salisbury NC interceptor sizing: 24 min at peak flow (grease, an "
                             "analogue)",
                             Confidence::Seen,
                             Severity::Warning,
                             checkDetention,
                             Trade::General};

const Rule kPeakLevel = {"peak-level",
                         "At the peak no water reaches a lid or stands on the pavement",
                         "energy levels of the train at the peak",
                         Confidence::CommonPractice,
                         Severity::Error,
                         checkSurcharge,
                         Trade::Plumbing};

const Rule kDrainCapacity = {
    "drain-capacity", "Drains carry the peak", "Manning's formula for a full pipe",
    Confidence::Seen, Severity::Error,         checkDrain,
    Trade::Plumbing};

const Rule kSludgeInterval = {"sludge-interval",
                              "The first chamber need not be pumped out all the time",
                              "Colton CA ordinance: the sand and oil of 7 days fill 25 % at most",
                              Confidence::Seen,
                              Severity::Warning,
                              checkInterval,
                              Trade::General};

const Rule kDrainSpeed = {
    "drain-speed",
    "Silt does not settle in the inlet",
    "Purcell OK code sec. 12-488: 2 ft/s; with silt up to 3 ft/s, ASPE Data Book vol. 2; UFC "
    "4-214-03 6-1",
    Confidence::Seen,
    Severity::Warning,
    checkScour,
    Trade::Plumbing};

const Rule kSandArea = {"sand-area",
                        "The first chamber is large enough for the sand to fall",
                        "UPC 1016.3, from memory",
                        Confidence::FromMemory,
                        Severity::Warning,
                        checkSandArea,
                        Trade::SiteWork};

} // namespace sump
