#include "app/canvas/notes.h"

#include <cmath>

namespace sump {

namespace {

/// In lines of at most this many letters, so that a long note hides little of the drawing.
QString inLines(const QString& text) {
  constexpr qsizetype kMost = 34;
  QString lines;
  qsizetype used = 0;
  for (const QString& word : text.split(' ', Qt::SkipEmptyParts)) {
    const bool fits = used == 0 || used + 1 + word.size() <= kMost;
    if (!lines.isEmpty()) lines += fits ? ' ' : '\n';
    lines += word;
    used = fits ? used + 1 + word.size() : word.size();
  }
  return lines;
}

} // namespace

Label noteLabel(const NoteDrawing& note, const View& view) {
  constexpr double kAbove = 9;                    // pixels from the line to the middle of the text
  const QPointF up(-note.along.y, -note.along.x); // to the left of `along`, y down
  Label label;
  label.object = note.id;
  label.text = inLines(QString::fromStdString(note.text));
  constexpr double kLine = 7; // pixels that each further line moves the middle down
  const auto more = static_cast<double>(label.text.count('\n'));
  label.centre = view.toScreen(note.textAt) + up * (kAbove - more * kLine);
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
