#pragma once
// Edits of one run's corners and parts that keep what stands on its legs where it is.

#include "core/plan/plan.h"

namespace sump {

/// Adds a corner at `at` on leg `leg` (see InlinePart), splitting it. Parts on the leg go to the
/// half that they lie on, in proportion to `along` (0..1), the place of the corner on the leg.
Run withCorner(Run run, int leg, double along, Vertex corner);
/// Takes corner `index` out; parts on both its legs stay on the joined one, half and half.
Run withoutCorner(Run run, std::size_t index);

} // namespace sump
