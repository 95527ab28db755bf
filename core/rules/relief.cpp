// The relief opening of a reduced-pressure assembly: over the floor, and a drain under it.

#include "core/study/relief.h"
#include "core/rules/families.h"
#include "core/rules/report.h"

#include <algorithm>

namespace sump {

namespace {

void checkRelief(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  std::vector<Id> unknown;
  for (std::size_t i = 0; i < input.study.runs.size(); ++i) {
    const Run& run = input.plan.runs[i];
    if (!input.study.runs[i].resolved && hasPart(run, PartKind::ReducedPressureAssembly))
      unknown.push_back(run.id);
  }
  out.needLevels(unknown);
  const Length need = input.limits.length("makeup.assembly-height");
  for (const RoomAssembly& assembly : roomAssemblies(input.plan, input.study)) {
    if (assembly.height < need - metres(kRounding)) {
      Finding& finding = out.against("makeup.assembly-height", "low", {assembly.run, assembly.room},
                                     {{"part", assembly.part}});
      finding.measured = printLength(assembly.height, out.units());
      finding.required = printLength(need, out.units());
      finding.place = assembly.at;
      finding.which = assembly.part;
    }
    if (!input.plan.rooms.find(assembly.room)->floorDrain)
      out.note("no-drain", {assembly.run, assembly.room}, {{"part", assembly.part}}).which =
          assembly.part;
  }
}

} // namespace

const Rule kReliefDrain = {
    "relief-drain",
    "The relief of a reduced-pressure assembly stands over the floor and has a drain",
    "30 TAC 344.52; Chicago 18-29-608.13",
    Confidence::Seen,
    Severity::Warning,
    checkRelief,
    Trade::Plumbing};

} // namespace sump
