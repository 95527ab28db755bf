// Where a line joins one that is in the ground already.

#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/connections.h"
#include "core/study/object_names.h"

namespace sump {

namespace {

/// A branch meets the existing line between its middle and its top: level from the side, as a
/// saddle or a tee sits, or from above.
void checkOne(Reporter& out, const Connection& joint, const Utility& other) {
  const RuleInput& input = out.input();
  const Arguments named = {{"other", spokenName(input.plan, other.id)}};
  if (!joint.level) {
    out.needs({joint.run, other.id}, {"level of " + named.at("other")});
    return;
  }
  const Length tolerance = input.limits.length("tap.tolerance");
  const Length middle = joint.invert + input.study.run(joint.run)->insideDiameter / 2.0;
  const Length over = middle - *joint.level;
  const Length most = other.diameter.value_or(metres(0)) / 2.0;
  const bool below = over < -tolerance - metres(kRounding);
  if (!below && over <= most + tolerance + metres(kRounding)) return;
  Finding& finding =
      out.against("tap.tolerance", below ? "below" : "above", {joint.run, other.id}, named);
  finding.measured = printShort(over, out.units());
  finding.required =
      printShort(-tolerance, out.units()) + " to " + printShort(most + tolerance, out.units());
  finding.place = joint.at;
  finding.which = joint.atStart ? "start" : "end";
}

void checkJoining(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (const Connection& joint : connections(input.plan, input.study)) {
    if (joint.kind != ConnectionKind::Utility) continue;
    checkOne(out, joint, *input.plan.utilities.find(joint.other));
  }
}

} // namespace

const Rule kTapLevel = {
    "tap-level",       "A line that joins one in the ground meets it at its level",
    kPractice,         Confidence::CommonPractice,
    Severity::Warning, checkJoining,
    Trade::General};

} // namespace sump
