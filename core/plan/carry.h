#pragma once
// Moving, turning and mirroring objects with all that hangs on them. Private to plan/; callers use
// edits_objects.h and edits_group.h.

#include "core/geometry/motion.h"
#include "core/plan/ends.h"

#include <set>

namespace sump {

/// The id of the object that a run's end moves with; a port moves with its room.
Id holder(const Locator& locator, const RunEnd& end);

/// Takes the end off what it hangs on: it stays where it is, at the level that it had there.
void freeEnd(const Locator& locator, RunEnd& end);

/// Puts the objects through the motion. Run ends and note ends on them follow, run corners that
/// stand inside a moved vault or room go along, and a run whose two ends are carried goes whole. A
/// mirrored vault, drain, room or wash equipment keeps its direction along and turns round across.
/// A picture (Underlay) cannot be mirrored and then stays.
Plan carried(const Plan& plan, const std::set<Id>& ids, const Motion& motion);

} // namespace sump
