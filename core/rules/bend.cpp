#include "core/rules/families.h"
#include "core/rules/report.h"

namespace sump {

namespace {

std::string_view degreesOf(FittingKind kind) {
  switch (kind) {
  case FittingKind::Elbow90:
    return "90\u00B0";
  case FittingKind::Elbow45:
    return "45\u00B0";
  case FittingKind::Elbow22:
    return "22-1/2\u00B0";
  case FittingKind::Elbow11:
    return "11-1/4\u00B0";
  default:
    return "?";
  }
}

void check(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (const RunStudy& run : input.study.runs) {
    for (const Bend& bend : run.bends) {
      if (bend.stock) continue;
      std::string nearest;
      for (FittingKind kind : bend.fittings) {
        nearest += (nearest.empty() ? "" : " + ") + std::string(degreesOf(kind));
      }
      const Arguments arguments = {{"turn", printAngle(degrees(bend.degrees))},
                                   {"nearest", nearest},
                                   {"made", printAngle(degrees(bend.madeDegrees))}};
      const bool none = bend.fittings.empty();
      Finding& finding = out.report(none ? "none" : "odd", {run.id},
                                    none ? Arguments{{"turn", arguments.at("turn")}} : arguments);
      finding.measured = printAngle(degrees(bend.degrees));
      if (!none) finding.required = nearest;
      finding.place = flat(run.points[static_cast<std::size_t>(bend.point)].at);
    }
  }
}

} // namespace

const Rule kStockBend = {"stock-bend",      "Every turn is one that a stock fitting makes",
                         kPractice,         Confidence::CommonPractice,
                         Severity::Warning, check};

} // namespace sump
