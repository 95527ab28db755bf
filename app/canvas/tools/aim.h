#pragma once
// The point that a pointer means: what was typed, else what it catches. Shared by every tool, so
// that Alt, Shift, the grid and the marker behave the same in all of them.

#include "app/canvas/tools/snap_words.h"
#include "app/canvas/tools/tool.h"

namespace sump {

/// Where the leg under way comes from, and what must not catch.
struct AimFrom {
  std::optional<Point2> last;
  std::optional<Point2> beforeLast;
  const std::set<Id>* without = nullptr;
};

/// Alt: the pointer itself; Shift or the switch: straight from `last`. Typed values win.
Snapped aim(const ToolHost& host, const Pointer& pointer, const AimFrom& from = {},
            const TypedPoint& typed = {});
/// The shift of what is dragged: so that one of `grips` (where they were before the drag) catches,
/// else in steps of the grid. `caught` tells by what.
Point2 aimShift(const ToolHost& host, const Pointer& start, const Pointer& now,
                const std::vector<Point2>& grips, const std::set<Id>& without, Snapped& caught);
/// The step of the grid as it is drawn, or the one whose lines would stand so many pixels apart;
/// metres.
double gridStep(const ToolHost& host, double leastPixels = 12);

/// A mark whose shape says what was caught, with lines to what it is aligned with and words beside
/// it, if there are any.
void paintSnap(Overlay& overlay, const Snapped& snapped, const QString& words = {});

} // namespace sump
