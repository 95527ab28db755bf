#pragma once
// Conduit fill, bends, separation and working space.

#include "core/plan/plan.h"
#include "core/study/calculation.h"
#include "core/units/quantity.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

struct WiringStudy {};

} // namespace sump
