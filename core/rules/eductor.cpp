#include "core/rules/families.h"
#include "core/rules/report.h"

#include <cmath>

namespace sump {

namespace {

void checkHeight(Reporter& out, const Run& run, std::string_view name, Length aboveWater,
                 Length wanted) {
  const Length tolerance = out.input().limits.length("eductor.tolerance");
  if (std::abs(inMetres(aboveWater - wanted)) <= inMetres(tolerance)) return;
  Finding& finding = out.report(name, {run.id});
  finding.measured = printShort(aboveWater, out.units());
  finding.required =
      printShort(wanted, out.units()) + " \u00B1 " + printShort(tolerance, out.units());
}

void checkMount(Reporter& out, const Run& run, const ChamberPlace& place) {
  const RuleInput& input = out.input();
  const EductorMount& mount = *run.eductor;
  const VaultStudy& vault = input.study.vaults[place.vault];
  bool inChamber = false;
  for (const ManwayStudy& manway : vault.manways) {
    inChamber |= manway.id == mount.manway && manway.chamber == place.chamber;
  }
  if (!inChamber) out.report("manway", {run.id, vault.id}, {{"manway", mount.manway}});
  if (nominalInches(mount.portSize) != input.limits.number("eductor.port")) {
    out.report("port", {run.id}, {{"size", mount.portSize}}).measured = mount.portSize + " in";
  }
  if (!vault.waterLevel) {
    out.needs({run.id, vault.id}, {levelOf(input.plan, vault.id)});
    return;
  }
  checkHeight(out, run, "bracket", mount.bracketFoot - *vault.waterLevel,
              input.limits.length("eductor.bracket-foot"));
  checkHeight(out, run, "outlet", mount.outletEnd - *vault.waterLevel,
              input.limits.length("eductor.outlet-end"));
}

void checkEductor(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (const auto& [run, study] : runsOf(input, Service::Recirculation)) {
    const auto place = chamberPlace(input, run->to);
    // A first vault of one chamber has no second; its only chamber must do.
    const int wanted =
        input.plan.vaults.empty() ? 1 : std::min(2, chamberCount(input.plan.vaults[0]));
    if (!place || place->vault != 0 || place->chamber != wanted) out.report("place", {run->id});
    if (!hasPart(*run, PartKind::Union)) out.report("union", {run->id});
    if (run->to.fitting != EndFitting::Eductor || !run->eductor) {
      out.report("none", {run->id});
    } else if (place) {
      checkMount(out, *run, *place);
    }
  }
}

} // namespace

const Rule kEductorMount = {
    "eductor-mount",   "The eductor hangs in the manway of vault 1, chamber 2",
    kPractice,         Confidence::CommonPractice,
    Severity::Warning, checkEductor,
    Trade::Plumbing};

} // namespace sump
