#pragma once
// Edits of a run's corners and ends by hand: a Plan in, a Plan out. Two corners at one place are a
// drop or a riser and stay together. An unknown id or corner leaves the plan as it is.

#include "core/plan/plan.h"

#include <optional>
#include <string_view>

namespace sump {

/// Moves the corner, with those before and after it that stand at the same place.
Plan moveRunCorner(const Plan& plan, std::string_view run, std::size_t corner, Point2 to);
/// Takes the corner out, with those before and after it that stand at the same place.
Plan eraseRunCorner(const Plan& plan, std::string_view run, std::size_t corner);
/// Gives the run another start or end; corners next to it that stood at its place go along.
Plan moveRunEnd(const Plan& plan, std::string_view run, bool start, const RunEnd& end);

/// A corner in the leg nearest to `at`, of a run or of whatever else has corners (an empty id: the
/// property line), on the leg itself; its level lies between its neighbours'. Nothing when no leg
/// lies within `reach` metres, or a corner stands there already.
std::optional<Plan> cornerAdded(const Plan& plan, std::string_view id, Point2 at, double reach);

} // namespace sump
