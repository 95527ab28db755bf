#pragma once
// What a label or its leader spoils where it lies over a drawn line. Private to core/sheet.

#include "core/sheet/marks.h"

namespace sump {

/// Of a line: what covering it costs, in mm of distance that one would walk to avoid it, and what
/// it costs a leader to cross it.
struct CoverCost {
  double cover, leader;
};

/// What covering a wall costs, however little the view cares for other lines.
constexpr double kWallCover = 600;

CoverCost coverCost(const Mark& mark);

} // namespace sump
