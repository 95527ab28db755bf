#pragma once
// Gravity runs, the water levels of the vault train, and the duty of its chambers.
//
// Levels and duty are those of steady flow at the peak. The models are stated where they are
// worked out: part-full pipe in circular_flow.h, levels along a run in water_levels.h, the train in
// passages.h, settling in settling.h, oil in oil_rise.h.

#include "core/plan/plan.h"
#include "core/study/calculation.h"
#include "core/study/decided.h"
#include "core/units/quantity.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

/// An inlet or an overflow as an open drain: Manning with one roughness at all depths.
struct GravityStudy {
  Id run;
  Length diameter;                ///< smallest inside along it
  Decided<double> slope;          ///< least fall over plan length outside vaults; above 0
  Decided<Flow> fullFlow;         ///< running just full at that slope
  Decided<Flow> largestFlow;      ///< at 0.938 of the diameter; not counted on
  Decided<Velocity> fullVelocity; ///< running full or half full
  Decided<Flow> peak;             ///< what it has to carry
  Decided<double> share;          ///< peak / fullFlow
  Decided<Length> depth;          ///< normal depth at the peak; undecided when it runs full
  Decided<Length> criticalDepth;  ///< at the peak
  Decided<Velocity> velocity;     ///< at the peak, at normal depth or full
};

/// Water at one place of a run, going with the flow.
struct RunLevel {
  double station = 0; ///< m along the run
  Length invert;
  Length water;      ///< surface, or the level to which water would rise in a standpipe
  Length energy;     ///< water plus velocity head
  bool full = false; ///< no air in the pipe there
};

/// A run, or an opening under a baffle, that carries water at the peak.
struct PassageLevels {
  Id run;    ///< empty for an opening under a baffle
  Id baffle; ///< of that opening
  Flow flow;
  Length upstream;   ///< level of the water that it leaves
  Length downstream; ///< level of the water that it reaches; its end invert if it outfalls
  std::vector<RunLevel> points; ///< of a run, one for each of RunStudy::points
};

struct ChamberLevel {
  Id vault;
  int chamber = 0;
  Length rest;     ///< VaultStudy::waterLevel
  Length level;    ///< at the peak
  Length airspace; ///< underside of the lid less level; negative: the vault is surcharged
};

/// The water behind a basin's inlet run.
struct BasinLevel {
  Id basin;
  Id run;
  Length level;     ///< at the basin
  Length freeboard; ///< rim less level; negative: water stands on the pavement
  /// How far the level stands above the crown of the run at the basin; negative: part full there.
  Length surcharge;
};

/// Steady flow through the whole train. inflow + fromStorage = drawn + overflow.
struct TrainLevels {
  Flow inflow;       ///< by the inlets
  Flow drawn;        ///< by the pump, beyond what it sends back
  Flow recirculated; ///< by the pump and back into the train
  Flow overflow;
  Flow fromStorage; ///< more is drawn than comes in: the level falls from rest while it lasts
  std::vector<ChamberLevel> chambers;  ///< in flow order
  std::vector<PassageLevels> passages; ///< in flow order: inlets, ways between chambers, overflows
  std::vector<BasinLevel> basins;
  const ChamberLevel* chamber(const Id& vault, int number) const;
};

struct ChamberDuty {
  Id vault;
  int chamber = 0;
  Decided<Flow> throughflow;      ///< into it, the larger of pump running and stopped
  Decided<Length> activeDepth;    ///< above the sludge and below the oil allowance
  Decided<Volume> activeVolume;   ///< the same
  Decided<Duration> detention;    ///< of the active volume at the peak
  Decided<Velocity> overflowRate; ///< flow over plan area
  Decided<Velocity> forward;      ///< mean, through the active depth
  Decided<Length> particle;       ///< smallest grit that this chamber keeps
  Decided<Length> droplet;        ///< smallest oil droplet that this chamber keeps
  Decided<Length> particleSoFar;  ///< kept by this chamber or one before it
  Decided<Length> dropletSoFar;   ///< the same
  bool oilGuideHolds = true;      ///< forward velocity within the caps of API 421
  Decided<Duration> sludgeFull;   ///< until sludge and oil reach the share, were all kept here
};

/// Still water in a chamber when the float has stopped the pump.
struct ChamberLow {
  Id vault;
  int chamber = 0;
  Length level; ///< the float's, or what the lowest way out keeps back
};

struct TrainStudy {
  Decided<Flow> peakInflow;    ///< to the drains
  Decided<Flow> peakDraw;      ///< product water out of the train at the peak
  Decided<Flow> recirculation; ///< 0 without a recirculation run
  /// The pump stands still while the drains still run: all of the peak overflows. The worst case.
  Decided<TrainLevels> pumpStopped;
  /// The pump draws and recirculates at the peak.
  Decided<TrainLevels> pumpRunning;
  std::vector<GravityStudy> gravity;         ///< inlets and overflows, in the plan's order
  std::vector<ChamberDuty> chambers;         ///< in flow order
  Decided<Volume> usable;                    ///< from the rest level down to the low-level float
  Decided<std::vector<ChamberLow>> lowWater; ///< in flow order
  Decided<Duration> fill;         ///< of that volume at the peak inflow with the pump still
  Decided<Duration> drawDown;     ///< of that volume at the peak draw with nothing coming back
  Decided<Duration> drawDownNet;  ///< at the peak draw less the peak inflow; needs more draw
  Decided<Volume> sludgePerDay;   ///< settled
  Decided<Duration> pumpOutFirst; ///< if all settles in the first chamber
  Decided<Duration> pumpOutTrain; ///< if it spreads over all chambers
  Decided<Duration> turnover;     ///< working volume over the recirculation
  const GravityStudy* gravityOf(const Id& run) const;
  const ChamberDuty* duty(const Id& vault, int chamber) const;
  /// The higher of both cases in a chamber (0: the highest of the vault's).
  Decided<Length> highest(const Id& vault, int chamber = 0) const;
};

} // namespace sump
