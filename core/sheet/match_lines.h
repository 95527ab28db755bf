#pragma once
// Where a plan over several pages is cut. Private to core/sheet.

#include "core/sheet/plan_views.h"

namespace sump {

/// As many parts as `tiling` makes, cut where match lines spare vaults, rooms and digs most.
Tiling gentleTiling(const PaperBox& site, const PaperBox& frame, double scale, const SheetJob& job);

/// Between `low` and `high` the places of `count - 1` cuts, no part longer than `most`, that cost
/// least. `cost` is asked for each place.
std::vector<double> cheapestCuts(double low, double high, double most, int count,
                                 const std::function<double(double)>& cost);

} // namespace sump
