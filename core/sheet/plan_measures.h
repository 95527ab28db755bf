#pragma once
// Dimensions on a plan: extension lines, a dimension line with strokes at its ends, and the figure.
// Private to core/sheet.

#include "core/sheet/label_board.h"

#include <string>
#include <vector>

namespace sump {

struct PlanMeasure {
  Point2 from, to;  ///< site; what is measured
  double off = 0;   ///< m, to the right of it, where the dimension line stands
  std::string text; ///< the figure
};

/// Lines first, all of them, so that no figure stands on another's line. The lines are `line`.
void drawPlanMeasures(const std::vector<PlanMeasure>& measures, const LineStyle& line,
                      const SheetView& view, LabelBoard& board);

/// The dimension line.
Polyline lineOf(const PlanMeasure& measure);

/// From one outline to another where they are nearest.
PlanMeasure nearestPair(const Ring& from, const Ring& to);

/// What a dimension line beside an outline keeps off.
struct SideRoom {
  const std::vector<Ring>& others;    ///< outlines
  const std::vector<Point2>& cutEnds; ///< where sections are cut
  double near, far;                   ///< m; where the line stands, and clear of the cuts' marks
  std::vector<Polyline> taken{};      ///< by other dimension lines
};
/// Along the one of two opposite sides of a ring of four that has the most room beside it.
/// `side`: 0 or 1, the first of them.
PlanMeasure clearestSide(const Ring& ring, std::size_t side, const SideRoom& room);

} // namespace sump
