#pragma once
// What a run's end is at, in the words of every sheet. Private to core/sheet.

#include "core/study/study.h"

#include <string>

namespace sump {

/// `Vault 1, ch. 2`, `stub`; of a free end on a line that is there already that line:
/// `Yard water pipe (existing)`.
std::string runEndText(const Plan& plan, const Study& study, const Run& run, bool atStart);

} // namespace sump
