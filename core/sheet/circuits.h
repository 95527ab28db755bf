#pragma once
// The circuits between source, panel, disconnects, loads and signals, for the licensed electrician
// to complete: what the plan does not say is a blank with who fills it in. Private to core/sheet.

#include "core/sheet/block.h"
#include "core/sheet/sheet_set.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

struct Circuit {
  Id of; ///< supply, signal circuit or solenoid valve
  std::string name, volts, from, to, conduit, overcurrent, conductors;
  /// From the panel to what it feeds inside the room, over a supply's disconnect.
  bool inRoom = false;
};

/// In the order in which the schedule numbers them from 1.
std::vector<Circuit> circuitsOf(const SheetJob& job);

Block circuitTable(const SheetJob& job, double width);

/// `4 no. 8 AWG power; 3 no. 12 AWG control`; of one kind, where that is asked for.
std::string conductorText(const Run& run, std::optional<CircuitKind> only = {});

/// What is pulled into a conduit: its conductors, or the cable that a float comes with. The fill of
/// that one is reckoned with the conductors that the plan gives.
std::string pulledText(const Run& run);

} // namespace sump
