#include "app/canvas/notes.h"

#include <cmath>

namespace sump {

Label noteLabel(const NoteDrawing& note, const View& view) {
  constexpr double kAbove = 9;                    // pixels from the line to the middle of the text
  const QPointF up(-note.along.y, -note.along.x); // to the left of `along`, y down
  Label label;
  label.object = note.id;
  label.text = QString::fromStdString(note.text);
  label.centre = view.toScreen(note.textAt) + up * kAbove;
  label.angle = std::atan2(note.along.y, note.along.x) * 180 / kPi;
  return label;
}

std::vector<Label> noteLabels(const Scene& scene, const View& view) {
  std::vector<Label> labels;
  const QRectF window(QPointF(0, 0), view.size());
  for (const NoteDrawing& note : noteDrawings(scene.plan())) {
    const Label label = noteLabel(note, view);
    if (scene.shows(note.id) && window.contains(label.centre)) labels.push_back(label);
  }
  return labels;
}

} // namespace sump
