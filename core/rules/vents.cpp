// Vents end over the roofs beside them.

#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/object_names.h"
#include "core/study/vent_ends.h"
#include "core/units/print_levels.h"

namespace sump {

namespace {

std::string heightOver(Length end, Length roof, UnitSystem units) {
  return end < roof ? printShort(roof - end, units) + " below the roof"
                    : printShort(end - roof, units);
}

void checkVentOverRoof(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  out.needLevels(unresolved(input, {Service::Vent}));
  const Length need = input.limits.length("vent.over-roof");
  for (const VentEnd& vent : ventEnds(input.plan, input.study, input.limits)) {
    for (const NearRoof& near : vent.roofs) {
      const std::string name = spokenName(input.plan, near.building);
      if (!near.roof) {
        out.needs({vent.run, near.building}, {"top of the roof of " + name}).place = vent.at;
        continue;
      }
      if (vent.level - *near.roof >= need - metres(kRounding)) continue;
      Finding& finding =
          out.against("vent.over-roof", "low", {vent.run, near.building}, {{"building", name}});
      finding.measured = heightOver(vent.level, *near.roof, out.units());
      finding.required = printShort(need, out.units());
      finding.place = vent.at;
    }
  }
}

} // namespace

/// UPC 906.1 asks for it where a vent goes through the roof. One that rises beside the wall would
/// else blow at the eaves or under them; 10 ft is how far 906.2 keeps vents from openings, which
/// the plan does not have.
const Rule kVentOverRoof = {"vent-over-roof",   "Vents end over the roofs beside them",
                            "UPC 906.1, 906.2", Confidence::SeenSecondHand,
                            Severity::Warning,  checkVentOverRoof,
                            Trade::Plumbing};

} // namespace sump
