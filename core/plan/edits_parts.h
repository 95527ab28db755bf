#pragma once
// Edits of the parts on a run (valves, unions, cleanouts ...): a Plan in, a Plan out. Parts are
// kept in their order along the run. An unknown id leaves the plan as it is.

#include "core/plan/plan.h"

#include <optional>
#include <string_view>

namespace sump {

/// A place on a run, in plan.
struct Station {
  int leg = 0;
  double along = 0; ///< of the leg, 0 to 1
  Point2 at;        ///< site
  double run = 0;   ///< metres in plan from the start
};

/// The place of the line nearest to p. Nothing for a line without length in plan.
std::optional<Station> stationNear(const Polyline& line, Point2 p);
/// The place so many metres in plan from the start, held within the line.
std::optional<Station> stationAt(const Polyline& line, double metresFromStart);
/// Where a part stands on its run's line.
std::optional<Station> stationOf(const Polyline& line, const InlinePart& part);

/// A part at a place of the run; the new id is returned in `made`.
Plan addPart(const Plan& plan, std::string_view run, PartKind kind, const std::string& toSize,
             const Station& where, Id& made);
Plan movePart(const Plan& plan, std::string_view part, const Station& to);
Plan erasePart(const Plan& plan, std::string_view part);

} // namespace sump
