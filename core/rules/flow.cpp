// Flow order, levels that fall the right way, and drain slope.

#include "core/rules/families.h"
#include "core/rules/report.h"

namespace sump {

namespace {

void checkInlet(Reporter& out, const Run& run) {
  const auto to = chamberPlace(out.input(), run.to);
  if (!to || to->vault != 0 || to->chamber != 1) out.report("inlet", {run.id});
}

void checkLink(Reporter& out, const Run& run) {
  const auto from = chamberPlace(out.input(), run.from), to = chamberPlace(out.input(), run.to);
  if (!from || !to || to->vault != from->vault + 1) {
    out.report("link", {run.id});
    return;
  }
  const int last = chamberCount(out.input().plan.vaults[from->vault]);
  if (from->chamber != last || to->chamber != 1) out.report("link-chamber", {run.id});
}

void checkFalls(Reporter& out, const Run& run, const RunStudy& study) {
  if (!study.resolved || study.endInvert <= study.startInvert) return;
  Finding& finding = out.impossible("uphill", {run.id});
  finding.measured = printElevation(study.endInvert, out.units());
  finding.required = printElevation(study.startInvert, out.units());
}

void checkOrder(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  if (input.plan.vaults.empty()) return;
  for (const auto& [run, study] : runsOf(input, Service::Inlet)) {
    checkInlet(out, *run);
    checkFalls(out, *run, *study);
  }
  for (const auto& [run, study] : runsOf(input, Service::Link))
    checkLink(out, *run);
  for (const auto& [run, study] : runsOf(input, Service::Overflow)) {
    const auto from = chamberPlace(input, run->from);
    if (!from || from->vault + 1 != input.plan.vaults.size()) out.report("overflow", {run->id});
    checkFalls(out, *run, *study);
  }
  out.needLevels(unresolved(input, {Service::Inlet, Service::Overflow}));
}

std::string_view slopeLimit(double nominal) {
  if (nominal <= 2.5) return "slope.gravity.small";
  return nominal < 8 ? "slope.gravity.medium" : "slope.gravity.large";
}

void checkSlope(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  // Interconnects and links stand full of water; only lines that run part full need a fall.
  for (Service service : {Service::Inlet, Service::Overflow}) {
    for (const auto& [run, study] : runsOf(input, service)) {
      const auto nominal = nominalInches(run->size);
      if (!study->resolved) out.needs({run->id}, {"inverts of " + run->id});
      if (!study->leastSlope || !nominal) continue;
      const double need = input.limits.number(slopeLimit(*nominal));
      // Inverts are given to a hundredth of a foot: allow what that rounds away.
      if (*study->leastSlope >= need * 0.995) continue;
      Finding& finding =
          out.against(slopeLimit(*nominal), "flat", {run->id}, {{"size", run->size}});
      finding.measured = printSlope(*study->leastSlope, out.units());
      finding.required = printSlope(need, out.units());
    }
  }
}

} // namespace

const Rule kFlowOrder = {"flow-order",    "Water passes the vaults in order and downward",
                         kPractice,       Confidence::CommonPractice,
                         Severity::Error, checkOrder,
                         Trade::Plumbing};

const Rule kGravitySlope = {"gravity-slope",
                            "Drain lines fall enough for their size",
                            "Chicago Municipal Code table 18-29-704.1, the form of IPC table 704.1",
                            Confidence::Seen,
                            Severity::Error,
                            checkSlope,
                            Trade::Plumbing};

} // namespace sump
