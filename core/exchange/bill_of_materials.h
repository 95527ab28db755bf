#pragma once
// The bill of materials as CSV, from the Study's take-off alone.

#include "core/rules/review.h"

#include <string>

namespace sump {

std::string billOfMaterialsCsv(const Review& review);

} // namespace sump
