#include "app/canvas/tools/aim_end.h"

#include "app/canvas/tools/new_objects.h"

namespace sump {

namespace {

constexpr double kCatchPixels = 14;
/// A typed place means what it lies on to this many metres.
constexpr double kTypedReach = 1e-4;

} // namespace

EndAim aimEnd(const ToolHost& host, const Pointer& pointer, const AimFrom& from, const Entry& typed,
              Service service, const Id& without) {
  const bool loose = pointer.modifiers.testFlag(Qt::AltModifier) || !host.aids().snap;
  const bool exact = loose || !typedPoint(typed, host.plan().site.north).empty();
  const double reach = kCatchPixels / host.view().scale();
  EndAim found;
  if (!exact) {
    // Ports and the sewer are points: the pointer jumps to them.
    found.held = catchEnd(host.plan(), pointer.site, reach, service, without);
    if (found.held.end.kind == EndKind::Port || found.held.end.kind == EndKind::Sewer) {
      found.snapped = {found.held.at, SnapKind::End, found.held.end.target, {}};
      return found;
    }
  }
  found.snapped = aim(host, pointer, from, typedPoint(typed, host.plan().site.north));
  found.held =
      catchEnd(host.plan(), found.snapped.at, exact ? kTypedReach : reach, service, without);
  if (found.held.end.kind == EndKind::Free) found.held.end.at = found.held.at = found.snapped.at;
  if (const auto level = typedValue(typed, EntryKey::Level)) found.held.end.invert = metres(*level);
  return found;
}

void completeEnd(const ToolHost& host, Service service, RunEnd& end, bool atStart) {
  const Surface ground = host.scene() != nullptr ? host.scene()->study().ground : Surface();
  end.fitting = usualFitting(service, end, atStart);
  if (!end.invert && (end.kind == EndKind::Chamber || end.kind == EndKind::Free)) {
    end.invert = usualInvert(host.plan(), ground, service, end, atStart);
  }
}

void paintCatch(Overlay& overlay, const Catch& found) {
  QPainter& painter = overlay.painter();
  const CanvasTheme& theme = overlay.theme();
  const QPointF at = overlay.view().toScreen(found.at);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(theme.background, 4));
  painter.drawEllipse(at, 11, 11);
  painter.setPen(QPen(theme.accent, 2));
  painter.drawEllipse(at, 11, 11);
  overlay.keepMark(at, 13);
  overlay.tag(at, found.name, QPointF(16, -16), TagAnchor::Left);
}

} // namespace sump
