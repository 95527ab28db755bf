#pragma once
// How deep inlets and overflows are to reach under the water at rest.

#include "core/catalog/limits.h"
#include "core/plan/service.h"
#include "core/study/study.h"

#include <optional>

namespace sump {

/// Under the water at rest.
struct DipRange {
  Length least, most;
};
/// What the limits ask of an inlet's or an overflow's open end in water of this depth; nothing for
/// lines of other services.
std::optional<DipRange> dipAsked(const Limits& limits, Service service, Length depth);

/// That of the run's start or end, if it has one.
const DownLeg* downLeg(const RunStudy& run, bool atStart);
/// Level of the pipe's open lower end, where there is pipe in the arm.
std::optional<Length> legEnd(const RunStudy& run, bool atStart);

/// Where what floats on water of this level reaches down to, by the oil that the plan counts with.
Length underOil(const Plan& plan, Length water);
/// That of a chamber when the float has stopped the pump. Nothing where low water is not known.
std::optional<Length> lowestOil(const Plan& plan, const Study& study, const Id& vault, int chamber);

} // namespace sump
