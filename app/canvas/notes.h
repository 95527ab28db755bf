#pragma once
// The texts of dimension notes on the screen. They are always shown, whether names are or not.

#include "app/canvas/labels.h"

#include "core/sheet/note_marks.h"

namespace sump {

/// Letters in a line of a note; in narrow gaps.
inline constexpr qsizetype kNoteLetters = 34, kFewLetters = 20;

/// Just above the dimension line, reading along it.
Label noteLabel(const NoteDrawing& note, const View& view, qsizetype letters = kNoteLetters);
/// Where else the text of this size may stand for its note to be understood, best first: along the
/// line, below it, beyond its ends, a step off; of a lettered note round its leader's end.
std::vector<QPointF> otherPlaces(const NoteDrawing& note, const Label& label, const View& view,
                                 QSizeF size);
/// Those that are shown and in sight, in the plan's order.
std::vector<NoteDrawing> notesInSight(const Scene& scene, const View& view);
/// The dimension line with its extension lines, or the leader.
std::vector<QLineF> noteLines(const NoteDrawing& note, const View& view);

} // namespace sump
