#pragma once
// Fill, turns and separation of a conduit. No conductor is sized here. Private to core/study and
// its tests.

#include "core/study/context.h"

namespace sump {

/// Share of the internal area that may be filled (NEC chapter 9 table 1).
double fillLimit(int conductors, const Limits& limits);

/// What a conduit turns at a bend: what its fittings make of it, or where none is stocked the turn
/// as drawn.
double turned(const Bend& bend);

ConduitStudy conduitStudy(const StudyContext& context, const Run& run, const RunStudy& study);

} // namespace sump
