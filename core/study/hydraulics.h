#pragma once
// Water and air, wash demand, pressure runs and suction.
//
// Everything that may lack an input is a Decided (decided.h): either a value, or what it needs.
// Heads are metres of the water pumped; pressures are gauge. Elevations are on the site datum.

#include "core/plan/plan.h"
#include "core/study/calculation.h"
#include "core/study/decided.h"
#include "core/units/quantity.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

/// The water at its warmest and the air over it.
struct WaterStudy {
  Decided<Density> density;
  Decided<Viscosity> viscosity;
  Decided<Pressure> vapourPressure; ///< absolute
  Decided<Pressure> airPressure;    ///< absolute, at the site's altitude
  Decided<Length> vapourHead;
  Decided<Length> airHead;
};

/// What the wash draws and what comes back. Of the devices: count x flow x simultaneity at the
/// peak. Of the vehicles: what each kind takes, times how many come.
struct DemandStudy {
  Decided<Flow> peakProduct;    ///< out of the equipment to the wash
  Decided<Flow> peakFresh;      ///< fresh water that devices draw themselves
  Decided<Flow> averageProduct; ///< over one wash, by each device's duty
  Decided<Flow> averageFresh;
  Decided<Flow> peakToVaults; ///< what is not lost of both, and other inflow
  Decided<double> vehiclesPerHour, vehiclesPerDay;
  Decided<Volume> busyHourWash; ///< all wash water of the busiest hour
  Decided<Volume> dailyWash;    ///< all wash water
  Decided<Volume> dailyFresh;   ///< of it, drawn fresh by devices
  Decided<Volume> dailyProduct; ///< of it, reclaimed water
  Decided<Volume> dailyToVaults;
  Decided<Volume> dailyMakeUp;  ///< what the reclaimed water is short of
  Decided<Volume> dailySurplus; ///< what leaves by the overflow
  Decided<double> reclaimShare; ///< of the wash water that has been used before, 0 to 1
};

/// Friction in pipe of one size.
struct PipeLoss {
  std::string size;
  Length inside;
  Length length; ///< developed, of all legs of this size
  Velocity velocity;
  double reynolds = 0;
  double relativeRoughness = 0;
  double factor = 0; ///< Darcy
  Length loss;
  Length hazenWilliams; ///< the same pipe by Hazen-Williams, for comparison
};

/// Loss in fittings and valves of one kind and size.
struct FittingLoss {
  std::string key;  ///< of resources/catalog/losses.json: `elbow-90`, `tee-branch`, `entry-inward`
  std::string name; ///< in words
  std::string size;
  int count = 1;
  double k = 0;       ///< of one; 0 where the loss is a fixed head
  Velocity velocity;  ///< that K goes with
  Length loss;        ///< of all
  std::string source; ///< of K or of the head
};

/// All losses of a run at one flow.
struct RunLoss {
  std::vector<PipeLoss> pipe;
  std::vector<FittingLoss> fittings;
  Length pipeSum, hazenWilliamsSum, fittingSum;
  Length strainer;     ///< clean; of a suction
  Length total;        ///< with the strainer clean
  Length dirty;        ///< with the strainer at its dirt allowance
  Velocity fastest;    ///< in the smallest bore
  Length velocityHead; ///< at the run's end
};

enum class SizeVerdict {
  TooFast,  ///< above the velocity ceiling
  Suits,    ///< within it
  Generous, ///< below half of it: a smaller size would do as far as velocity goes
};

/// What a run would be in another size of the same pipe.
struct SizeChoice {
  std::string size; ///< of the run's start
  int steps = 0;    ///< 0: as drawn, 1: next size up
  Velocity fastest;
  Length loss; ///< as RunLoss::total
  SizeVerdict verdict = SizeVerdict::Suits;
};

/// A suction, spare suction, recirculation, underflow, make-up or product run.
struct PressureRun {
  Id run;
  Service service = Service::Suction;
  Decided<Flow> flow; ///< design flow
  Decided<RunLoss> loss;
  Velocity ceiling; ///< that `sizes` are judged by
  /// As drawn, next size up, two sizes up; fewer where the catalogue ends.
  Decided<std::vector<SizeChoice>> sizes;
  Decided<Length> lift; ///< end above start (of a suction: see SuctionStudy)
  /// Pressure that must stand at the run's start for `wanted` at its end. No suction.
  Decided<Pressure> neededAtStart;
  /// Pressure wanted at the end: product, by the wash devices; recirculation, by the eductor;
  /// others 0.
  Decided<Pressure> wanted;
  /// Pressure at the end: product and recirculation, from the pump curve with low water; make-up,
  /// from the supply. Undecided for underflow, whose pump head is not known.
  Decided<Pressure> atEnd;
};

enum class SuctionCase {
  AsDrawn,
  Straight, ///< no bends, as long as from end to end
  OneSizeUp,
  OneMoreElbow,
  OneMoreFoot ///< 0.3048 m of pipe
};

struct SuctionVariant {
  SuctionCase which = SuctionCase::AsDrawn;
  Decided<Length> loss;          ///< strainer at its dirt allowance
  Decided<Length> npshAvailable; ///< at low water, strainer at its dirt allowance
};

/// A suction or spare suction. Low water is the low-level float, high water the rest level.
struct SuctionStudy {
  Id run;
  Decided<Length> pump;              ///< elevation of the pump's suction port, centreline
  Decided<Length> lowWater;          ///< elevation
  Decided<Length> highWater;         ///< elevation
  Decided<Length> liftLow;           ///< pump above low water: the larger lift
  Decided<Length> liftHigh;          ///< pump above high water
  Decided<Length> submergence;       ///< low water above the inlet's invert
  Decided<Length> suctionLift;       ///< liftLow and the losses, strainer at its dirt allowance
  Decided<Length> npshAvailable;     ///< at low water, warmest, strainer at its dirt allowance
  Decided<Length> npshAvailableRest; ///< at high water, strainer clean
  Decided<Length> npshRequired;      ///< of the pump at this flow
  Decided<double> npshRatio;         ///< available over required
  /// Total suction lift that self-priming pumps manage at sea level with cold water, less what
  /// altitude and warm water take away.
  Decided<Length> liftLimit;
  Volume pipeVolume;                    ///< of the run as drawn
  Decided<Volume> primingVolume;        ///< pipe and strainer
  Decided<Duration> primingTime;        ///< from the hose
  std::vector<SuctionVariant> variants; ///< one for each SuctionCase
};

/// Pressure at one kind of wash device, from the pump curve at design flow and low water.
struct DevicePressure {
  Id device;
  Id run; ///< product run that feeds it, or empty
  Decided<Pressure> available;
  Decided<Pressure> required;
};

/// Where the pump and the product system meet when the devices are open at the peak. The devices
/// are taken as openings: what they pass goes with the root of the pressure before them.
/// Recirculation flows on at its design flow.
struct WorkingPoint {
  Flow pump;    ///< through the pump
  Flow product; ///< to the wash
  Length head;  ///< of the pump
  Pressure atWash;
};

struct SystemPoint {
  Flow flow; ///< through the pump
  Length head;
};

struct HydraulicsStudy {
  WaterStudy water;
  DemandStudy demand;
  std::vector<PressureRun> runs;       ///< in the plan's order
  std::vector<SuctionStudy> suctions;  ///< in the plan's order
  Decided<Flow> pumpFlow;              ///< product at the peak and recirculation
  Decided<Length> pumpHead;            ///< of the curve at that flow
  std::vector<DevicePressure> devices; ///< those on product water
  Decided<WorkingPoint> workingPoint;
  std::vector<SystemPoint> systemCurve; ///< for drawing it; empty when undecided
  const PressureRun* run(const Id& id) const;
  const SuctionStudy* suction(const Id& id) const;
};

} // namespace sump
