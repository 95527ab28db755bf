#include "app/canvas/tools/insert_tool.h"

#include "app/canvas/live_dimensions.h"

namespace sump {

std::vector<Handle> InsertTool::handles() const {
  return what_.drags ? handlesOf(host().plan(), *what_.drags) : std::vector<Handle>();
}

std::optional<Insertion> InsertTool::asked(QString& why) const {
  return what_.at(host(), {pointer_, typed_, kind_}, why);
}

void InsertTool::press(const Pointer& pointer) {
  pointer_ = pointer;
  now_.reset();
  if (drag_.press(pointer, handles())) return host().refresh();
  pressed_ = true;
  QString why;
  now_ = asked(why);
  host().refresh();
}

void InsertTool::move(const Pointer& pointer) {
  pointer_ = pointer;
  if (drag_.pressed()) return drag_.move(pointer);
  if (!pressed_) drag_.hover(pointer, handles());
  QString why;
  now_ = drag_.hovering() && !pressed_ ? std::nullopt : asked(why);
  host().refresh();
}

void InsertTool::release(const Pointer& pointer) {
  pointer_ = pointer;
  if (drag_.pressed()) return drag_.release(pointer);
  if (!pressed_) return;
  pressed_ = false;
  insert();
}

bool InsertTool::insert() {
  QString why;
  const std::optional<Insertion> made = asked(why);
  now_.reset();
  if (!made) {
    host().refuse(why);
    return false;
  }
  if (!host().commit(what_.step, made->plan)) return false;
  typed_.clear();
  last_ = made->made;
  host().select(made->shown);
  host().refresh();
  return true;
}

bool InsertTool::takeLast() {
  for (const Handle& h : handles()) {
    if (last_.empty() || h.part != last_) continue;
    drag_.take(h);
    return true;
  }
  return false;
}

bool InsertTool::key(int key, Qt::KeyboardModifiers modifiers) {
  if (drag_.key(key, modifiers)) return true;
  if (erases(key) && what_.drags) {
    if (!takeLast() || !drag_.key(key, modifiers))
      host().refuse(toolText("Click the part that is to go, then press Delete."));
    return true;
  }
  if (key != Qt::Key_Escape || !pressed_) return false;
  cancel();
  return true;
}

std::vector<EntryField> InsertTool::entryFields() const {
  return drag_.taken() ? drag_.entryFields() : what_.fields;
}

std::vector<Polyline> InsertTool::underWay() const {
  if (!now_) return drag_.underWay();
  std::vector<Polyline> lines{now_->ghost};
  for (const auto& [from, to] : now_->gaps)
    lines.push_back({from, to});
  lines.push_back({now_->at});
  return lines;
}

void InsertTool::typing(const Entry& entry) {
  if (drag_.taken()) return drag_.typing(entry);
  typed_ = entry;
  QString why;
  now_ = asked(why);
  host().refresh();
}

bool InsertTool::enter(const Entry& entry, Qt::KeyboardModifiers) {
  if (drag_.taken()) return drag_.enter(entry);
  typed_ = entry;
  return insert();
}

void InsertTool::cancel() {
  drag_.cancel();
  pressed_ = false;
  typed_.clear();
  now_.reset();
  host().refresh();
}

void InsertTool::paint(Overlay& overlay) const {
  QPainter& painter = overlay.painter();
  const CanvasTheme& theme = overlay.theme();
  const View& view = host().view();
  drag_.paint(overlay, handles());
  if (!now_) return;
  QColor fill = theme.accent;
  fill.setAlpha(60);
  painter.setPen(QPen(theme.accent, 2));
  painter.setBrush(fill);
  if (now_->ghost.size() > 2) {
    painter.drawPolygon(view.toScreen(now_->ghost));
  } else if (now_->ghost.size() == 2) {
    painter.drawLine(view.toScreen(now_->ghost[0]), view.toScreen(now_->ghost[1]));
  }
  for (const auto& [from, to] : now_->gaps)
    paintDimension(overlay, from, to, host().plan().project.units);
  if (!now_->tag.isEmpty()) overlay.tag(view.toScreen(now_->at), now_->tag, QPointF(0, -20));
}

QString InsertTool::hint() const {
  const QString own = drag_.hint();
  return own.isEmpty() ? what_.hint : own;
}

std::vector<Choice> InsertTool::choices() const {
  if (what_.kindLabel.isEmpty()) return {};
  return {{what_.kindLabel, what_.kinds, kind_, what_.kindTip}};
}

void InsertTool::choose(std::size_t, int item) {
  kind_ = item;
  host().refresh();
}

} // namespace sump
