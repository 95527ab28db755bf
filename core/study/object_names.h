#pragma once
// The names of objects for the study's reports. Private to core.

#include "core/plan/plan.h"

#include <string>

namespace sump {

/// The name that people gave an object other than a run or vault, which the sheets call by tags of
/// their own; its id where it has none.
std::string spokenName(const Plan& plan, const Id& id);

} // namespace sump
