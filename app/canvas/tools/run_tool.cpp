#include "app/canvas/tools/run_tool.h"

#include "app/core_text.h"

#include "app/canvas/live_dimensions.h"
#include "app/canvas/mark_painter.h"
#include "app/canvas/tools/new_objects.h"

#include "app/plain_text.h"
#include "core/plan/edits_objects.h"
#include "core/units/print.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

/// Clicks closer than this are one corner; a run may not stand on its own foot.
constexpr double kSamePixels = 3;
/// A typed place means what it lies on to this many metres.
constexpr double kTypedEnd = 1e-4;

} // namespace

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

AimFrom RunTool::from() const {
  AimFrom from;
  if (!start_) return from;
  from.last = lastPoint();
  if (!corners_.empty())
    from.beforeLast = corners_.size() > 1 ? corners_[corners_.size() - 2].at : start_->at;
  return from;
}

EndAim RunTool::foundAt(const Pointer& pointer) const {
  return aimEnd(host(), pointer, from(), typed_, service_);
}

void RunTool::press(const Pointer& pointer) {
  pointer_ = pointer;
  const EndAim found = foundAt(pointer);
  // A second click at one place adds nothing, unless something there holds the end.
  const bool near =
      start_ && distance(found.held.at, lastPoint()) * host().view().scale() < kSamePixels;
  if (near && (found.held.end.kind == EndKind::Free || corners_.empty())) return;
  take(found.held, pointer.modifiers.testFlag(Qt::ControlModifier));
}

/// `corner`: even where an end would hold.
void RunTool::take(const Catch& found, bool corner) {
  typed_.clear();
  if (!start_) {
    start_ = found;
  } else if (found.end.kind != EndKind::Free && !corner &&
             !(found.end.target == start_->end.target &&
               found.end.chamber == start_->end.chamber)) {
    finish(found);
  } else {
    corners_.push_back({found.at, found.end.invert});
  }
  now_.reset();
  host().refresh();
}

void RunTool::move(const Pointer& pointer) {
  pointer_ = pointer;
  now_ = foundAt(pointer);
  host().refresh();
}

void RunTool::doubleClick(const Pointer& pointer) {
  if (!start_) return;
  // The first of the two clicks has already set a corner here: it becomes the end.
  if (corners_.empty()) {
    finish(foundAt(pointer).held);
  } else {
    finishAtLastCorner();
  }
}

void RunTool::finishAtLastCorner() {
  Catch end;
  end.end.at = end.at = corners_.back().at;
  end.end.invert = corners_.back().invert;
  corners_.pop_back();
  finish(end);
}

std::vector<EntryField> RunTool::entryFields() const {
  std::vector<EntryField> fields = placeFields(start_.has_value());
  fields.push_back({EntryKey::Level, EntryUnit::Elevation, toolText("Invert"),
                    toolText("Elevation of the inside bottom here; left empty, the fall between "
                             "its neighbours gives it")});
  return fields;
}

std::vector<Polyline> RunTool::underWay() const {
  Polyline line;
  if (start_) line.push_back(start_->at);
  for (const Vertex& corner : corners_)
    line.push_back(corner.at);
  if (now_) line.push_back(now_->held.at);
  return {line};
}

void RunTool::typing(const Entry& entry) {
  typed_ = entry;
  now_ = foundAt(pointer_);
  host().refresh();
}

bool RunTool::enter(const Entry& entry, Qt::KeyboardModifiers modifiers) {
  const TypedPoint typed = typedPoint(entry, host().plan().site.north);
  const std::optional<Point2> last = from().last;
  if (!typed.empty() && !placeOf(typed, last, pointer_.site)) return false;
  typed_ = entry;
  const EndAim found = foundAt(pointer_);
  const bool still = start_ && distance(found.held.at, lastPoint()) < kTypedEnd;
  // At one and the same place only another level makes a corner: a riser or a drop.
  const bool holds = found.held.end.kind != EndKind::Free && !corners_.empty();
  if (still && !holds && !found.held.end.invert) return false;
  take(found.held, modifiers.testFlag(Qt::ControlModifier));
  return true;
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
  case Qt::Key_Enter:
    if (!corners_.empty()) finishAtLastCorner(); // one point is no run
    return true;
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
  typed_.clear();
  now_.reset();
  host().refresh();
}

void RunTool::finish(const Catch& end) {
  const std::optional<Length> lastInvert =
      corners_.empty() ? start_->end.invert : corners_.back().invert;
  if (distance(end.at, lastPoint()) <= 0 && end.end.invert == lastInvert) return;
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
  run.vertices = corners_;
  Plan next = host().plan();
  const Id made = run.id;
  next.runs.append(std::move(run));
  if (!host().commit(toolText("Draw run"), std::move(next))) return;
  cancel();
  host().select({made});
}

void RunTool::paint(Overlay& overlay) const {
  QPainter& painter = overlay.painter();
  const CanvasTheme& theme = overlay.theme();
  const View& view = host().view();
  if (start_) {
    std::vector<Point2> line = {start_->at};
    for (const Vertex& corner : corners_)
      line.push_back(corner.at);
    painter.setPen(screenPen(serviceLine(service_), theme));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(view.toScreen(line));
    if (now_) {
      painter.setPen(QPen(theme.accent, 1.4, Qt::DashLine));
      painter.drawLine(view.toScreen(line.back()), view.toScreen(now_->held.at));
      paintLegDimensions(overlay, line.back(), now_->held.at, host().plan());
    }
    painter.setBrush(theme.accent);
    painter.setPen(Qt::NoPen);
    for (Point2 p : line)
      painter.drawEllipse(view.toScreen(p), 3.5, 3.5);
  }
  if (!now_) return;
  Snapped mark = now_->snapped;
  mark.at = now_->held.at;
  // What would hold the end says it in its own words.
  const bool held = now_->held.end.kind != EndKind::Free;
  paintSnap(overlay, mark, held ? QString() : snapWords(host().plan(), mark));
  if (held) paintCatch(overlay, now_->held);
}

QString RunTool::hint() const {
  if (!start_) {
    return toolText("Click where the %1 starts: a chamber, port, drain or any place. Draw with the "
                    "flow. Digits type the place. Alt: no catching. Esc ends it.")
        .arg(coreText(facts(service_).name).toLower());
  }
  return toolText("Click corners or type length, bearing and invert. Enter or a double click ends "
                  "it, as does a chamber, port or line (Ctrl: a corner there). Shift: straight or "
                  "45°. Alt: no catching. Backspace: one back. Esc gives it up.");
}

std::vector<Choice> RunTool::choices() const {
  Choice service{toolText("Line"),
                 {},
                 static_cast<int>(service_),
                 toolText("What the run carries; sets the usual pipe and size")};
  for (const ServiceFacts& f : serviceTable())
    service.items << QString("%1  %2").arg(q(f.code), coreText(f.name));
  Choice pipes{toolText("Pipe"), {}, 0, toolText("Pipe or conduit from the catalogue")};
  for (const PipeProduct& p : host().catalog().pipes) {
    if (p.key == pipeKey_) pipes.current = static_cast<int>(pipes.items.size());
    pipes.items << coreText(p.name);
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
