#include "app/canvas/measure_tool.h"

#include "app/canvas/live_dimensions.h"

#include "app/plain_text.h"
#include "core/units/print.h"

namespace sump {

QStringList measured(const Plan& plan, const Surface* ground, Point2 from, Point2 to) {
  const UnitSystem units = plan.project.units;
  const auto length = [units](double v) { return q(printLength(metres(v), units)); };
  QStringList lines;
  lines << length(distance(from, to));
  lines << stepsBetween(from, to, plan);
  if (distance(from, to) > 0) lines << toolText("Bearing %1").arg(bearingText(from, to, plan));
  if (ground == nullptr) return lines;
  const auto start = ground->elevation(from), end = ground->elevation(to);
  if (start && end) {
    lines << toolText("Ground %1 to %2: %3")
                 .arg(q(printElevation(metres(*start), units)),
                      q(printElevation(metres(*end), units)), length(*end - *start));
  } else {
    lines << toolText("Ground: not known at both ends");
  }
  return lines;
}

QStringList MeasureTool::lines() const {
  const Surface* ground = host().scene() != nullptr ? &host().scene()->study().ground : nullptr;
  const Point2 to = to_ ? to_->at : hover_ ? hover_->at : from_->at;
  return measured(host().plan(), ground, from_->at, to);
}

void MeasureTool::move(const Pointer& pointer) {
  hover_ = catchPlace(host(), pointer, last());
  host().refresh();
}

/// From where the tape is drawn at this moment.
std::optional<Point2> MeasureTool::last() const {
  return busy() ? std::optional(from_->at) : std::nullopt;
}

void MeasureTool::release(const Pointer& pointer) {
  hover_ = catchPlace(host(), pointer, last());
  if (!from_ || to_) {
    from_ = hover_;
    to_.reset();
  } else {
    to_ = hover_;
  }
  host().refresh();
}

std::vector<Polyline> MeasureTool::underWay() const {
  if (!from_) return {};
  return {{from_->at, to_ ? to_->at : hover_.value_or(*from_).at}};
}

bool MeasureTool::key(int key, Qt::KeyboardModifiers) {
  if (key != Qt::Key_Escape || !from_) return false;
  cancel();
  return true;
}

void MeasureTool::cancel() {
  from_.reset();
  to_.reset();
  host().refresh();
}

void MeasureTool::paint(Overlay& overlay) const {
  QPainter& painter = overlay.painter();
  const CanvasTheme& theme = overlay.theme();
  const View& view = host().view();
  if (!from_) {
    if (hover_) paintPlace(overlay, *hover_);
    return;
  }
  const PlaceCatch end = to_ ? *to_ : hover_.value_or(*from_);
  const QPointF a = view.toScreen(from_->at), b = view.toScreen(end.at);
  painter.setPen(QPen(theme.accent, 1, Qt::DotLine));
  painter.drawPolyline(QPolygonF({a, QPointF(b.x(), a.y()), b}));
  painter.setPen(QPen(theme.accent, 2));
  painter.drawLine(a, b);
  PlaceCatch unnamed = end;
  unnamed.name.clear(); // the plate stands where its name would
  paintPlace(overlay, {from_->object, from_->at, {}});
  paintPlace(overlay, unnamed);
  overlay.plate(b, lines());
}

QString MeasureTool::hint() const {
  if (!from_) {
    return toolText("Click the place to measure from; corners, middles, centres and edges are "
                    "caught. Alt: exactly at the pointer. Shift: straight or 45°. Esc ends it.");
  }
  return lines().join(toolText(";  "));
}

} // namespace sump
