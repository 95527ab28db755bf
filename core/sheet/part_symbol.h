#pragma once
// How large parts in a run are drawn on plans.

#include "core/plan/plan.h"

namespace sump {

/// Half the size of a part's symbol, metres: about the real valve, but never under 4.5 in, so that
/// it can be read at 1:96.
double partSymbolSize(const Run& run);

} // namespace sump
