#pragma once
// Marks in site metres to the screen: line widths and dashes stay those of the paper at any zoom.

#include "app/canvas/scene.h"
#include "app/canvas/theme.h"
#include "app/canvas/view.h"

#include <QPainter>
#include <QPen>

namespace sump {

/// Screen pixels for a millimetre of paper line width or dash: 96 dots an inch.
inline constexpr double kPixelsPerPaperMm = 96 / 25.4;

QPen screenPen(const LineStyle& style, const CanvasTheme& theme);
void paintMark(QPainter& painter, const View& view, const Mark& mark, const CanvasTheme& theme);
/// Those that the view shows, in order.
/// A glow behind and a firm line on the marks of the selected objects.
void paintSelected(QPainter& painter, const View& view, const Scene& scene,
                   const std::set<Id>& selection, const CanvasTheme& theme);

/// The severity's shape (error: octagon, warning: triangle, note: circle) with its letter, so that
/// colour is never alone.
void paintSeverity(QPainter& painter, QPointF centre, double size, Severity severity,
                   const CanvasTheme& theme);

} // namespace sump
