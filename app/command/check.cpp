// `check`: what is wrong with a plan.

#include "app/command/open_plan.h"
#include "core/exchange/review_json.h"

#include <map>
#include <ostream>

namespace sump {

namespace {

void printFinding(const Finding& finding, std::ostream& out) {
  const std::string objects = joined(finding.objects, ", ");
  out << name(finding.severity) << "  " << finding.rule << "  "
      << (objects.empty() ? "whole plan" : objects) << "\n  " << render(finding.what) << "\n";
  if (finding.measured) {
    out << "  measured " << *finding.measured;
    if (finding.required) out << ", required " << *finding.required;
    out << "\n";
  }
  const std::string mend = render(finding.mend);
  if (!mend.empty()) out << "  to mend: " << mend << "\n";
  if (!finding.source.empty()) {
    out << "  source: " << finding.source << " (" << words(finding.confidence) << ")\n";
  }
  if (finding.accepted) {
    out << "  accepted: " << finding.accepted->reason << " (" << finding.accepted->by << ", "
        << finding.accepted->date << ")\n";
  }
  out << "\n";
}

std::string profileName(const OpenedPlan& opened) {
  const CodeProfile* profile = opened.catalog.profile(opened.review.plan.project.profile);
  return profile == nullptr ? "generic" : profile->key + ", " + profile->name;
}

int run(const QCommandLineParser& parsed, Streams streams) {
  const OpenedPlan opened = openPlan(parsed);
  if (parsed.isSet("json")) {
    streams.out << findingsJson(opened.review);
    return opened.status();
  }
  std::map<Severity, int> count;
  int accepted = 0;
  for (const Finding& finding : opened.review.findings) {
    printFinding(finding, streams.out);
    ++(finding.accepted ? accepted : count[finding.severity]);
  }
  streams.out << opened.file.filename().string() << ": " << count[Severity::Error] << " errors, "
              << count[Severity::Warning] << " warnings, " << count[Severity::Note] << " notes";
  if (accepted > 0) streams.out << ", " << accepted << " accepted";
  streams.out << "\nCode profile: " << profileName(opened) << "\n"
              << "The adopted local code and the authority having jurisdiction govern.\n";
  return opened.status();
}

} // namespace

Command checkCommand() {
  return {"check",
          "List what is wrong with a plan, with the source of each demand.",
          "PLAN [options]",
          "  sumpwright check samples/transit-depot.sump\n"
          "  sumpwright check --json samples/transit-depot.sump > findings.json\n",
          [] {
            return QList<QCommandLineOption>{jsonOption(), catalogOption(), profileOption()};
          },
          run};
}

} // namespace sump
