// Where runs go through outside walls and baffles. A connector is set in each outside wall, a
// sleeve in each baffle.

#include "core/study/context.h"

#include "core/geometry/polygon.h"
#include "core/study/buoyancy.h"

#include <algorithm>

namespace sump {

namespace {

constexpr double kSameHole = 1e-6; ///< metres

/// Gathers the holes of one run, in the order of flow.
class HoleFinder {
public:
  HoleFinder(const StudyContext& context, const Run& run) : context_(context), run_(run) {}

  void goAlong(std::size_t leg, Point3 a, Point3 b);
  std::vector<Penetration> take() { return std::move(found_); }

private:
  struct Hole {
    double along = 0; ///< of the leg
    Penetration penetration;
  };
  /// Does the leg cross a wall that stands in plan on c-d and reaches from `bottom` to `top`?
  void cross(Point2 c, Point2 d, Length bottom, Length top, const Id& vault, const Id& baffle);
  void crossWalls(const Vault& vault, const Ring& outline);
  void crossBaffles(const Vault& vault);
  void keepNew(const Penetration& penetration);

  const StudyContext& context_;
  const Run& run_;
  std::size_t leg_ = 0;
  Point3 a_, b_;
  std::vector<Hole> ofLeg_;
  std::vector<Penetration> found_;
};

void HoleFinder::cross(Point2 c, Point2 d, Length bottom, Length top, const Id& vault,
                       const Id& baffle) {
  const auto hit = crossSegments(flat(a_), flat(b_), c, d);
  if (!hit) return;
  const Point3 p = lerp(a_, b_, hit->alongFirst);
  if (p.z <= inMetres(bottom) || p.z >= inMetres(top)) return;
  const std::string size = sizeAt(run_, leg_, hit->alongFirst);
  ofLeg_.push_back({hit->alongFirst, {vault, baffle, p, size}});
}

/// A pipe that passes over the lid or under the slab does not go through the wall.
void HoleFinder::crossWalls(const Vault& vault, const Ring& outline) {
  const Length bottom = vault.floor - vault.floorThickness;
  const Length top = lidTop(vault);
  for (std::size_t i = 0; i < outline.size(); ++i) {
    cross(outline[i], outline[(i + 1) % outline.size()], bottom, top, vault.id, {});
  }
}

/// A baffle is crossed once, at its middle plane, and only where it stands: not through its gaps.
void HoleFinder::crossBaffles(const Vault& vault) {
  const double low = -inMetres(vault.length) / 2 + inMetres(vault.wall);
  const double half = inMetres(vault.width) / 2 - inMetres(vault.wall);
  const Frame frame = vault.frame();
  for (const Baffle& baffle : vault.baffles) {
    const double x = low + inMetres(baffle.offset + baffle.thickness / 2.0);
    cross(frame.toSite({x, -half}), frame.toSite({x, half}), vault.floor + baffle.bottomGap,
          vault.floor + vault.insideHeight - baffle.topGap, vault.id, baffle.id);
  }
}

/// A run that has a point on the wall itself, or goes through a corner, meets it twice in one hole.
void HoleFinder::keepNew(const Penetration& penetration) {
  const bool known = std::ranges::any_of(found_, [&](const Penetration& other) {
    return other.vault == penetration.vault && other.baffle == penetration.baffle &&
           distance(other.at, penetration.at) < kSameHole;
  });
  if (!known) found_.push_back(penetration);
}

void HoleFinder::goAlong(std::size_t leg, Point3 a, Point3 b) {
  leg_ = leg;
  a_ = a;
  b_ = b;
  ofLeg_.clear();
  for (std::size_t i : context_.vaults.touching(boxOf({flat(a), flat(b)}))) {
    crossWalls(context_.plan.vaults[i], context_.vaults.rings()[i]);
    crossBaffles(context_.plan.vaults[i]);
  }
  std::ranges::stable_sort(ofLeg_, {}, &Hole::along);
  for (const Hole& hole : ofLeg_)
    keepNew(hole.penetration);
}

} // namespace

std::vector<Penetration> penetrations(const StudyContext& context, const Run& run,
                                      const RunStudy& study) {
  HoleFinder finder(context, run);
  for (std::size_t leg = 0; leg < study.legs.size(); ++leg) {
    if (!study.legs[leg].vertical) {
      finder.goAlong(leg, study.points[leg].at, study.points[leg + 1].at);
    }
  }
  return finder.take();
}

} // namespace sump
