#pragma once
// The place on an object that the pointer means: for the measuring tape, dimension notes and the
// two points of a site picture.

#include "app/canvas/tools/tool.h"

namespace sump {

struct PlaceCatch {
  Id object; ///< empty: a place on the site
  Point2 at; ///< site
  QString name;
  bool caught() const { return !object.empty(); }
};

/// The nearest corner, middle of an edge or centre of a circle that is drawn within reach, else the
/// nearest place on a line, else the grid. With Alt the pointer's own place.
PlaceCatch catchPlace(const ToolHost& host, const Pointer& pointer);

/// A ring on the place with its name beside it.
void paintPlace(QPainter& painter, const View& view, const PlaceCatch& place,
                const CanvasTheme& theme);
/// Lines of text on a plate beside a screen point, kept inside the view.
void paintPlate(QPainter& painter, const View& view, QPointF at, const QStringList& lines,
                const CanvasTheme& theme);

} // namespace sump
