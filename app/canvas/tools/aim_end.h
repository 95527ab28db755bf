#pragma once
// Where the end of a run under the pointer goes: what would hold it, and what it catches. Shared by
// drawing a run and dragging one of its ends.

#include "app/canvas/tools/aim.h"
#include "app/canvas/tools/catch_end.h"

namespace sump {

struct EndAim {
  Catch held;
  Snapped snapped;
};

/// Typed values win over the pointer and must lie on what holds; Alt lets the pointer through.
/// `without` is the run whose end is dragged: it does not hold itself.
EndAim aimEnd(const ToolHost& host, const Pointer& pointer, const AimFrom& from, const Entry& typed,
              Service service, const Id& without = {});

/// Gives a new end the usual fitting, and an invert where nothing else tells it.
void completeEnd(const ToolHost& host, Service service, RunEnd& end, bool atStart);

/// What would hold the end, in words beside a ring; the marker of the place itself is below it.
void paintCatch(Overlay& overlay, const Catch& found);

} // namespace sump
