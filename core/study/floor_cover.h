#pragma once
// How deep a line lies under the floors of rooms and buildings: what RunStudy::leastCover leaves
// out.

#include "core/study/wall_sleeves.h"

#include <optional>

namespace sump {

/// The least from the top of the pipe's outside to the top of the floor over it, the higher of two,
/// of stretches that lie under floors of known level outside vaults and basins. Nothing where no
/// stretch does. Upright legs and stretches that come up through the floor are left out.
std::optional<CoverCheck> coverUnderFloors(const Plan& plan, const BuildingParts& parts,
                                           const RunStudy& run);

} // namespace sump
