#pragma once
// Levels while they are dragged: neat steps, what they catch, and what they would make of the run.
// Pure functions.

#include "app/section/section_drawing.h"

#include <QString>

namespace sump {

/// The finest neat step that stands a few pixels apart: 0.01 ft and up, or 5 mm and up.
Length levelStep(double pixelsPerMetre, UnitSystem units);
/// The step of one press of an arrow key: 0.01 ft or 5 mm.
Length nudgeStep(UnitSystem units);

/// On a whole step, or on one of `catches` when it lies within a few pixels.
Length neatLevel(Length level, double pixelsPerMetre, UnitSystem units,
                 const std::vector<Length>& catches);

/// Levels that are worth meeting: of the other handles and of the water.
std::vector<Length> catchLevels(const SectionDrawing& drawing, const SectionHandle& dragged);

/// The run's fall before and after one of its points, over plan length, as it would be with that
/// point at `level`; graded corners in between count as straight. Nothing beyond an end or for a
/// drop.
struct SlopesAt {
  std::optional<double> before, after;
};
SlopesAt slopesAt(const RunProfile& run, int vertex, Length level);

/// `INV 97.25   from start 1/4 in/ft   to end 0.21 in/ft   cover 2'-3"`
QString levelReadOut(const RunProfile* run, int vertex, Length level, UnitSystem units);

} // namespace sump
