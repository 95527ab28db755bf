#pragma once
// The cutting list as a shop sheet: one page that goes to the saw, with every stick drawn to scale.

#include "core/rules/review.h"
#include "core/sheet/page.h"
#include "core/study/cutting.h"

#include <string>
#include <vector>

namespace sump {

/// The paper that goes with the project's units: `letter` or `a4`.
std::string_view shopPaper(UnitSystem units);

/// Sticks with their cuts first, then the pieces run by run; what does not fit goes on on further
/// pages. `paper` is `letter` or `a4`, upright; throws std::invalid_argument for any other.
std::vector<Page> composeCuttingSheet(const Review& review, const CuttingList& cutting,
                                      std::string_view paper);

} // namespace sump
