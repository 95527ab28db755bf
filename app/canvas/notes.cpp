#include "app/canvas/notes.h"

#include <cmath>

namespace sump {

namespace {

/// In lines of at most this many letters, so that a long note hides little of the drawing.
QString inLines(const QString& text, qsizetype most) {
  QString lines;
  qsizetype used = 0;
  for (const QString& word : text.split(' ', Qt::SkipEmptyParts)) {
    const bool fits = used == 0 || used + 1 + word.size() <= most;
    if (!lines.isEmpty()) lines += fits ? ' ' : '\n';
    lines += word;
    used = fits ? used + 1 + word.size() : word.size();
  }
  return lines;
}

QPointF upFrom(const NoteDrawing& note) {
  return {-note.along.y, -note.along.x}; // to the left of `along`, y down
}

constexpr double kAbove = 9; // pixels from the line to the middle of one line of text

/// Rows and columns round the leader's end, close enough to find what gaps the pipes
/// leave.
void addGrid(std::vector<QPointF>& places, QPointF end, QPointF up, QPointF along, QSizeF size) {
  constexpr int kRows = 6, kColumns = 12; // either way
  const double row = size.height() + 2, column = (size.width() / 2 + kAbove) / 4;
  for (int rows = -kRows; rows <= kRows; ++rows) {
    for (int columns = -kColumns; columns <= kColumns; ++columns)
      places.push_back(end + up * (rows * row) + along * (columns * column));
  }
}

} // namespace

Label noteLabel(const NoteDrawing& note, const View& view, qsizetype letters) {
  Label label;
  label.object = note.id;
  label.text = inLines(QString::fromStdString(note.text), letters);
  constexpr double kLine = 7; // pixels that each further line moves the middle down
  const auto more = static_cast<double>(label.text.count('\n'));
  label.centre = view.toScreen(note.textAt) + upFrom(note) * (kAbove - more * kLine);
  label.angle = std::atan2(note.along.y, note.along.x) * 180 / kPi;
  return label;
}

std::vector<QPointF> otherPlaces(const NoteDrawing& note, const Label& label, const View& view,
                                 QSizeF size) {
  const QPointF up = upFrom(note), along(note.along.x, -note.along.y);
  std::vector<QPointF> places;
  if (note.lettered) {
    const double out = note.lineTo.y < note.lineFrom.y ? -1 : 1; // the way that the leader points
    const double aside = size.width() / 2 + kAbove;
    const auto add = [&](double rows, double columns) {
      places.push_back(label.centre + up * (out * rows * (size.height() + 2)) +
                       along * (columns * aside));
    };
    for (const auto& [rows, columns] : {std::pair(1.0, 0.0), {2.0, 0.0}, {0.0, 1.0}, {0.0, -1.0}})
      add(rows, columns);
    addGrid(places, label.centre, up, along, size);
    return places;
  }
  const QPointF below = label.centre - up * (2 * kAbove);
  const QPointF step = up * (size.height() + 2);
  const double half = view.scale() * distance(note.lineFrom, note.lineTo) / 2;
  const double inside = std::max(0.0, half - size.width() / 2);
  const double beyond = half + size.width() / 2 + kAbove;
  places.push_back(below);
  for (const QPointF row : {label.centre, below}) {
    for (const double aside : {inside / 2, -inside / 2, inside, -inside}) {
      if (aside != 0) places.push_back(row + along * aside);
    }
  }
  for (const double aside : {beyond, -beyond})
    places.push_back(view.toScreen(note.textAt) + along * aside);
  for (const double steps : {1.0, 2.0, 3.0}) {
    for (const double aside : {0.0, 0.5, -0.5, 1.0, -1.0}) {
      for (const QPointF row : {label.centre + step * steps, below - step * steps})
        places.push_back(row + along * (aside * size.width()));
    }
  }
  return places;
}

namespace {

/// Where the text's own place is out of sight, it stands at the end of what is seen of the line: a
/// line without a text tells nothing. False when nothing of it is seen.
bool bringInSight(NoteDrawing& note, const View& view) {
  constexpr double kLeast = 12; // pixels of a line
  const QRectF window(QPointF(0, 0), view.size());
  if (window.contains(noteLabel(note, view).centre)) return true;
  const QLineF seen = clipped({view.toScreen(note.lineFrom), view.toScreen(note.lineTo)}, window);
  if (seen.length() < kLeast) return false;
  note.textAt = view.toSite(note.lettered ? seen.p2() : seen.center());
  return true;
}

} // namespace

std::vector<NoteDrawing> notesInSight(const Scene& scene, const View& view) {
  std::vector<NoteDrawing> notes = noteDrawings(scene.plan());
  std::erase_if(
      notes, [&](NoteDrawing& note) { return !scene.shows(note.id) || !bringInSight(note, view); });
  return notes;
}

std::vector<QLineF> noteLines(const NoteDrawing& note, const View& view) {
  const QPointF from = view.toScreen(note.lineFrom), to = view.toScreen(note.lineTo);
  if (note.lettered) return {{from, to}};
  return {{from, to}, {view.toScreen(note.from), from}, {view.toScreen(note.to), to}};
}

} // namespace sump
