#pragma once
// The levels of a section, told at its right side. Private to core/sheet.

#include "core/sheet/label_board.h"

#include <string>
#include <vector>

namespace sump {

/// A level with its words, told at the drawing's right side.
struct LevelTag {
  double y = 0;
  double from = 0; ///< the level's line begins here, x
  std::string level;
  std::string name;
};

/// mm that they take beside the drawing.
double ladderWidth(const std::vector<LevelTag>& levels);
/// Lines from the levels to their texts in the last `room` mm of the view, pushed apart where they
/// would touch. What stands at one level is told at one mark.
void drawLadder(const std::vector<LevelTag>& levels, const SheetView& view, double room,
                LabelBoard& board, Page& page);

} // namespace sump
