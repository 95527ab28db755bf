#include "core/study/context.h"

#include "core/geometry/polygon.h"

namespace sump {

namespace {

void addCrossings(const Point3& a, const Point3& b, const Ring& ring, const Id& vault,
                  const Id& baffle, std::vector<Penetration>& found) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const auto hit = crossSegments(flat(a), flat(b), ring[i], ring[(i + 1) % ring.size()]);
    if (hit) found.push_back({vault, baffle, lerp(a, b, hit->alongFirst)});
  }
}

/// A baffle is crossed once, at its middle plane, and only below the lid and above the floor.
void addBaffles(const Vault& vault, const Point3& a, const Point3& b,
                std::vector<Penetration>& found) {
  const double low = -inMetres(vault.length) / 2 + inMetres(vault.wall);
  const double half = inMetres(vault.width) / 2 - inMetres(vault.wall);
  for (const Baffle& baffle : vault.baffles) {
    const double x = low + inMetres(baffle.offset + baffle.thickness / 2.0);
    const Frame frame = vault.frame();
    const auto hit =
        crossSegments(flat(a), flat(b), frame.toSite({x, -half}), frame.toSite({x, half}));
    if (!hit) continue;
    const Point3 p = lerp(a, b, hit->alongFirst);
    const double lid = inMetres(vault.floor + vault.insideHeight);
    if (p.z > inMetres(vault.floor) && p.z < lid) found.push_back({vault.id, baffle.id, p});
  }
}

} // namespace

std::vector<Penetration> penetrations(const StudyContext& context, const RunStudy& run) {
  std::vector<Penetration> found;
  for (std::size_t i = 1; i < run.points.size(); ++i) {
    const Point3 a = run.points[i - 1].at, b = run.points[i].at;
    if (flat(a) == flat(b)) continue;
    for (std::size_t v : context.vaults.touching(boxOf({flat(a), flat(b)}))) {
      const Vault& vault = context.plan.vaults[v];
      const double top = inMetres(vault.floor + vault.insideHeight + vault.lidThickness);
      std::vector<Penetration> walls;
      addCrossings(a, b, context.vaults.rings()[v], vault.id, "", walls);
      for (const Penetration& p : walls) {
        // A pipe that passes over the lid or under the slab does not go through the wall.
        if (p.at.z < top && p.at.z > inMetres(vault.floor - vault.floorThickness)) {
          found.push_back(p);
        }
      }
      addBaffles(vault, a, b, found);
    }
  }
  return found;
}

} // namespace sump
