#pragma once
// Fill, turns and separation of a conduit. No conductor is sized here. Private to core/study and
// its tests.

#include "core/study/context.h"

namespace sump {

/// Approximate area of one THHN or THWN-2 conductor (NEC chapter 9 table 5, from memory but for
/// 6 AWG); nothing for a size that is not in the table.
std::optional<Area> conductorArea(std::string_view size);
/// Internal area of rigid PVC conduit (NEC chapter 9 table 4, from memory), by pipe key and nominal
/// size; nothing when the table does not have it.
std::optional<Area> conduitArea(std::string_view pipe, std::string_view nominal);
/// Share of the internal area that may be filled (NEC chapter 9 table 1).
double fillLimit(int conductors, const Limits& limits);

ConduitStudy conduitStudy(const StudyContext& context, const Run& run, const RunStudy& study);

} // namespace sump
