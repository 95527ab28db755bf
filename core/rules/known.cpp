// What must be known before anything can be judged, and the lines that a system has.

#include "core/rules/families.h"
#include "core/rules/report.h"

#include <array>

namespace sump {

namespace {

void checkKnown(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (const RunStudy& run : input.study.runs) {
    if (run.problem == "run.no-level") out.undecided("run", {run.id});
    if (run.problem == "run.no-such-pipe") {
      const Run* given = input.plan.runs.find(run.id);
      out.report("pipe", {run.id}, {{"pipe", given->pipe}, {"size", given->size}});
    }
  }
  for (const VaultStudy& vault : input.study.vaults) {
    if (!vault.waterLevel) out.undecided("water", {vault.id});
  }
  if (input.study.ground.empty()) out.undecided("ground", {});
}

/// Lines with rules of their own (suction, overflow, links ...) are asked for there.
constexpr std::array kRequired = {Service::Inlet,        Service::Recirculation, Service::Underflow,
                                  Service::FloatConduit, Service::Vent,          Service::Power,
                                  Service::Signal};

/// Underflow and float conduit have no rule of their own that looks at where they go.
void checkEnds(Reporter& out) {
  const RuleInput& input = out.input();
  if (input.plan.vaults.empty()) return;
  for (const auto& [run, study] : runsOf(input, Service::Underflow)) {
    const auto to = chamberPlace(input, run->to);
    const bool first = to && to->vault == 0 && to->chamber == 1;
    if (!first && run->to.kind != EndKind::Basin) out.report("underflow", {run->id});
  }
  const std::size_t last = input.plan.vaults.size() - 1;
  const int chamber = chamberCount(input.plan.vaults[last]);
  for (const auto& [run, study] : runsOf(input, Service::FloatConduit)) {
    const auto from = chamberPlace(input, run->from);
    if (!from || from->vault != last || from->chamber != chamber) out.report("float", {run->id});
  }
}

void checkPresent(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (Service service : kRequired) {
    if (!runsOf(input, service).empty()) continue;
    out.report(
           "missing", {},
           {{"line", std::string(facts(service).name)}, {"code", std::string(facts(service).code)}})
        .which = facts(service).key;
  }
  checkEnds(out);
}

void checkProfile(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  const std::string& key = input.plan.project.profile;
  if (key.empty() || key == kGenericProfile || input.catalog.profile(key) != nullptr) return;
  Reporter(input, rule, findings)
      .impossible("unknown", {}, {{"key", key}, {"known", input.catalog.profileKeys()}});
}

} // namespace

const Rule kCodeProfile = {"code-profile",
                           "The code profile is one that the program knows",
                           "a profile that is not there cannot be judged by",
                           Confidence::CommonPractice,
                           Severity::Error,
                           checkProfile,
                           Trade::General};

const Rule kLevelKnown = {"level-known",
                          "Levels and pipe sizes are known",
                          "what cannot be computed cannot be judged",
                          Confidence::CommonPractice,
                          Severity::Warning,
                          checkKnown,
                          Trade::General};

const Rule kLinesPresent = {
    "lines-present",   "Every line of the system is drawn and goes where it should",
    kPractice,         Confidence::CommonPractice,
    Severity::Warning, checkPresent,
    Trade::General};

} // namespace sump
