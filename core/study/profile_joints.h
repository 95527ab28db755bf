#pragma once
// What hangs on a run that its long section shows. Private to core/study.

#include "core/study/cut_line.h"
#include "core/study/profile.h"

#include <optional>
#include <vector>

namespace sump {

/// The runs that end on this one, by station.
std::vector<ProfileBranch> profileBranches(const Plan& plan, const Study& study,
                                           const Catalog& catalog, const Id& run,
                                           const CutLine& line);
/// A floor lies between the two where they meet in plan: one is in the ground, the other in the
/// air.
bool isFloorBetween(const Plan& plan, Point3 a, Point3 b);
/// Where the low-level float switches that hangs on this run; nothing for other runs.
std::optional<Length> floatLevel(const Study& study, const Run& run);

} // namespace sump
