#pragma once
// Every number that a sheet may print, taken from Plan and Study without the sheets' code: of each
// object, and of the site as a whole.

#include "core/catalog/catalog.h"
#include "core/catalog/supplies.h"
#include "core/geometry/point.h"
#include "core/geometry/polygon.h"
#include "core/plan/ends.h"
#include "core/rules/review.h"
#include "core/study/nominal_volts.h"
#include "core/study/profile.h"
#include "core/study/spoil_heap.h"
#include "tests/sheet/printed_numbers.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace sump::testing {

class KnownNumbers {
public:
  explicit KnownNumbers(const Review& review);

  /// Is there such a number of this object (of any, for an empty id)?
  bool has(const PrintedNumber& number, const Id& object) const {
    const auto of = sets_.find({object, number.kind});
    if (of == sets_.end()) return false;
    const auto near = of->second.lower_bound(number.value - number.half);
    return near != of->second.end() && *near <= number.value + number.half;
  }

private:
  template <class Unit> static double si(const bu::quantity<Unit>& v) { return v.value(); }
  static double si(double v) { return v; }
  static double si(int v) { return v; }
  static double si(const RunLoss& v) { return v.total.value(); }

  void put(Printed kind, const Id& object, double value) {
    sets_[{object, kind}].insert(value);
    sets_[{Id{}, kind}].insert(value);
  }
  template <class T> void put(Printed kind, const Id& object, const T& value) {
    put(kind, object, si(value));
  }
  template <class T> void put(Printed kind, const Id& object, const std::optional<T>& value) {
    if (value) put(kind, object, *value);
  }
  template <class T> void put(Printed kind, const Id& object, const Decided<T>& value) {
    if (value) put(kind, object, *value);
  }
  template <class... T> void levels(const Id& object, const T&... values) {
    (put(Printed::Level, object, values), ...);
  }
  template <class... T> void lengths(const Id& object, const T&... values) {
    (put(Printed::Length, object, values), ...);
  }
  template <class... T> void volumes(const Id& object, const T&... values) {
    (put(Printed::Volume, object, values), ...);
  }
  void nominal(const Id& object, const std::string& size) {
    // `6`, `1-1/2`, `6 x 4`
    for (std::size_t from = 0; from < size.size();) {
      const std::size_t end = std::min(size.find(" x ", from), size.size());
      put(Printed::Nominal, object, detail::mixed(size.substr(from, end - from)) * kMetresPerInch);
      from = end + 3;
    }
  }

  void site(const Plan& plan);
  void ofPort(const Id& object, const EquipmentRoom& room, const Port& port);
  void rooms(const Plan& plan);
  void vaults(const Review& review);
  void levelsOfRun(const Run& run, const RunStudy& study);
  void runs(const Review& review);
  void earth(const EarthStudy& earth);
  void train(const TrainStudy& train);
  void pumping(const HydraulicsStudy& hydraulics);
  void wiring(const Plan& plan, const WiringStudy& wiring);
  void basis(const Basis& basis);
  void distances(const Plan& plan);
  void calculated(const Review& review);
  void openings(const Review& review);
  void digs(const Review& review);
  void roomGaps(const Plan& plan);
  void structures(const RunProfile& profile, const std::string& sheet);
  /// Of two levels as they are printed, unsigned.
  double between(Length a, Length b) const {
    const double step = metric_ ? 0.001 : 0.01 * kMetresPerFoot;
    return std::abs(std::round(a.value() / step) - std::round(b.value() / step)) * step;
  }
  void leastCover(const RunProfile& profile, const std::string& sheet);
  void sections(const Review& review);
  void details(const Review& review);
  /// A number that stands on one series of sheets only, `C-1`, or there in the drawing of one run,
  /// `P-3:WW-1`, so that it proves nothing elsewhere.
  void on(const std::string& series, Printed kind, double value) {
    sets_[{series, kind}].insert(value);
  }

  bool metric_;
  std::map<std::pair<Id, Printed>, std::set<double>> sets_;
};

inline KnownNumbers::KnownNumbers(const Review& review)
    : metric_(review.plan.project.units == UnitSystem::Metric) {
  site(review.plan);
  rooms(review.plan);
  vaults(review);
  runs(review);
  earth(review.study.earth);
  train(review.study.train);
  pumping(review.study.hydraulics);
  wiring(review.plan, review.study.wiring);
  basis(review.plan.basis);
  distances(review.plan);
  calculated(review);
  openings(review);
  digs(review);
  roomGaps(review.plan);
  sections(review);
  details(review);
}

inline void KnownNumbers::site(const Plan& plan) {
  const Id all;
  levels(all, plan.site.groundwater);
  lengths(all, plan.site.frostDepth);
  put(Printed::Angle, all, std::abs(inRadians(plan.site.north)));
  // The datum in the designer's own words, and how often pipe is labelled.
  for (const PrintedNumber& number : printedNumbers(plan.site.datum))
    put(number.kind, all, number.value);
  lengths(all, builtinSupplies().labelSpacing);
  for (const SpotElevation& spot : plan.spots)
    levels(spot.id, spot.elevation);
  for (const Building& building : plan.buildings) {
    levels(building.id, building.floor, building.footing);
    for (Point2 p : building.outline)
      levels(building.id, p.x, p.y);
  }
  for (const Utility& utility : plan.utilities) {
    levels(utility.id, utility.elevation);
    lengths(utility.id, utility.diameter);
  }
  for (const Basin& basin : plan.basins) {
    levels(basin.id, basin.rim, basin.outletInvert);
    lengths(basin.id, basin.length, basin.width);
  }
  for (const SewerConnection& sewer : plan.sewers)
    levels(sewer.id, sewer.invert, sewer.upstreamManholeRim);
  for (const WashEquipment& wash : plan.washes) {
    levels(wash.id, wash.inletElevation);
    nominal(wash.id, wash.inletSize);
  }
}

inline void KnownNumbers::ofPort(const Id& object, const EquipmentRoom& room, const Port& port) {
  levels(object, room.floor + port.height);
  lengths(object, port.at.x, port.at.y, port.height);
  nominal(object, port.size);
}

inline void KnownNumbers::rooms(const Plan& plan) {
  for (const EquipmentRoom& room : plan.rooms) {
    levels(room.id, room.floor);
    lengths(room.id, room.length, room.width);
    for (const auto* box : {&room.skid, &room.plumbingArea, &room.panel}) {
      if (!*box) continue;
      const RoomBox& b = **box;
      lengths(room.id, b.length, b.depth, b.height, b.corner.x, b.corner.y,
              room.length.value() - b.corner.x - b.length.value(),
              room.width.value() - b.corner.y - b.depth.value());
    }
    if (room.door) lengths(room.id, room.door->width, room.door->offset);
    for (const Port& port : room.ports) {
      ofPort(port.id, room, port);
      for (const Run& run : plan.runs) {
        if (run.from.target != port.id && run.to.target != port.id) continue;
        ofPort(run.id, room, port);
        // It may rise elsewhere than at its port.
        for (const Vertex& vertex : run.vertices) {
          const Point2 at = room.frame().toLocal(vertex.at);
          lengths(run.id, at.x, at.y, room.length.value() - at.x, room.width.value() - at.y);
        }
      }
    }
  }
}

inline void KnownNumbers::vaults(const Review& review) {
  for (const VaultStudy& vault : review.study.vaults) {
    const Vault& given = *review.plan.vaults.find(vault.id);
    const Id& id = vault.id;
    levels(id, vault.underside, vault.floor, vault.lidUnderside, vault.lidTop, vault.gradeLow,
           vault.gradeHigh, vault.gradeCentre, vault.overflowInvert, vault.waterLevel);
    lengths(id, vault.cover, given.length, given.width, given.wall, given.lidThickness,
            given.floorThickness, given.insideHeight, given.collar, given.width - 2.0 * given.wall,
            given.length - 2.0 * given.wall);
    for (Point2 p : vault.outline)
      levels(id, p.x, p.y);
    for (const Baffle& baffle : given.baffles)
      lengths(id, baffle.offset, baffle.thickness);
    for (const ChamberStudy& chamber : vault.chambers) {
      lengths(id, chamber.length, chamber.width, chamber.waterDepth);
      volumes(id, chamber.volume);
    }
    for (const ManwayStudy& manway : vault.manways) {
      levels(id, manway.grade, manway.rim);
      lengths(id, manway.riser);
    }
    for (const Manway& manway : given.manways)
      lengths(id, manway.diameter);
    volumes(id, vault.workingVolume);
  }
  if (const auto profile = trainProfile(review.plan, review.study, builtinCatalog())) {
    for (const ProfileGround& ground : profile->ground)
      levels(Id{}, ground.level);
  }
  volumes(Id{}, review.study.workingVolume);
  volumes(Id{}, review.limits.volume("storage.minimum"));
}

inline void KnownNumbers::levelsOfRun(const Run& run, const RunStudy& study) {
  for (const RunPoint& point : study.points) {
    levels(run.id, point.at.z, point.grade);
  }
  for (const Penetration& through : study.penetrations)
    levels(run.id, through.at.z);
  // A part's level: straight between the points of its leg.
  for (const InlinePart& part : run.parts) {
    const auto leg = static_cast<std::size_t>(part.leg);
    if (leg + 1 >= study.points.size()) continue;
    const double a = study.points[leg].at.z, b = study.points[leg + 1].at.z;
    levels(run.id, a + (b - a) * part.along);
    double station = 0; // in plan
    for (std::size_t i = 0; i <= leg; ++i)
      station += study.legs[i].plan.value() * (i < leg ? 1 : part.along);
    lengths(run.id, station);
    nominal(run.id, part.toSize);
  }
  if (run.eductor) {
    levels(run.id, run.eductor->bracketFoot, run.eductor->outletEnd);
    nominal(run.id, run.eductor->portSize);
  }
}

inline void KnownNumbers::runs(const Review& review) {
  for (const RunStudy& study : review.study.runs) {
    const Run& run = *review.plan.runs.find(study.id);
    nominal(run.id, run.size);
    levelsOfRun(run, study);
    levels(run.id, study.startInvert, study.endInvert);
    lengths(run.id, study.plan, study.developed);
    for (const RunItem& item : study.items) {
      if (item.key.starts_with("elbow-"))
        put(Printed::Angle, run.id, std::stod(item.key.substr(6)) * kPi / 180);
    }
    put(Printed::Slope, run.id, std::abs(study.slope));
    put(Printed::Slope, run.id, study.leastSlope);
    for (const Leg& leg : study.legs) {
      put(Printed::Slope, run.id, std::abs(leg.slope));
      put(Printed::Share, run.id, std::abs(leg.slope));
      lengths(run.id, leg.plan, leg.developed);
    }
    put(Printed::Share, run.id, std::abs(study.slope)); // metric slopes are in percent
    for (const auto* cover : {&study.leastCover, &study.leastTrafficCover}) {
      if (*cover) lengths(run.id, (*cover)->cover);
    }
  }
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
    lengths(trench.run, trench.bottomWidth, trench.length, trench.depth);
    volumes(trench.run, trench.dug, trench.bedding, trench.pipeZone, trench.backfill);
  }
  for (const BuoyancyStudy& vault : earth.buoyancy) {
    put(Printed::Mass, vault.vault, vault.weight);
    put(Printed::Mass, vault.vault, vault.heaviestPiece);
    put(Printed::Mass, vault.vault, vault.lidWeight);
    put(Printed::Force, vault.vault, vault.uplift);
    put(Printed::Force, vault.vault,
        decide([&](Force soil) -> Force { return soil; }, vault.soilForce));
    volumes(vault.vault, vault.ballast);
    lengths(vault.vault, vault.collar);
  }
  const EarthFigures& f = earth.figures;
  lengths(all, f.bedding, f.workingSpace, f.trenchBedding, f.pipeZone, earth.deepest,
          earth.spoilClear);
  volumes(all, earth.dug, earth.bedding, earth.pipeZone, earth.backfill, earth.spoil,
          earth.surplus);
}

inline void KnownNumbers::train(const TrainStudy& train) {
  for (const auto* state : {&train.pumpStopped, &train.pumpRunning}) {
    if (!*state) continue;
    for (const ChamberLevel& chamber : (*state)->chambers)
      levels(chamber.vault, chamber.rest, chamber.level);
    for (const PassageLevels& way : (*state)->passages) {
      for (const RunLevel& point : way.points)
        levels(way.run, point.water);
    }
    for (const BasinLevel& basin : (*state)->basins)
      levels(basin.basin, basin.level);
  }
  for (const GravityStudy& g : train.gravity) {
    put(Printed::Flow, g.run, g.fullFlow);
    put(Printed::Flow, g.run, g.peak);
    put(Printed::Share, g.run, g.share);
    put(Printed::Velocity, g.run, g.velocity);
  }
  for (const ChamberDuty& duty : train.chambers) {
    put(Printed::Time, duty.vault, duty.detention);
    put(Printed::Velocity, duty.vault, duty.overflowRate);
    put(Printed::Velocity, duty.vault, duty.forward);
  }
  for (const auto* flow : {&train.peakInflow, &train.peakDraw, &train.recirculation})
    put(Printed::Flow, Id{}, *flow);
  for (const auto* time : {&train.fill, &train.drawDown, &train.drawDownNet, &train.pumpOutFirst,
                           &train.pumpOutTrain, &train.turnover})
    put(Printed::Time, Id{}, *time);
  volumes(Id{}, train.usable, train.sludgePerDay);
}

inline void KnownNumbers::pumping(const HydraulicsStudy& h) {
  for (const PressureRun& run : h.runs) {
    put(Printed::Flow, run.run, run.flow);
    put(Printed::Velocity, run.run, run.ceiling);
    lengths(run.run, run.loss);
    if (run.loss) put(Printed::Velocity, run.run, run.loss->fastest);
    for (const auto* pressure : {&run.neededAtStart, &run.wanted, &run.atEnd})
      put(Printed::Pressure, run.run, *pressure);
  }
  for (const SuctionStudy& s : h.suctions) {
    levels(s.run, s.pump, s.lowWater, s.highWater);
    lengths(s.run, s.liftLow, s.liftHigh, s.submergence, s.suctionLift, s.npshAvailable,
            s.npshRequired, s.liftLimit);
    volumes(s.run, s.primingVolume);
    put(Printed::Time, s.run, s.primingTime);
  }
  const DemandStudy& d = h.demand;
  volumes(Id{}, d.busyHourWash, d.dailyWash, d.dailyFresh, d.dailyProduct, d.dailyToVaults,
          d.dailyMakeUp, d.dailySurplus);
  put(Printed::Share, Id{}, d.reclaimShare);
  for (const auto* flow : {&d.peakProduct, &d.peakFresh, &d.peakToVaults, &h.pumpFlow})
    put(Printed::Flow, Id{}, *flow);
  lengths(Id{}, h.pumpHead);
}

inline void KnownNumbers::wiring(const Plan& plan, const WiringStudy& wiring) {
  for (const ConduitStudy& conduit : wiring.conduits) {
    put(Printed::Share, conduit.run, conduit.fill);
    put(Printed::Share, conduit.run, conduit.fillLimit);
    put(Printed::Angle, conduit.run, conduit.mostDegrees * kPi / 180);
  }
  for (const WorkingSpaceStudy& space : wiring.spaces) {
    lengths(space.room, space.depthNeeded, space.depthClear, space.widthNeeded, space.widthClear,
            space.heightNeeded);
  }
  for (const SupplyStudy& supply : wiring.supplies) {
    lengths(supply.supply, supply.disconnectDistance);
    for (const Supply& given : plan.basis.wiring.supplies) {
      if (given.id == supply.supply) lengths(given.run, supply.disconnectDistance);
    }
  }
  for (const Supply& supply : plan.basis.wiring.supplies) {
    put(Printed::Volts, supply.id, supply.volts);
    if (supply.voltsToGround) put(Printed::Volts, supply.id, *supply.voltsToGround);
    if (const auto system = nominalSystem(supply))
      put(Printed::Volts, supply.id, std::stoi(std::string(system->name)));
  }
  for (const SignalCircuit& signal : plan.basis.wiring.signalCircuits) {
    const bool low = signal.kind == SignalKind::Dc24 || signal.kind == SignalKind::Ac24;
    put(Printed::Volts, signal.id, low ? 24 : signal.kind == SignalKind::Ac110 ? 110 : 220);
  }
}

inline void KnownNumbers::basis(const Basis& basis) {
  on("E-1", Printed::Volts, 24); // of limited-energy circuits in general
  lengths(Id{}, basis.water.sludgeDepth, basis.water.oilDepth, basis.water.lowLevel);
  put(Printed::Flow, Id{}, basis.pump.recirculation);
  put(Printed::Flow, Id{}, basis.pump.underflow);
}

/// What a tape measures: between the corners of buildings and vaults, and the plan's dimensions.
inline void KnownNumbers::distances(const Plan& plan) {
  const Locator where(plan);
  for (const Vault& vault : plan.vaults) {
    for (Point2 corner : outline(vault)) {
      for (const Building& building : plan.buildings) {
        for (Point2 fixed : building.outline)
          lengths(vault.id, distance(corner, fixed));
      }
      for (const Vault& other : plan.vaults) {
        for (Point2 far : outline(other))
          if (other.id != vault.id) lengths(vault.id, distance(corner, far));
      }
    }
  }
  for (const DimensionNote& note : plan.notes) {
    const auto a = where.position(note.from), b = where.position(note.to);
    if (a && b) lengths(note.id, distance(*a, *b));
  }
}

inline void KnownNumbers::calculated(const Review& review) {
  static const std::map<QuantityKind, Printed> kinds = {
      {QuantityKind::Length, Printed::Length},
      {QuantityKind::HeadOfWater, Printed::Length},
      {QuantityKind::Volume, Printed::Volume},
      {QuantityKind::SolidVolume, Printed::Volume},
      {QuantityKind::DisplacedVolume, Printed::Volume},
      {QuantityKind::Flow, Printed::Flow},
      {QuantityKind::Velocity, Printed::Velocity},
      {QuantityKind::Pressure, Printed::Pressure},
      {QuantityKind::Mass, Printed::Mass},
      {QuantityKind::Force, Printed::Force},
      {QuantityKind::Time, Printed::Time},
      {QuantityKind::Share, Printed::Share}};
  for (const Calculation& calculation : calculations(review.plan, review.study)) {
    const auto kind = kinds.find(calculation.kind);
    if (calculation.decided && kind != kinds.end())
      put(kind->second, calculation.object, calculation.result);
  }
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
  const auto opening = [&](const RunStudy& run, const Id& in, Point3 at) {
    const Vault& vault = *review.plan.vaults.find(in);
    const Point2 off = Point2{at.x, at.y} - vault.centre;
    const double c = std::cos(inRadians(vault.angle)), s = std::sin(inRadians(vault.angle));
    for (double along : {c * off.x + s * off.y + vault.length.value() / 2,
                         c * off.y - s * off.x + vault.width.value() / 2,
                         at.z - review.study.vault(in)->floor.value()})
      sets_[{run.id, Printed::Length}].insert(along);
    sets_[{run.id, Printed::Level}].insert(at.z);
  };
  for (const RunStudy& run : review.study.runs) {
    for (const Penetration& hole : run.penetrations)
      opening(run, hole.vault, hole.at);
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
  // C-3: from a vault's base to the next vault of the same dig.
  for (const Vault& vault : review.plan.vaults) {
    for (const Vault& other : review.plan.vaults) {
      const double collar = vault.collar ? vault.collar->value() : 0;
      if (other.id != vault.id)
        on("C-3", Printed::Length, distance(outline(vault), outline(other)) - collar);
    }
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
  if (const auto high = spoilHeight(review.study.earth, review.plan.basis.earth.spoil))
    on("C-1", Printed::Length, inMetres(*high));
  for (const PitStudy& pit : review.study.earth.pits) {
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

/// P-4: between what stands along a wall.
inline void KnownNumbers::roomGaps(const Plan& plan) {
  for (const EquipmentRoom& room : plan.rooms) {
    std::vector<double> stops{0, room.length.value()};
    for (const auto* box : {&room.skid, &room.plumbingArea, &room.panel}) {
      if (!*box) continue;
      stops.push_back((*box)->corner.x);
      stops.push_back((*box)->corner.x + (*box)->length.value());
    }
    for (double a : stops) {
      for (double b : stops)
        on("P-4", Printed::Length, b - a);
    }
  }
}

/// The levels of what a run's drawing shows beside the run.
inline void KnownNumbers::structures(const RunProfile& profile, const std::string& sheet) {
  for (const ProfileVault& vault : profile.vaults) {
    for (Length level : {vault.floor, vault.lidTop})
      on(sheet, Printed::Level, level.value());
    for (const ProfileChamber& c : vault.chambers) {
      if (c.rest) on(sheet, Printed::Level, c.rest->value());
      if (c.peak) on(sheet, Printed::Level, c.peak->value());
    }
    for (const ProfileManway& m : vault.manways) {
      if (m.rim) on(sheet, Printed::Level, m.rim->value());
    }
  }
  for (const ProfileStructure& s : profile.structures) {
    if (s.level) on(sheet, Printed::Level, s.level->value());
  }
}

/// Where the run has its least cover, and its levels there.
inline void KnownNumbers::leastCover(const RunProfile& profile, const std::string& sheet) {
  if (!profile.leastCover) return;
  const double at = profile.leastCover->station;
  on(sheet, Printed::Length, at);
  on(sheet, Printed::Length, profile.leastCover->cover.value());
  for (std::size_t i = 0; i + 1 < profile.points.size(); ++i) {
    const ProfilePoint &a = profile.points[i], &b = profile.points[i + 1];
    if (!(b.station > a.station) || at < a.station || at > b.station) continue;
    const double invert =
        std::lerp(a.invert.value(), b.invert.value(), (at - a.station) / (b.station - a.station));
    const ProfileBore& bore = *profile.legs[i].bore;
    on(sheet, Printed::Level, invert);
    on(sheet, Printed::Level,
       invert + ((bore.inside + bore.outside) / 2.0 + profile.leastCover->cover).value());
  }
}

/// P-3: what a run's section tells of its points, of the ground and of what it crosses.
inline void KnownNumbers::sections(const Review& review) {
  for (const RunStudy& run : review.study.runs) {
    const auto profile = runProfile(review.plan, review.study, builtinCatalog(), run.id);
    if (!profile) continue;
    const std::string sheet = "P-3:" + run.id;
    structures(*profile, sheet);
    if (profile->groundwater) on(sheet, Printed::Level, profile->groundwater->value());
    for (const ProfilePoint& p : profile->points) {
      on(sheet, Printed::Length, p.station);
      if (p.cover) on(sheet, Printed::Length, p.cover->value());
      if (p.ground) on(sheet, Printed::Level, p.ground->value());
    }
    if (!profile->ground.empty()) {
      on(sheet, Printed::Level, profile->ground.front().level.value());
      on(sheet, Printed::Level, profile->ground.back().level.value());
    }
    leastCover(*profile, sheet);
    for (const ProfileCrossing& c : profile->crossings) {
      on(sheet, Printed::Length, c.station);
      if (c.clearance) on(sheet, Printed::Length, c.clearance->value());
    }
    for (const ProfileDrop& d : profile->drops)
      on(sheet, Printed::Length, between(d.start, d.end));
    for (const ProfileLeg& leg : profile->legs) {
      on(sheet, Printed::Slope, std::abs(leg.slope));
      on(sheet, Printed::Share, std::abs(leg.slope));
    }
  }
}

/// P-5: between a run's ends, walls and parts; of its ends over the floor and under the water.
inline void KnownNumbers::details(const Review& review) {
  for (const RunStudy& run : review.study.runs) {
    const auto profile = runProfile(review.plan, review.study, builtinCatalog(), run.id);
    if (!profile) continue;
    const std::string sheet = "P-5:" + run.id;
    structures(*profile, sheet);
    std::vector<double> stops{0, profile->length};
    for (const ProfilePart& part : profile->parts)
      stops.push_back(part.station);
    for (const ProfileVault& vault : profile->vaults) {
      stops.push_back(vault.from);
      stops.push_back(vault.to);
      for (const ProfilePoint* end : {&profile->points.front(), &profile->points.back()}) {
        on(sheet, Printed::Length, between(end->invert, vault.floor));
        for (const ProfileChamber& chamber : vault.chambers) {
          if (!chamber.rest) continue;
          on(sheet, Printed::Length, between(*chamber.rest, end->invert));
          on(sheet, Printed::Length, between(*chamber.rest, vault.floor));
        }
      }
    }
    for (const ProfileStructure& s : profile->structures) {
      if (s.kind != StructureKind::Room) continue;
      stops.push_back(s.from);
      stops.push_back(s.to);
      if (s.level) on(sheet, Printed::Length, between(profile->points.back().invert, *s.level));
    }
    for (double a : stops) {
      for (double b : stops)
        on(sheet, Printed::Length, b - a);
    }
    for (const ProfileDrop& d : profile->drops)
      on(sheet, Printed::Length, between(d.start, d.end));
  }
}

} // namespace sump::testing
