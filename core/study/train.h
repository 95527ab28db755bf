#pragma once
// Gravity runs, the water levels of the vault train, and the duty of its chambers.

#include "core/plan/plan.h"
#include "core/study/calculation.h"
#include "core/units/quantity.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

struct TrainStudy {};

} // namespace sump
