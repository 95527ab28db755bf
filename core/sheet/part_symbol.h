#pragma once
// How large parts in a run are drawn on plans.

#include "core/plan/plan.h"
#include "core/study/study.h"

namespace sump {

/// Half the size of a part's symbol, metres: about the real valve, but never under 4.5 in, so that
/// it can be read at 1:96.
double partSymbolSize(const Run& run);

/// Whether an upright leg stands over the level leg that it joins, the one before it or, where the
/// run starts upright, the one after it: the pipe turns up there, whichever way the water goes.
bool turnsUp(const RunStudy& run, std::size_t leg);

} // namespace sump
