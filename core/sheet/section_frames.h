#pragma once
// A long section cut into consecutive frames, so that each can be drawn larger. Private to
// core/sheet.

#include "core/study/profile.h"

#include <vector>

namespace sump {

/// What the section shows from one station to another. Where it is cut the run has a point of no
/// corner.
RunProfile sectionPart(const RunProfile& whole, double from, double to);

/// Where to cut it into `count` frames about alike: away from corners, parts, crossings and walls,
/// never inside a vault.
std::vector<double> sectionCuts(const RunProfile& whole, int count);

/// Nearest to this station where a line upright in the ground stands clear of the outer walls of
/// buildings and rooms, in the open ground beside them; the station itself where there is no room.
double clearOfWalls(const RunProfile& profile, double station);

} // namespace sump
