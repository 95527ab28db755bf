// Lines at the equipment: product water, overflow, make-up.

#include "core/plan/ends.h"
#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/object_names.h"

#include <algorithm>

namespace sump {

namespace {

Decided<double> inchesOf(const std::string& nominal, const std::string& of) {
  return given(nominalInches(nominal), "size of " + of);
}

void checkReducers(Reporter& out, const Run& run, double size) {
  for (const InlinePart& part : run.parts) {
    if (part.kind != PartKind::Reducer) continue;
    const auto to = inchesOf(part.toSize, part.id);
    if (!to) {
      out.needs({run.id, part.id}, to.needs);
    } else if (*to < size) {
      Finding& finding = out.report("reducer", {run.id, part.id});
      finding.measured = part.toSize + " in";
      finding.required = run.size + " in";
    }
  }
}

void checkProduct(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const auto runs = runsOf(input, Service::Product);
  if (runs.empty()) out.report("none", {});
  const Locator locator(input.plan);
  for (const auto& [run, study] : runs) {
    const Port* port = run->from.kind == EndKind::Port ? locator.port(run->from.target) : nullptr;
    const auto size = inchesOf(run->size, run->id);
    const auto asked = port == nullptr ? undecided<double>({"port that " + run->id + " starts at"})
                                       : inchesOf(port->size, "port " + called(*port));
    if (size) checkReducers(out, *run, *size);
    const auto fits = decide([](double own, double its) { return own >= its; }, size, asked);
    if (!fits) {
      out.needs({run->id}, fits.needs);
    } else if (!*fits) {
      Finding& finding = out.report("port", {run->id, port->id});
      finding.measured = run->size + " in";
      finding.required = port->size + " in";
    }
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

/// Drains over the next upstream manhole's cover need no valve and may not flow through one.
void checkHigherDrains(Reporter& out, const Run& run, const SewerConnection* sewer) {
  if (sewer == nullptr || !sewer->upstreamManholeRim) return;
  for (const Basin& basin : out.input().plan.basins) {
    if (basin.rim <= *sewer->upstreamManholeRim) continue;
    Finding& finding = out.report("higher", {run.id, basin.id}, {{"drain", called(basin)}});
    finding.severity = Severity::Warning;
    cite(finding, kBackwaterCode, Confidence::Seen);
    finding.measured = printElevation(basin.rim, out.units());
    finding.required = "at most " + printElevation(*sewer->upstreamManholeRim, out.units());
  }
}

/// A backwater valve is demanded where a drain lies below the next upstream manhole's cover, and
/// something against backflow by common practice always.
void checkBackwater(Reporter& out, const Run& run) {
  const SewerConnection* sewer =
      run.to.kind == EndKind::Sewer ? out.input().plan.sewers.find(run.to.target) : nullptr;
  const auto rim = lowestRim(out.input().plan);
  static const std::optional<Length> unknown;
  const std::optional<Length>& cover = sewer == nullptr ? unknown : sewer->upstreamManholeRim;
  if (sewer != nullptr && !cover) {
    out.needs({run.id, sewer->id}, {"cover of the next upstream manhole at " + called(*sewer)});
  }
  if (hasPart(run, PartKind::BackwaterValve)) {
    checkHigherDrains(out, run, sewer);
    return;
  }
  if (rim && cover && *rim < *cover) {
    Finding& finding = out.report("low", {run.id});
    cite(finding, kBackwaterCode, Confidence::Seen);
    finding.measured = printElevation(*rim, out.units());
    finding.required = printElevation(*cover, out.units());
    return;
  }
  if (!hasPart(run, PartKind::AirGap)) out.report("open", {run.id});
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
                           Severity::Warning, checkProduct,
                           Trade::Plumbing};

const Rule kOverflowBackflow = {
    "overflow-backflow",
    "The overflow goes to the sewer and cannot flow back",
    "IPC 715 (backwater valves; Chicago 18-29-715); for every overflow: "
    "common practice, no source",
    Confidence::CommonPractice,
    Severity::Error,
    checkOverflow,
    Trade::Plumbing};

const Rule kMakeUpProtection = {
    "make-up-protection",
    "Make-up water has an air gap or a reduced-pressure assembly",
    "IPC 608.1 and local cross-connection ordinances: reclaimed water is a high hazard",
    Confidence::SeenSecondHand,
    Severity::Error,
    checkMakeUp,
    Trade::Plumbing};

} // namespace sump
