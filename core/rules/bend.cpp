#include "core/rules/families.h"
#include "core/rules/report.h"

#include <cmath>

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

/// `45° + 22-1/2°`; empty when no elbow is stocked.
std::string combination(const Bend& bend) {
  std::string text;
  for (FittingKind kind : bend.fittings) {
    text += (text.empty() ? "" : " + ") + std::string(degreesOf(kind));
  }
  return text;
}

void checkBends(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (const RunStudy& run : input.study.runs) {
    for (const Bend& bend : run.bends) {
      if (bend.stock) continue;
      const std::string turn = printAngle(degrees(bend.degrees)), nearest = combination(bend);
      const std::string off = printAngle(degrees(std::abs(bend.madeDegrees - bend.degrees)));
      Finding& finding =
          nearest.empty()
              ? out.report("none", {run.id}, {{"turn", turn}})
              : out.report("odd", {run.id}, {{"turn", turn}, {"nearest", nearest}, {"off", off}});
      finding.measured = turn;
      if (!nearest.empty()) finding.required = nearest;
      finding.which = std::to_string(bend.point);
      finding.place = flat(run.points[static_cast<std::size_t>(bend.point)].at);
    }
  }
  out.needLevels(unresolved(input));
}

} // namespace

const Rule kStockBend = {"stock-bend",      "Every turn is one that a stock fitting makes",
                         kPractice,         Confidence::CommonPractice,
                         Severity::Warning, checkBends,
                         Trade::General};

} // namespace sump
