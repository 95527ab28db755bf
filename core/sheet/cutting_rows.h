#pragma once
// The cutting list's blocks: sticks that are sawn alike in one row, and the pieces of all runs.
// Private to core/sheet.

#include "core/rules/review.h"
#include "core/sheet/block.h"
#include "core/study/cutting.h"

namespace sump {

/// How closely the rows stand: a list that needs it is set smaller, so that it stays one page.
struct ShopSetting {
  double text = 2.5; ///< mm, height of capitals
  double bar = 4;    ///< mm, height of a stick's picture; 0: none
  double pitch() const { return 1.6 * text; }
};

/// `122 7/8"`, `3124`.
std::string cutText(Length length, UnitSystem units);

/// Its heading tells the left ends that are so long at least, and whether it is `continued`.
Block stickBlock(const CuttingGroup& group, double width, const ShopSetting& setting,
                 Length spareFrom, UnitSystem units, bool continued = false);
/// As many pieces a row as stand side by side: read down, then on at the right.
Block pieceBlock(const Review& review, double width, const ShopSetting& setting);

} // namespace sump
