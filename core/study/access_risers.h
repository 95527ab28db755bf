#pragma once
// How what is set in a buried run is reached: a riser from each cleanout, backwater valve and pull
// box up to a cover at grade. UPC 1017.1 asks for a full-size cleanout to grade, IPC 715.6 (as
// Chicago 18-29-715) that a backwater valve can be reached, NEC 314.29 (from memory) the same of a
// box without digging.

#include "core/study/study.h"

#include <optional>
#include <vector>

namespace sump {

struct AccessRiser {
  Id run, part;
  PartKind kind = PartKind::Cleanout;
  std::string size;   ///< nominal, of the run there
  Point3 at;          ///< z is the run's invert
  double station = 0; ///< in plan from the run's start, m
  /// Of the cover: the floor over it in a building or room, else the ground. Nothing where neither
  /// is known.
  std::optional<Length> grade;
  std::optional<Length> height; ///< grade less the run's invert
  /// Vehicles drive over the cover: on a traffic pavement, or as the part says.
  bool traffic = false;
};

/// In the plan's order. Parts in a vault or a basin are reached through it, those over the floor of
/// a building or a room as they are.
std::vector<AccessRiser> accessRisers(const Plan& plan, const Study& study);
/// Of one run.
std::vector<AccessRiser> accessRisers(const Plan& plan, const Study& study, const RunStudy& run);

/// The floor of a building or room over a place, the highest of several.
std::optional<Length> floorAt(const Plan& plan, Point2 at);

} // namespace sump
