#pragma once
// How the study's numbers came about, as JSON for other programs.

#include "core/study/calculation.h"

#include <string>
#include <vector>

namespace sump {

/// `{"calculations": [{"id", "object", "section", "title", "formula", "inputs": [{"symbol", "name",
/// "value", "from"}], "steps", "result", "source"}]}`, all values in SI; in place of `result` one
/// that cannot be decided has `needs`.
std::string calculationJson(const std::vector<Calculation>& calculations);

} // namespace sump
