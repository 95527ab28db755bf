#include "app/canvas/underlay_tool.h"

#include "app/canvas/live_dimensions.h"

#include "core/plan/edits_underlay.h"

namespace sump {

void UnderlayTool::move(const Pointer& pointer) {
  hover_ = pointer.site; // places on a picture are seen, not caught
  host().refresh();
}

void UnderlayTool::release(const Pointer& pointer) {
  constexpr double kLeastPixels = 8; // nearer points tell no scale
  const Point2 at = pointer.site;
  if (!first_) {
    first_ = at;
  } else if (distance(*first_, at) * host().view().scale() >= kLeastPixels) {
    const Point2 first = *first_;
    const std::optional<Length> apart = ask_(metres(distance(first, at)));
    first_.reset();
    if (apart) {
      host().commit(toolText("Scale site picture"),
                    scaleUnderlay(host().plan(), picture_, first, at, *apart));
    }
  }
  host().refresh();
}

bool UnderlayTool::key(int key, Qt::KeyboardModifiers) {
  if ((key != Qt::Key_Escape && key != Qt::Key_Backspace) || !first_) return false;
  cancel();
  return true;
}

void UnderlayTool::cancel() {
  first_.reset();
  host().refresh();
}

void UnderlayTool::paint(Overlay& overlay) const {
  QPainter& painter = overlay.painter();
  const CanvasTheme& theme = overlay.theme();
  const View& view = host().view();
  if (hover_) paintPlace(overlay, {{}, *hover_, {}});
  if (!first_) return;
  paintPlace(overlay, {{}, *first_, {}});
  if (!hover_) return;
  painter.setPen(QPen(theme.accent, 1.5, Qt::DashLine));
  painter.drawLine(view.toScreen(*first_), view.toScreen(*hover_));
  // What the picture says so far, to be compared with the true distance.
  paintDimension(overlay, *first_, *hover_, host().plan().project.units);
}

QString UnderlayTool::hint() const {
  return first_ ? toolText("Click the second place on the picture; then type how far apart they "
                           "are on the site.")
                : toolText("Click the first of two places on the picture whose distance is known, "
                           "far apart from each other. It stays where it is.");
}

} // namespace sump
