#include "core/study/wall_sleeves.h"

#include "core/geometry/polygon.h"
#include "core/study/context.h"
#include "core/study/pass_slant.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace sump {

namespace {

constexpr double kOneHole = 0.01; ///< m: nearer ones are one hole

std::vector<WalledThing> walledThings(const Plan& plan) {
  std::vector<WalledThing> things;
  for (const Building& building : plan.buildings)
    things.push_back({building.id, building.outline, building.footing});
  for (const EquipmentRoom& room : plan.rooms) {
    const Point2 middle = centroid(outline(room));
    bool held = false;
    for (const Building& building : plan.buildings)
      held = held || contains(building.outline, middle);
    if (!held) things.push_back({room.id, outline(room), std::nullopt});
  }
  return things;
}

struct StockedSize {
  std::string_view nominal;
  double outside; ///< in, as ASTM D1785 gives it for iron pipe sizes
};
constexpr std::array<StockedSize, 13> kStocked = {{{"1/2", 0.840},
                                                   {"3/4", 1.050},
                                                   {"1", 1.315},
                                                   {"1-1/4", 1.660},
                                                   {"1-1/2", 1.900},
                                                   {"2", 2.375},
                                                   {"2-1/2", 2.875},
                                                   {"3", 3.500},
                                                   {"4", 4.500},
                                                   {"6", 6.625},
                                                   {"8", 8.625},
                                                   {"10", 10.750},
                                                   {"12", 12.750}}};

Length sleeveOutside(const WallSleeve& sleeve, const RunStudy& run) {
  const auto found = std::ranges::find(kStocked, sleeve.sleeve.value_or(""), &StockedSize::nominal);
  return found == kStocked.end() ? run.outsideDiameter : inches(found->outside);
}

/// Between a leg's way and the square to the edge on which `at` lies.
Angle skewAt(const Ring& outline, Point2 at, Point2 way) {
  double least = 1e9;
  Point2 wall{1, 0};
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point2 a = outline[i], b = outline[(i + 1) % outline.size()];
    const double far = nearestOnSegment(at, a, b).distance;
    if (far >= least) continue;
    least = far;
    wall = b - a;
  }
  return radians(std::atan2(std::abs(dot(way, wall)), std::abs(cross(way, wall))));
}

WallSleeve sleeveAt(const RunStudy& run, const WalledThing& thing, Point3 at, std::string size) {
  WallSleeve sleeve;
  sleeve.run = run.id;
  sleeve.buildings = {thing.id};
  sleeve.at = at;
  sleeve.sleeve = sleeveSize(size);
  sleeve.size = std::move(size);
  const Length middle = metres(at.z) + run.insideDiameter / 2.0;
  const Length outside = sleeveOutside(sleeve, run);
  sleeve.low = middle - outside / 2.0;
  sleeve.high = middle + outside / 2.0;
  sleeve.pipeLow = middle - run.outsideDiameter / 2.0;
  sleeve.footing = sleeve.lowestFooting = thing.footing;
  return sleeve;
}

/// Of a common wall: clear of both footings only when it is clear of each, so one that is not known
/// leaves the pass unknown.
void addOwner(WallSleeve& sleeve, const WalledThing& thing) {
  sleeve.buildings.push_back(thing.id);
  if (!sleeve.footing || !thing.footing) {
    sleeve.footing = sleeve.lowestFooting = std::nullopt;
    return;
  }
  sleeve.footing = std::max(*sleeve.footing, *thing.footing);
  sleeve.lowestFooting = std::min(*sleeve.lowestFooting, *thing.footing);
}

/// A corner of the run on the wall is one hole, not one for each of its legs; a wall that two
/// buildings share is one wall.
void addHole(std::vector<WallSleeve>& sleeves, const WalledThing& thing, WallSleeve sleeve) {
  const auto known = std::ranges::find_if(sleeves, [&](const WallSleeve& other) {
    return distance(flat(other.at), flat(sleeve.at)) < kOneHole;
  });
  if (known == sleeves.end()) {
    sleeves.push_back(std::move(sleeve));
    return;
  }
  known->skew = std::max(known->skew, sleeve.skew); // of both legs at a corner
  if (std::ranges::find(known->buildings, thing.id) == known->buildings.end())
    addOwner(*known, thing);
}

std::vector<FloorSlab> floorSlabs(const Plan& plan) {
  std::vector<FloorSlab> floors;
  for (const EquipmentRoom& room : plan.rooms)
    floors.push_back({room.id, outline(room), inMetres(room.floor)});
  for (const Building& building : plan.buildings) {
    if (building.floor)
      floors.push_back({building.id, building.outline, inMetres(*building.floor)});
  }
  return floors;
}

/// Where the leg a-b goes through the slab, as a fraction of the leg.
std::optional<double> throughSlab(Point3 a, Point3 b, const FloorSlab& floor) {
  if ((a.z - floor.level) * (b.z - floor.level) >= 0) return std::nullopt;
  const double along = (floor.level - a.z) / (b.z - a.z);
  if (!contains(floor.outline, flat(lerp(a, b, along)))) return std::nullopt;
  return along;
}

/// Floors that lie one in the other are passed in one hole.
void addSlabPasses(const std::vector<FloorSlab>& floors, const Run& given, const RunStudy& run,
                   std::size_t leg, std::vector<SlabPass>& all) {
  const Point3 a = run.points[leg].at, b = run.points[leg + 1].at;
  const std::size_t before = all.size();
  for (const FloorSlab& floor : floors) {
    const auto along = throughSlab(a, b, floor);
    if (!along) continue;
    const Point3 at = lerp(a, b, *along);
    const bool known = std::any_of(
        all.begin() + static_cast<std::ptrdiff_t>(before), all.end(),
        [&](const SlabPass& other) { return distance(flat(other.at), flat(at)) < kOneHole; });
    const std::string size = sizeAt(given, leg, *along);
    if (!known) all.push_back({run.id, floor.id, at, size, sleeveSize(size)});
  }
}

} // namespace

WallPass passOf(const WallSleeve& sleeve, Length thickness) {
  if (!sleeve.footing) return WallPass::Unknown;
  if (sleeve.high <= *sleeve.lowestFooting) return WallPass::Under;
  return sleeve.low < *sleeve.footing + thickness ? WallPass::Footing : WallPass::Wall;
}

bool isBuiltIn(const WallSleeve& sleeve) {
  return passOf(sleeve, metres(0)) != WallPass::Under;
}

bool isSkew(const WallSleeve& sleeve) {
  return inDegrees(sleeve.skew) >= kSlantFrom;
}

Length straightOpening(const WallSleeve& sleeve, Length wall) {
  return openingWidth(sleeve.high - sleeve.low, wall, sleeve.skew);
}

std::optional<std::string> sleeveSize(std::string_view pipe) {
  const auto found = std::ranges::find(kStocked, pipe, &StockedSize::nominal);
  if (kStocked.end() - found <= 2) return std::nullopt;
  return std::string((found + 2)->nominal);
}

BuildingParts buildingParts(const Plan& plan) {
  return {walledThings(plan), floorSlabs(plan)};
}

std::vector<WallSleeve> wallSleeves(const Plan& plan, const BuildingParts& parts,
                                    const RunStudy& run) {
  std::vector<WallSleeve> sleeves;
  if (!run.resolved) return sleeves;
  const Run& given = *plan.runs.find(run.id);
  for (std::size_t leg = 0; leg < run.legs.size(); ++leg) {
    if (run.legs[leg].vertical) continue;
    const Point3 a = run.points[leg].at, b = run.points[leg + 1].at;
    for (const WalledThing& thing : parts.walled) {
      for (Point2 p : crossings({flat(a), flat(b)}, thing.outline)) {
        const double along = nearestOnSegment(p, flat(a), flat(b)).along;
        WallSleeve sleeve = sleeveAt(run, thing, lerp(a, b, along), sizeAt(given, leg, along));
        sleeve.skew = skewAt(thing.outline, p, flat(b) - flat(a));
        addHole(sleeves, thing, std::move(sleeve));
      }
    }
  }
  return sleeves;
}

std::vector<WallSleeve> wallSleeves(const Plan& plan, const Study& study) {
  const BuildingParts parts = buildingParts(plan);
  std::vector<WallSleeve> all;
  for (const RunStudy& run : study.runs) {
    for (WallSleeve& sleeve : wallSleeves(plan, parts, run))
      all.push_back(std::move(sleeve));
  }
  return all;
}

std::vector<SlabPass> slabPasses(const Plan& plan, const BuildingParts& parts,
                                 const RunStudy& run) {
  std::vector<SlabPass> all;
  if (!run.resolved) return all;
  const Run& given = *plan.runs.find(run.id);
  for (std::size_t leg = 0; leg < run.legs.size(); ++leg)
    addSlabPasses(parts.floors, given, run, leg, all);
  return all;
}

std::vector<SlabPass> slabPasses(const Plan& plan, const Study& study) {
  const BuildingParts parts = buildingParts(plan);
  std::vector<SlabPass> all;
  for (const RunStudy& run : study.runs) {
    for (SlabPass& pass : slabPasses(plan, parts, run))
      all.push_back(std::move(pass));
  }
  return all;
}

} // namespace sump
