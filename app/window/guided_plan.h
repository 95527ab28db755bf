#pragma once
// A first plan from six answers, each of which may be left out.

#include "core/plan/plan.h"

namespace sump {

struct GuidedAnswers {
  UnitSystem units = UnitSystem::UsCustomary;
  std::optional<Length> siteLength; ///< along x, west to east
  std::optional<Length> siteWidth;  ///< along y, south to north
  std::optional<Length> ground;     ///< elevation
  std::optional<Flow> washFlow;
  std::optional<Length> sewerInvert;
  std::optional<Side> equipmentSide; ///< of the site, where the equipment room stands
};

/// What cannot be: a sewer above the ground, a site without area. Empty when all is well.
struct GuidedProblem {
  enum Field { None, SiteLength, SiteWidth, WashFlow, SewerInvert } field = None;
};
GuidedProblem problemOf(const GuidedAnswers& answers);

/// Boundary, ground, wash equipment with a device of the flow, sewer connection and equipment room,
/// as far as they were answered. Pure; a plan by plan/consistency.h when problemOf() finds none.
Plan guidedPlan(const GuidedAnswers& answers);

} // namespace sump
