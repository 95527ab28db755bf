#include "app/canvas/tools/move_tool.h"

#include "core/plan/edits_objects.h"
#include "core/units/print.h"

#include <QApplication>

namespace sump {

void MoveTool::press(const Pointer& pointer) {
  if (host().scene() == nullptr) return;
  const double reach = kReachPixels / host().view().scale();
  const Id hit = host().scene()->objectAt(pointer.site, reach);
  if (!hit.empty() && !host().selection().contains(hit)) host().select({hit});
  pressed_ = !host().selection().empty();
  dragging_ = false;
  start_ = pointer;
  by_ = {};
}

void MoveTool::move(const Pointer& pointer) {
  if (!pressed_) return;
  const double pixels = (pointer.screen - start_.screen).manhattanLength();
  if (!dragging_ && pixels < QApplication::startDragDistance()) return;
  dragging_ = true;
  show(onGrid(host(), pointer.site - start_.site, pointer.modifiers));
}

void MoveTool::show(Point2 by) {
  if (by == by_) return;
  by_ = by;
  host().preview(moveObjects(host().plan(), host().selection(), by_));
  host().refresh();
}

void MoveTool::release(const Pointer&) {
  const bool moved = dragging_ && !(by_ == Point2{});
  pressed_ = dragging_ = false;
  if (moved) {
    host().commit(toolText("Move"), moveObjects(host().plan(), host().selection(), by_));
  } else {
    host().preview(std::nullopt);
  }
  host().refresh();
}

bool MoveTool::key(int key, Qt::KeyboardModifiers) {
  if (key != Qt::Key_Escape || !pressed_) return false;
  cancel();
  return true;
}

void MoveTool::cancel() {
  pressed_ = dragging_ = false;
  host().preview(std::nullopt);
  host().refresh();
}

void MoveTool::paint(QPainter& painter, const CanvasTheme& theme) const {
  if (!dragging_) return;
  const View& view = host().view();
  painter.setPen(QPen(theme.accent, 1, Qt::DashLine));
  painter.setBrush(Qt::NoBrush);
  painter.drawLine(view.toScreen(start_.site), view.toScreen(start_.site + by_));
  // The reviewed drawing follows a moment later; outlines follow the pointer at once.
  for (const Id& id : host().selection()) {
    if (const Vault* v = host().plan().vaults.find(id)) {
      Ring ring = outline(*v);
      for (Point2& p : ring)
        p = p + by_;
      painter.drawPolygon(view.toScreen(ring));
    }
  }
}

QString MoveTool::hint() const {
  if (!dragging_) {
    return toolText("Drag an object, or what is selected, to its new place. Ctrl: off the grid.");
  }
  const UnitSystem units = host().plan().project.units;
  return toolText("%1 east, %2 north. Release to keep, Esc to put it back.")
      .arg(QString::fromStdString(printLength(metres(by_.x), units)),
           QString::fromStdString(printLength(metres(by_.y), units)));
}

} // namespace sump
