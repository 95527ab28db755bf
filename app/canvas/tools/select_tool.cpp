#include "app/canvas/tools/select_tool.h"

#include "core/geometry/polygon.h"
#include "core/plan/edits_group.h"
#include "core/plan/edits_run_corners.h"

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

std::vector<Handle> SelectTool::handles() const {
  std::vector<Handle> all = handlesOf(host().plan(), host().selection(), host().view().scale());
  if (host().selection().empty() && !nearBoundary_) all.clear();
  return all;
}

void SelectTool::press(const Pointer& pointer) {
  start_ = now_ = pointer;
  pressedEmpty_ = boxing_ = moving_ = false;
  if (!handle_.pressed()) lookRound(pointer); // a finger comes without a hover
  const bool adding = pointer.modifiers.testFlag(Qt::ShiftModifier);
  if (handle_.press(pointer, adding ? std::vector<Handle>() : handles())) return host().refresh();
  if (host().scene() == nullptr) return;
  const Id hit = host().scene()->objectAt(pointer.site, kReachPixels / host().view().scale());
  if (adding) {
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
  if (handle_.pressed()) {
    handle_.move(pointer);
  } else if (moving_) {
    mover_.move(pointer);
  } else if (pressedEmpty_) {
    const double pixels = (pointer.screen - start_.screen).manhattanLength();
    boxing_ = boxing_ || pixels >= QApplication::startDragDistance();
    if (boxing_) host().refresh();
  } else {
    lookRound(pointer);
  }
}

void SelectTool::lookRound(const Pointer& pointer) {
  constexpr double kNearPixels = 14;
  const Ring& boundary = host().plan().site.boundary;
  const bool near = boundary.size() > 2 &&
                    distanceToEdge(pointer.site, boundary) * host().view().scale() < kNearPixels;
  const bool changed = near != nearBoundary_ && host().selection().empty();
  nearBoundary_ = near;
  if (changed) host().refresh();
  handle_.hover(pointer, handles());
}

void SelectTool::doubleClick(const Pointer& pointer) {
  const double reach = kReachPixels / host().view().scale();
  if (handleAt(handles(), pointer.site, reach) != nullptr && handle_.taken()) return;
  const std::set<Id>& selection = host().selection();
  Id id = selection.size() == 1 ? *selection.begin() : Id();
  const bool on = !id.empty() && cornerAdded(host().plan(), id, pointer.site, reach);
  if (!on && host().scene() != nullptr) id = host().scene()->objectAt(pointer.site, reach);
  const Plan& plan = host().plan();
  std::optional<Plan> next;
  if (!isLocked(plan, id)) next = cornerAdded(plan, id, pointer.site, reach);
  // Open ground, or an area through which the property line runs.
  if (!next) next = cornerAdded(plan, id = Id(), pointer.site, reach);
  if (!next || !host().commit(toolText("Add corner"), std::move(*next))) return;
  host().select(id.empty() ? std::set<Id>() : std::set<Id>{id});
  host().refresh();
}

void SelectTool::release(const Pointer& pointer) {
  if (handle_.pressed()) {
    handle_.release(pointer);
  } else if (moving_) {
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
  if (handle_.key(key, modifiers)) return true;
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

bool SelectTool::enter(const Entry& entry, Qt::KeyboardModifiers) {
  return handle_.enter(entry);
}

void SelectTool::cancel() {
  handle_.cancel();
  if (moving_) mover_.cancel();
  moving_ = boxing_ = pressedEmpty_ = false;
  host().refresh();
}

void SelectTool::paint(Overlay& overlay) const {
  if (moving_) mover_.paint(overlay);
  if (!boxing_ && !mover_.busy()) handle_.paint(overlay, handles());
  if (!boxing_) return;
  QPainter& painter = overlay.painter();
  const CanvasTheme& theme = overlay.theme();
  QColor fill = theme.accent;
  fill.setAlpha(28);
  const bool touching = now_.modifiers.testFlag(Qt::ControlModifier);
  painter.setPen(QPen(theme.accent, 1, touching ? Qt::DashLine : Qt::SolidLine));
  painter.setBrush(fill);
  painter.drawRect(QRectF(host().view().toScreen(start_.site), now_.screen).normalized());
}

QString SelectTool::hint() const {
  if (moving_ && mover_.busy()) return mover_.hint();
  const QString own = handle_.hint();
  if (!own.isEmpty()) return own;
  if (host().selection().size() == 1) {
    return toolText("Drag it to move it, its marks to change it; arrow keys nudge it. A double "
                    "click on a line or an edge makes a corner. Shift and click adds to what is "
                    "selected. Esc lets it go.");
  }
  return toolText("Click an object to select it, drag to move it; Shift adds. Drag a box "
                  "on open ground for what is inside it, with Ctrl for all that it touches. Esc "
                  "lets go what is selected.");
}

} // namespace sump
