#include "app/canvas/tools/place_tool.h"

namespace sump {

void PlaceTool::move(const Pointer& pointer) {
  at_ = onGrid(host(), pointer.site, pointer.modifiers);
  host().refresh();
}

void PlaceTool::release(const Pointer& pointer) {
  const Point2 at = onGrid(host(), pointer.site, pointer.modifiers);
  Id made;
  Plan next = what_.make(host(), model_, at, angle(), made);
  if (host().commit(what_.step, std::move(next))) host().select({made});
}

bool PlaceTool::key(int key, Qt::KeyboardModifiers) {
  if (key != Qt::Key_T || !what_.turns) return false;
  quarter_ = (quarter_ + 1) % 4;
  host().refresh();
  return true;
}

void PlaceTool::cancel() {
  at_.reset();
  host().refresh();
}

void PlaceTool::paint(QPainter& painter, const CanvasTheme& theme) const {
  if (!at_) return;
  const View& view = host().view();
  const Ring ghost = what_.ghost(host(), model_, *at_, angle());
  QColor fill = theme.accent;
  fill.setAlpha(40);
  painter.setPen(QPen(theme.accent, 1.5));
  painter.setBrush(fill);
  if (ghost.empty()) {
    painter.drawEllipse(view.toScreen(*at_), 6, 6);
    return;
  }
  painter.drawPolygon(view.toScreen(ghost));
  if (!what_.turns) return;
  // The side that it faces: the far end of its local x.
  const Point2 middle = lerp(ghost[0], ghost[2], 0.5), front = lerp(ghost[1], ghost[2], 0.5);
  painter.drawLine(view.toScreen(middle), view.toScreen(front));
  painter.setBrush(theme.accent);
  painter.drawEllipse(view.toScreen(front), 4, 4);
}

std::vector<Choice> PlaceTool::choices() const {
  std::vector<Choice> all;
  if (!what_.modelLabel.isEmpty()) {
    QStringList names(what_.models.begin(), what_.models.end());
    all.push_back({what_.modelLabel, names, model_, toolText("What is placed at the next click")});
  }
  if (what_.turns) {
    all.push_back({toolText("Facing"),
                   {toolText("East"), toolText("North"), toolText("West"), toolText("South")},
                   quarter_,
                   toolText("Which way its length points; a vault flows that way. T turns it.")});
  }
  return all;
}

void PlaceTool::choose(std::size_t choice, int item) {
  const bool model = choice == 0 && !what_.modelLabel.isEmpty();
  (model ? model_ : quarter_) = item;
  host().refresh();
}

} // namespace sump
