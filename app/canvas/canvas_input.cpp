// Mouse, wheel, fingers and keys on the drawing.

#include "app/canvas/canvas.h"

#include "app/canvas/drawn_lines.h"
#include "app/canvas/grid.h"

#include "app/plain_text.h"
#include "core/plan/edits_group.h"
#include "core/plan/edits_objects.h"
#include "core/units/print.h"

#include <QGestureEvent>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QToolTip>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>
#include <map>

namespace sump {

namespace {

constexpr double kWheelStep = 1.25; // zoom for a notch of the wheel
constexpr QSizeF kCursor(14, 22);   // of the pointer, right and down of its tip

} // namespace

Pointer Canvas::pointerOf(const QMouseEvent& event) const {
  return {event.position(), view_.toSite(event.position()), event.modifiers()};
}

void Canvas::showCursor() {
  if (panning_) {
    setCursor(Qt::ClosedHandCursor);
  } else if (spaceHeld_) {
    setCursor(Qt::OpenHandCursor);
  } else {
    setCursor(tool_->cursor());
  }
}

void Canvas::mousePressEvent(QMouseEvent* event) {
  const bool leftPan = event->button() == Qt::LeftButton && spaceHeld_;
  if (event->button() == Qt::MiddleButton || leftPan) {
    panning_ = true;
    panFrom_ = event->position();
    showCursor();
  } else if (event->button() == Qt::LeftButton) {
    toolPressed_ = true;
    setFocus();
    tool_->press(pointerOf(*event));
    shutEntry(); // a click takes what was typed
  }
}

void Canvas::mouseMoveEvent(QMouseEvent* event) {
  pointer_ = event->position();
  tellCoordinates(event->position());
  if (panning_) {
    panBy(event->position() - panFrom_);
    panFrom_ = event->position();
    return;
  }
  tool_->move(pointerOf(*event));
}

void Canvas::mouseReleaseEvent(QMouseEvent* event) {
  if (panning_ && (event->button() == Qt::MiddleButton || event->button() == Qt::LeftButton)) {
    panning_ = false;
    showCursor();
  } else if (event->button() == Qt::LeftButton && toolPressed_) {
    toolPressed_ = false;
    tool_->release(pointerOf(*event));
  }
}

void Canvas::mouseDoubleClickEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton && !spaceHeld_) tool_->doubleClick(pointerOf(*event));
}

void Canvas::wheelEvent(QWheelEvent* event) {
  // A touch pad scrolls in pixels and pans; a wheel turns in notches and zooms.
  const bool pad = !event->pixelDelta().isNull() && event->phase() != Qt::NoScrollPhase;
  if (pad && !event->modifiers().testFlag(Qt::ControlModifier)) {
    panBy(event->pixelDelta());
  } else {
    zoomAt(event->position(), std::pow(kWheelStep, event->angleDelta().y() / 120.0));
  }
  event->accept();
}

bool Canvas::event(QEvent* event) {
  if (event->type() == QEvent::FontChange) repaintAll();
  if (event->type() == QEvent::Gesture) {
    pinch(static_cast<QGestureEvent*>(event));
    return true;
  }
  if (event->type() == QEvent::NativeGesture) {
    if (nativeGesture(static_cast<QNativeGestureEvent*>(event))) return true;
  }
  if (event->type() == QEvent::ToolTip) {
    const auto* help = static_cast<QHelpEvent*>(event);
    const QString name = tool_->busy() ? QString() : nameAt(help->pos());
    name.isEmpty() ? QToolTip::hideText() : QToolTip::showText(help->globalPos(), name, this);
    return true;
  }
  if (event->type() == QEvent::ShortcutOverride &&
      tool_->claims(static_cast<QKeyEvent*>(event)->key())) {
    event->accept();
    return true;
  }
  return QWidget::event(event);
}

/// Of what lies there, where its name has no room on the drawing.
QString Canvas::nameAt(QPointF at) const {
  if (!scene_) return {};
  const Id object = scene_->objectAt(view_.toSite(at), kReachPixels / view_.scale());
  const bool named =
      std::ranges::any_of(drawn_.names, [&](const Label& label) { return label.object == object; });
  return object.empty() || named ? QString() : fullName(*scene_, object);
}

void Canvas::pinch(QGestureEvent* event) {
  if (auto* pinch = static_cast<QPinchGesture*>(event->gesture(Qt::PinchGesture))) {
    zoomAt(mapFromGlobal(pinch->centerPoint()), pinch->scaleFactor());
    panBy(pinch->centerPoint() - pinch->lastCenterPoint());
  }
}

bool Canvas::nativeGesture(QNativeGestureEvent* event) {
  if (event->gestureType() != Qt::ZoomNativeGesture) return false;
  zoomAt(event->position(), 1 + event->value());
  return true;
}

/// A digit opens the entry at its first field, E at the east coordinate, I at the invert or level.
bool Canvas::openEntry(const QKeyEvent& event) {
  const QString text = event.text().toUpper();
  const auto modifiers = event.modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier);
  if (text.size() != 1 || modifiers != Qt::NoModifier) return false;
  const bool digit = text[0].isDigit() || text[0] == '.' || text[0] == '-';
  const std::vector<EntryField> fields = tool_->entryFields();
  std::size_t first = 0;
  if (!digit) {
    const EntryKey key = text == "E" ? EntryKey::East : EntryKey::Level;
    if (text != "E" && text != "I") return false;
    first =
        static_cast<std::size_t>(std::ranges::find(fields, key, &EntryField::key) - fields.begin());
  }
  if (first >= fields.size()) return false;
  if (!labels_) repaint(); // it keeps off the names
  const auto place = [this] { return entryPlace(); };
  entry_->open(fields, plan().project.units, digit ? text : QString(), place, first);
  update(); // texts make room for it
  return true;
}

/// Beside what is being typed, which stays in sight, and off the drawing's texts.
EntryPlace Canvas::entryPlace() const {
  EntryPlace place{pointer_, linesUnderWay(), {QRectF(pointer_, kCursor)}, {}, lines_.get()};
  place.names = nameBoxes();
  for (const QRectF& mark : drawn_.marks)
    place.names.emplace_back(mark);
  place.names.emplace_back(drawn_.scaleBar);
  for (const Polyline& line : tool_->underWay()) {
    if (!line.empty()) place.at = view_.toScreen(line.back());
  }
  return place;
}

std::vector<QPolygonF> Canvas::shapesUnderWay() const {
  std::vector<QPolygonF> shapes;
  for (const Polyline& line : tool_->underWay())
    shapes.push_back(view_.toScreen(line));
  return shapes;
}

std::vector<QLineF> Canvas::linesUnderWay() const {
  std::vector<QLineF> lines;
  for (const QPolygonF& shape : shapesUnderWay()) {
    for (qsizetype i = 1; i < shape.size(); ++i)
      lines.emplace_back(shape[i - 1], shape[i]);
  }
  return lines;
}

void Canvas::shutEntry() {
  if (!entry_->isVisible()) return;
  entry_->shut();
  setFocus();
  tool_->typing({});
  refresh();
}

void Canvas::enterTyped(Qt::KeyboardModifiers modifiers) {
  const QString before = toolText("This place cannot be reached with these values.");
  if (tool_->enter(entry_->values(), modifiers)) {
    shutEntry();
  } else {
    entry_->complain(before);
    update();
  }
}

/// A step of the grid; with Shift a tenth of it, with Ctrl ten.
void Canvas::nudge(Point2 direction, Qt::KeyboardModifiers modifiers) {
  double step = gridSteps(view_.scale(), plan().project.units).minor;
  if (modifiers.testFlag(Qt::ShiftModifier)) step /= 10;
  if (modifiers.testFlag(Qt::ControlModifier)) step *= 10;
  const std::set<Id> ids = unlocked(plan(), selection_);
  if (ids.empty()) return emit refused(tr("What is selected is locked."));
  commit(tr("Nudge"), moveObjects(plan(), ids, direction * step));
}

bool Canvas::arrow(const QKeyEvent& event) {
  constexpr double kPan = 60; // pixels
  static const std::map<int, Point2> directions = {{Qt::Key_Left, {-1, 0}},
                                                   {Qt::Key_Right, {1, 0}},
                                                   {Qt::Key_Up, {0, 1}},
                                                   {Qt::Key_Down, {0, -1}}};
  const auto it = directions.find(event.key());
  if (it == directions.end()) return false;
  const Point2 d = it->second;
  if (selection_.empty() || tool_->busy() || !tool_->nudges()) {
    panBy({-d.x * kPan, d.y * kPan});
  } else {
    nudge(d, event.modifiers());
  }
  return true;
}

void Canvas::keyPressEvent(QKeyEvent* event) {
  if (entry_->isVisible()) return entry_->take(event);
  if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
    spaceHeld_ = true;
    return showCursor();
  }
  if (tool_->key(event->key(), event->modifiers())) return refresh();
  if (openEntry(*event)) return;
  if (event->key() == Qt::Key_Escape) emit toolGivenUp();
  if (!arrow(*event)) QWidget::keyPressEvent(event);
}

void Canvas::keyReleaseEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
    spaceHeld_ = false;
    showCursor();
  }
  QWidget::keyReleaseEvent(event);
}

void Canvas::contextMenuEvent(QContextMenuEvent* event) {
  if (!tool_->busy()) emit contextMenuWanted(event->globalPos());
}

void Canvas::tellCoordinates(QPointF at) {
  const UnitSystem units = document_.shown().project.units;
  const Point2 site = view_.toSite(at);
  QString text =
      tr("E %1   N %2")
          .arg(q(printElevation(metres(site.x), units)), q(printElevation(metres(site.y), units)));
  if (scene_) {
    if (const auto grade = scene_->study().ground.elevation(site))
      text += tr("   grade %1").arg(q(printElevation(metres(*grade), units)));
  }
  text += units == UnitSystem::Metric ? tr("  m") : tr("  ft");
  emit pointerMoved(text);
}

} // namespace sump
