#include "app/canvas/place_catch.h"

#include "app/canvas/tools/aim.h"

#include <algorithm>

namespace sump {

namespace {

QString named(const Id& id, SnapKind kind) {
  const char* what = nullptr;
  switch (kind) {
  case SnapKind::End:
    what = QT_TRANSLATE_NOOP("Tools", "%1, corner");
    break;
  case SnapKind::Middle:
    what = QT_TRANSLATE_NOOP("Tools", "%1, middle");
    break;
  case SnapKind::Centre:
    what = QT_TRANSLATE_NOOP("Tools", "%1, centre");
    break;
  case SnapKind::Crossing:
    what = QT_TRANSLATE_NOOP("Tools", "%1, crossing");
    break;
  case SnapKind::Perpendicular:
    what = QT_TRANSLATE_NOOP("Tools", "%1, square to it");
    break;
  case SnapKind::Face:
    what = QT_TRANSLATE_NOOP("Tools", "%1, edge");
    break;
  case SnapKind::None:
  case SnapKind::Grid:
  case SnapKind::Aligned:
    return {};
  }
  return toolText(what).arg(QString::fromStdString(id));
}

} // namespace

PlaceCatch catchPlace(const ToolHost& host, const Pointer& pointer, std::optional<Point2> last) {
  AimFrom from;
  from.last = last;
  const Snapped found = aim(host, pointer, from);
  PlaceCatch place{{}, found.at, {}, found};
  if (found.owner.empty()) return place;
  place.name = named(found.owner, found.kind);
  if (!place.name.isEmpty()) place.object = found.owner;
  return place;
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
  Snapped mark = place.snapped;
  mark.at = place.at;
  paintSnap(painter, view, mark, theme, false);
  if (!place.name.isEmpty())
    paintPlate(painter, view, view.toScreen(place.at), {place.name}, theme);
}

} // namespace sump
