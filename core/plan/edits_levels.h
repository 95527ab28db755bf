#pragma once
// Edits of levels: a Plan in, a Plan out. None of them judges the result; an id or point that is
// not there leaves the plan as it is.

#include "core/plan/plan.h"

#include <optional>
#include <string_view>

namespace sump {

/// The invert of one point of a run: -1 its start, 0.. its corners, number of corners its end.
/// Nothing gives it back: a corner to straight grade, an end to what it hangs on.
Plan setInvert(const Plan& plan, std::string_view run, int vertex, std::optional<Length> invert);

/// The level that the plan states for a point, counted in the same way; nothing where it is left
/// out or there is no such point.
std::optional<Length> statedInvert(const Run& run, int vertex);

/// Can the point do without a stated level: a corner, or an end whose target gives one? A run that
/// it hangs on is taken to have one.
bool mayBeGraded(const Run& run, int vertex);

/// The whole run higher (or lower) by `by`: every invert that the plan states. What is graded
/// follows, what its ends hang on stays.
Plan shiftInverts(const Plan& plan, std::string_view run, Length by);

} // namespace sump
