#pragma once
// How large the digs are and how far from vaults and buildings. Private to core/sheet.

#include "core/sheet/label_board.h"
#include "core/sheet/sheet_set.h"

namespace sump {

void measureDigs(const SheetJob& job, const SheetView& view, LabelBoard& board);
/// A name that stands across another line's trench hides where that is dug.
void keepOffTrenches(const EarthStudy& earth, const SheetView& view, LabelBoard& board);

} // namespace sump
