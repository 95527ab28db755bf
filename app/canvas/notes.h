#pragma once
// The texts of dimension notes on the screen. They are always shown, whether names are or not.

#include "app/canvas/labels.h"

#include "core/sheet/note_marks.h"

namespace sump {

/// Just above the dimension line, reading along it.
Label noteLabel(const NoteDrawing& note, const View& view);
/// Of every note that is shown and in sight.
std::vector<Label> noteLabels(const Scene& scene, const View& view);

} // namespace sump
