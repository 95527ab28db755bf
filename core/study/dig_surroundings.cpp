#include "core/study/dig_surroundings.h"

#include "core/study/part_place.h"

#include "core/geometry/polygon.h"
#include "core/study/object_names.h"
#include "core/study/trench_outline.h"

#include <algorithm>

namespace sump {

namespace {

/// Rooms after buildings.
std::vector<Footed> footedIn(const Plan& plan) {
  std::vector<Footed> all;
  for (const Building& building : plan.buildings)
    all.push_back({building.id, called(building), building.outline, building.footing});
  for (const EquipmentRoom& room : plan.rooms) {
    Ring ring = outline(room);
    bool held = false;
    for (const Building& building : plan.buildings)
      held = held || contains(building.outline, centroid(ring));
    if (!held) all.push_back({room.id, called(room), std::move(ring), std::nullopt});
  }
  return all;
}

std::vector<Ring> outlinesOf(const std::vector<Footed>& footed) {
  std::vector<Ring> rings;
  for (const Footed& one : footed)
    rings.push_back(one.outline);
  return rings;
}

/// A line is as wide as its pipe, and a trench that begins on one bares it. Metres from its axis.
double reachOf(const Utility& utility) {
  constexpr double kTouch = 1e-3;
  return inMetres(utility.diameter.value_or(metres(0))) / 2 + kTouch;
}

BoxIndex utilityBoxes(const Plan& plan) {
  std::vector<Box> boxes;
  for (const Utility& utility : plan.utilities)
    boxes.push_back(grown(boxOf(utility.path), reachOf(utility)));
  return BoxIndex(boxes);
}

void addClash(std::vector<DigClash>& clashes, DigClashKind kind, const Id& object, Point2 at) {
  const bool known = std::ranges::any_of(
      clashes, [&](const DigClash& clash) { return clash.kind == kind && clash.object == object; });
  if (!known) clashes.push_back({kind, object, at});
}

bool within(const Ring& boundary, const Ring& ring) {
  return std::ranges::all_of(ring, [&](Point2 p) { return contains(boundary, p); }) &&
         overlapArea(boundary, ring) > area(ring) * (1 - 1e-6);
}

/// Adds a check of one toe against a building, keeping the worst for each building. A toe farther
/// off than it is deep cannot reach below the plane of any footing that lies in the ground.
void checkFooting(std::vector<FootingCheck>& checks, const Footed& building, double distance,
                  double toe, double grade, double slope) {
  if (distance >= grade - toe) return;
  FootingCheck check{building.id, metres(distance), metres(toe),
                     decide(
                         [&](Length footing) {
                           return metres(
                               belowFootingPlane(inMetres(footing), toe, distance, slope));
                         },
                         given(building.footing, "footing level of " + building.name)),
                     metres(distance)};
  const auto known = std::ranges::find(checks, building.id, &FootingCheck::building);
  if (known == checks.end()) {
    checks.push_back(std::move(check));
    return;
  }
  check.nearest = known->nearest = std::min(known->nearest, check.nearest);
  const bool worse = check.below ? !known->below || *check.below > *known->below
                                 : check.distance - check.toe < known->distance - known->toe;
  if (worse) *known = std::move(check);
}

} // namespace

double belowFootingPlane(double footing, double toe, double distance, double slope) {
  const double atToe = footing - distance - toe;
  if (slope <= 0) return atToe;
  // Where the side would pass under the building's edge, if it starts that near and low.
  return std::max(atToe, footing - (toe + distance / slope));
}

DigSurroundings::DigSurroundings(const StudyContext& context,
                                 const std::vector<std::optional<VaultDig>>& digs)
    : context_(context), digs_(digs), footed_(footedIn(context.plan)),
      buildings_(outlinesOf(footed_)), utilities_(utilityBoxes(context.plan)) {}

void DigSurroundings::clashesOf(const Ring& top, const std::vector<Id>& entered,
                                bool crossesBoundary, std::vector<DigClash>& clashes) const {
  const Plan& plan = context_.plan;
  const Box box = boxOf(top);
  for (std::size_t i : buildings_.touching(box)) {
    const Footed& building = footed_[i];
    if (std::ranges::find(entered, building.id) != entered.end()) continue;
    if (overlaps(top, building.outline)) {
      addClash(clashes, DigClashKind::Building, building.id, centroid(top));
    }
  }
  if (!plan.site.boundary.empty() && !crossesBoundary && !within(plan.site.boundary, top)) {
    addClash(clashes, DigClashKind::Boundary, {}, centroid(top));
  }
  for (const Well& well : plan.wells) {
    if (contains(top, well.at)) addClash(clashes, DigClashKind::Well, well.id, well.at);
  }
  for (std::size_t i : utilities_.touching(box)) {
    const Utility& utility = plan.utilities[i];
    if (distanceLineToRing(utility.path, top) > reachOf(utility)) continue;
    const std::vector<Point2> hits = crossings(utility.path, top);
    addClash(clashes, DigClashKind::Utility, utility.id,
             hits.empty() ? utility.path.front() : hits.front());
  }
}

void DigSurroundings::footingsOf(const VaultDig& dig, std::vector<FootingCheck>& footings) const {
  const Ring bottom = dig.bottomOutline();
  for (std::size_t i : buildings_.touching(grown(boxOf(bottom), dig.depth()))) {
    const Footed& building = footed_[i];
    checkFooting(footings, building, distance(building.outline, bottom), dig.bottom, dig.gradeHigh,
                 dig.slope);
  }
}

void DigSurroundings::fillPit(PitStudy& pit) const {
  if (!pit.top || *pit.depth <= metres(0)) return;
  clashesOf(*pit.top, {}, false, pit.clashes);
  for (std::size_t i : context_.traffic.touching(boxOf(*pit.top))) {
    if (overlaps(*pit.top, context_.traffic.rings()[i])) {
      addClash(pit.clashes, DigClashKind::TrafficPavement, context_.trafficIds[i],
               centroid(*pit.top));
    }
  }
  for (const Id& id : pit.vaults) {
    const auto place = context_.locator.find(id);
    if (place && digs_[place->index]) footingsOf(*digs_[place->index], pit.footings);
  }
}

std::vector<Id> DigSurroundings::enteredBy(const Polyline& line) const {
  std::vector<Id> entered;
  for (std::size_t i : buildings_.touching(boxOf(line))) {
    const Footed& building = footed_[i];
    if (distanceLineToRing(line, building.outline) <= 0) entered.push_back(building.id);
  }
  return entered;
}

namespace {

/// Its ends stand square to the line, as they are drawn.
Ring bottomOutline(TrenchPoint a, TrenchPoint b, double half) {
  a.top = b.top = 2 * half;
  return trenchOutline(a, b);
}

/// How far the bottom lies below the plane is worst at one of its places: halves what may hold it
/// until its level hardly changes.
void checkPiece(std::vector<FootingCheck>& checks, const Footed& building, const TrenchPoint& a,
                const TrenchPoint& b, double half) {
  constexpr double kSameLevel = 1e-3; // m
  const double off = distance(bottomOutline(a, b, half), building.outline);
  const double toe = std::min(a.bottom, b.bottom), depth = std::max(a.depth, b.depth);
  if (off >= depth) return;
  if (std::abs(a.bottom - b.bottom) < kSameLevel) {
    checkFooting(checks, building, off, toe, toe + depth, 0);
    return;
  }
  const auto known = std::ranges::find(checks, building.id, &FootingCheck::building);
  const bool mayBeWorse = known == checks.end() ||
                          off + toe < inMetres(known->distance + known->toe) ||
                          off < inMetres(known->nearest);
  if (!mayBeWorse) return;
  const TrenchPoint middle = trenchBetween(a, b, 0.5);
  checkPiece(checks, building, a, middle, half);
  checkPiece(checks, building, middle, b, half);
}

/// A run comes near the wall that it goes through; only where it runs along a wall before that is
/// its trench one that passes the footing.
void checkEntered(std::vector<FootingCheck>& checks, const Footed& building,
                  const TrenchStudy& trench) {
  const double half = inMetres(trench.bottomWidth) / 2;
  for (const PlaceBeside& place : placesBeside(trench, building.outline)) {
    const TrenchPoint& p = place.point;
    checkFooting(checks, building, std::max(0.0, place.toSide - half), p.bottom, p.bottom + p.depth,
                 0);
  }
}

} // namespace

void DigSurroundings::fillTrench(const RunStudy& run, TrenchStudy& trench) const {
  const Polyline line = planLine(run);
  const std::vector<Id> entered = enteredBy(line);
  const Ring& boundary = context_.plan.site.boundary;
  const bool crosses = !boundary.empty() &&
                       (!crossings(line, boundary).empty() || !contains(boundary, line.front()));
  const double half = inMetres(trench.bottomWidth) / 2;
  for (const TrenchStretch& stretch : trench.stretches) {
    for (std::size_t i = 1; i < stretch.size(); ++i) {
      const TrenchPoint &a = stretch[i - 1], &b = stretch[i];
      clashesOf(trenchOutline(a, b), entered, crosses, trench.clashes);
      const double depth = std::max(a.depth, b.depth);
      for (std::size_t k : buildings_.touching(grown(boxOf({a.at, b.at}), depth + half))) {
        if (std::ranges::find(entered, footed_[k].id) == entered.end())
          checkPiece(trench.footings, footed_[k], a, b, half);
      }
    }
  }
  for (std::size_t k : buildings_.touching(boxOf(line))) {
    if (std::ranges::find(entered, footed_[k].id) != entered.end())
      checkEntered(trench.footings, footed_[k], trench);
  }
}

namespace {

/// Which pit each vault stands in.
std::vector<std::size_t> pitOfVault(const StudyContext& context,
                                    const std::vector<PitStudy>& pits) {
  std::vector<std::size_t> pitOf(context.plan.vaults.size());
  for (std::size_t i = 0; i < pits.size(); ++i) {
    for (const Id& id : pits[i].vaults) {
      if (const auto place = context.locator.find(id)) pitOf[place->index] = i;
    }
  }
  return pitOf;
}

} // namespace

void addPassingRuns(const StudyContext& context, const std::vector<RunStudy>& runs,
                    const TrenchGround& ground, std::vector<PitStudy>& pits) {
  const std::vector<std::size_t> pitOf = pitOfVault(context, pits);
  for (std::size_t r = 0; r < runs.size(); ++r) {
    std::vector<std::size_t> told; // pits that the run ends in, or that know of it
    for (const RunEnd* end : {&context.plan.runs[r].from, &context.plan.runs[r].to}) {
      const auto place = context.locator.find(end->target);
      if (end->kind == EndKind::Chamber && place) told.push_back(pitOf[place->index]);
    }
    for (std::size_t i = 1; i < runs[r].points.size(); ++i) {
      const Polyline leg = {flat(runs[r].points[i - 1].at), flat(runs[r].points[i].at)};
      for (std::size_t d : ground.tops.touching(boxOf(leg))) {
        const std::size_t pit = pitOf[ground.digs[d].vault];
        if (std::ranges::find(told, pit) != told.end()) continue;
        if (!passesThrough(leg, ground.tops.rings()[d])) continue;
        told.push_back(pit);
        pits[pit].clashes.push_back({DigClashKind::Run, runs[r].id, lerp(leg[0], leg[1], 0.5)});
      }
    }
  }
}

void addTrenchesBeside(const StudyContext& context, const std::vector<TrenchStudy>& trenches,
                       const TrenchGround& ground, std::vector<PitStudy>& pits) {
  const std::vector<std::size_t> pitOf = pitOfVault(context, pits);
  for (const TrenchStudy& trench : trenches) {
    std::vector<std::pair<std::size_t, Point2>> beside;
    std::vector<std::size_t> through;
    for (const TrenchStretch& stretch : trench.stretches) {
      for (std::size_t i = 1; i < stretch.size(); ++i) {
        const Ring taken = trenchOutline(stretch[i - 1], stretch[i]);
        for (std::size_t d : ground.tops.touching(boxOf(taken))) {
          const Ring& top = ground.tops.rings()[d];
          const std::size_t pit = pitOf[ground.digs[d].vault];
          if (distanceLineToRing({stretch[i - 1].at, stretch[i].at}, top) <= 0) {
            through.push_back(pit);
          } else if (overlaps(taken, top)) {
            beside.emplace_back(pit, lerp(stretch[i - 1].at, stretch[i].at, 0.5));
          }
        }
      }
    }
    for (const auto& [pit, at] : beside) {
      if (std::ranges::find(through, pit) == through.end())
        addClash(pits[pit].clashes, DigClashKind::Trench, trench.run, at);
    }
  }
}

} // namespace sump
