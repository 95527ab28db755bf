#pragma once
// Lengths, bearings and distances beside what is being drawn or dragged.

#include "app/canvas/gaps.h"
#include "app/canvas/theme.h"
#include "app/canvas/view.h"
#include "core/units/quantity.h"

#include <QPainter>
#include <QString>

namespace sump {

enum class TagAnchor { Left, Centre };

/// Text on a small plate, its left end or its middle at `at`.
void paintTag(QPainter& painter, QPointF at, const QString& text, const CanvasTheme& theme,
              TagAnchor anchor = TagAnchor::Centre);
/// Length and bearing along a leg, and how far it goes east and north.
void paintLegDimensions(QPainter& painter, const View& view, Point2 from, Point2 to,
                        UnitSystem units, const CanvasTheme& theme);
/// A dimension between two points with its length.
void paintDimension(QPainter& painter, const View& view, Point2 from, Point2 to, UnitSystem units,
                    const CanvasTheme& theme);
void paintGaps(QPainter& painter, const View& view, const std::vector<Gap>& gaps, UnitSystem units,
               const CanvasTheme& theme);

} // namespace sump
