#include "app/canvas/note_tool.h"

#include "app/canvas/mark_painter.h"
#include "app/canvas/notes.h"

#include "core/plan/edits.h"
#include "core/plan/edits_objects.h"
#include "core/plan/note_ends.h"

namespace sump {

void NoteTool::move(const Pointer& pointer) {
  pointer_ = pointer.site;
  hover_ = catchPlace(host(), pointer, from_ ? std::optional(from_->at) : std::nullopt);
  host().refresh();
}

void NoteTool::release(const Pointer& pointer) {
  pointer_ = pointer.site;
  hover_ = catchPlace(host(), pointer, from_ ? std::optional(from_->at) : std::nullopt);
  if (!from_) {
    from_ = hover_;
  } else if (!to_) {
    to_ = hover_;
  } else {
    place(pointer.site);
  }
  host().refresh();
}

std::vector<Polyline> NoteTool::underWay() const {
  if (!from_) return {};
  return {{from_->at, to_ ? to_->at : hover_.value_or(*from_).at, pointer_}};
}

bool NoteTool::key(int key, Qt::KeyboardModifiers) {
  if (key == Qt::Key_Escape && from_) {
    cancel();
    return true;
  }
  if (key == Qt::Key_Backspace && from_) {
    if (to_) {
      to_.reset();
    } else {
      from_.reset();
    }
    return true;
  }
  return false;
}

void NoteTool::cancel() {
  from_.reset();
  to_.reset();
  host().refresh();
}

bool NoteTool::lettered() const {
  constexpr double kSamePlace = 1e-6; // m
  return to_ && distance(from_->at, to_->at) < kSamePlace;
}

DimensionNote NoteTool::note(Point2 pointer) const {
  const Plan& plan = host().plan();
  DimensionNote made;
  made.id = freshId(plan, "DN");
  made.from = noteEndAt(plan, from_->object, from_->at);
  made.to = noteEndAt(plan, to_->object, to_->at);
  if (lettered()) {
    made.to = made.from;
    made.offset = metres(pointer.y - from_->at.y);
    made.text = toolText("Note").toStdString();
    return made;
  }
  const Point2 along = (to_->at - from_->at) * (1 / distance(from_->at, to_->at));
  made.offset = metres(cross(along, pointer - from_->at));
  return made;
}

void NoteTool::place(Point2 pointer) {
  const DimensionNote made = note(pointer);
  cancel();
  const QString step = made.from == made.to ? toolText("Place note") : toolText("Place dimension");
  if (host().commit(step, withObject(host().plan(), made))) host().select({made.id});
}

void NoteTool::paint(Overlay& overlay) const {
  QPainter& painter = overlay.painter();
  const CanvasTheme& theme = overlay.theme();
  const View& view = host().view();
  if (!to_ && hover_) paintPlace(overlay, *hover_);
  if (!from_) return;
  paintPlace(overlay, {from_->object, from_->at, {}});
  if (!to_) {
    if (!hover_) return;
    painter.setPen(QPen(theme.accent, 1, Qt::DashLine));
    painter.drawLine(view.toScreen(from_->at), view.toScreen(hover_->at));
    return;
  }
  const NoteDrawing drawing =
      noteDrawing(note(pointer_), from_->at, to_->at, host().plan().project.units);
  painter.setPen(QPen(theme.accent, 1.5));
  painter.drawLine(view.toScreen(drawing.from), view.toScreen(drawing.lineFrom));
  painter.drawLine(view.toScreen(drawing.to), view.toScreen(drawing.lineTo));
  painter.drawLine(view.toScreen(drawing.lineFrom), view.toScreen(drawing.lineTo));
  const Label label = noteLabel(drawing, view);
  overlay.keepClear(labelBox(label, painter.font()).boundingRect());
  paintLabels(painter, {label}, theme);
}

QString NoteTool::hint() const {
  if (!from_) {
    return toolText("Click the place to measure from. A dimension on an object follows it. Click "
                    "the same place twice for a lettered note. Alt: no catching. Esc ends it.");
  }
  if (!to_)
    return toolText("Click the place to measure to. Shift: straight or 45°. Backspace takes the "
                    "first one back; Esc gives it up.");
  return toolText("Click where the dimension line stands. Backspace: one back. Esc gives it up.");
}

} // namespace sump
