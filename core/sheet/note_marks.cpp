#include "core/sheet/note_marks.h"

#include "core/plan/ends.h"
#include "core/sheet/mark_pen.h"
#include "core/units/print.h"

namespace sump {

namespace {

// Dimension lines and oblique strokes after ISO 129-1 (from memory): thin continuous lines that
// start a gap away from the object and run a little past the dimension line.
const LineStyle kNoteThin{Ink::Black, 0.25, {}};
constexpr double kNoteGap = 0.08;
constexpr double kPast = 0.12;
constexpr double kStroke = 0.1;        // half of it
constexpr double kOneNotePlace = 1e-6; // m; ends nearer than this are one place

Point2 leftOf(Point2 v) {
  return {-v.y, v.x};
}

/// Texts read from the bottom or from the right of the sheet (ISO 129-1, from memory).
Point2 readable(Point2 along) {
  constexpr double kUpright = 1e-9;
  const bool backward = along.x < -kUpright || (along.x <= kUpright && along.y < 0);
  return backward ? along * -1 : along;
}

/// From the object to the dimension line, on whichever side that is.
void extensionLine(MarkPen& pen, Point2 object, Point2 end) {
  const double length = distance(object, end);
  if (length <= kNoteGap) return;
  const Point2 out = (end - object) * (1 / length);
  pen.path({object + out * kNoteGap, end + out * kPast}, kNoteThin);
}

void markDimension(const NoteDrawing& note, MarkPen& pen) {
  extensionLine(pen, note.from, note.lineFrom);
  extensionLine(pen, note.to, note.lineTo);
  const Point2 along = (note.lineTo - note.lineFrom) * (1 / distance(note.lineFrom, note.lineTo));
  pen.path({note.lineFrom - along * kPast, note.lineTo + along * kPast}, kNoteThin);
  const Point2 stroke = (along + leftOf(along)) * kStroke;
  for (Point2 end : {note.lineFrom, note.lineTo})
    pen.path({end - stroke, end + stroke}, LineStyle{Ink::Black, 0.5, {}});
}

} // namespace

NoteDrawing noteDrawing(const DimensionNote& note, Point2 from, Point2 to, UnitSystem units) {
  NoteDrawing d;
  d.id = note.id;
  d.from = from;
  d.to = to;
  const double length = distance(from, to);
  d.lettered = length < kOneNotePlace;
  d.text = note.text.empty() ? printLength(metres(length), units) : note.text;
  if (d.lettered) {
    d.lineFrom = from;
    d.lineTo = d.textAt = from + Point2{0, inMetres(note.offset)};
    d.along = {1, 0};
    return d;
  }
  const Point2 along = (to - from) * (1 / length);
  const Point2 aside = leftOf(along) * inMetres(note.offset);
  d.lineFrom = from + aside;
  d.lineTo = to + aside;
  d.textAt = lerp(d.lineFrom, d.lineTo, 0.5);
  d.along = readable(along);
  return d;
}

std::vector<NoteDrawing> noteDrawings(const Plan& plan) {
  std::vector<NoteDrawing> drawings;
  if (plan.notes.empty()) return drawings;
  const Locator locator(plan);
  for (const DimensionNote& note : plan.notes) {
    const std::optional<Point2> from = locator.position(note.from), to = locator.position(note.to);
    if (from && to) drawings.push_back(noteDrawing(note, *from, *to, plan.project.units));
  }
  return drawings;
}

void markNotes(const Plan& plan, std::vector<Mark>& marks) {
  for (const NoteDrawing& note : noteDrawings(plan)) {
    MarkPen pen(marks, note.id, Layer::Note);
    if (!note.lettered) {
      markDimension(note, pen);
      continue;
    }
    pen.circle(note.from, 0.02, kNoteThin, FillStyle{Ink::Black}); // as the dot of a leader
    if (distance(note.lineFrom, note.lineTo) > kOneNotePlace) {
      pen.path({note.lineFrom, note.lineTo}, kNoteThin);
    }
  }
}

} // namespace sump
