#include "core/study/surface_cuts.h"

#include "core/geometry/box_index.h"
#include "core/geometry/outline_union.h"
#include "core/geometry/polygon.h"
#include "core/study/trench_outline.h"
#include "core/study/wall_sleeves.h"

#include <algorithm>

namespace sump {

namespace {

constexpr double kBeside = 1e-3; ///< m: what is nearer to an edge lies on it

std::vector<Ring> digTops(const EarthStudy& earth) {
  std::vector<Ring> tops;
  for (const PitStudy& pit : earth.pits) {
    if (pit.top && pit.top->size() > 2) tops.push_back(*pit.top);
  }
  for (const TrenchStudy& trench : earth.trenches) {
    for (const TrenchStretch& stretch : trench.stretches) {
      for (Ring& top : trenchOutlines(stretch)) {
        if (top.size() > 2 && area(top) > 0) tops.push_back(std::move(top));
      }
    }
  }
  return tops;
}

/// Measures the edges of the digs together, piece by piece.
class Cutter {
public:
  Cutter(const std::vector<Ring>& digs, const std::vector<Ring>& pavements,
         const std::vector<Ring>& floors)
      : digs_(digs), pavements_(pavements), floors_(floors) {}

  void goRound(std::size_t dig);
  double pavementCut() const { return pavementCut_; }
  double floorCut() const { return floorCut_; }

private:
  void goAlong(std::size_t dig, Point2 a, Point2 b);
  void count(std::size_t dig, Point2 a, Point2 b);
  bool goesOn(std::size_t dig, Point2 middle, Point2 outward) const;
  /// Well inside one of them, and on no edge of it.
  static bool within(const OutlineSet& set, Point2 p);

  OutlineSet digs_, pavements_, floors_;
  double pavementCut_ = 0, floorCut_ = 0;
};

bool Cutter::within(const OutlineSet& set, Point2 p) {
  return std::ranges::any_of(set.touching(boxOf({p})), [&](std::size_t i) {
    const Ring& ring = set.rings()[i];
    return contains(ring, p) && distanceToEdge(p, ring) > kBeside;
  });
}

/// Another dig goes on beyond this edge, or has the same edge and is counted for it.
bool Cutter::goesOn(std::size_t dig, Point2 middle, Point2 outward) const {
  const Point2 beyond = middle + outward * kBeside;
  return std::ranges::any_of(
      digs_.touching(grown(boxOf({middle}), 2 * kBeside)), [&](std::size_t i) {
        if (i == dig) return false;
        const Ring& other = digs_.rings()[i];
        return contains(other, beyond) || (i < dig && distanceToEdge(middle, other) < kBeside / 2);
      });
}

void Cutter::count(std::size_t dig, Point2 a, Point2 b) {
  const Point2 middle = lerp(a, b, 0.5), along = b - a;
  const double length = norm(along);
  Point2 outward = Point2{along.y, -along.x} * (1 / length);
  if (contains(digs_.rings()[dig], middle + outward * kBeside)) outward = outward * -1.0;
  if (goesOn(dig, middle, outward)) return;
  if (within(floors_, middle)) {
    floorCut_ += length;
  } else if (within(pavements_, middle) && floors_.holding(middle) < 0) {
    pavementCut_ += length;
  }
}

void Cutter::goAlong(std::size_t dig, Point2 a, Point2 b) {
  std::vector<double> stops = {0, 1};
  for (const OutlineSet* set : {&digs_, &pavements_, &floors_}) {
    for (std::size_t i : set->touching(boxOf({a, b}))) {
      const Ring& ring = set->rings()[i];
      for (std::size_t k = 0; k < ring.size(); ++k) {
        if (const auto hit = crossSegments(a, b, ring[k], ring[(k + 1) % ring.size()]))
          stops.push_back(hit->alongFirst);
      }
    }
  }
  std::ranges::sort(stops);
  for (std::size_t i = 1; i < stops.size(); ++i) {
    const Point2 from = lerp(a, b, stops[i - 1]), to = lerp(a, b, stops[i]);
    if (distance(from, to) > kBeside) count(dig, from, to);
  }
}

void Cutter::goRound(std::size_t dig) {
  const Ring& ring = digs_.rings()[dig];
  for (std::size_t i = 0; i < ring.size(); ++i)
    goAlong(dig, ring[i], ring[(i + 1) % ring.size()]);
}

/// That the digs take out of these surfaces.
double taken(const std::vector<Ring>& digs, const std::vector<Ring>& surfaces) {
  std::vector<Ring> both = digs;
  both.insert(both.end(), surfaces.begin(), surfaces.end());
  return std::max(0.0, unionArea(digs) + unionArea(surfaces) - unionArea(both));
}

SurfaceCuts cutsOf(const Plan& plan, const EarthStudy& earth) {
  const std::vector<Ring> digs = digTops(earth);
  std::vector<Ring> pavements, floors;
  for (const Pavement& pavement : plan.pavements)
    pavements.push_back(pavement.outline);
  for (const WalledThing& thing : buildingParts(plan).walled)
    floors.push_back(thing.outline);
  Cutter cutter(digs, pavements, floors);
  for (std::size_t i = 0; i < digs.size(); ++i)
    cutter.goRound(i);
  SurfaceCuts cuts;
  cuts.pavementCut = metres(cutter.pavementCut());
  cuts.floorCut = metres(cutter.floorCut());
  std::vector<Ring> all = floors;
  all.insert(all.end(), pavements.begin(), pavements.end());
  const double floor = taken(digs, floors);
  cuts.floor = squareMetres(floor);
  cuts.pavement = squareMetres(std::max(0.0, taken(digs, all) - floor));
  return cuts;
}

} // namespace

Decided<SurfaceCuts> surfaceCuts(const Plan& plan, const EarthStudy& earth) {
  return decide([&](Volume) { return cutsOf(plan, earth); }, earth.dug);
}

} // namespace sump
