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

QString stepsBetween(Point2 from, Point2 to, const Plan& plan) {
  const Point2 d = to - from;
  const UnitSystem units = plan.project.units;
  if (plan.site.north != radians(0)) {
    return towards(d.x, units, QT_TRANSLATE_NOOP("Tools", "%1 plan east"),
                   QT_TRANSLATE_NOOP("Tools", "%1 plan west")) +
           "  " +
           towards(d.y, units, QT_TRANSLATE_NOOP("Tools", "%1 plan north"),
                   QT_TRANSLATE_NOOP("Tools", "%1 plan south"));
  }
  return towards(d.x, units, QT_TRANSLATE_NOOP("Tools", "%1 east"),
                 QT_TRANSLATE_NOOP("Tools", "%1 west")) +
         "  " +
         towards(d.y, units, QT_TRANSLATE_NOOP("Tools", "%1 north"),
                 QT_TRANSLATE_NOOP("Tools", "%1 south"));
}

QString bearingText(Point2 from, Point2 to, const Plan& plan) {
  const double bearing = fromTrueNorth(bearingOf(from, to), plan.site.north);
  return QCoreApplication::translate("Tools", "%1 true")
      .arg(QString::fromStdString(printBearing(bearing)));
}

void paintDimension(Overlay& overlay, Point2 from, Point2 to, UnitSystem units) {
  QPainter& painter = overlay.painter();
  const QPointF a = overlay.view().toScreen(from), b = overlay.view().toScreen(to);
  const QPointF d = b - a;
  const double length = std::hypot(d.x(), d.y());
  painter.setPen(QPen(overlay.theme().accent, 1));
  painter.drawLine(a, b);
  if (length > 1) {
    const QPointF tick = QPointF(-d.y(), d.x()) * (5 / length);
    painter.drawLine(a - tick, a + tick);
    painter.drawLine(b - tick, b + tick);
  }
  overlay.tag((a + b) / 2, lengthText(distance(from, to), units));
}

void paintLegDimensions(Overlay& overlay, Point2 from, Point2 to, const Plan& plan) {
  const QPointF a = overlay.view().toScreen(from), b = overlay.view().toScreen(to);
  if (std::hypot(b.x() - a.x(), b.y() - a.y()) < 2) return;
  QStringList lines{lengthText(distance(from, to), plan.project.units) + "  " +
                    bearingText(from, to, plan)};
  const Point2 d = to - from;
  if (std::abs(d.x) > 1e-4 && std::abs(d.y) > 1e-4) lines << stepsBetween(from, to, plan);
  const bool roomy = std::hypot(b.x() - a.x(), b.y() - a.y()) > kLeastPixels;
  overlay.keepInSight(QPolygonF({a, b}));
  roomy ? overlay.tag((a + b) / 2, lines) : overlay.tag(a, lines, QPointF(0, -22));
}

void paintGaps(Overlay& overlay, const std::vector<Gap>& gaps, UnitSystem units) {
  for (const Gap& gap : gaps)
    paintDimension(overlay, gap.from, gap.to, units);
}

} // namespace sump
