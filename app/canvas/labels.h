#pragma once
// Names on the drawing in constant, readable text. What would cover another label is left out until
// there is room; vaults and rooms go first.

#include "app/canvas/scene.h"
#include "app/canvas/theme.h"
#include "app/canvas/view.h"

#include <QPainter>
#include <QString>

#include <vector>

namespace sump {

struct Label {
  Id object;
  QString text;
  QPointF centre;   ///< screen
  double angle = 0; ///< degrees, counter-clockwise, within -90..90
  double size = 12; ///< pixels
  bool bold = false;
  std::optional<Ink> ink; ///< of the service; otherwise the theme's text
};

/// The labels that fit, in order of weight.
std::vector<Label> placeLabels(const Scene& scene, const View& view, const QFont& font);
void paintLabels(QPainter& painter, const std::vector<Label>& labels, const CanvasTheme& theme);
/// The label's box on the screen, turned with it.
QPolygonF labelBox(const Label& label, const QFont& font);
/// True if two convex outlines share any area (separating axes).
bool convexOverlap(const QPolygonF& a, const QPolygonF& b);

} // namespace sump
