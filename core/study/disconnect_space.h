#pragma once
// Working space in front of each disconnect in an equipment room: a disconnect is examined and
// worked on while it is live, as a panel is (NEC 110.26(A)). Its enclosure's size is the
// electrician's: the space is reckoned from the disconnect's place in the plan, or from the front
// of a panel on the same wall.

#include "core/catalog/limits.h"
#include "core/geometry/point.h"
#include "core/plan/plan.h"
#include "core/study/decided.h"

#include <optional>
#include <vector>

namespace sump {

struct DisconnectSpace {
  Id supply, room;
  Decided<Length> depthNeeded; ///< by this supply's voltage to ground
  Length widthNeeded, heightNeeded;
  Ring zone; ///< site: where most of it is clear; least depth when undecided
  /// Clear along its wall where it hangs beside things that stand out farther than its enclosure;
  /// nothing where none does. Who works on it stands between them.
  std::optional<Length> niche;
};

/// Of the disconnects that stand in a room, in the plan's order.
std::vector<DisconnectSpace> disconnectSpaces(const Plan& plan, const Limits& limits);

} // namespace sump
