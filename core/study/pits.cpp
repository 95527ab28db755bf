// The digs for vaults, merged where they run into each other.

#include "core/geometry/outline_union.h"
#include "core/geometry/polygon.h"
#include "core/study/buoyancy.h"
#include "core/study/excavation.h"

#include <algorithm>

namespace sump {

namespace {

using Digs = std::vector<VaultDig>;

/// The longer side of the box round all bottoms, along the first vault.
double longestSide(const Digs& digs, const std::vector<Ring>& bottoms) {
  std::vector<Point2> corners;
  for (const Ring& ring : bottoms) {
    for (Point2 p : ring)
      corners.push_back(digs.front().frame.toLocal(p));
  }
  const Box box = boxOf(corners);
  return std::max(box.high.x - box.low.x, box.high.y - box.low.y);
}

Ring largest(std::vector<Ring> rings) {
  const auto found =
      std::ranges::max_element(rings, {}, [](const Ring& ring) { return area(ring); });
  return found == rings.end() ? Ring{} : std::move(*found);
}

/// Up to the mean grade of the dig; frames and covers are taken as wide as the risers below them.
double risersOf(const Vault& vault, double grade, double wall) {
  const double lid = inMetres(lidTop(vault));
  double sum = 0;
  for (const Manway& manway : vault.manways) {
    const double rim = manway.rim ? std::min(inMetres(*manway.rim), grade) : grade;
    const double outside = inMetres(manway.diameter) + 2 * wall;
    sum += kPi / 4 * outside * outside * std::max(0.0, rim - lid);
  }
  return sum;
}

class PitMaker {
public:
  PitMaker(const StudyContext& context, const EarthFigures& figures)
      : context_(context), figures_(figures) {}

  PitStudy make(const Digs& digs) const {
    PitStudy pit;
    double high = digs.front().gradeHigh, low = digs.front().bottom, depth = 0;
    std::vector<Ring> tops;
    for (const VaultDig& dig : digs) {
      pit.vaults.push_back(context_.plan.vaults[dig.vault].id);
      pit.bottoms.push_back(dig.bottomOutline());
      tops.push_back(dig.topOutline());
      high = std::max(high, dig.gradeHigh);
      low = std::min(low, dig.bottom);
      depth = std::max(depth, dig.depth());
    }
    pit.bottom = metres(low);
    pit.grade = metres(high);
    pit.depth = metres(depth);
    pit.top = tops.size() == 1 ? tops.front() : largest(unionOutlines(tops));
    fillVolumes(digs, pit);
    fillEgress(digs, pit);
    return pit;
  }

private:
  void fillVolumes(const Digs& digs, PitStudy& pit) const {
    const double floor = digs.size() == 1 ? area(pit.bottoms.front()) : unionArea(pit.bottoms);
    double vaults = 0, risers = 0, deepest = 0;
    for (const VaultDig& dig : digs) {
      const Vault& vault = context_.plan.vaults[dig.vault];
      vaults += volumeBelow(vault, metres(dig.gradeMean)).value();
      risers += risersOf(vault, dig.gradeMean, inMetres(figures_.riserWall));
      deepest = std::max(deepest, dig.meanDepth());
    }
    const double dug = digVolume(digs);
    const double bedding = floor * std::min(inMetres(figures_.bedding), deepest);
    pit.dug = cubicMetres(dug);
    pit.bedding = cubicMetres(bedding);
    pit.risers = cubicMetres(risers);
    pit.backfill = cubicMetres(std::max(0.0, dug - bedding - vaults - risers));
  }

  void fillEgress(const Digs& digs, PitStudy& pit) const {
    Egress& egress = pit.egress;
    egress.needed = *pit.depth >= figures_.egressFrom - metres(1e-9);
    const double travel = inMetres(figures_.egressTravel);
    egress.laddersNeeded = egress.needed ? laddersFor(longestSide(digs, pit.bottoms), travel) : 0;
    std::vector<Point2> inside;
    int number = 0;
    for (Point2 ladder : context_.plan.basis.earth.ladders) {
      ++number;
      if (!contains(*pit.top, ladder)) continue;
      inside.push_back(ladder);
      egress.ladders.push_back(number);
    }
    if (const auto far = farthestFrom(pit.bottoms, inside)) egress.farthest = metres(*far);
  }

  const StudyContext& context_;
  const EarthFigures& figures_;
};

PitStudy unknownPit(const Vault& vault, const EarthFigures& figures) {
  const Needs needs = {"ground levels"};
  PitStudy pit;
  pit.vaults = {vault.id};
  const double margin = inMetres(vault.collar.value_or(metres(0)) + figures.workingSpace);
  const Point2 corner{inMetres(vault.length) / 2 + margin, inMetres(vault.width) / 2 + margin};
  pit.bottoms = {vault.frame().rectangle({-corner.x, -corner.y}, corner)};
  pit.bottom = vault.floor - vault.floorThickness - figures.bedding;
  pit.top = undecided<Ring>(needs);
  pit.grade = pit.depth = undecided<Length>(needs);
  pit.dug = pit.bedding = pit.risers = pit.backfill = undecided<Volume>(needs);
  return pit;
}

} // namespace

std::vector<PitStudy> pits(const StudyContext& context, const EarthFigures& figures,
                           const std::vector<std::optional<VaultDig>>& digs) {
  std::vector<PitStudy> result;
  Digs known;
  std::vector<Ring> tops;
  for (std::size_t i = 0; i < digs.size(); ++i) {
    if (!digs[i]) {
      result.push_back(unknownPit(context.plan.vaults[i], figures));
      continue;
    }
    known.push_back(*digs[i]);
    tops.push_back(digs[i]->topOutline());
  }
  const PitMaker maker(context, figures);
  for (const std::vector<std::size_t>& group : joinedDigs(tops)) {
    Digs members;
    for (std::size_t i : group)
      members.push_back(known[i]);
    result.push_back(maker.make(members));
  }
  return result;
}

} // namespace sump
