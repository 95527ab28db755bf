#pragma once
// What the plan does not yet let anybody work out. Private to core/sheet.

#include "core/rules/review.h"

#include <string>
#include <vector>

namespace sump {

/// One thing that cannot be decided, of all the objects that lack the same.
struct Undecided {
  std::string what;               ///< `Farthest way to a ladder`
  std::vector<std::string> about; ///< as the sheets call them; may be empty
  std::string needs;
  int count = 0; ///< of calculations or findings
};

/// Findings that nobody accepted and that could not be decided, and calculations without a result.
std::vector<Undecided> undecidedOf(const Review& review);

/// `3 (needs pump curve; a ladder in the dig)`, or `0`.
std::string undecidedSummary(const std::vector<Undecided>& list);
std::string undecidedText(const Undecided& item);

} // namespace sump
