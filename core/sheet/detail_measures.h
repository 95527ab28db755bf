#pragma once
// The dimensions on a detail of a run. Private to core/sheet.

#include "core/sheet/run_section.h"

namespace sump {

/// Along the run between its ends, walls and parts; upright from the floor to its ends, from these
/// to the water at rest, and of each drop or rise; and the suction's low water as a level.
void addDetailMeasures(const SheetJob& job, const RunStudy& run, RunWindow window,
                       Drawing& drawing);

} // namespace sump
