#pragma once
// Working space in front of each disconnect in an equipment room: a disconnect is examined and
// worked on while it is live, as a panel is (NEC 110.26(A)). Its enclosure is the electrician's
// choice: it is taken to reach as far from the disconnect's place in the plan as limit
// `wiring.enclosure` says, and the depth counts from its front there.

#include "core/study/study.h"

#include <vector>

namespace sump {

/// Nothing is kept free over it.
struct DisconnectSpace : WorkingSpaceStudy {
  Id supply;
};

/// Of the disconnects that stand in a room, in the plan's order.
std::vector<DisconnectSpace> disconnectSpaces(const Plan& plan, const Limits& limits,
                                              const std::vector<RunStudy>& runs);

} // namespace sump
