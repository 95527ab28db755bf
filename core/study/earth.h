#pragma once
// Buoyancy, loads and excavation.

#include "core/plan/plan.h"
#include "core/study/calculation.h"
#include "core/units/quantity.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

struct EarthStudy {};

} // namespace sump
