#include "app/canvas/live_dimensions.h"

#include "app/canvas/typed_point.h"

#include "core/units/print.h"

#include <QCoreApplication>

#include <cmath>

namespace sump {

namespace {

constexpr double kLeastPixels = 24; ///< a shorter leg has no room for its own text

QString lengthText(double v, UnitSystem units) {
  return QString::fromStdString(printLength(metres(v), units));
}

QString towards(double v, UnitSystem units, const char* plus, const char* minus) {
  return QCoreApplication::translate("Tools", v < 0 ? minus : plus)
      .arg(lengthText(std::abs(v), units));
}

} // namespace

void paintTag(QPainter& painter, QPointF at, const QString& text, const CanvasTheme& theme,
              TagAnchor anchor) {
  const QFontMetricsF metrics(painter.font());
  const double width = metrics.horizontalAdvance(text) + 10, height = metrics.height() + 2;
  const double x = anchor == TagAnchor::Centre ? at.x() - width / 2 : at.x();
  const QRectF box(x, at.y() - height / 2, width, height);
  QColor plate = theme.background;
  plate.setAlpha(232);
  painter.setPen(QPen(theme.accent, 1));
  painter.setBrush(plate);
  painter.drawRoundedRect(box, 3, 3);
  painter.setPen(theme.text);
  painter.setBrush(Qt::NoBrush);
  painter.drawText(box, Qt::AlignCenter, text);
}

void paintDimension(QPainter& painter, const View& view, Point2 from, Point2 to, UnitSystem units,
                    const CanvasTheme& theme) {
  const QPointF a = view.toScreen(from), b = view.toScreen(to);
  const QPointF d = b - a;
  const double length = std::hypot(d.x(), d.y());
  painter.setPen(QPen(theme.accent, 1));
  painter.drawLine(a, b);
  if (length > 1) {
    const QPointF tick = QPointF(-d.y(), d.x()) * (5 / length);
    painter.drawLine(a - tick, a + tick);
    painter.drawLine(b - tick, b + tick);
  }
  paintTag(painter, (a + b) / 2, lengthText(distance(from, to), units), theme);
}

void paintLegDimensions(QPainter& painter, const View& view, Point2 from, Point2 to,
                        UnitSystem units, const CanvasTheme& theme) {
  const QPointF a = view.toScreen(from), b = view.toScreen(to);
  if (std::hypot(b.x() - a.x(), b.y() - a.y()) < 2) return;
  const QString text = lengthText(distance(from, to), units) + "  " +
                       QString::fromStdString(printBearing(bearingOf(from, to)));
  const bool roomy = std::hypot(b.x() - a.x(), b.y() - a.y()) > kLeastPixels;
  paintTag(painter, roomy ? (a + b) / 2 : a - QPointF(0, 22), text, theme);
  const Point2 d = to - from;
  if (std::abs(d.x) < 1e-4 || std::abs(d.y) < 1e-4) return;
  const QString steps = towards(d.x, units, QT_TRANSLATE_NOOP("Tools", "%1 east"),
                                QT_TRANSLATE_NOOP("Tools", "%1 west")) +
                        "  " +
                        towards(d.y, units, QT_TRANSLATE_NOOP("Tools", "%1 north"),
                                QT_TRANSLATE_NOOP("Tools", "%1 south"));
  paintTag(painter, b + QPointF(12, -20), steps, theme, TagAnchor::Left);
}

void paintGaps(QPainter& painter, const View& view, const std::vector<Gap>& gaps, UnitSystem units,
               const CanvasTheme& theme) {
  for (const Gap& gap : gaps)
    paintDimension(painter, view, gap.from, gap.to, units, theme);
}

} // namespace sump
