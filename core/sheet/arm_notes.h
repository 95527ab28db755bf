#pragma once
// The arms of tees and elbows in vaults, in words: what hangs in the lower one, and what is left
// round the upper one. Private to core/sheet.

#include "core/sheet/part_list.h"

#include <string>
#include <vector>

namespace sump {

/// One for each of the run's down legs: its piece, length and level; how deep it is asked to reach.
std::vector<std::string> downLegNotes(const SheetJob& job, const RunStudy& run);

/// How far the open top of the run's upright arm stands from the lid, or from the edge of the
/// opening that it reaches into; nothing where it has none.
std::vector<std::string> upperArmNotes(const SheetJob& job, const RunStudy& run);

} // namespace sump
