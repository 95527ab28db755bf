#pragma once
// Site pictures fitted to the site: a Plan in, a Plan out.

#include "core/plan/plan.h"

#include <string_view>

namespace sump {

/// Scales the picture so that two places on it, given where they lie now, come to lie `apart`. The
/// first stays. An unknown id, two places at one point or a distance of 0 leave the plan as it is.
Plan scaleUnderlay(const Plan& plan, std::string_view id, Point2 first, Point2 second,
                   Length apart);

} // namespace sump
