#pragma once
// The Study: everything that follows from a Plan. Computed, never stored; window, command line,
// sheets and lists read the same one, so that no number can differ between them.

#include "core/catalog/catalog.h"
#include "core/geometry/point.h"
#include "core/geometry/surface.h"
#include "core/plan/plan.h"
#include "core/study/calculation.h"
#include "core/study/earth.h"
#include "core/study/hydraulics.h"
#include "core/study/train.h"
#include "core/study/wiring.h"
#include "core/units/quantity.h"

#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

namespace sump {

struct ChamberStudy {
  int number = 0;
  Ring outline; ///< site, inside faces
  Length length;
  Length width;
  Area area;
  Length waterDepth; ///< at rest; 0 when the water level is unknown
  Volume volume;     ///< at the working level
};

struct ManwayStudy {
  Id id;
  Point2 at; ///< site
  int chamber = 0;
  std::optional<Length> grade;
  std::optional<Length> rim;   ///< as given, or grade
  std::optional<Length> riser; ///< rim less top of lid; negative: lid stands proud of the rim
};

struct VaultStudy {
  Id id;
  int position = 0; ///< 1 is the first in flow order
  Ring outline;     ///< site, outside
  Length underside; ///< of the base slab
  Length floor;
  Length lidUnderside;
  Length lidTop;
  std::optional<Length> gradeLow, gradeHigh, gradeCentre; ///< over the lid
  std::optional<Length> cover;                            ///< gradeLow less lidTop
  /// The highest invert along the run that sets the rest level, which is where that run starts when
  /// it falls all the way: of the overflow (last vault) or of the link that leaves the vault.
  std::optional<Length> overflowInvert;
  Id overflowRun;
  /// At rest: the lowest way out. A way out through a link is no lower than the water of the vault
  /// that it leads to. Unknown when no way out leads off the train.
  std::optional<Length> waterLevel;
  std::vector<ChamberStudy> chambers;
  std::vector<ManwayStudy> manways;
  Volume workingVolume;
  Id trafficPavement; ///< the traffic pavement above it, or empty
};

/// One point of a run, from end to end, with vertical drops as two points.
struct RunPoint {
  Point3 at;                   ///< z is the invert
  double station = 0;          ///< developed length from the start, m
  std::optional<double> grade; ///< ground elevation above it
  int vertex = -2;             ///< -1 from, 0.. vertex index, n to
};

struct Leg {
  Length plan;
  Length developed; ///< along the slope
  double slope = 0; ///< fall over plan length, positive falling with the flow; 0 when vertical
  bool vertical = false;
  bool outsideVault = true; ///< any part of it lies in the ground
  std::string size;         ///< nominal at the leg's start
};

struct Bend {
  int point = 0;                     ///< index into RunStudy::points
  double degrees = 0;                ///< deflection in space
  std::vector<FittingKind> fittings; ///< stock fittings that make it, three at most
  double madeDegrees = 0;            ///< what they add up to
  bool stock = true;                 ///< false: no single stock fitting within tolerance
  bool vertical = false;             ///< turns mainly in a vertical plane
};

/// A fitting, valve or part and why the run needs it.
struct RunItem {
  std::string key;  ///< FittingKind, PartKind or EndFitting key, or `coupling`
  std::string size; ///< nominal; `6 x 4` for a reducer
  int count = 1;
  std::string why; ///< message id: `bend`, `end`, `inline`, `stick`, `branch`
  Id part;         ///< the inline part, if one
};

/// Straight pipe between two fitting centres. Where a bend takes several fittings they are reckoned
/// at one point; pipe between them is left to the fitter.
struct PipePiece {
  std::string size;
  Length centreToCentre;
  Length takeOut; ///< both ends together
  Length cut;     ///< centreToCentre less takeOut, never below 0
  int couplings = 0;
  bool downLeg = false; ///< one of RunStudy::downLegs: from the axis to the open end, one socket
};

/// Pipe in the lower arm of a tee or an elbow at a run's end in a chamber, open below.
struct DownLeg {
  bool atStart = false; ///< of the run, else at its end
  Id vault;
  std::string size;
  Length axis;  ///< level of the arriving pipe's axis
  Length mouth; ///< level of the arm's own open end
  Length end;   ///< level of the leg's open lower end; `mouth` where the arm reaches deep enough
  /// `end` is the plan's; otherwise it is the middle of what the check asks.
  bool stated = false;
  std::optional<std::size_t> piece; ///< its place in RunStudy::pieces; nothing: the arm alone
};

/// Where a run goes through a vault's outside wall or a baffle.
struct Penetration {
  Id vault;
  Id baffle;        ///< empty: outside wall
  Point3 at;        ///< z is the invert there
  std::string size; ///< nominal, of the run there
};

struct CoverCheck {
  Length cover; ///< grade less crown (top of pipe or conduit)
  Point2 at;
};

/// A stretch of a suction that stands higher than a later point: air collects there.
struct HighPocket {
  Point3 at;
  Length rise; ///< how much the line falls after it
};

struct RunStudy {
  Id id;
  Service service = Service::Inlet;
  bool resolved = false; ///< false: levels or ends could not be worked out; see `problem`
  std::string problem;   ///< message id, e.g. `run.no-level`
  std::vector<RunPoint> points;
  std::vector<Leg> legs;
  std::vector<Bend> bends;
  std::vector<RunItem> items;
  std::vector<PipePiece> pieces; ///< along the run, then its down legs
  std::vector<DownLeg> downLegs; ///< the start's first
  std::vector<Penetration> penetrations;
  Length outsideDiameter;
  Length insideDiameter;
  Length plan;
  Length developed;
  Length startInvert, endInvert;
  double slope = 0;                     ///< overall fall over plan length of the non-vertical legs
  std::optional<double> leastSlope;     ///< of the non-vertical legs outside vaults
  std::optional<CoverCheck> leastCover; ///< outside vaults, rooms and buildings
  std::optional<CoverCheck> leastTrafficCover; ///< under traffic pavement
  std::optional<HighPocket> pocket;
  Length buy; ///< whole sticks, were this run bought alone; a take-off line packs its runs together
  int sticks = 0;
};

/// One line of the take-off.
struct QuantityLine {
  std::string trade;    ///< `plumbing`, `electrical`, `site work`
  std::string category; ///< `pipe`, `fitting`, `valve`, `vault`, `manway`, `riser`, `boot`, ...
  std::string service;  ///< service key for pipe; else empty
  std::string item;     ///< key
  std::string description;
  std::string size;
  std::string material;
  double quantity = 0; ///< count, or metres for pipe
  Length net;          ///< pipe: length in place
  /// Pipe: length to buy. The cuts of all its runs are packed into whole sticks together (best-fit
  /// decreasing; a cut longer than a stick is joined by couplings or bells).
  Length buy;
  std::vector<Id> runs; ///< (or vaults) it comes from
};

struct Study {
  Surface ground;
  std::vector<VaultStudy> vaults; ///< in flow order
  std::vector<RunStudy> runs;     ///< in the plan's order
  std::vector<QuantityLine> takeOff;
  Volume workingVolume;
  HydraulicsStudy hydraulics;
  TrainStudy train;
  EarthStudy earth;
  WiringStudy wiring;
  std::unordered_map<Id, std::size_t> vaultIndex;
  std::unordered_map<Id, std::size_t> runIndex;
  const VaultStudy* vault(const Id& id) const;
  const RunStudy* run(const Id& id) const;
};

/// How the study's numbers came about, section by section.
std::vector<Calculation> calculations(const Plan& plan, const Study& study);

/// Pure. The analyses run in one order: ground, vault shells, run geometry, water levels, volumes,
/// fittings, take-off, pressure runs and suction, the train at peak, earth, wiring. Never throws
/// for a consistent plan (plan/consistency.h).
Study study(const Plan& plan, const Catalog& catalog, const Limits& limits);

} // namespace sump
