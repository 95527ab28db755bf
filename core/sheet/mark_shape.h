#pragma once
// What a mark takes up on the paper. Private to core/sheet.

#include "core/sheet/clip.h"
#include "core/sheet/marks.h"
#include "core/sheet/view.h"

namespace sump {

/// Of what is not marked as one symbol: small round things, such as ports and wells.
bool isSymbol(const Mark& mark);
/// A building, a vault, a drain or what stands in a room: another thing's name on it would be taken
/// for its own.
bool isThing(const Mark& mark);
PaperBox extentOf(const Mark& mark, const SheetView& view);
/// Its line on the paper, closed where it is; a circle with corners, since what lies over an arc is
/// found by its chords.
Polyline paperLine(const Mark& mark, const SheetView& view);

} // namespace sump
