#pragma once
// What a surveyor sets out from: the origin of the coordinates and the benchmark. Private to
// core/sheet.

#include "core/sheet/label_board.h"
#include "core/sheet/sheet_set.h"

#include <string>
#include <vector>

namespace sump {

/// Where the coordinates begin, with its two axes.
void markOrigin(std::vector<Mark>& marks);
/// Its name, where the view shows it.
void labelOrigin(const SheetView& view, LabelBoard& board);

/// What north and east are measured from.
std::string axesText(const SheetJob& job);
/// What elevations are measured from. The plan does not hold where the benchmark is: the text has
/// blanks for it.
std::string benchmarkText(const SheetJob& job);

} // namespace sump
