#pragma once
// A run unrolled: x is the distance along its plan, y the elevation, with the ground, the vaults
// and the room that it passes through. Private to core/sheet.

#include "core/sheet/figure.h"
#include "core/sheet/sheet_set.h"

namespace sump {

/// The part of a run that a drawing shows, plan distance from its start in m.
struct RunWindow {
  double from = 0;
  double to = 0;
};

/// Plan length of a worked-out run, m.
double planEnd(const RunStudy& run);
/// Where the run first leaves (or, from its end, last enters) a structure; nothing when it does
/// not.
std::optional<double> firstWall(const SheetJob& job, const RunStudy& run);
std::optional<double> lastWall(const SheetJob& job, const RunStudy& run);

/// `run` must be resolved.
Drawing runSection(const SheetJob& job, const RunStudy& run, RunWindow window, double steeper);

} // namespace sump
