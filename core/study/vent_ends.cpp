#include "core/study/vent_ends.h"

#include "core/geometry/polygon.h"

#include <algorithm>

namespace sump {

namespace {

std::vector<NearRoof> roofsNear(const Plan& plan, Point2 at, Length reach) {
  std::vector<NearRoof> roofs;
  for (const Building& building : plan.buildings) {
    const Length away = metres(distance(at, building.outline));
    if (away <= reach) roofs.push_back({building.id, away, building.roof});
  }
  std::ranges::stable_sort(roofs, {}, [](const NearRoof& roof) { return inMetres(roof.away); });
  return roofs;
}

} // namespace

std::vector<VentEnd> ventEnds(const Plan& plan, const Study& study, const Limits& limits) {
  std::vector<VentEnd> ends;
  const Length reach = limits.length("vent.roof-reach");
  for (const RunStudy& run : study.runs) {
    if (run.service != Service::Vent || !run.resolved) continue;
    if (plan.runs.find(run.id)->to.kind != EndKind::Free) continue;
    const Point2 at = flat(run.points.back().at);
    ends.push_back({run.id, at, run.endInvert, roofsNear(plan, at, reach)});
  }
  return ends;
}

} // namespace sump
