#pragma once
// Marks in site metres to the screen: line widths and dashes stay those of the paper at any zoom.

#include "app/canvas/scene.h"
#include "app/canvas/theme.h"
#include "app/canvas/view.h"

#include <QPainter>
#include <QPixmap>

#include <QPen>
#include <array>

namespace sump {

/// Screen pixels for a millimetre of paper line width or dash: 96 dots an inch.
inline constexpr double kPixelsPerPaperMm = 96 / 25.4;

QPen screenPen(const LineStyle& style, const CanvasTheme& theme);
void paintMark(QPainter& painter, const View& view, const Mark& mark, const CanvasTheme& theme);
/// A glow behind and a firm line on the marks of the selected objects.
void paintSelected(QPainter& painter, const View& view, const Scene& scene,
                   const std::set<Id>& selection, const CanvasTheme& theme);

/// The severity's shape (error: octagon, warning: triangle, note: circle) with its letter, so that
/// colour is never alone.
void paintSeverity(QPainter& painter, QPointF centre, double size, Severity severity,
                   const CanvasTheme& theme);

/// The signs as pictures: a large plan shows hundreds of them at every step of a drag.
class SeveritySigns {
public:
  static constexpr int kSize = 24; ///< pixels; the sign in the middle is 18 high
  SeveritySigns(const CanvasTheme& theme, double ratio);
  const QPixmap& of(Severity severity) const { return signs_[static_cast<std::size_t>(severity)]; }

private:
  std::array<QPixmap, 3> signs_;
};
/// Made once for each theme and ratio of device pixels.
const SeveritySigns& severitySigns(const CanvasTheme& theme, double ratio);

} // namespace sump
