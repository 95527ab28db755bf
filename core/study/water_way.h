#pragma once
// A run as the water in it sees it. Private to core/study.

#include "core/study/context.h"
#include "core/study/water_levels.h"

namespace sump {

/// Bores of the run's legs, and K of its bends, parts, end fittings and entry from the catalogue's
/// loss table (a pipe into a chamber projects inward, one out of a basin is flush). `study` is of
/// this run. Needs levels, catalogue pipe and a coefficient for every fitting.
Decided<WaterWay> waterWay(const StudyContext& context, const Run& run, const RunStudy& study);

} // namespace sump
