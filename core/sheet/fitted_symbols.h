#pragma once
// Symbols at the size that a view's scale asks for. Private to core/sheet.

#include "core/sheet/clip.h"
#include "core/sheet/marks.h"

#include <optional>
#include <vector>

namespace sump {

/// Half the size of a symbol in the legend, and on views that have the room, mm.
inline constexpr double kSymbolHalf = 2.1;

/// The marks with their symbols no larger than in the legend at this scale, smaller where they
/// would touch each other; of those that would touch even so, and of those of one service at one
/// place, only the one that says most.
std::vector<Mark> fittedSymbols(std::vector<Mark> marks, double scale);

/// The marks with every symbol whole: what sticks out of the box, or under the part of it that
/// another drawing hides, is moved in by as much; what stands outside or hidden is left out, since
/// half a symbol says nothing.
std::vector<Mark> wholeSymbols(std::vector<Mark> marks, const PaperBox& box,
                               const std::optional<PaperBox>& hidden = {});

/// Adds marks made by themselves; their symbols are others than those that are there.
void addSymbols(std::vector<Mark> added, std::vector<Mark>& marks);

} // namespace sump
