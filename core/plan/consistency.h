#pragma once
// What must hold for a Plan to be a plan at all, before any trade rule: ids present and unique,
// references that lead somewhere, sizes positive, outlines simple, chambers that exist.

#include "core/plan/plan.h"

#include <string>
#include <vector>

namespace sump {

struct Problem {
  std::string pointer; ///< RFC 6901 pointer into the plan file, `/vaults/0/width`
  std::string what;
  std::string mend;
};

/// Empty when the plan is consistent. In the order of the plan file.
std::vector<Problem> inconsistencies(const Plan& plan);

} // namespace sump
