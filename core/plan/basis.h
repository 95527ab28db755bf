#pragma once
// What the calculations need to know beyond the drawing: water, demand, pump, ground, wiring.
//
// Plain values, part of the Plan. Whatever is left out is unknown, and what needs it cannot be
// decided: nothing here has a silent default, except counts and shares that say so.

#include "core/geometry/point.h"
#include "core/plan/items.h"
#include "core/units/quantity.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

/// A nozzle arch, a hose, a rinse bar: something of the wash equipment that draws water.
struct WashDevice {
  Id id;
  std::string name;
  Id wash;                          ///< wash equipment that it belongs to
  Flow flow;                        ///< of one, while it runs
  std::optional<Pressure> pressure; ///< needed at the equipment's inlet
  int count = 1;                    ///< alike
  double duty = 1;                  ///< share of a wash during which it runs, 0 to 1
  bool freshWater = false;          ///< fed with fresh water, not with product water
  bool operator==(const WashDevice&) const = default;
};

/// Vehicles of one kind.
struct VehicleTraffic {
  std::string name;
  std::optional<double> perHour; ///< in the busiest hour
  std::optional<double> perDay;
  std::optional<Volume> water;    ///< all water for one wash
  std::optional<Volume> sediment; ///< settled volume that one wash brings
  bool operator==(const VehicleTraffic&) const = default;
};

struct WashDemand {
  std::vector<WashDevice> devices;
  /// Share of the devices' flow that is drawn at once at the peak, 0 to 1.
  std::optional<double> simultaneity;
  std::vector<VehicleTraffic> vehicles;
  std::optional<double> lostFraction; ///< of the wash water, carried off wet or evaporated, 0 to 1
  std::optional<Flow> otherInflow;    ///< that also reaches the drains at the peak: rain, hoses
  bool operator==(const WashDemand&) const = default;
};

struct PumpPoint {
  Flow flow;
  Length head;                        ///< total dynamic head
  std::optional<Length> npshRequired; ///< at that flow
  bool operator==(const PumpPoint&) const = default;
};

struct Pump {
  std::string name;
  std::vector<PumpPoint> curve; ///< by rising flow
  /// Head lost in the treatment equipment between the pump and the product port, at design flow.
  std::optional<Length> equipmentLoss;
  std::optional<Flow> recirculation;  ///< design flow of the recirculation run
  std::optional<Flow> underflow;      ///< design flow of the underflow run while it is flushed
  std::optional<Length> strainerLoss; ///< clean, at design flow
  std::optional<Flow> primingHose;    ///< fills suction and strainer before start-up
  std::optional<Volume> strainerVolume;
  std::optional<Pressure> eductorPressure; ///< wanted at the eductor's inlet
  bool operator==(const Pump&) const = default;
};

struct MakeUpSupply {
  std::optional<Pressure> pressure; ///< static, at the connection
  std::optional<Flow> flow;         ///< design flow of the make-up run
  bool operator==(const MakeUpSupply&) const = default;
};

struct WaterBasis {
  std::optional<Temperature> temperature; ///< warmest expected
  std::optional<Length> altitude;         ///< of the site above mean sea level
  std::optional<Length> sludgeDepth;      ///< allowance on each chamber's floor
  std::optional<Length> oilDepth;         ///< allowance under each chamber's water level
  std::optional<double> suspendedSolids;  ///< of the wash water, kg/m3
  std::optional<Length> lowLevel;         ///< float switch above the last vault's floor
  bool operator==(const WaterBasis&) const = default;
};

enum class SoilClass { StableRock, TypeA, TypeB, TypeC };
enum class ProtectiveSystem { None, Sloped, Shored, Shielded, Engineered };
/// Which earth is counted against flotation of an empty vault.
enum class SoilHold { LidOnly, Column, Wedge };

struct EarthBasis {
  std::optional<SoilClass> soil; ///< left out: not classified
  bool previouslyDisturbed = false;
  std::optional<ProtectiveSystem> protection;
  std::optional<SoilHold> soilHold;
  std::vector<Point2> ladders; ///< ways out of the excavation, site
  Ring spoil;                  ///< where spoil is heaped, site; may be empty
  bool operator==(const EarthBasis&) const = default;
};

/// What a conductor belongs to (separation of power from Class 2 and 3 circuits).
enum class CircuitKind { Power, Control, Class2 };

/// Conductors of one size in a conduit run.
struct Conductor {
  std::string size; ///< AWG, `12`, `1/0`
  int count = 1;
  CircuitKind kind = CircuitKind::Power;
  bool operator==(const Conductor&) const = default;
};

enum class SupplyKind { Control1Phase, Motor3Phase };
/// Between the lines, nominal: 110, 220 for control, 230 (208-230), 460, 575 for motors.
struct Supply {
  Id id;
  std::string name;
  SupplyKind kind = SupplyKind::Motor3Phase;
  int volts = 460;
  std::optional<int> voltsToGround;
  Id run;                           ///< power conduit that brings it, or empty
  std::optional<Point2> disconnect; ///< where its disconnect is, site
  bool operator==(const Supply&) const = default;
};

enum class SignalKind { Dc24, Ac24, Ac110, Ac220 };
/// A wash-demand signal or the float circuit.
struct SignalCircuit {
  Id id;
  std::string name;
  SignalKind kind = SignalKind::Ac24;
  Id run; ///< conduit that brings it, or empty
  bool operator==(const SignalCircuit&) const = default;
};

/// What stands opposite the panel (working-space condition 1, 2, 3).
enum class FacingPanel { Insulated, Grounded, LiveParts };

struct WiringBasis {
  std::vector<Supply> supplies;
  std::vector<SignalCircuit> signalCircuits;
  std::optional<FacingPanel> facingPanel;
  bool operator==(const WiringBasis&) const = default;
};

struct Basis {
  WaterBasis water;
  WashDemand demand;
  Pump pump;
  MakeUpSupply makeUp;
  EarthBasis earth;
  WiringBasis wiring;
  bool operator==(const Basis&) const = default;
};

} // namespace sump
