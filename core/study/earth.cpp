// Buoyancy and loads of each vault, the digs and their totals.

#include "core/geometry/polygon.h"
#include "core/study/buoyancy.h"
#include "core/study/context.h"
#include "core/study/dig_surroundings.h"
#include "core/study/excavation.h"
#include "core/study/live_load.h"
#include "core/study/spoil_heap.h"
#include "core/study/trench.h"
#include "core/study/trench_outline.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

EarthFigures figuresFrom(const Limits& limits) {
  const auto density = [&](std::string_view id) {
    return kilogramsPerCubicMetre(limits.number(id));
  };
  EarthFigures f;
  f.concrete = density("earth.concrete");
  f.water = density("earth.water");
  f.soilHold = density("earth.soil-hold");
  f.soilLoad = density("earth.soil-load");
  f.wedge = limits.angle("earth.soil-wedge");
  f.factor = limits.number("earth.flotation-factor");
  f.bedding = limits.length("dig.bedding");
  f.workingSpace = limits.length("dig.working-space");
  f.riserWall = limits.length("dig.riser-wall");
  f.trenchBedding = limits.length("trench.bedding");
  f.pipeZone = limits.length("trench.pipe-zone");
  f.protectionFrom = limits.length("dig.protection-depth");
  f.engineerFrom = limits.length("dig.engineer-depth");
  f.egressFrom = limits.length("dig.egress-depth");
  f.egressTravel = limits.length("dig.egress-travel");
  f.swell = limits.number("dig.swell");
  f.truck = limits.volume("dig.truck");
  f.heapSlope = limits.number("dig.spoil-slope");
  f.heapHighest = limits.length("dig.spoil-height");
  return f;
}

LidLoadStudy lidLoad(const Vault& vault, const VaultStudy& shell, const EarthFigures& figures) {
  LidLoadStudy study;
  study.vault = vault.id;
  study.cover = given(shell.cover, "ground levels");
  study.earth = decide(
      [&](Length cover) {
        return pascals(figures.soilLoad.value() * kGravity * std::max(0.0, inMetres(cover)));
      },
      study.cover);
  study.live = decide(
      [](Length cover) {
        return given(livePressure(cover),
                     "an engineer's analysis of the lid, with so little cover");
      },
      study.cover);
  study.needsSlabAnalysis = study.cover && !study.live;
  study.underTraffic = !shell.trafficPavement.empty();
  study.needsTrafficLid = study.underTraffic && !vault.trafficLid;
  return study;
}

void fillVaults(const StudyContext& context, const Study& study, EarthStudy& earth) {
  const Plan& plan = context.plan;
  for (std::size_t i = 0; i < plan.vaults.size(); ++i) {
    const VaultStudy& shell = study.vaults[i];
    const VaultGround ground{shell.gradeLow, plan.site.groundwater, plan.basis.earth.soilHold};
    earth.buoyancy.push_back(buoyancy(plan.vaults[i], ground, earth.figures));
    earth.lids.push_back(lidLoad(plan.vaults[i], shell, earth.figures));
  }
}

void fillDigs(const StudyContext& context, const Study& study, EarthStudy& earth) {
  const Plan& plan = context.plan;
  TrenchGround ground{context, earth.figures, digSides(plan.basis.earth, context.limits), {}, {},
                      {}};
  std::vector<std::optional<VaultDig>> digs;
  std::vector<Ring> tops;
  for (std::size_t i = 0; i < plan.vaults.size(); ++i) {
    digs.push_back(digOf(plan.vaults[i], i, context.ground, ground.sides, earth.figures));
    if (!digs.back()) continue;
    ground.digs.push_back(*digs.back());
    tops.push_back(digs.back()->topOutline());
    ground.bottoms.push_back(digs.back()->bottomOutline());
  }
  ground.tops = OutlineSet(std::move(tops));
  earth.pits = pits(context, earth.figures, digs);
  const DigSurroundings surroundings(context, digs);
  for (PitStudy& pit : earth.pits)
    surroundings.fillPit(pit);
  addPassingRuns(context, study.runs, ground, earth.pits);
  for (const RunStudy& run : study.runs) {
    auto [dug, backfilled] = trench(ground, run);
    if (backfilled) earth.backfilled.push_back(std::move(*backfilled));
    if (!dug) continue;
    surroundings.fillTrench(run, *dug);
    earth.trenches.push_back(std::move(*dug));
  }
  addTrenchesBeside(context, earth.trenches, ground, earth.pits);
}

/// Sums of pits and trenches; undecided when a pit is, or when runs have no ground to lie in.
Decided<Volume> total(const EarthStudy& earth, bool groundKnown, Decided<Volume> PitStudy::*ofPit,
                      Volume TrenchStudy::*ofTrench) {
  if (!groundKnown) return undecided<Volume>({"ground levels"});
  Volume sum;
  for (const PitStudy& pit : earth.pits) {
    if (ofPit != nullptr) sum += *(pit.*ofPit);
  }
  for (const TrenchStudy& trench : earth.trenches)
    sum += trench.*ofTrench;
  return sum;
}

void fillDepths(const EarthFigures& figures, bool groundKnown, EarthStudy& earth) {
  const Needs needs = {"ground levels"};
  if (!groundKnown) {
    earth.deepest = undecided<Length>(needs);
    earth.protectionNeeded = earth.engineerNeeded = undecided<bool>(needs);
    return;
  }
  Length deepest;
  for (const PitStudy& pit : earth.pits)
    deepest = std::max(deepest, *pit.depth);
  for (const TrenchStudy& trench : earth.trenches)
    deepest = std::max(deepest, trench.depth);
  const Length hair = metres(1e-9);
  earth.deepest = deepest;
  earth.protectionNeeded =
      earth.soil != SoilClass::StableRock && deepest >= figures.protectionFrom - hair;
  earth.engineerNeeded = deepest > figures.engineerFrom + hair;
}

void fillTotals(bool groundKnown, const Ring& heap, EarthStudy& earth) {
  earth.dug = total(earth, groundKnown, &PitStudy::dug, &TrenchStudy::dug);
  earth.bedding = total(earth, groundKnown, &PitStudy::bedding, &TrenchStudy::bedding);
  earth.pipeZone = total(earth, groundKnown, nullptr, &TrenchStudy::pipeZone);
  earth.backfill = total(earth, groundKnown, &PitStudy::backfill, &TrenchStudy::backfill);
  const double loose = 1 + earth.figures.swell;
  earth.spoil = decide([&](Volume dug) { return dug * loose; }, earth.dug);
  earth.surplus =
      decide([&](Volume dug, Volume back) { return std::max(Volume{}, dug - back) * loose; },
             earth.dug, earth.backfill);
  earth.truckloads = decide(
      [&](Volume v) { return std::ceil((v / earth.figures.truck).value() - 1e-9); }, earth.surplus);
  earth.kept = decide([](Volume all, Volume away) -> Volume { return all - away; }, earth.spoil,
                      earth.surplus);
  const Decided<Area> floor = heap.empty() ? undecided<Area>({"place of the spoil heap"})
                                           : Decided<Area>(squareMetres(area(heap)));
  earth.keptHeight = decide(
      [](Volume kept, Area on) -> Decided<Length> {
        if (!(on.value() > 0)) return undecided<Length>({"place of the spoil heap"});
        return Length(kept / on);
      },
      earth.kept, floor);
}

void fillHeap(const Ring& outline, EarthStudy& earth) {
  if (outline.size() < 3) {
    earth.heapHolds = undecided<Volume>({"place of the spoil heap"});
    earth.heapHeight = undecided<Length>({"place of the spoil heap"});
    return;
  }
  const SpoilHeap heap = spoilHeap(outline, earth.figures.heapSlope, earth.figures.heapHighest);
  earth.heapHolds = heap.holds;
  earth.heapHeight = heap.height;
}

/// A heap that is not drawn cannot be judged.
Decided<Length> spoilClear(const Ring& heap, const EarthStudy& earth) {
  if (heap.empty()) return undecided<Length>({"place of the spoil heap"});
  Length least = metres(std::numeric_limits<double>::infinity());
  const Box near = boxOf(heap);
  const auto look = [&](const Ring& top) {
    const Box box = boxOf(top);
    const double apart = std::max({box.low.x - near.high.x, near.low.x - box.high.x,
                                   box.low.y - near.high.y, near.low.y - box.high.y});
    if (apart < inMetres(least)) least = std::min(least, metres(distance(heap, top)));
  };
  for (const PitStudy& pit : earth.pits) {
    if (!pit.top) return undecided<Length>(pit.top.needs);
    look(*pit.top);
  }
  for (const TrenchStudy& trench : earth.trenches) {
    for (const TrenchStretch& stretch : trench.stretches) {
      for (const Ring& outline : trenchOutlines(stretch))
        look(outline);
    }
  }
  return least;
}

} // namespace

void fillEarth(const StudyContext& context, Study& study) {
  EarthStudy& earth = study.earth;
  const EarthBasis& basis = context.plan.basis.earth;
  const bool groundKnown = !context.ground.empty();
  earth.figures = figuresFrom(context.limits);
  earth.soil = soilForSides(basis);
  earth.soilAssumed = !basis.soil.has_value();
  earth.slopeAssumed = !basis.protection.has_value();
  earth.sideSlope = digSides(basis, context.limits).slope;
  fillVaults(context, study, earth);
  fillDigs(context, study, earth);
  fillDepths(earth.figures, groundKnown, earth);
  fillTotals(groundKnown, basis.spoil, earth);
  fillHeap(basis.spoil, earth);
  earth.spoilClear = spoilClear(basis.spoil, earth);
}

} // namespace sump
