// Where wash water is caught: the grit stays in a sump under the outlet.

#include "core/rules/families.h"
#include "core/rules/report.h"

namespace sump {

namespace {

void checkSump(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const Length need = input.limits.length("basin.sump");
  for (const Basin& basin : input.plan.basins) {
    if (!basin.sump) {
      // A trench drain may be cleaned as it lies, or have a catch basin at its end.
      if (basin.kind == BasinKind::CatchBasin) out.note("unknown", {basin.id});
    } else if (*basin.sump < need - metres(kRounding)) {
      Finding& finding = out.against("basin.sump", "shallow", {basin.id});
      finding.measured = printLength(*basin.sump, out.units());
      finding.required = printLength(need, out.units());
      finding.place = basin.at;
    }
  }
}

} // namespace

const Rule kBasinSump = {"basin-sump",      "The sump of a catch basin is deep enough for grit",
                         kPractice,         Confidence::CommonPractice,
                         Severity::Warning, checkSump,
                         Trade::SiteWork};

} // namespace sump
