#pragma once
// Where vents end in the open air, and the roofs beside them.

#include "core/catalog/limits.h"
#include "core/study/study.h"

#include <optional>
#include <vector>

namespace sump {

/// A building so near to a vent's end that its air may come in there (limit `vent.roof-reach`).
struct NearRoof {
  Id building;
  Length away;                ///< of the vent's end in plan; 0 over the building
  std::optional<Length> roof; ///< elevation of its highest point, as the plan has it
};

struct VentEnd {
  Id run;
  Point2 at;
  Length level;                ///< invert of its open end, as for all pipe
  std::vector<NearRoof> roofs; ///< the nearest first
};

/// In the plan's order of runs; nothing for vents that join another vent, or whose levels are not
/// known.
std::vector<VentEnd> ventEnds(const Plan& plan, const Study& study, const Limits& limits);

} // namespace sump
