#include "core/rules/families.h"
#include "core/rules/report.h"

namespace sump {

namespace {

void checkEnd(Reporter& out, const Run& run, const RunStudy& study) {
  const RuleInput& input = out.input();
  const auto place = chamberPlace(input, run.from);
  const std::size_t last = input.plan.vaults.size() - 1;
  if (!place || place->vault != last || place->chamber != chamberCount(input.plan.vaults[last])) {
    out.report("place", {run.id});
  }
  if (run.from.fitting != EndFitting::FootValve && run.from.fitting != EndFitting::Strainer) {
    out.report("open-end", {run.id});
  }
  if (!place) return;
  const VaultStudy& vault = input.study.vaults[place->vault];
  const auto& level = vault.waterLevel;
  if (!level || !study.resolved) {
    out.needs({run.id}, {study.resolved ? levelOf(input.plan, vault.id) : "levels of " + run.id});
    return;
  }
  const Length need = input.limits.length("suction.submergence");
  if (*level - study.startInvert >= need) return;
  Finding& finding = out.against("suction.submergence", "shallow", {run.id});
  finding.measured = printShort(*level - study.startInvert, out.units());
  finding.required = printShort(need, out.units());
}

void checkSource(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  if (runsOf(input, Service::Suction).empty()) out.impossible("none", {});
  if (runsOf(input, Service::SpareSuction).empty()) {
    // The system runs without its spare, so this is no error.
    out.report("no-spare", {}).severity = Severity::Warning;
  }
  if (input.plan.vaults.empty()) return;
  for (Service service : {Service::Suction, Service::SpareSuction}) {
    for (const auto& [run, study] : runsOf(input, service))
      checkEnd(out, *run, *study);
  }
}

/// Length and bends are stated for every suction, good or bad.
void stateLength(Reporter& out, const Run& run, const RunStudy& study) {
  const Limits& limits = out.input().limits;
  const Length longest = limits.length("suction.length");
  const auto most = static_cast<std::size_t>(limits.number("suction.bends"));
  const Arguments arguments = {{"length", printRunLength(study.developed, out.units())},
                               {"bends", std::to_string(study.bends.size())},
                               {"longest", printRunLength(longest, out.units())},
                               {"most", std::to_string(most)}};
  const bool tooLong = study.developed > longest || study.bends.size() > most;
  if (tooLong) {
    Finding& finding = out.report("long", {run.id}, arguments);
    finding.severity = Severity::Warning;
  } else {
    out.note("stated", {run.id}, arguments);
  }
}

void checkRise(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (Service service : {Service::Suction, Service::SpareSuction}) {
    for (const auto& [run, study] : runsOf(input, service)) {
      if (!study->resolved) continue;
      if (study->pocket) {
        Finding& finding =
            out.report("pocket", {run->id},
                       {{"level", printElevation(metres(study->pocket->at.z), out.units())}});
        finding.measured = printShort(study->pocket->rise, out.units());
        finding.required = printShort(input.limits.length("suction.tolerance"), out.units());
        finding.place = flat(study->pocket->at);
      }
      stateLength(out, *run, *study);
    }
  }
  out.needLevels(unresolved(input, {Service::Suction, Service::SpareSuction}));
}

} // namespace

const Rule kSuctionSource = {"suction-source", "Suction and spare draw from the last chamber",
                             kPractice,        Confidence::CommonPractice,
                             Severity::Error,  checkSource,
                             Trade::Plumbing};

const Rule kSuctionRise = {
    "suction-rise",
    "The suction rises all the way to the pump, short and straight",
    "pump makers' installation manuals: suction pipe rises continuously to the pump, no part above "
    "the pump suction; self-priming: under 25 ft",
    Confidence::Seen,
    Severity::Error,
    checkRise,
    Trade::Plumbing};

} // namespace sump
