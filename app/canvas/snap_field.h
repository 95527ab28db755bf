#pragma once
// What of a plan catches the pointer: corners, ends, middles, centres and edges of its objects.

#include "app/canvas/snap.h"
#include "core/plan/plan.h"

namespace sump {

SnapField snapField(const Plan& plan);
/// The points by which these objects catch others while they are dragged: corners, ends, centres.
std::vector<Point2> gripPoints(const Plan& plan, const std::set<Id>& ids);

} // namespace sump
