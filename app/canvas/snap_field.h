#pragma once
// What of a plan catches the pointer: corners, ends, middles, centres and edges of its objects.

#include "app/canvas/snap.h"
#include "core/plan/plan.h"

#include <functional>

namespace sump {

/// Without the objects for which `shows` is false, as far as it is given.
SnapField snapField(const Plan& plan, const std::function<bool(const Id&)>& shows = {});
/// The points by which these objects catch others while they are dragged: corners, ends, centres;
/// of vaults and rooms not what is inside them.
std::vector<Point2> gripPoints(const Plan& plan, const std::set<Id>& ids);

} // namespace sump
