#include "core/study/pass_slant.h"

#include "core/geometry/box_index.h"
#include "core/geometry/polygon.h"
#include "core/geometry/unit.h"
#include "core/study/part_place.h"
#include "core/study/riser_passes.h"

#include <cmath>

namespace sump {

namespace {

/// Baffles and end walls lie along the vault's width.
bool liesAcross(const Vault& vault, const Penetration& hole) {
  if (!hole.baffle.empty()) return true;
  return inEndWall(vault, vault.frame().toLocal(flat(hole.at)));
}

void addPasses(const RunStudy& run, const Vault& vault, const VaultStudy& studied,
               std::vector<SlantPass>& all) {
  for (const Penetration& hole : run.penetrations) {
    if (hole.vault == vault.id && hole.baffle.empty())
      all.push_back({vault.id, run.id, {}, flat(hole.at), wayThrough(run, vault, hole).slant()});
  }
  for (std::size_t i = 0; i < studied.manways.size(); ++i) {
    const ManwayStudy& manway = studied.manways[i];
    for (const RiserPass& pass : riserPasses(run, studied, manway, vault.manways[i].diameter))
      all.push_back({vault.id, run.id, manway.id, flat(pass.at), pass.slant});
  }
}

} // namespace

Point2 wayAt(const RunStudy& run, Point2 at) {
  Point2 way;
  double least = 1e9;
  for (std::size_t leg = 0; leg < run.legs.size(); ++leg) {
    if (run.legs[leg].vertical) continue;
    const Point2 a = flat(run.points[leg].at), b = flat(run.points[leg + 1].at);
    const double far = nearestOnSegment(at, a, b).distance;
    if (far >= least) continue;
    least = far;
    way = unitWay(a, b);
  }
  return way;
}

bool inEndWall(const Vault& vault, Point2 local) {
  return inMetres(vault.length) / 2 - std::abs(local.x) <=
         inMetres(vault.width) / 2 - std::abs(local.y);
}

Angle PassWay::slant() const {
  return radians(std::atan2(std::abs(along), std::abs(through)));
}

PassWay wayThrough(const RunStudy& run, const Vault& vault, const Penetration& hole) {
  const Point2 way = Frame{{}, vault.angle}.toLocal(wayAt(run, flat(hole.at)));
  return liesAcross(vault, hole) ? PassWay{way.y, way.x} : PassWay{way.x, way.y};
}

Length openingWidth(Length outside, Length thickness, Angle slant) {
  return outside / std::cos(inRadians(slant)) + thickness * std::tan(inRadians(slant));
}

std::vector<SlantPass> slantPasses(const Plan& plan, const Study& study) {
  std::vector<Box> boxes;
  for (const VaultStudy& vault : study.vaults)
    boxes.push_back(boxOf(vault.outline));
  const BoxIndex near(boxes);
  std::vector<SlantPass> all;
  for (const RunStudy& run : study.runs) {
    if (!run.resolved) continue;
    for (std::size_t v : near.touching(boxOf(planLine(run))))
      addPasses(run, plan.vaults[v], study.vaults[v], all);
  }
  return all;
}

} // namespace sump
