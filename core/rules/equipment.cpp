// Lines at the equipment: product water, overflow, make-up.

#include "core/plan/ends.h"
#include "core/rules/families.h"
#include "core/rules/report.h"

#include <algorithm>

namespace sump {

namespace {

double inchesOf(const std::string& nominal) {
  return nominalInches(nominal).value_or(0);
}

void checkProduct(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const auto runs = runsOf(input, Service::Product);
  if (runs.empty()) out.report("none", {});
  const Locator locator(input.plan);
  for (const auto& [run, study] : runs) {
    for (const InlinePart& part : run->parts) {
      if (part.kind != PartKind::Reducer || inchesOf(part.toSize) >= inchesOf(run->size)) continue;
      Finding& finding = out.report("reducer", {run->id, part.id});
      finding.measured = part.toSize + " in";
      finding.required = run->size + " in";
    }
    const Port* port = run->from.kind == EndKind::Port ? locator.port(run->from.target) : nullptr;
    if (port == nullptr || inchesOf(run->size) >= inchesOf(port->size)) continue;
    Finding& finding = out.report("port", {run->id, port->id});
    finding.measured = run->size + " in";
    finding.required = port->size + " in";
  }
}

constexpr std::string_view kBackwaterCode = "IPC 715.1 (DC 12-F715)";

/// The lowest opening through which sewage could rise, or nothing without drains.
std::optional<Length> lowestRim(const Plan& plan) {
  std::optional<Length> lowest;
  for (const Basin& basin : plan.basins) {
    if (!lowest || basin.rim < *lowest) lowest = basin.rim;
  }
  return lowest;
}

/// A backwater valve is demanded where a drain lies below the next upstream manhole's cover, and
/// something against backflow by common practice always.
void checkBackwater(Reporter& out, const Run& run) {
  if (hasPart(run, PartKind::BackwaterValve)) return;
  const SewerConnection* sewer =
      run.to.kind == EndKind::Sewer ? out.input().plan.sewers.find(run.to.target) : nullptr;
  const auto rim = lowestRim(out.input().plan);
  const auto cover = sewer == nullptr ? std::nullopt : sewer->upstreamManholeRim;
  if (rim && cover && *rim < *cover) {
    Finding& finding = out.report("low", {run.id});
    cite(finding, kBackwaterCode, Confidence::Seen);
    finding.measured = printElevation(*rim, out.units());
    finding.required = printElevation(*cover, out.units());
    return;
  }
  if (!hasPart(run, PartKind::AirGap)) out.report("open", {run.id});
  if (sewer != nullptr && !cover) {
    out.needs({run.id, sewer->id}, {"cover of the next upstream manhole at " + sewer->id});
  }
}

void checkOverflow(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const auto runs = runsOf(input, Service::Overflow);
  if (runs.empty()) out.report("none", {});
  for (const auto& [run, study] : runs) {
    if (run->to.kind != EndKind::Sewer) out.report("not-sewer", {run->id});
    checkBackwater(out, *run);
  }
}

/// The least air gap for this pipe. Its bore stands for the effective opening, which is no larger.
Length airGap(const RuleInput& input, const RunStudy& study) {
  return std::max(input.limits.number("makeup.air-gap.diameters") * study.insideDiameter,
                  input.limits.length("makeup.air-gap.least"));
}

void checkMakeUp(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const auto runs = runsOf(input, Service::MakeUp);
  if (runs.empty()) out.report("none", {}).severity = Severity::Warning;
  for (const auto& [run, study] : runs) {
    if (hasPart(*run, PartKind::ReducedPressureAssembly) || hasPart(*run, PartKind::AirGap)) {
      continue;
    }
    const bool doubleCheck = hasPart(*run, PartKind::DoubleCheck);
    out.report(doubleCheck ? "double-check" : "open", {run->id},
               {{"gap", printShort(airGap(input, *study), out.units())}});
  }
}

} // namespace

const Rule kProductSize = {"product-size",    "Product water is not reduced before the wash",
                           kPractice,         Confidence::CommonPractice,
                           Severity::Warning, checkProduct};

const Rule kOverflowBackflow = {
    "overflow-backflow",
    "The overflow goes to the sewer and cannot flow back",
    "IPC 715 (backwater valves; Chicago 18-29-715); for every overflow: "
    "common practice, no source",
    Confidence::CommonPractice,
    Severity::Error,
    checkOverflow};

const Rule kMakeUpProtection = {
    "make-up-protection",
    "Make-up water has an air gap or a reduced-pressure assembly",
    "IPC 608.1 and local cross-connection ordinances: reclaimed water is a high hazard",
    Confidence::SeenSecondHand,
    Severity::Error,
    checkMakeUp};

} // namespace sump
