#pragma once
// Vaults, their openings and the digs for them. Part of known_numbers.h.

#include "tests/sheet/known_numbers.h"

namespace sump::testing {

inline void KnownNumbers::vaults(const Review& review) {
  for (const VaultStudy& vault : review.study.vaults) {
    const Vault& given = *review.plan.vaults.find(vault.id);
    const Id& id = vault.id;
    levels(id, vault.underside, vault.floor, vault.lidUnderside, vault.lidTop, vault.gradeLow,
           vault.gradeHigh, vault.gradeCentre, vault.overflowInvert, vault.waterLevel);
    lengths(id, vault.cover, given.length, given.width, given.wall, given.lidThickness,
            given.floorThickness, given.insideHeight, given.collar, given.width - 2.0 * given.wall,
            given.length - 2.0 * given.wall);
    if (review.plan.site.groundwater) lengths(id, vault.underside - *review.plan.site.groundwater);
    for (Point2 p : vault.outline)
      levels(id, p.x, p.y);
    for (const Baffle& baffle : given.baffles)
      lengths(id, baffle.offset, baffle.thickness, baffle.bottomGap, baffle.topGap,
              given.insideHeight - baffle.bottomGap - baffle.topGap);
    for (const ChamberStudy& chamber : vault.chambers) {
      lengths(id, chamber.length, chamber.width, chamber.waterDepth);
      volumes(id, chamber.volume);
    }
    for (const ManwayStudy& manway : vault.manways) {
      levels(id, manway.grade, manway.rim);
      lengths(id, manway.riser);
    }
    for (std::size_t i = 0; i < vault.manways.size(); ++i) {
      const auto lines = ManwayWays(review.plan, review.study).lines(vault, i);
      std::vector<ShaftPipe> pipes;
      for (const ManwayLine& line : lines)
        pipes.insert(pipes.end(), line.pipes.begin(), line.pipes.end());
      const Length way = clearWay(given.manways[i].diameter, pipes);
      lengths(id, way); // a row is about the vault where it names several lines
      for (const ManwayLine& line : lines)
        lengths(line.run, way);
    }
    for (const Manway& manway : given.manways) {
      lengths(id, manway.diameter);
      // From the wall to the opening, across the vault.
      lengths(id, given.width / 2.0 - given.wall - metres(std::abs(manway.at.y)) -
                      manway.diameter / 2.0);
    }
    volumes(id, vault.workingVolume);
  }
  if (const auto profile = trainProfile(review.plan, review.study, builtinCatalog())) {
    for (const ProfileGround& ground : profile->ground)
      levels(Id{}, ground.level);
  }
  volumes(Id{}, review.study.workingVolume);
  volumes(Id{}, review.limits.volume("storage.minimum"));
}

inline void KnownNumbers::earth(const EarthStudy& earth) {
  const Id all;
  for (const PitStudy& pit : earth.pits) {
    for (const Id& vault : pit.vaults)
      levels(vault, pit.bottom);
    lengths(all, pit.depth);
    volumes(all, pit.dug, pit.bedding, pit.backfill);
  }
  for (const TrenchStudy& trench : earth.trenches) {
    lengths(trench.run, trench.bottomWidth, trench.length, trench.depth, trench.depthOutdoors);
    volumes(trench.run, trench.dug, trench.bedding, trench.pipeZone, trench.backfill);
  }
  for (const BuoyancyStudy& vault : earth.buoyancy) {
    put(Printed::Mass, vault.vault, vault.weight);
    put(Printed::Force, vault.vault, vault.weight.value() * 9.80665);
    put(Printed::Mass, vault.vault, vault.heaviestPiece);
    put(Printed::Mass, vault.vault, vault.lidWeight);
    put(Printed::Force, vault.vault, vault.uplift);
    put(Printed::Force, vault.vault,
        decide([&](Force soil) -> Force { return soil; }, vault.soilForce));
    volumes(vault.vault, vault.ballast);
    lengths(vault.vault, vault.collar);
  }
  const auto footing = [&](const FootingCheck& check) {
    lengths(all, check.nearest, decide([](Length v) { return std::abs(v.value()); }, check.below));
  };
  for (const PitStudy& pit : earth.pits)
    std::ranges::for_each(pit.footings, footing);
  for (const TrenchStudy& trench : earth.trenches)
    std::ranges::for_each(trench.footings, footing);
  const EarthFigures& f = earth.figures;
  lengths(all, f.bedding, f.workingSpace, f.trenchBedding, f.pipeZone, earth.deepest,
          earth.spoilClear);
  lengths(all, earth.keptHeight, earth.heapHeight);
  for (const BackfilledRun& run : earth.backfilled)
    lengths(all, run.lidGap.value_or(metres(0)));
  volumes(all, earth.heapHolds);
  volumes(all, earth.kept, earth.dug, earth.bedding, earth.pipeZone, earth.backfill, earth.spoil,
          earth.surplus);
}

/// Where a way from a to b crosses a circle, by the nearest point to its centre.
inline std::vector<Point3> circlePoints(Point3 a, Point3 b, Point2 centre, double radius) {
  const double run = std::hypot(b.x - a.x, b.y - a.y);
  if (run < 1e-9) return {};
  const double ux = (b.x - a.x) / run, uy = (b.y - a.y) / run;
  const double foot = (centre.x - a.x) * ux + (centre.y - a.y) * uy;
  const double off = std::abs((centre.x - a.x) * uy - (centre.y - a.y) * ux);
  if (off >= radius) return {};
  std::vector<Point3> found;
  for (double sign : {-1.0, 1.0}) {
    const double s = foot + sign * std::sqrt(radius * radius - off * off);
    if (s >= 0 && s <= run)
      found.push_back({a.x + ux * s, a.y + uy * s, a.z + (b.z - a.z) * s / run});
  }
  return found;
}

/// C-3: where a run goes through a wall, from the corners of the vault's own frame.
inline void KnownNumbers::openings(const Review& review) {
  const auto gaps = holeGaps(review.plan, builtinCatalog(), review.study);
  const auto opening = [&](const RunStudy& run, const Id& in, Point3 at) {
    const Vault& vault = *review.plan.vaults.find(in);
    const Point2 off = Point2{at.x, at.y} - vault.centre;
    const double c = std::cos(inRadians(vault.angle)), s = std::sin(inRadians(vault.angle));
    for (double along : {c * off.x + s * off.y + vault.length.value() / 2,
                         c * off.y - s * off.x + vault.width.value() / 2,
                         height(metres(at.z), review.study.vault(in)->floor)})
      sets_[{run.id, Printed::Length}].insert(along);
    sets_[{run.id, Printed::Level}].insert(at.z);
    const auto gap = leastGap(gaps, in, run.id, {at.x, at.y});
    const Run& given = *review.plan.runs.find(run.id);
    const PipeSize* pipe = builtinCatalog().pipeSize(given.pipe, given.size);
    if (pipe == nullptr) return;
    on("C-3", Printed::Length, pipe->outside.value());
    if (gap) on("C-3", Printed::Length, (pipe->outside + 2.0 * *gap).value());
  };
  for (const RunStudy& run : review.study.runs) {
    for (const Penetration& hole : run.penetrations) {
      opening(run, hole.vault, hole.at);
      const Vault& vault = *review.plan.vaults.find(hole.vault);
      const Point2 across = {-std::sin(inRadians(vault.angle)), std::cos(inRadians(vault.angle))};
      // A baffle is taped inside.
      if (!hole.baffle.empty())
        sets_[{run.id, Printed::Length}].insert(dot(flat(hole.at) - vault.centre, across) +
                                                vault.width.value() / 2 - vault.wall.value());
    }
    for (const VaultStudy& vault : review.study.vaults) {
      for (std::size_t m = 0; m < vault.manways.size(); ++m) {
        const double r = review.plan.vaults.find(vault.id)->manways[m].diameter.value() / 2;
        for (std::size_t i = 0; i + 1 < run.points.size(); ++i) {
          for (Point3 at :
               circlePoints(run.points[i].at, run.points[i + 1].at, vault.manways[m].at, r))
            opening(run, vault.id, at);
        }
      }
    }
  }
  wallsAndSlabs(review);
  vents(review);
  dips(review);
  // C-3: from a vault's base to the next vault of the same dig.
  for (const Vault& vault : review.plan.vaults) {
    for (const Vault& other : review.plan.vaults) {
      const double collar = vault.collar ? vault.collar->value() : 0;
      if (other.id != vault.id)
        on("C-3", Printed::Length, distance(outline(vault), outline(other)) - collar);
    }
  }
}

/// How wide walls as thick as the note under the table says are opened for it.
inline void KnownNumbers::slant(const WallSleeve& sleeve) {
  put(Printed::Angle, sleeve.run, sleeve.skew);
  for (Length wall : {metric_ ? metres(0.2) : inches(8), metric_ ? metres(0.3) : inches(12)}) {
    on("C-3", Printed::Length, wall.value());
    on("C-3", Printed::Length, straightOpening(sleeve, wall).value());
  }
}

/// P-5: how deep the tees of inlets and overflows reach, as shares of the water at rest.
inline void KnownNumbers::dips(const Review& review) {
  for (const Run& run : review.plan.runs) {
    const bool inlet = run.service == Service::Inlet;
    if (!inlet && run.service != Service::Overflow) continue;
    const VaultStudy* vault = review.study.vault(inlet ? run.to.target : run.from.target);
    if (vault == nullptr || !vault->waterLevel) continue;
    const std::string sheet = "P-5:" + run.id, dip = inlet ? "inlet.dip." : "outlet.dip.";
    const double depth = inMetres(*vault->waterLevel - vault->floor);
    for (const char* share : {"low", "high"})
      on(sheet, Printed::Length, review.limits.number(dip + share) * depth);
    if (inlet) on(sheet, Printed::Length, review.limits.length("inlet.dip.least").value());
  }
  for (const UpperArm& arm : upperArms(review.plan, builtinCatalog(), review.study)) {
    lengths(arm.run, metres(std::abs(inMetres(arm.underLid))));
    lengths(arm.run, arm.toEdge);
  }
  for (const RunStudy& run : review.study.runs) {
    for (const DownLeg& leg : run.downLegs) {
      levels(run.id, leg.end);
      if (const auto water = review.study.vault(leg.vault)->waterLevel)
        lengths(run.id, metres(height(leg.end, *water)));
      if (run.service != Service::Overflow || !review.study.train.lowWater) continue;
      for (const ChamberLow& low : *review.study.train.lowWater)
        if (low.vault == leg.vault)
          levels(run.id, low.level - review.plan.basis.water.oilDepth.value_or(Length{}));
    }
    for (const PipePiece& piece : run.pieces)
      if (piece.downLeg) lengths(run.id, piece.cut);
  }
}

/// P-6: the open ends of vents, roofs beside them, and how far these count.
inline void KnownNumbers::vents(const Review& review) {
  for (const char* limit : {"vent.roof-reach", "vent.over-roof", "vent.over-opening"})
    on("P-6", Printed::Length, review.limits.length(limit).value());
  for (const VentEnd& vent : ventEnds(review.plan, review.study, review.limits)) {
    for (double level : {vent.at.x, vent.at.y, inMetres(vent.level)})
      sets_[{vent.run, Printed::Level}].insert(level);
    for (const NearRoof& near : vent.roofs) {
      for (const Id& object : {vent.run, near.building}) {
        lengths(object, near.away);
        if (near.roof) lengths(object, metres(std::abs(inMetres(vent.level - *near.roof))));
        if (near.roof) levels(object, *near.roof);
      }
    }
  }
}

/// C-3 and the findings: sleeves, how far they and the trenches lie over and under footings, how
/// thick these are taken to be, what rises through slabs, and floor drains.
inline void KnownNumbers::wallsAndSlabs(const Review& review) {
  const Length bedding = review.study.earth.figures.trenchBedding;
  for (const WallSleeve& sleeve : wallSleeves(review.plan, review.study)) {
    for (double level : {sleeve.at.x, sleeve.at.y, sleeve.at.z})
      sets_[{sleeve.run, Printed::Level}].insert(level);
    nominal(sleeve.run, sleeve.size);
    if (sleeve.sleeve) nominal(sleeve.run, *sleeve.sleeve);
    if (isSkew(sleeve)) slant(sleeve);
    if (!sleeve.footing) continue;
    const Length low = sleeve.high <= *sleeve.lowestFooting ? sleeve.pipeLow : sleeve.low;
    lengths(sleeve.run, low - *sleeve.footing, *sleeve.footing - (sleeve.pipeLow - bedding));
  }
  lengths(Id{}, review.limits.length("footing.thickness"));
  for (const SlabPass& pass : slabPasses(review.plan, review.study)) {
    for (double level : {pass.at.x, pass.at.y, pass.at.z})
      sets_[{pass.run, Printed::Level}].insert(level);
    nominal(pass.run, pass.size);
    if (pass.sleeve) nominal(pass.run, *pass.sleeve);
  }
  // P-6: where runs pass the walls of basins.
  for (const RunStudy& run : review.study.runs) {
    for (const BasinEntry& entry : basinEntries(review.plan, *review.plan.runs.find(run.id), run)) {
      for (double level : {entry.at.x, entry.at.y, entry.at.z})
        sets_[{run.id, Printed::Level}].insert(level);
      nominal(run.id, entry.size);
    }
  }
  for (const EquipmentRoom& room : review.plan.rooms) {
    if (!room.floorDrain) continue;
    const Point2 at = room.frame().toSite(*room.floorDrain);
    for (double level : {at.x, at.y})
      on("C-3", Printed::Level, level);
  }
}

/// C-1: from the faces of a dig's first vault, three fifths of half a side off their middle, to the
/// edges of the bottom and at the ground; from buildings to the bottom.
inline void KnownNumbers::digClearances(const Review& review, const PitStudy& pit) {
  const Vault& vault = *review.plan.vaults.find(pit.vaults.front());
  const double c = std::cos(inRadians(vault.angle)), s = std::sin(inRadians(vault.angle));
  const auto site = [&](double x, double y) {
    return vault.centre + Point2{c * x - s * y, s * x + c * y};
  };
  for (double side : {-1.0, 1.0}) {
    const double x = side * vault.length.value() / 2, y = side * vault.width.value() / 2;
    for (const Polyline& way : {Polyline{site(x, -0.6 * y), site(x + side * 30, -0.6 * y)},
                                Polyline{site(-0.6 * x, y), site(-0.6 * x, y + side * 30)}}) {
      for (const Ring& bottom : pit.bottoms) {
        for (Point2 toe : crossings(way, bottom)) {
          on("C-1", Printed::Length, distance(way.front(), toe));
          if (!pit.top) continue;
          for (Point2 edge : crossings(way, *pit.top))
            on("C-1", Printed::Length, distance(toe, edge));
        }
      }
    }
  }
  for (const Building& building : review.plan.buildings) {
    for (const Ring& bottom : pit.bottoms)
      on("C-1", Printed::Length, distance(building.outline, bottom));
  }
}

/// C-1: where runs, drains and manways stand, tops of baffles; overall length and width of each
/// dig's bottom, along and across its first vault.
inline void KnownNumbers::digs(const Review& review) {
  const auto place = [&](Point2 at) {
    on("C-1", Printed::Level, at.x);
    on("C-1", Printed::Level, at.y);
  };
  for (const RunStudy& run : review.study.runs) {
    for (const RunPoint& point : run.points)
      place(flat(point.at));
  }
  for (const Basin& basin : review.plan.basins)
    place(basin.at);
  for (const SewerConnection& sewer : review.plan.sewers)
    place(sewer.at);
  for (const WashEquipment& wash : review.plan.washes)
    place(wash.at);
  for (const VaultStudy& vault : review.study.vaults) {
    for (const ManwayStudy& manway : vault.manways) {
      place(manway.at);
      if (manway.rim) on("C-3", Printed::Length, between(*manway.rim, vault.lidTop));
    }
    on("C-3", Printed::Length, between(vault.lidTop, vault.lidUnderside));
    on("C-3", Printed::Length, between(vault.lidUnderside, vault.floor));
    on("C-3", Printed::Length, between(vault.floor, vault.underside));
    on("C-3", Printed::Length,
       between(vault.underside, vault.underside - review.study.earth.figures.bedding));
  }
  for (const Vault& vault : review.plan.vaults) {
    for (const Manway& manway : vault.manways) {
      on("C-1", Printed::Length, manway.at.x + (vault.length / 2.0 - vault.wall).value());
      on("C-1", Printed::Length, manway.at.y + (vault.width / 2.0 - vault.wall).value());
    }
    for (const Baffle& baffle : vault.baffles)
      on("C-1", Printed::Level, (vault.floor + vault.insideHeight - baffle.topGap).value());
  }
  const Ring& heap = review.plan.basis.earth.spoil;
  if (heap.size() == 4) { // a rectangle in all samples
    on("C-1", Printed::Length, distance(heap[0], heap[1]));
    on("C-1", Printed::Length, distance(heap[1], heap[2]));
  }
  for (const PitStudy& pit : review.study.earth.pits) {
    digClearances(review, pit);
    const double angle = inRadians(review.plan.vaults.find(pit.vaults.front())->angle);
    for (double turn : {0.0, kPi / 2}) {
      const double c = std::cos(angle + turn), s = std::sin(angle + turn);
      std::vector<double> along;
      for (const Ring& ring : pit.bottoms) {
        for (Point2 p : ring)
          along.push_back(c * p.x + s * p.y);
      }
      const auto [low, high] = std::minmax_element(along.begin(), along.end());
      on("C-1", Printed::Length, *high - *low);
    }
  }
}

} // namespace sump::testing
