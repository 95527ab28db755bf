#pragma once
// Grid steps that a reader of the project's units expects: 1, 2, 5, 10 ... feet or metres.

#include "app/canvas/theme.h"
#include "app/canvas/view.h"
#include "core/units/quantity.h"

#include <QPainter>

namespace sump {

struct GridSteps {
  double minor = 1; ///< metres
  double major = 5;
};
/// The smallest step whose lines stand at least `leastPixels` apart at this scale. Below a foot the
/// steps are inches (1, 3, 6), below a metre decimals.
GridSteps gridSteps(double pixelsPerMetre, UnitSystem units, double leastPixels = 12);
/// A round length near `pixels` long at this scale, for the scale bar, in metres.
double barLength(double pixelsPerMetre, UnitSystem units, double pixels);

void paintGrid(QPainter& painter, const View& view, UnitSystem units, const CanvasTheme& theme);
/// Where the north arrow and the scale bar with its text stand in a corner of the drawing.
QRectF scaleBarBox(const View& view, UnitSystem units, const QFont& font,
                   Qt::Corner corner = Qt::BottomLeftCorner);
/// True north, counter-clockwise from upward, and a bar of a round length, in this box.
void paintScaleBar(QPainter& painter, const QRectF& box, double pixelsPerMetre, UnitSystem units,
                   Angle north, const CanvasTheme& theme);

} // namespace sump
