#include "core/study/excavation.h"

#include "core/geometry/outline_union.h"
#include "core/geometry/polygon.h"
#include "core/study/buoyancy.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numeric>

namespace sump {

namespace {

/// Grade at an outline's corners, the middles of its sides and its centre.
struct GradeAround {
  double high = 0, mean = 0;
};
GradeAround gradeAround(const Surface& ground, const Ring& ring, Point2 centre) {
  const double middle = ground.elevation(centre).value_or(0);
  double high = middle, sum = middle;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    for (Point2 p : {ring[i], lerp(ring[i], ring[(i + 1) % ring.size()], 0.5)}) {
      const double grade = ground.elevation(p).value_or(middle);
      high = std::max(high, grade);
      sum += grade;
    }
  }
  return {high, sum / (1 + 2 * static_cast<double>(ring.size()))};
}

/// The wider the top, the higher the ground it may reach: a few rounds settle that.
constexpr int kRounds = 6;
constexpr double kSettled = 0.001; ///< m

void settleTop(const Surface& ground, const DigSides& sides, VaultDig& dig) {
  for (int round = 0; round < kRounds; ++round) {
    const GradeAround grade = gradeAround(ground, dig.topOutline(), dig.frame.origin);
    dig.gradeHigh = round == 0 ? grade.high : std::max(dig.gradeHigh, grade.high);
    dig.gradeMean = grade.mean;
    dig.slope = sides.at(dig.depth());
    const double reach = dig.slope * dig.depth();
    const bool settled = std::abs(reach - dig.reach) < kSettled;
    dig.reach = reach;
    if (settled) return;
  }
}

double areaGrown(const VaultDig& dig, double by) {
  return 4 * (dig.halfLength + by) * (dig.halfWidth + by);
}

/// Reach at a share of the mean depth.
double reachAt(const VaultDig& dig, double share) {
  return dig.slope * dig.meanDepth() * share;
}

/// Simpson's rule over the depth, with four parts.
constexpr std::array<std::pair<double, double>, 5> kParts = {
    {{0, 1.0 / 12}, {0.25, 4.0 / 12}, {0.5, 2.0 / 12}, {0.75, 4.0 / 12}, {1, 1.0 / 12}}};

class DigGroups {
public:
  explicit DigGroups(std::size_t count) : parent_(count) {
    std::iota(parent_.begin(), parent_.end(), std::size_t{0});
  }
  std::size_t root(std::size_t i) {
    while (parent_[i] != i)
      i = parent_[i] = parent_[parent_[i]];
    return i;
  }
  void join(std::size_t a, std::size_t b) {
    a = root(a);
    b = root(b);
    parent_[std::max(a, b)] = std::min(a, b);
  }

private:
  std::vector<std::size_t> parent_;
};

} // namespace

SoilClass soilForSides(const EarthBasis& earth) {
  const SoilClass soil = earth.soil.value_or(SoilClass::TypeC);
  return earth.previouslyDisturbed ? std::max(soil, SoilClass::TypeB) : soil;
}

DigSides digSides(const EarthBasis& earth, const Limits& limits) {
  DigSides sides;
  sides.deepFrom = inMetres(limits.length("dig.protection-depth"));
  if (earth.protection && *earth.protection != ProtectiveSystem::Sloped) return sides;
  switch (soilForSides(earth)) {
  case SoilClass::StableRock:
    break;
  case SoilClass::TypeA:
    sides.slope = limits.number("dig.slope-a");
    break;
  case SoilClass::TypeB:
    sides.slope = limits.number("dig.slope-b");
    break;
  case SoilClass::TypeC:
    sides.slope = limits.number("dig.slope-c");
    break;
  }
  return sides;
}

Ring VaultDig::outline(double by) const {
  const double x = halfLength + by, y = halfWidth + by;
  return frame.rectangle({-x, -y}, {x, y});
}

double VaultDig::surface(Point2 p) const {
  const Point2 way = p - frame.origin, local{dot(along, way), cross(along, way)};
  const double out = std::max({std::abs(local.x) - halfLength, std::abs(local.y) - halfWidth, 0.0});
  if (out > 0 && slope <= 0) return std::numeric_limits<double>::infinity();
  return out > 0 ? bottom + out / slope : bottom;
}

std::optional<VaultDig> digOf(const Vault& vault, std::size_t index, const Surface& ground,
                              const DigSides& sides, const EarthFigures& figures) {
  if (ground.empty()) return std::nullopt;
  const double margin = inMetres(vault.collar.value_or(metres(0)) + figures.workingSpace);
  VaultDig dig;
  dig.vault = index;
  dig.frame = vault.frame();
  dig.along = {std::cos(inRadians(vault.angle)), std::sin(inRadians(vault.angle))};
  dig.halfLength = inMetres(vault.length) / 2 + margin;
  dig.halfWidth = inMetres(vault.width) / 2 + margin;
  dig.bottom = inMetres(vault.floor - vault.floorThickness - figures.bedding);
  settleTop(ground, sides, dig);
  return dig;
}

double digVolume(const VaultDig& dig) {
  double sum = 0;
  for (const auto& [share, weight] : kParts)
    sum += weight * areaGrown(dig, reachAt(dig, share));
  return sum * dig.meanDepth();
}

double digVolume(const std::vector<VaultDig>& digs) {
  if (digs.size() == 1) return digVolume(digs.front());
  double volumes = 0, separate = 0, together = 0;
  for (const VaultDig& dig : digs)
    volumes += digVolume(dig);
  std::vector<Ring> rings(digs.size());
  for (const auto& [share, weight] : kParts) {
    for (std::size_t i = 0; i < digs.size(); ++i) {
      rings[i] = digs[i].outline(reachAt(digs[i], share));
      separate += weight * area(rings[i]);
    }
    together += weight * unionArea(rings);
  }
  return separate > 0 ? volumes * together / separate : 0;
}

std::vector<std::vector<std::size_t>> joinedDigs(const std::vector<Ring>& tops) {
  const OutlineSet set(tops);
  DigGroups groups(tops.size());
  for (std::size_t i = 0; i < tops.size(); ++i) {
    for (std::size_t k : set.touching(boxOf(tops[i]))) {
      if (k > i && groups.root(i) != groups.root(k) && overlaps(tops[i], tops[k])) {
        groups.join(i, k);
      }
    }
  }
  std::vector<std::vector<std::size_t>> result;
  std::vector<std::size_t> position(tops.size());
  for (std::size_t i = 0; i < tops.size(); ++i) {
    const std::size_t root = groups.root(i);
    if (root == i) {
      position[i] = result.size();
      result.emplace_back();
    }
    result[position[root]].push_back(i);
  }
  return result;
}

} // namespace sump
