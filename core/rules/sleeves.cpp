// What is left of a building's wall between the openings of lines.

#include "core/geometry/polygon.h"
#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/object_names.h"
#include "core/study/wall_sleeves.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

/// An opening as it lies in one wall of a building.
struct WallOpening {
  const WallSleeve* sleeve = nullptr;
  Id building;
  std::size_t edge = 0; ///< of the building's outline
  double along = 0;     ///< m, of the edge
  double straight = 0;  ///< m; what its width across the face has over its height
  double radius() const { return inMetres(sleeve->high - sleeve->low) / 2; }
  double middle() const { return inMetres(sleeve->high + sleeve->low) / 2; }
};

/// Where buildings share a wall it stands once, in the first of them.
WallOpening openingOf(const WallSleeve& sleeve, const WalledThing& thing, Length wall) {
  WallOpening opening{&sleeve, thing.id};
  if (isSkew(sleeve))
    opening.straight = inMetres(straightOpening(sleeve, wall) - (sleeve.high - sleeve.low));
  double least = 1e9;
  for (std::size_t i = 0; i < thing.outline.size(); ++i) {
    const Point2 a = thing.outline[i], b = thing.outline[(i + 1) % thing.outline.size()];
    const Foot foot = nearestOnSegment(flat(sleeve.at), a, b);
    if (foot.distance >= least) continue;
    least = foot.distance;
    opening.edge = i;
    opening.along = foot.along * distance(a, b);
  }
  return opening;
}

/// Slanting openings are taken to lean alike, as lines side by side do.
Length between(const WallOpening& a, const WallOpening& b) {
  const double aside = std::abs(a.along - b.along) - (a.straight + b.straight) / 2;
  return metres(std::hypot(std::max(aside, 0.0), a.middle() - b.middle()) - a.radius() -
                b.radius());
}

void tellNear(Reporter& out, const WallOpening& a, const WallOpening& b) {
  const Length need = out.input().limits.length("sleeve.clear");
  const Length clear = between(a, b);
  if (clear >= need - metres(kRounding)) return;
  Finding& finding = out.against("sleeve.clear", "near", {a.sleeve->run, b.sleeve->run, a.building},
                                 {{"building", spokenName(out.input().plan, a.building)}});
  finding.measured = printShort(clear, out.units());
  finding.required = printShort(need, out.units());
  finding.place = flat(a.sleeve->at);
}

void checkSleeves(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const BuildingParts parts = buildingParts(input.plan);
  if (parts.walled.empty()) return;
  out.needLevels(unresolved(input));
  const Length wall = input.limits.length("sleeve.wall");
  const std::vector<WallSleeve> sleeves = wallSleeves(input.plan, input.study);
  std::vector<WallOpening> openings;
  for (const WallSleeve& sleeve : sleeves) {
    const auto thing = std::ranges::find(parts.walled, sleeve.buildings.front(), &WalledThing::id);
    if (isBuiltIn(sleeve)) openings.push_back(openingOf(sleeve, *thing, wall));
  }
  for (std::size_t i = 0; i < openings.size(); ++i) {
    for (std::size_t k = i + 1; k < openings.size(); ++k) {
      const WallOpening &a = openings[i], &b = openings[k];
      if (a.building == b.building && a.edge == b.edge) tellNear(out, a, b);
    }
  }
}

} // namespace

const Rule kSleeveRoom = {
    "sleeve-room",     "Openings in a building's wall leave wall between them",
    kPractice,         Confidence::CommonPractice,
    Severity::Warning, checkSleeves,
    Trade::SiteWork};

} // namespace sump
