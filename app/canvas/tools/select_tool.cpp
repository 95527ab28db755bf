#include "app/canvas/tools/select_tool.h"

#include <QApplication>

#include <algorithm>

namespace sump {

namespace {

Box boxBetween(Point2 a, Point2 b) {
  return {{std::min(a.x, b.x), std::min(a.y, b.y)}, {std::max(a.x, b.x), std::max(a.y, b.y)}};
}

/// Buildings and paving cover much of a site: they are picked by a click, not dragged by accident.
bool isBackdrop(const Plan& plan, const Id& id) {
  return plan.buildings.find(id) != nullptr || plan.pavements.find(id) != nullptr;
}

} // namespace

void SelectTool::press(const Pointer& pointer) {
  start_ = now_ = pointer;
  pressedEmpty_ = boxing_ = moving_ = false;
  if (host().scene() == nullptr) return;
  const Id hit = host().scene()->objectAt(pointer.site, kReachPixels / host().view().scale());
  if (pointer.modifiers.testFlag(Qt::ShiftModifier)) {
    if (!hit.empty() && !isBackdrop(host().plan(), hit)) {
      toggle(hit);
    } else {
      pressedEmpty_ = true;
    }
    return;
  }
  const bool chosen = host().selection().contains(hit);
  if (hit.empty() || (isBackdrop(host().plan(), hit) && !chosen)) {
    pressedEmpty_ = true;
    return;
  }
  if (!chosen) host().select({hit});
  moving_ = true;
  mover_.press(pointer);
}

void SelectTool::move(const Pointer& pointer) {
  now_ = pointer;
  if (moving_) {
    mover_.move(pointer);
  } else if (pressedEmpty_) {
    const double pixels = (pointer.screen - start_.screen).manhattanLength();
    boxing_ = boxing_ || pixels >= QApplication::startDragDistance();
    if (boxing_) host().refresh();
  }
}

void SelectTool::release(const Pointer& pointer) {
  if (moving_) {
    moving_ = false;
    mover_.release(pointer);
  } else if (pressedEmpty_) {
    pressedEmpty_ = false;
    finishBox(pointer);
  }
}

void SelectTool::finishBox(const Pointer& pointer) {
  const bool add = pointer.modifiers.testFlag(Qt::ShiftModifier);
  std::set<Id> found = add ? host().selection() : std::set<Id>();
  if (boxing_) {
    const bool touching = pointer.modifiers.testFlag(Qt::ControlModifier);
    for (const Id& id : host().scene()->objectsIn(boxBetween(start_.site, pointer.site), touching))
      found.insert(id);
  } else {
    const Id hit = host().scene()->objectAt(pointer.site, kReachPixels / host().view().scale());
    if (!hit.empty()) found.insert(hit);
  }
  boxing_ = false;
  host().select(std::move(found));
  host().refresh();
}

void SelectTool::toggle(const Id& id) {
  std::set<Id> ids = host().selection();
  if (ids.erase(id) == 0) ids.insert(id);
  host().select(std::move(ids));
}

bool SelectTool::key(int key, Qt::KeyboardModifiers modifiers) {
  if (moving_ && mover_.key(key, modifiers)) {
    moving_ = false;
    return true;
  }
  if (key != Qt::Key_Escape) return false;
  if (busy() || pressedEmpty_) {
    cancel();
  } else {
    host().select({});
  }
  return true;
}

void SelectTool::cancel() {
  if (moving_) mover_.cancel();
  moving_ = boxing_ = pressedEmpty_ = false;
  host().refresh();
}

void SelectTool::paint(QPainter& painter, const CanvasTheme& theme) const {
  if (moving_) mover_.paint(painter, theme);
  if (!boxing_) return;
  QColor fill = theme.accent;
  fill.setAlpha(28);
  const bool touching = now_.modifiers.testFlag(Qt::ControlModifier);
  painter.setPen(QPen(theme.accent, 1, touching ? Qt::DashLine : Qt::SolidLine));
  painter.setBrush(fill);
  painter.drawRect(QRectF(host().view().toScreen(start_.site), now_.screen).normalized());
}

QString SelectTool::hint() const {
  if (moving_ && mover_.busy()) return mover_.hint();
  return toolText("Click an object to select it, drag to move it; Shift adds. Drag a box "
                  "on open ground for what is inside it, with Ctrl for all that it touches.");
}

} // namespace sump
