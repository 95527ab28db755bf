#pragma once
// Edits of runs as a whole: a Plan in, a Plan out. None of them judges the result; an id or leg
// that is not there leaves the plan as it is.

#include "core/plan/plan.h"

#include <optional>
#include <string_view>
#include <vector>

namespace sump {

/// The same line drawn the other way: ends, corners and parts in reverse. What a fitting is made
/// for does not turn round: end fittings stay with their places.
Plan reverseRun(const Plan& plan, std::string_view run);

/// Cuts a run at a fraction along one of its legs (0 to 1). The second part is a new run after it,
/// whose id is returned in `made`; both cut ends are free, at one place, at `invert` (left out:
/// for the one who cuts to type). The eductor stays with the end that it hangs at, conductors lie
/// in both.
Plan splitRun(const Plan& plan, std::string_view run, int leg, double along,
              std::optional<Length> invert, Id& made);

/// One run of two whose ends lie within `reach` metres of each other, free: the first takes in the
/// second, reversed where needed so that the whole flows as the first does. Nothing when they do
/// not meet so, or are not of one service, pipe and size.
std::optional<Plan> joinRuns(const Plan& plan, std::string_view first, std::string_view second,
                             double reach);

/// A run beside another, `offset` metres to the left of its direction (negative: right), with
/// mitred corners and free ends at the same inverts. Parts are not copied. Nothing when the line
/// has no length or the offset is 0.
std::optional<Plan> parallelRun(const Plan& plan, std::string_view run, double offset, Id& made);

/// A line beside another: each leg moved to the left by `offset`, met at its corners. Legs that
/// turn back are cut off square.
Polyline offsetLine(const Polyline& line, double offset);

} // namespace sump
