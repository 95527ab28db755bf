#pragma once
// Reduced-pressure assemblies that stand in equipment rooms: their relief opening spills into the
// room when a check valve leaks, so it needs height and a drain.

#include "core/study/study.h"

#include <vector>

namespace sump {

struct RoomAssembly {
  Id run, part, room;
  Point2 at;     ///< site
  Length height; ///< of the run's invert over the room's floor
};

/// In the plan's order; of runs that could be worked out.
std::vector<RoomAssembly> roomAssemblies(const Plan& plan, const Study& study);

} // namespace sump
