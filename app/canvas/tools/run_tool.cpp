#include "app/canvas/tools/run_tool.h"

#include "app/canvas/mark_painter.h"
#include "app/canvas/tools/new_objects.h"

#include "core/plan/edits_objects.h"
#include "core/units/print.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kCatchPixels = 14;
/// Clicks closer than this are one corner; a run may not stand on its own foot.
constexpr double kSamePixels = 3;

QString q(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

void completeEnd(const ToolHost& host, Service service, RunEnd& end, bool atStart) {
  const Surface ground = host.scene() != nullptr ? host.scene()->study().ground : Surface();
  end.fitting = usualFitting(service, end, atStart);
  if (end.kind == EndKind::Chamber || end.kind == EndKind::Free) {
    end.invert = usualInvert(host.plan(), ground, service, end, atStart);
  }
}

void paintCatch(QPainter& painter, const View& view, const Catch& found, const CanvasTheme& theme) {
  const QPointF at = view.toScreen(found.at);
  painter.setBrush(Qt::NoBrush);
  if (found.end.kind == EndKind::Free) {
    painter.setPen(QPen(theme.accent, 1.5));
    painter.drawEllipse(at, 3, 3);
    return;
  }
  painter.setPen(QPen(theme.accent, 2));
  painter.drawRect(QRectF(at.x() - 7, at.y() - 7, 14, 14));
  painter.drawPoint(at);
  const QFontMetricsF metrics(painter.font());
  const QRectF box(at.x() + 12, at.y() - metrics.height() - 6,
                   metrics.horizontalAdvance(found.name) + 10, metrics.height() + 4);
  painter.setPen(Qt::NoPen);
  painter.setBrush(theme.accent);
  painter.drawRoundedRect(box, 3, 3);
  painter.setPen(theme.background);
  painter.drawText(box, Qt::AlignCenter, found.name);
}

} // namespace

Point2 onEighth(Point2 from, Point2 p) {
  const Point2 d = p - from;
  const double step = kPi / 4;
  const double angle = std::round(std::atan2(d.y, d.x) / step) * step;
  const Point2 u{std::cos(angle), std::sin(angle)};
  return from + u * dot(d, u);
}

RunTool::RunTool(ToolHost& host) : Tool(host) {
  setService(Service::Inlet);
}

void RunTool::setService(Service service) {
  service_ = service;
  const UsualPipe usual = usualPipe(service);
  pipeKey_ = usual.pipe;
  size_ = usual.size;
}

const PipeProduct* RunTool::pipe() const {
  return host().catalog().pipe(pipeKey_);
}

Catch RunTool::caughtAt(const Pointer& pointer) const {
  const double reach = kCatchPixels / host().view().scale();
  Catch found = catchEnd(host().plan(), pointer.site, reach, service_);
  if (found.end.kind != EndKind::Free) return found;
  const bool straight = start_ && pointer.modifiers.testFlag(Qt::ShiftModifier);
  found.at = straight ? onEighth(lastPoint(), pointer.site)
                      : onGrid(host(), pointer.site, pointer.modifiers);
  found.end.at = found.at;
  return found;
}

void RunTool::press(const Pointer& pointer) {
  const Catch found = caughtAt(pointer);
  now_ = found;
  if (!start_) {
    start_ = found;
    host().refresh();
    return;
  }
  if (distance(found.at, lastPoint()) * host().view().scale() < kSamePixels) return;
  const bool sameObject =
      found.end.target == start_->end.target && found.end.chamber == start_->end.chamber;
  if (found.end.kind != EndKind::Free && !sameObject) {
    finish(found);
  } else {
    corners_.push_back(found.at);
  }
  host().refresh();
}

void RunTool::move(const Pointer& pointer) {
  now_ = caughtAt(pointer);
  host().refresh();
}

void RunTool::doubleClick(const Pointer& pointer) {
  // The first of the two clicks has already set a corner here: it becomes the end.
  if (!start_) return;
  Catch end = caughtAt(pointer);
  if (!corners_.empty()) {
    end = Catch();
    end.end.at = end.at = corners_.back();
    corners_.pop_back();
  }
  finish(end);
}

bool RunTool::key(int key, Qt::KeyboardModifiers) {
  if (!start_) return false;
  switch (key) {
  case Qt::Key_Escape:
    cancel();
    return true;
  case Qt::Key_Backspace:
    takeBack();
    return true;
  case Qt::Key_Return:
  case Qt::Key_Enter: {
    if (corners_.empty()) return true; // one point is no run
    Catch end;
    end.end.at = end.at = corners_.back();
    corners_.pop_back();
    finish(end);
    return true;
  }
  default:
    return false;
  }
}

void RunTool::takeBack() {
  if (corners_.empty()) {
    start_.reset();
  } else {
    corners_.pop_back();
  }
  host().refresh();
}

void RunTool::cancel() {
  start_.reset();
  corners_.clear();
  now_.reset();
  host().refresh();
}

void RunTool::finish(const Catch& end) {
  if (distance(end.at, lastPoint()) <= 0) return;
  Run run;
  run.id = freshId(host().plan(), facts(service_).code);
  run.name = std::string(facts(service_).name);
  run.service = service_;
  run.pipe = pipeKey_;
  run.size = size_;
  run.from = start_->end;
  run.to = end.end;
  completeEnd(host(), service_, run.from, true);
  completeEnd(host(), service_, run.to, false);
  for (Point2 corner : corners_)
    run.vertices.push_back({corner, std::nullopt});
  Plan next = host().plan();
  const Id made = run.id;
  next.runs.append(std::move(run));
  if (!host().commit(toolText("Draw run"), std::move(next))) return;
  cancel();
  host().select({made});
}

void RunTool::paint(QPainter& painter, const CanvasTheme& theme) const {
  const View& view = host().view();
  if (start_) {
    std::vector<Point2> line = {start_->at};
    line.insert(line.end(), corners_.begin(), corners_.end());
    painter.setPen(screenPen(serviceLine(service_), theme));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(view.toScreen(line));
    painter.setPen(QPen(theme.accent, 1.2, Qt::DashLine));
    if (now_) painter.drawLine(view.toScreen(line.back()), view.toScreen(now_->at));
    painter.setBrush(theme.accent);
    painter.setPen(Qt::NoPen);
    for (Point2 p : line)
      painter.drawEllipse(view.toScreen(p), 3.5, 3.5);
  }
  if (now_) paintCatch(painter, view, *now_, theme);
}

QString RunTool::hint() const {
  if (!start_) {
    return toolText("Click where the %1 starts: a chamber, port, drain or any place. Draw with the "
                    "flow.")
        .arg(q(facts(service_).name).toLower());
  }
  if (!now_) return toolText("Click its corners.");
  const double leg = distance(lastPoint(), now_->at);
  return toolText(
             "Leg %1. Click corners; Enter or a double click ends it, as does a chamber or port. "
             "Shift: straight or 45°. Backspace: one back. Esc: give up.")
      .arg(QString::fromStdString(printLength(metres(leg), host().plan().project.units)));
}

std::vector<Choice> RunTool::choices() const {
  Choice service{toolText("Line"),
                 {},
                 static_cast<int>(service_),
                 toolText("What the run carries; sets the usual pipe and size")};
  for (const ServiceFacts& f : serviceTable())
    service.items << QString("%1  %2").arg(q(f.code), q(f.name));
  Choice pipes{toolText("Pipe"), {}, 0, toolText("Pipe or conduit from the catalogue")};
  for (const PipeProduct& p : host().catalog().pipes) {
    if (p.key == pipeKey_) pipes.current = static_cast<int>(pipes.items.size());
    pipes.items << q(p.name);
  }
  Choice sizes{toolText("Size"), {}, 0, toolText("Nominal size, inches")};
  if (pipe() != nullptr) {
    for (const PipeSize& s : pipe()->sizes) {
      if (s.nominal == size_) sizes.current = static_cast<int>(sizes.items.size());
      sizes.items << q(s.nominal + "\"");
    }
  }
  return {service, pipes, sizes};
}

void RunTool::choose(std::size_t choice, int item) {
  const auto index = static_cast<std::size_t>(std::max(item, 0));
  if (choice == 0 && index < kServiceCount) {
    setService(serviceTable()[index].service);
  } else if (choice == 1 && index < host().catalog().pipes.size()) {
    pipeKey_ = host().catalog().pipes[index].key;
    // The same size if the new pipe comes in it, else its smallest.
    if (pipe()->size(size_) == nullptr) size_ = pipe()->sizes.front().nominal;
  } else if (choice == 2 && pipe() != nullptr && index < pipe()->sizes.size()) {
    size_ = pipe()->sizes[index].nominal;
  }
  host().refresh();
}

} // namespace sump
