#pragma once
// Buoyancy, loads and excavation. Screening for planning: a licensed engineer decides about
// flotation, lids and excavation support, and a competent person about the dig itself.

#include "core/geometry/point.h"
#include "core/plan/plan.h"
#include "core/study/calculation.h"
#include "core/study/decided.h"
#include "core/units/quantity.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

/// The limits that the earth study worked with, kept for its calculation report.
struct EarthFigures {
  Density concrete, water;
  Density soilHold;      ///< moist, counted against flotation
  Density soilLoad;      ///< moist, on a lid
  Angle wedge;           ///< of the soil wedge, from the vertical
  double factor = 0;     ///< least factor of safety against flotation
  Length bedding;        ///< under a vault
  Length workingSpace;   ///< between a vault or its collar and the toe of the side
  Length riserWall;      ///< of manways, for what they take up of the backfill
  Length trenchBedding;  ///< under pipe
  Length pipeZone;       ///< of selected backfill over the pipe
  Length protectionFrom; ///< depth from which a protective system is needed
  Length engineerFrom;   ///< depth beyond which an engineer designs it
  Length egressFrom;     ///< depth from which a ladder is needed
  Length egressTravel;   ///< farthest way to it
  double swell = 0;      ///< loose over bank volume, less 1
  Volume truck;          ///< loose volume of a load
  double heapSlope = 0;  ///< of a spoil heap's sides, run over rise
  Length heapHighest;    ///< of a spoil heap
};

/// Flotation of one vault, EMPTY, at the highest expected groundwater. Factor of safety = sum of
/// the downward forces over the uplift, where uplift is the weight of the displaced water, and soil
/// counts with its effective (submerged) weight below the water table.
struct BuoyancyStudy {
  Id vault;
  Volume outside;            ///< of the whole vault with its collar
  Volume concreteVolume;     ///< walls, lid, floor, collar and baffles, less manway openings
  Mass weight;               ///< the maker's figure with the collar added, or worked out
  bool makersWeight = false; ///< `weight` rests on the maker's figure
  Mass lidWeight;            ///< worked out
  Mass heaviestPiece;        ///< lid, or all the rest in one piece
  Decided<Volume> submerged; ///< of `outside`, below groundwater
  Decided<Force> uplift;
  Decided<Volume> soilVolume; ///< counted as hold: over the lid, over the collar, in the wedge
  Decided<Force> soilForce;   ///< its effective weight
  /// Infinite when no part lies below groundwater.
  Decided<double> factor;
  /// Concrete to add under water for the least factor of safety; 0 when that is reached.
  Decided<Volume> ballast;
  /// Reach beyond the walls for the least factor of safety, all round, as thick as the floor slab,
  /// with the soil over it as `soilHold` counts it; 0 when no more collar is needed.
  Decided<Length> collar;
};

/// Live load on a lid, a screening by cover: one HS-20 truck spread through the earth.
struct LidLoadStudy {
  Id vault;
  Decided<Length> cover;          ///< least
  Decided<Pressure> earth;        ///< dead load of the cover, moist
  Decided<Pressure> live;         ///< with impact; needs slab analysis under 2 ft of cover
  bool needsSlabAnalysis = false; ///< cover is known to be less than the screening reaches
  bool underTraffic = false;      ///< a traffic pavement lies over it
  bool needsTrafficLid = false;   ///< under traffic, and the lid is not made for it
};

/// Run: passes through a pit. Trench: runs along a pit and shares ground with it.
enum class DigClashKind { Building, Boundary, TrafficPavement, Well, Utility, Run, Trench };

/// Something that a dig's top outline takes in or cuts.
struct DigClash {
  DigClashKind kind = DigClashKind::Building;
  Id object; ///< empty for the boundary
  Point2 at; ///< site
};

/// A dig beside a building, or a room that stands for itself: does it reach below the 45 degree
/// plane down and out from the edge of the footing? Only where the dig is near enough to matter.
struct FootingCheck {
  Id building;
  Length distance;       ///< from the building to the toe of the dig, in plan, where it is worst
  Length toe;            ///< elevation of the dig's bottom there
  Decided<Length> below; ///< how far the dig lies below the plane; 0 or less: clear of it
  Length nearest;        ///< least distance in plan, wherever that is
};

/// Ways out of a dig.
struct Egress {
  bool needed = false;            ///< deep enough to ask for a ladder
  int laddersNeeded = 0;          ///< for its length
  std::vector<int> ladders;       ///< that stand in it: numbers in the plan's list, from 1
  std::optional<Length> farthest; ///< from any place in it to a ladder; nothing without a ladder
};

/// One excavation for one or more vaults whose digs run into each other.
struct PitStudy {
  std::vector<Id> vaults;
  std::vector<Ring> bottoms; ///< site: toe of the sides round each vault
  Length bottom;             ///< lowest elevation of the dig, under the bedding
  Decided<Ring> top;         ///< site: where the sides meet the ground
  Decided<Length> grade;     ///< highest at the top outline
  Decided<Length> depth;     ///< greatest
  Decided<Volume> dug;       ///< bank volume
  Decided<Volume> bedding;
  Decided<Volume> risers;   ///< that those of the vaults' manways take up, over the lids
  Decided<Volume> backfill; ///< dug, less bedding and what the vaults and their risers take up
  Egress egress;
  std::vector<DigClash> clashes;
  std::vector<FootingCheck> footings;
};

/// Where the depth of a trench changes.
struct TrenchPoint {
  Point2 at;
  double bottom = 0; ///< elevation, under the bedding
  double depth = 0;  ///< under ground, floor or the bottom of a pit's side, 0 where there is none
  double top = 0;    ///< width at the ground, m
};

/// A stretch of trench without a break.
using TrenchStretch = std::vector<TrenchPoint>;
/// The ground that the stretch takes up between two of its points.
Ring trenchOutline(const TrenchPoint& a, const TrenchPoint& b);

/// The trench of one run, as if it had one of its own. It goes on below the floor of a building,
/// and half its bottom's width beyond the centre of pipe that goes up from it.
struct TrenchStudy {
  Id run;
  Length bottomWidth;
  std::vector<TrenchStretch> stretches;
  Length length; ///< in plan, outside vaults, basins and pits
  Length depth;  ///< greatest
  Point2 deepest;
  Length depthOutdoors; ///< greatest where no floor is over it; 0: all of it lies under floors
  bool deepestUnderFloor() const { return depth > depthOutdoors; }
  Volume dug, bedding, pipeZone, backfill; ///< backfill: over the pipe zone
  Egress egress;
  std::vector<DigClash> clashes;
  std::vector<FootingCheck> footings;
};

/// Parts of a run that lie in vaults' digs with nothing of a trench below them: laid on the digs'
/// backfill or held up in the open dig.
struct BackfilledRun {
  Id run;
  Length length;                ///< in plan, outside the vaults
  Length overLid;               ///< in plan, over the vaults' lids
  std::optional<Length> lidGap; ///< least from a lid up to the pipe's underside
};

struct EarthStudy {
  EarthFigures figures;
  std::vector<BuoyancyStudy> buoyancy; ///< in flow order, one for each vault
  std::vector<LidLoadStudy> lids;      ///< the same
  SoilClass soil = SoilClass::TypeC;   ///< that the sides are drawn for
  bool soilAssumed = false;            ///< not classified: type C, as 29 CFR 1926.652(b)(1)
  bool slopeAssumed = false;           ///< no protective system chosen: drawn as sloped
  double sideSlope = 0;                ///< run over rise where the dig is deep; 0: vertical
  std::vector<PitStudy> pits;
  std::vector<TrenchStudy> trenches; ///< of the runs that lie in the ground, in the plan's order
  std::vector<BackfilledRun> backfilled; ///< those that do so, in the plan's order
  Decided<Length> deepest;
  Decided<bool> protectionNeeded; ///< some dig is deep enough, and not in stable rock
  Decided<bool> engineerNeeded;
  Decided<Length> spoilClear; ///< from the spoil heap to the nearest top edge; 0 when it overlaps
  Decided<Volume> dug, bedding, pipeZone, backfill;
  Decided<Volume> spoil;   ///< of all that is dug, loose
  Decided<Volume> surplus; ///< hauled off, loose
  Decided<double> truckloads;
  Decided<Volume> kept;       ///< of the spoil, loose: what is not hauled off
  Decided<Length> keptHeight; ///< mean, were what is kept heaped in the outline of the heap
  Decided<Volume> heapHolds;  ///< the outline of the heap at most, its sides sloped all round
  Decided<Length> heapHeight; ///< of its highest part then
};

} // namespace sump
