#include "app/canvas/place_catch.h"

#include "app/canvas/tools/aim.h"

#include "core/geometry/polygon.h"

#include <cmath>

namespace sump {

namespace {

constexpr double kCatchPixels = 11;

QString called(const Id& id, const char* what) {
  return toolText(what).arg(QString::fromStdString(id));
}

/// Keeps the nearest of what is offered.
struct Nearest {
  double reach;
  std::optional<PlaceCatch> best = std::nullopt;
  void offer(Point2 pointer, Point2 at, const Id& object, const char* what) {
    const double d = distance(pointer, at);
    if (d > reach) return;
    reach = d;
    best = PlaceCatch{object, at, called(object, what)};
  }
};

std::size_t edgeCount(const Mark& mark) {
  if (mark.round) return 0;
  return mark.closed ? mark.points.size() : mark.points.size() - 1;
}

void offerPoints(const Mark& mark, const Id& owner, Point2 pointer, Nearest& nearest) {
  if (mark.round)
    return nearest.offer(pointer, mark.points[0], owner, QT_TRANSLATE_NOOP("Tools", "%1, centre"));
  for (Point2 corner : mark.points)
    nearest.offer(pointer, corner, owner, QT_TRANSLATE_NOOP("Tools", "%1, corner"));
  for (std::size_t i = 0; i < edgeCount(mark); ++i) {
    const Point2 next = mark.points[(i + 1) % mark.points.size()];
    nearest.offer(pointer, lerp(mark.points[i], next, 0.5), owner,
                  QT_TRANSLATE_NOOP("Tools", "%1, middle"));
  }
}

void offerEdges(const Mark& mark, const Id& owner, Point2 pointer, Nearest& nearest) {
  for (std::size_t i = 0; i < edgeCount(mark); ++i) {
    const Point2 next = mark.points[(i + 1) % mark.points.size()];
    nearest.offer(pointer, nearestOnSegment(pointer, mark.points[i], next).at, owner,
                  QT_TRANSLATE_NOOP("Tools", "%1, edge"));
  }
}

} // namespace

PlaceCatch catchPlace(const ToolHost& host, const Pointer& pointer) {
  const Scene* scene = host.scene();
  const bool heldOff = pointer.modifiers.testFlag(Qt::AltModifier) || !host.aids().snap;
  if (scene == nullptr || heldOff) return {{}, pointer.site, {}};
  const double reach = kCatchPixels / host.view().scale();
  for (const auto offer : {offerPoints, offerEdges}) {
    Nearest nearest{reach};
    for (std::size_t i : scene->visible(grown(boxOf({pointer.site}), reach))) {
      const Mark& mark = scene->marks()[i];
      // Symbols are no things to measure, and a dimension is not measured from another.
      const bool real =
          mark.layer != Layer::Symbol && mark.layer != Layer::Part && mark.layer != Layer::Note;
      if (real && !scene->owner(i).empty()) {
        offer(mark, scene->owner(i), pointer.site, nearest);
      }
    }
    if (nearest.best) return *nearest.best;
  }
  const double step = gridStep(host);
  return {
      {}, {std::round(pointer.site.x / step) * step, std::round(pointer.site.y / step) * step}, {}};
}

void paintPlate(QPainter& painter, const View& view, QPointF at, const QStringList& lines,
                const CanvasTheme& theme) {
  const QFontMetricsF metrics(painter.font());
  double width = 0;
  for (const QString& line : lines)
    width = std::max(width, metrics.horizontalAdvance(line));
  QRectF plate(at + QPointF(14, 12),
               QSizeF(width + 14, metrics.height() * static_cast<double>(lines.size()) + 8));
  if (plate.right() > view.size().width()) plate.moveRight(at.x() - 14);
  if (plate.bottom() > view.size().height()) plate.moveBottom(at.y() - 12);
  painter.setPen(QPen(theme.accent, 1));
  painter.setBrush(theme.background);
  painter.drawRoundedRect(plate, 3, 3);
  painter.setPen(theme.text);
  painter.drawText(plate.adjusted(7, 4, -7, -4), Qt::AlignLeft | Qt::AlignTop, lines.join('\n'));
}

void paintPlace(QPainter& painter, const View& view, const PlaceCatch& place,
                const CanvasTheme& theme) {
  const QPointF at = view.toScreen(place.at);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(theme.accent, place.caught() ? 2 : 1.5));
  painter.drawEllipse(at, place.caught() ? 6 : 3, place.caught() ? 6 : 3);
  if (!place.name.isEmpty()) paintPlate(painter, view, at, {place.name}, theme);
}

} // namespace sump
