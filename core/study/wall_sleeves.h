#pragma once
// Where runs pass the walls and footings of buildings: what the builder leaves open before pouring.

#include "core/study/study.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sump {

/// Wall: through it, over the underside of its footing as far as that is known. Footing: under it.
enum class WallPass { Wall, Footing };

struct WallSleeve {
  Id run;
  Id building; ///< or a room that no building holds
  WallPass pass = WallPass::Wall;
  Point3 at;                         ///< on the outline; z is the run's invert
  std::string size;                  ///< nominal, of the run there
  std::optional<std::string> sleeve; ///< nominal; nothing where the table of sizes ends
  std::optional<Length> overFooting; ///< the run's invert over the footing's underside, if known
};

/// In the plan's order of runs, each from its start. A run ends where it ends: one that only comes
/// up inside passes the wall once.
std::vector<WallSleeve> wallSleeves(const Plan& plan, const Study& study);
/// Of one run; nothing for one that could not be worked out.
std::vector<WallSleeve> wallSleeves(const Plan& plan, const RunStudy& run);

/// Two sizes over the pipe's, of the nominal sizes that are usually stocked (IPC 305.3, from
/// memory, for foundation walls; for conduit common practice, no source).
std::optional<std::string> sleeveSize(std::string_view pipe);

} // namespace sump
