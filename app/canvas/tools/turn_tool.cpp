#include "app/canvas/tools/turn_tool.h"

#include "app/canvas/live_dimensions.h"

#include "core/plan/edits_group.h"

namespace sump {

bool TurnTool::any() const {
  if (host().selection().empty()) {
    host().refuse(toolText("Select first what is to be turned."));
    return false;
  }
  if (!unlocked(host().plan(), host().selection()).empty()) return true;
  host().refuse(toolText("Locked: unlock it before it is turned."));
  return false;
}

void TurnTool::press(const Pointer& pointer) {
  start_ = pointer;
  if (host().selection().empty() && host().scene() != nullptr) {
    const Id hit = host().scene()->objectAt(pointer.site, kReachPixels / host().view().scale());
    if (!hit.empty()) host().select({hit});
  }
  pressed_ = any();
}

void TurnTool::pull(const Pointer& now, const Entry& typed) {
  const Handle whole{HandleKind::Turn, *host().selection().begin(), {}, 0, start_.site, {}};
  pull_ = pulled(host(), whole, start_, now, typed);
  host().preview(pull_->plan);
  host().refresh();
}

void TurnTool::move(const Pointer& pointer) {
  if (pressed_) pull(pointer, {});
}

void TurnTool::release(const Pointer&) {
  if (pressed_ && pull_) commit();
  pressed_ = false;
}

bool TurnTool::commit() {
  const Plan next = std::move(pull_->plan);
  pull_.reset();
  const bool kept = host().commit(toolText("Turn"), next);
  host().refresh();
  return kept;
}

bool TurnTool::key(int key, Qt::KeyboardModifiers) {
  if (key != Qt::Key_Escape || !pull_) return false;
  cancel();
  return true;
}

std::vector<EntryField> TurnTool::entryFields() const {
  return pullFields(host().plan(), {HandleKind::Turn, {}, {}, 0, {}, {}});
}

void TurnTool::typing(const Entry& entry) {
  if (!entry.empty() && !host().selection().empty()) return pull({}, entry);
  pull_.reset();
  host().preview(std::nullopt);
}

bool TurnTool::enter(const Entry& entry, Qt::KeyboardModifiers) {
  if (entry.empty() || !any()) return false;
  pull({}, entry);
  return commit();
}

void TurnTool::cancel() {
  pressed_ = false;
  pull_.reset();
  host().preview(std::nullopt);
  host().refresh();
}

void TurnTool::paint(Overlay& overlay) const {
  QPainter& painter = overlay.painter();
  const CanvasTheme& theme = overlay.theme();
  const std::set<Id> ids = unlocked(host().plan(), host().selection());
  const std::optional<Box> box = extentOf(host().plan(), ids);
  if (!box) return;
  const View& view = host().view();
  const QPointF middle = view.toScreen(lerp(box->low, box->high, 0.5));
  painter.setPen(QPen(theme.accent, 1.6));
  painter.setBrush(Qt::NoBrush);
  painter.drawEllipse(middle, 6, 6);
  painter.drawLine(middle - QPointF(10, 0), middle + QPointF(10, 0));
  painter.drawLine(middle - QPointF(0, 10), middle + QPointF(0, 10));
  overlay.keepMark(middle, 11);
  if (!pull_) return;
  if (pressed_) {
    painter.setPen(QPen(theme.accent, 1, Qt::DashLine));
    painter.drawLine(middle, view.toScreen(pull_->at));
  }
  overlay.tag(middle, pull_->tag, QPointF(0, -24));
}

QString TurnTool::hint() const {
  if (host().selection().empty())
    return toolText("Click what is to be turned; then drag, or type the angle. Esc ends it.");
  return toolText("Type the angle, counter-clockwise, and press Enter; or drag round the cross by "
                  "steps of 15°. Alt: any angle. Esc ends it.");
}

} // namespace sump
