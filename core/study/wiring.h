#pragma once
// Wiring coordination: conduit fill, bends between pull points, separation, working space at the
// panel, disconnects. No conductor is sized here: that is the licensed electrician's work under the
// adopted electrical code.

#include "core/geometry/point.h"
#include "core/plan/plan.h"
#include "core/study/calculation.h"
#include "core/study/decided.h"
#include "core/units/quantity.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sump {

/// The bends of a conduit between two places where wire can be pulled.
struct PullStretch {
  double from = 0; ///< station, m
  double to = 0;
  double degrees = 0; ///< all turns, with the sweeps at the ends
  Point2 at;          ///< of the last turn, or the start
};

struct ConduitStudy {
  Id run;
  int conductors = 0;
  Decided<Area> conductorArea;        ///< needs conductors of known size
  Decided<Area> inside;               ///< NEC chapter 9 table 4
  Decided<double> fill;               ///< conductorArea over inside
  double fillLimit = 0;               ///< for that many conductors
  std::vector<PullStretch> stretches; ///< split at pull boxes
  double mostDegrees = 0;
  bool power = false;  ///< power or control conductors, or a supply or 110 or 220 V signal
  bool class2 = false; ///< Class 2 conductors, or a 24 V signal or float circuit
  bool mixed() const { return power && class2; }
};

/// Does the circuit come in a float conduit? Otherwise it is a signal of the wash.
bool isOfFloat(const Plan& plan, const SignalCircuit& circuit);
/// `24 V DC`
std::string_view voltsText(SignalKind kind);

enum class WorkingSpaceObstacle { Skid, PlumbingArea, Panel, Disconnect, Wall, DoorSwing, Run };
/// `the equipment skid`, `a wall`, `a line`
std::string_view name(WorkingSpaceObstacle obstacle);

struct WorkingSpaceIntrusion {
  WorkingSpaceObstacle kind = WorkingSpaceObstacle::Wall;
  Id object; ///< of a run
  Point2 at; ///< site
};

/// In front of the panel of one room, or of a disconnect (NEC 110.26).
struct WorkingSpaceStudy {
  Id room;
  Ring zone;                   ///< site: needed, where it fits best; least depth when undecided
  Decided<Length> depthNeeded; ///< by voltage to ground and what is opposite
  Length depthClear;           ///< to what stands in front, over the width needed
  Length widthNeeded;
  Length widthClear; ///< along the front, over the least depth
  Length heightNeeded;
  std::vector<WorkingSpaceIntrusion> intrusions; ///< into `zone`
  std::vector<Id> runsOverPanel; ///< foreign piping in the dedicated space over and under it
};

/// What a line of sight runs into.
enum class SightObstacle { Wall, Panel, Skid, PlumbingArea };
/// `a wall`, `the panel`, `the equipment skid`, `the plumbing area`
std::string_view name(SightObstacle obstacle);

struct SupplyStudy {
  Id supply;
  bool hasConduit = false;
  Decided<Length> disconnectDistance;    ///< from the disconnect to the panel or, motors, the skid
  Decided<bool> inSight;                 ///< near enough, and nothing between
  std::optional<SightObstacle> hiddenBy; ///< what stands between, first of several
};

struct WiringStudy {
  std::vector<ConduitStudy> conduits; ///< in the plan's order
  bool controlSupply = false;
  bool motorSupply = false;
  bool washSignal = false;   ///< at least one signal circuit that is not in the float conduit
  bool floatConduit = false; ///< a float conduit from the last chamber of the last vault
  std::vector<Id> signalsWithoutConduit;
  std::vector<SupplyStudy> supplies;     ///< in the plan's order
  std::vector<WorkingSpaceStudy> spaces; ///< of the rooms that have a panel
};

} // namespace sump
