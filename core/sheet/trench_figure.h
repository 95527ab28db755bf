#pragma once
// What lies in a trench, from its bottom up. Private to core/sheet.

#include "core/sheet/block.h"
#include "core/sheet/sheet_set.h"

namespace sump {

/// A section that is not to scale, for all buried runs; empty where none is buried.
Block trenchFigure(const SheetJob& job, double width);

} // namespace sump
