#include "core/study/floor_cover.h"

#include "core/geometry/polygon.h"

#include <algorithm>

namespace sump {

namespace {

/// The stretches of one leg under floors.
class UnderFloor {
public:
  UnderFloor(const Plan& plan, const BuildingParts& parts) : floors_(parts.floors) {
    for (const Vault& vault : plan.vaults)
      open_.push_back(outline(vault));
    for (const Basin& basin : plan.basins)
      open_.push_back(outline(basin));
  }

  /// `a` and `b` on the pipe's top.
  void addLeg(Point3 a, Point3 b, std::optional<CoverCheck>& least) const {
    const std::vector<double> cuts = cutsOf(flat(a), flat(b));
    for (std::size_t i = 1; i < cuts.size(); ++i) {
      const auto level = floorOver(flat(lerp(a, b, (cuts[i - 1] + cuts[i]) / 2)));
      if (!level) continue;
      const Point3 from = lerp(a, b, cuts[i - 1]), to = lerp(a, b, cuts[i]);
      const Point3 high = from.z > to.z ? from : to;
      const Length cover = metres(*level - high.z);
      if (cover > metres(0) && (!least || cover < least->cover)) least = {cover, flat(high)};
    }
  }

private:
  /// Fractions of the leg between which it is in or out of each outline as a whole.
  std::vector<double> cutsOf(Point2 a, Point2 b) const {
    std::vector<double> cuts = {0, 1};
    const auto add = [&](const Ring& ring) {
      for (Point2 p : crossings({a, b}, ring))
        cuts.push_back(nearestOnSegment(p, a, b).along);
    };
    for (const FloorSlab& floor : floors_)
      add(floor.outline);
    for (const Ring& ring : open_)
      add(ring);
    std::ranges::sort(cuts);
    const auto same = std::ranges::unique(cuts);
    cuts.erase(same.begin(), same.end());
    return cuts;
  }
  std::optional<double> floorOver(Point2 at) const {
    std::optional<double> level;
    for (const Ring& ring : open_) {
      if (contains(ring, at)) return std::nullopt;
    }
    for (const FloorSlab& floor : floors_) {
      if (contains(floor.outline, at)) level = std::max(level.value_or(floor.level), floor.level);
    }
    return level;
  }

  const std::vector<FloorSlab>& floors_;
  std::vector<Ring> open_; ///< nothing lies over a line in a vault or a basin
};

} // namespace

std::optional<CoverCheck> coverUnderFloors(const Plan& plan, const BuildingParts& parts,
                                           const RunStudy& run) {
  std::optional<CoverCheck> least;
  if (!run.resolved) return least;
  const UnderFloor under(plan, parts);
  const double top = inMetres(run.insideDiameter + run.outsideDiameter) / 2;
  for (std::size_t leg = 0; leg < run.legs.size(); ++leg) {
    if (run.legs[leg].vertical) continue;
    under.addLeg(run.points[leg].at + Point3{0, 0, top}, run.points[leg + 1].at + Point3{0, 0, top},
                 least);
  }
  return least;
}

} // namespace sump
