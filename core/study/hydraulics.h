#pragma once
// Water and air, wash demand, pressure runs and suction.

#include "core/plan/plan.h"
#include "core/study/calculation.h"
#include "core/units/quantity.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

struct HydraulicsStudy {};

} // namespace sump
