#include "app/canvas/tools/move_tool.h"

#include "app/canvas/live_dimensions.h"
#include "app/canvas/snap_field.h"
#include "core/plan/edits_group.h"

#include "core/plan/edits_objects.h"
#include "core/units/print.h"

#include <QApplication>

namespace sump {

namespace {

constexpr std::size_t kGapsShown = 3;

/// Of a vault, a room, a drain or wash equipment; of others nothing.
Ring boxOutline(const Plan& plan, const Id& id) {
  if (const Vault* vault = plan.vaults.find(id)) return outline(*vault);
  if (const EquipmentRoom* room = plan.rooms.find(id)) return outline(*room);
  if (const Basin* basin = plan.basins.find(id)) return outline(*basin);
  if (const WashEquipment* wash = plan.washes.find(id)) return outline(*wash);
  return {};
}

} // namespace

void MoveTool::press(const Pointer& pointer) {
  if (host().scene() == nullptr) return;
  const double reach = kReachPixels / host().view().scale();
  const Id hit = host().scene()->objectAt(pointer.site, reach);
  if (!hit.empty() && !host().selection().contains(hit)) host().select({hit});
  pressed_ = !host().selection().empty();
  dragging_ = false;
  start_ = pointer;
  by_ = {};
  shown_ = host().plan();
}

void MoveTool::begin(const Pointer&) {
  moved_ = unlocked(host().plan(), host().selection());
  if (moved_.empty()) {
    pressed_ = false;
    return host().refuse(toolText("Locked: unlock it before it is moved."));
  }
  grips_ = gripPoints(host().plan(), moved_);
  dragging_ = true;
}

void MoveTool::move(const Pointer& pointer) {
  if (!pressed_) return;
  const double pixels = (pointer.screen - start_.screen).manhattanLength();
  if (!dragging_ && pixels < QApplication::startDragDistance()) return;
  if (!dragging_) begin(pointer);
  if (dragging_) show(aimShift(host(), start_, pointer, grips_, moved_, caught_));
}

void MoveTool::show(Point2 by) {
  if (by == by_) return;
  by_ = by;
  shown_ = moveObjects(host().plan(), moved_, by_);
  host().preview(shown_);
  host().refresh();
}

void MoveTool::release(const Pointer&) {
  const bool moved = dragging_ && !(by_ == Point2{});
  pressed_ = dragging_ = false;
  if (moved) {
    host().commit(toolText("Move"), moveObjects(host().plan(), moved_, by_));
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

void MoveTool::paint(Overlay& overlay) const {
  QPainter& painter = overlay.painter();
  const CanvasTheme& theme = overlay.theme();
  if (!dragging_) return;
  const View& view = host().view();
  const UnitSystem units = host().plan().project.units;
  // The reviewed drawing follows a moment later; outlines follow the pointer at once.
  painter.setPen(QPen(theme.accent, 1, Qt::DashLine));
  painter.setBrush(Qt::NoBrush);
  for (const Id& id : moved_) {
    Ring ring = boxOutline(host().plan(), id);
    for (Point2& p : ring)
      p = p + by_;
    if (ring.empty()) continue;
    painter.drawPolygon(view.toScreen(ring));
    overlay.keepInSight(view.toScreen(ring));
  }
  paintGaps(overlay, nearestGaps(shown_, moved_, kGapsShown), units);
  painter.setPen(QPen(theme.accent, 1, Qt::DashLine));
  painter.drawLine(view.toScreen(start_.site), view.toScreen(start_.site + by_));
  paintLegDimensions(overlay, start_.site, start_.site + by_, host().plan());
  if (caught_.kind != SnapKind::None)
    paintSnap(overlay, caught_, snapWords(host().plan(), caught_));
}

QString MoveTool::hint() const {
  if (!dragging_) {
    return toolText("Drag an object, or what is selected, to its new place; its corners and centre "
                    "catch. Arrow keys nudge it. Shift: straight. Alt: no catching. Esc ends it.");
  }
  return toolText("%1. Release to keep, Esc to put it back.")
      .arg(stepsBetween({}, by_, host().plan()));
}

} // namespace sump
