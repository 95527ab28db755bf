#include "core/rules/families.h"
#include "core/rules/report.h"

namespace sump {

namespace {

void checkStorage(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  if (input.plan.vaults.empty()) {
    out.impossible("none", {});
    return;
  }
  std::vector<Id> vaults, unknown;
  Needs needs;
  for (const VaultStudy& vault : input.study.vaults) {
    vaults.push_back(vault.id);
    if (vault.waterLevel) continue;
    unknown.push_back(vault.id);
    needs.push_back(levelOf(input.plan, vault.id));
  }
  if (!unknown.empty()) {
    out.needs(unknown, needs);
    return;
  }
  const Volume have = input.study.workingVolume, need = input.limits.volume("storage.minimum");
  if (have >= need) return;
  const double rounding = input.limits.number("storage.rounding");
  const Arguments arguments = {{"have", printVolume(have, out.units())},
                               {"need", printVolume(need, out.units())},
                               {"rounding", percent(rounding)}};
  Finding& finding = have >= (1 - rounding) * need
                         ? out.note("rounding", vaults, arguments)
                         : out.against("storage.minimum", "short", vaults, arguments);
  finding.measured = printVolume(have, out.units());
  finding.required = printVolume(need, out.units());
}

} // namespace

const Rule kStorageVolume = {"storage-volume", "The vaults hold the working volume",
                             kPractice,        Confidence::CommonPractice,
                             Severity::Error,  checkStorage,
                             Trade::SiteWork};

} // namespace sump
