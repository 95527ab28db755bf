#pragma once
// Where on the drawing the sign of a finding stands.

#include "core/plan/plan.h"
#include "core/rules/finding.h"

#include <optional>

namespace sump {

/// The finding's own place; where it has none, between the two things with an outline that it is
/// about, else in the middle of the first. Nothing where that has no outline.
std::optional<Point2> signPlace(const Plan& plan, const Finding& finding);

} // namespace sump
