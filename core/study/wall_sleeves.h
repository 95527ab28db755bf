#pragma once
// Where runs pass the walls, footings and floor slabs of buildings: what is left open before
// pouring, or cored where the building stands.

#include "core/study/study.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sump {

/// How a line passes a building's edge. The sleeve counts with its outside: Wall when all of it is
/// over the footing, Under when all of it is under it, Footing when any of it is in the footing.
enum class WallPass { Unknown, Wall, Footing, Under };

struct WallSleeve {
  Id run;
  /// Or a room that no building holds; two where they share the wall.
  std::vector<Id> buildings;
  Point3 at;                         ///< on the outline; z is the run's invert
  std::string size;                  ///< nominal, of the run there
  std::optional<std::string> sleeve; ///< nominal; nothing where the table of sizes ends
  Length low, high;                  ///< elevations of the sleeve's outside, else of the pipe's
  Length pipeLow;                    ///< elevation of the pipe's outside underside
  Angle skew;                        ///< of the run in plan, off square to the wall; never negative
  /// Elevation of the footing's underside, if it is known; of a common wall's two footings the
  /// higher one, and the lower one too.
  std::optional<Length> footing, lowestFooting;
};

/// `thickness` of the footing, from its underside up.
WallPass passOf(const WallSleeve& sleeve, Length thickness);
/// Under the footing there is no concrete to leave open.
bool isBuiltIn(const WallSleeve& sleeve);
/// Does the line pass the wall so far off square that a hole cored square to it will not do? From 5
/// degrees on: common practice, no source.
bool isSkew(const WallSleeve& sleeve);
/// The openingWidth of the sleeve (where no size is known of the pipe) in a wall so thick.
Length straightOpening(const WallSleeve& sleeve, Length wall);

/// What has walls of its own.
struct WalledThing {
  Id id;
  Ring outline;
  std::optional<Length> footing;
};
/// A floor of known level.
struct FloorSlab {
  Id id;
  Ring outline;
  double level = 0; ///< m
};
/// What lines can pass, gathered once for all runs of a plan.
struct BuildingParts {
  std::vector<WalledThing> walled;
  std::vector<FloorSlab> floors; ///< a room's before that of the building round it
};
BuildingParts buildingParts(const Plan& plan);

/// In the plan's order of runs, each from its start. A run ends where it ends: one that only comes
/// up inside passes the wall once.
std::vector<WallSleeve> wallSleeves(const Plan& plan, const Study& study);
/// Of one run; nothing for one that could not be worked out.
std::vector<WallSleeve> wallSleeves(const Plan& plan, const BuildingParts& parts,
                                    const RunStudy& run);

/// Where a line goes through the floor slab of a room or building.
struct SlabPass {
  Id run;
  Id floor;                          ///< the room, else the building
  Point3 at;                         ///< z is the floor's elevation
  std::string size;                  ///< nominal, of the run there
  std::optional<std::string> sleeve; ///< as in walls
};
/// In the plan's order of runs. A room's floor is told before that of the building round it.
std::vector<SlabPass> slabPasses(const Plan& plan, const Study& study);
/// Of one run; nothing for one that could not be worked out.
std::vector<SlabPass> slabPasses(const Plan& plan, const BuildingParts& parts, const RunStudy& run);

/// Two sizes over the pipe's, of the nominal sizes that are usually stocked (IPC 305.3 for
/// foundation walls: 2024 edition, seen at iccsafe.org; for conduit and slabs common practice, no
/// source). The code counts the 5 in that is hardly stocked, so a 4 in pipe gets more here.
std::optional<std::string> sleeveSize(std::string_view pipe);

} // namespace sump
