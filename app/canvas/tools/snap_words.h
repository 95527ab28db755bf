#pragma once
// What a pointer caught, in words: `corner of V1`, `pipe WW-1`, `in line with corner of V2`.

#include "app/canvas/snap.h"
#include "core/plan/plan.h"

#include <QString>

namespace sump {

/// Empty for the grid and the pointer itself.
QString snapWords(const Plan& plan, const Snapped& snapped);

} // namespace sump
