#pragma once
// Where the planes at 45 degrees down and out from footings meet the bottoms of digs. Private to
// core/sheet.

#include "core/sheet/sheet_set.h"

#include <vector>

namespace sump {

/// Between it and the building the bottom of the dig lies below the plane.
struct FootingLine {
  Id building;
  Length footing, bottom; ///< elevations: underside of the footing, bottom of the dig
  Polyline line;          ///< site; the part near the dig
};

/// Of digs for vaults that pass footings of known level within their depth, and of trenches that
/// lie below such a plane. The building's outline stands for the edge of its footing.
std::vector<FootingLine> footingLines(const SheetJob& job);

} // namespace sump
