#include "app/canvas/tools/handle_drag.h"

#include "app/canvas/live_dimensions.h"
#include "app/canvas/tools/handle_painter.h"

#include <QApplication>

#include <map>

namespace sump {

namespace {

constexpr double kTakePixels = 8;

/// The same handle in the plan as it is now; nothing when it is gone or no longer shown.
std::optional<Handle> found(const ToolHost& host, const Handle& handle) {
  std::vector<Handle> all = handlesOf(host.plan(), host.selection(), host.view().scale());
  if (!handle.part.empty()) {
    for (Handle& h : handlesOf(host.plan(), handle.kind))
      all.push_back(std::move(h));
  }
  for (const Handle& h : all) {
    const bool same = handle.part.empty() ? h == handle : h.part == handle.part;
    if (same) return h;
  }
  return std::nullopt;
}

/// A leg that was dragged is the corner that it made.
Handle afterwards(const ToolHost& host, Handle handle) {
  if (handle.kind == HandleKind::Leg) {
    handle.kind = HandleKind::Corner;
    if (host.plan().runs.find(handle.object) == nullptr) ++handle.index;
  }
  return handle;
}

} // namespace

bool HandleDrag::press(const Pointer& pointer, const std::vector<Handle>& handles) {
  const Handle* hit = handleAt(handles, pointer.site, kTakePixels / host_.view().scale());
  pull_.reset();
  dragging_ = false;
  pressed_ = hit != nullptr;
  handle_ = hit != nullptr ? std::optional(*hit) : std::nullopt;
  start_ = pointer;
  return pressed_;
}

void HandleDrag::pull(const Pointer& pointer) {
  pull_ = pulled(host_, *handle_, start_, pointer, {});
  host_.preview(pull_->plan);
  host_.refresh();
}

void HandleDrag::move(const Pointer& pointer) {
  if (!pressed_) return;
  const double pixels = (pointer.screen - start_.screen).manhattanLength();
  if (!dragging_ && pixels < QApplication::startDragDistance()) return;
  dragging_ = true;
  pull(pointer);
}

void HandleDrag::release(const Pointer& pointer) {
  if (dragging_) {
    pull(pointer);
    commit();
  }
  // The middle of a leg is there to be dragged; clicked, it means the line.
  if (!dragging_ && pressed_ && handle_->kind == HandleKind::Leg) handle_.reset();
  pressed_ = dragging_ = false;
  host_.refresh();
}

/// Ends the gesture; the handle stays taken at its new place.
bool HandleDrag::commit() {
  const Pull done = std::move(*pull_);
  pull_.reset();
  pressed_ = dragging_ = false;
  const Handle handle = *handle_;
  const bool kept = host_.commit(pullStep(handle), done.plan);
  handle_ = found(host_, afterwards(host_, handle));
  if (handle.kind == HandleKind::Turn) handle_.reset(); // it stands elsewhere now
  return kept;
}

void HandleDrag::hover(const Pointer& pointer, const std::vector<Handle>& handles) {
  const Handle* hit = handleAt(handles, pointer.site, kTakePixels / host_.view().scale());
  const std::optional<Handle> hot = hit != nullptr ? std::optional(*hit) : std::nullopt;
  if (hot == hot_) return;
  hot_ = hot;
  host_.refresh();
}

Pointer HandleDrag::own() const {
  return {host_.view().toScreen(handle_->at), handle_->at, Qt::AltModifier};
}

bool HandleDrag::erase() {
  const std::optional<Plan> without = withoutHandle(host_.plan(), *handle_);
  if (!without) return false;
  if (*without == host_.plan()) {
    host_.refuse(toolText("An outline has three corners at least, a path two ends."));
    return true;
  }
  const QString step = handle_->kind == HandleKind::Corner   ? toolText("Delete corner")
                       : handle_->kind == HandleKind::Baffle ? toolText("Delete baffle")
                       : handle_->kind == HandleKind::Manway ? toolText("Delete manway")
                                                             : toolText("Delete part");
  handle_.reset();
  hot_.reset();
  host_.commit(step, *without);
  return true;
}

bool HandleDrag::nudge(int key, Qt::KeyboardModifiers modifiers) {
  static const std::map<int, Point2> directions = {{Qt::Key_Left, {-1, 0}},
                                                   {Qt::Key_Right, {1, 0}},
                                                   {Qt::Key_Up, {0, 1}},
                                                   {Qt::Key_Down, {0, -1}}};
  const auto it = directions.find(key);
  if (it == directions.end() || handle_->kind == HandleKind::Turn) return false;
  double step = gridStep(host_);
  if (modifiers.testFlag(Qt::ShiftModifier)) step /= 10;
  if (modifiers.testFlag(Qt::ControlModifier)) step *= 10;
  start_ = own();
  Pointer to = own();
  to.site = to.site + it->second * step;
  pull_ = pulled(host_, *handle_, start_, to, {});
  commit();
  return true;
}

bool HandleDrag::taken() const {
  // What is selected, and the plan, may have changed by other ways than this.
  return handle_ && (dragging_ || found(host_, *handle_).has_value());
}

bool HandleDrag::key(int key, Qt::KeyboardModifiers modifiers) {
  if (!taken()) return false;
  if (key == Qt::Key_Escape) {
    cancel();
    return true;
  }
  if (dragging_) return false;
  if (key == Qt::Key_Delete || key == Qt::Key_Backspace) return erase();
  return nudge(key, modifiers);
}

bool HandleDrag::claims(int key) const {
  if (!taken()) return false;
  if (key == Qt::Key_Escape) return true;
  const bool erases = key == Qt::Key_Delete || key == Qt::Key_Backspace;
  return erases && !dragging_ && withoutHandle(host_.plan(), *handle_).has_value();
}

void HandleDrag::cancel() {
  const bool shown = pull_.has_value();
  handle_.reset();
  hot_.reset();
  pull_.reset();
  pressed_ = dragging_ = false;
  if (shown) host_.preview(std::nullopt);
  host_.refresh();
}

std::vector<EntryField> HandleDrag::entryFields() const {
  return taken() ? pullFields(host_.plan(), *handle_) : std::vector<EntryField>();
}

std::vector<Polyline> HandleDrag::underWay() const {
  std::vector<Polyline> lines;
  if (!taken()) return lines;
  if (!pull_) return {Polyline{found(host_, *handle_).value_or(*handle_).at}};
  for (const auto* spans : {&pull_->legs, &pull_->gaps}) {
    for (const auto& [from, to] : *spans)
      lines.push_back({from, to});
  }
  lines.push_back({pull_->at});
  return lines;
}

void HandleDrag::typing(const Entry& entry) {
  if (!taken()) return;
  if (entry.empty()) {
    pull_.reset();
    host_.preview(std::nullopt);
    return;
  }
  start_ = own();
  pull_ = pulled(host_, *handle_, own(), own(), entry);
  host_.preview(pull_->plan);
}

bool HandleDrag::enter(const Entry& entry) {
  if (!taken() || entry.empty()) return false;
  typing(entry);
  const bool moved = !(pull_->plan == host_.plan());
  if (moved) return commit();
  pull_.reset();
  return false;
}

QString HandleDrag::hint() const {
  if (taken()) return pullHint(*handle_);
  return hot_ ? pullHint(*hot_) : QString();
}

void HandleDrag::paint(Overlay& overlay, const std::vector<Handle>& handles) const {
  // The others are of the plan as it was before: legs and parts have gone along.
  if (pull_) return paintPull(overlay);
  for (const Handle& h : handles) {
    const HandleState state = handle_ == h ? HandleState::Taken
                              : hot_ == h  ? HandleState::Hot
                                           : HandleState::Idle;
    paintHandle(overlay, h, state);
  }
}

void HandleDrag::paintPull(Overlay& overlay) const {
  QPainter& painter = overlay.painter();
  const View& view = overlay.view();
  const UnitSystem units = host_.plan().project.units;
  for (const auto& [from, to] : pull_->legs) {
    painter.setPen(QPen(overlay.theme().accent, 1.4, Qt::DashLine));
    painter.drawLine(view.toScreen(from), view.toScreen(to));
    paintLegDimensions(overlay, from, to, host_.plan());
  }
  for (const auto& [from, to] : pull_->gaps)
    paintDimension(overlay, from, to, units);
  Handle moved = *handle_;
  moved.at = pull_->at;
  moved.reach.clear();
  paintHandle(overlay, moved, HandleState::Taken);
  const bool held = pull_->held.end.kind != EndKind::Free;
  if (pull_->caught.kind != SnapKind::None)
    paintSnap(overlay, pull_->caught, held ? QString() : snapWords(host_.plan(), pull_->caught));
  if (held) paintCatch(overlay, pull_->held);
  if (!pull_->tag.isEmpty()) overlay.tag(view.toScreen(pull_->at), pull_->tag, QPointF(0, -20));
}

} // namespace sump
