#pragma once
// How the study's numbers came about, as JSON for other programs.

#include "core/study/calculation.h"

#include <string>
#include <vector>

namespace sump {

/// `{"calculations": [{"id", "number", "object", "section", "title", "formula", "inputs":
/// [{"symbol", "name", "value", "unit", "from"}], "steps", "source", "result", "unit"}]}`: numbers
/// as in the report, values in SI with their unit; in place of `result` and `unit` one that cannot
/// be decided has `needs`.
std::string calculationJson(const std::vector<Calculation>& calculations);

} // namespace sump
