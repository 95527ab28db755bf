#include "app/canvas/grid.h"

#include "core/units/print.h"

#include <cmath>
#include <vector>

namespace sump {

namespace {

constexpr double kArrowPixels = 46; ///< of the square that the north arrow turns in
constexpr double kBarPixels = 160;  ///< the scale bar's most

/// Rising ladder of steps in metres, each a whole part of one further up.
std::vector<double> ladder(UnitSystem units) {
  std::vector<double> steps;
  const bool metric = units == UnitSystem::Metric;
  const double unit = metric ? 1.0 : kMetresPerFoot;
  if (metric) {
    steps = {0.01, 0.02, 0.05, 0.1, 0.2, 0.5};
  } else {
    for (double in : {0.25, 0.5, 1.0, 3.0, 6.0})
      steps.push_back(in * kMetresPerInch);
  }
  for (double decade = 1; decade < 1e6; decade *= 10) {
    for (double k : {1.0, 2.0, 5.0})
      steps.push_back(k * decade * unit);
  }
  return steps;
}

/// Lines of one family, at whole multiples of `step` from the site's origin, on device pixels.
void paintLines(QPainter& painter, const View& view, double step, const QColor& color) {
  const Box box = view.visible();
  painter.setPen(QPen(color, 0));
  for (double i = std::ceil(box.low.x / step); i * step <= box.high.x; ++i) {
    const double x = std::round(view.toScreen(Point2{i * step, 0}).x()) + 0.5;
    painter.drawLine(QPointF(x, 0), QPointF(x, view.size().height()));
  }
  for (double i = std::ceil(box.low.y / step); i * step <= box.high.y; ++i) {
    const double y = std::round(view.toScreen(Point2{0, i * step}).y()) + 0.5;
    painter.drawLine(QPointF(0, y), QPointF(view.size().width(), y));
  }
}

/// `20 ft`, `6 in`, `5 m`, `50 mm`.
QString barText(double metresLong, UnitSystem units) {
  if (units == UnitSystem::Metric) {
    return metresLong < 1 ? QString("%1 mm").arg(std::round(metresLong * 1000))
                          : QString("%1 m").arg(metresLong);
  }
  const double ft = metresLong / kMetresPerFoot;
  return ft < 0.999 ? QString::fromStdString(inchesOnly(metres(metresLong)))
                    : QString("%1 ft").arg(std::round(ft));
}

} // namespace

GridSteps gridSteps(double pixelsPerMetre, UnitSystem units, double leastPixels) {
  const std::vector<double> steps = ladder(units);
  std::size_t i = 0;
  while (i + 1 < steps.size() && steps[i] * pixelsPerMetre < leastPixels)
    ++i;
  GridSteps found{steps[i], steps[i] * 10};
  // The major step is the first on the ladder that is a whole multiple of at least four minors.
  for (std::size_t k = i + 1; k < steps.size(); ++k) {
    const double ratio = steps[k] / steps[i];
    if (ratio > 3.9 && std::abs(ratio - std::round(ratio)) < 1e-6) {
      found.major = steps[k];
      break;
    }
  }
  return found;
}

double barLength(double pixelsPerMetre, UnitSystem units, double pixels) {
  double best = 0;
  for (double step : ladder(units)) {
    if (step * pixelsPerMetre <= pixels || best == 0) best = step;
  }
  return best;
}

void paintGrid(QPainter& painter, const View& view, UnitSystem units, const CanvasTheme& theme) {
  const GridSteps steps = gridSteps(view.scale(), units);
  painter.setRenderHint(QPainter::Antialiasing, false);
  paintLines(painter, view, steps.minor, theme.gridMinor);
  paintLines(painter, view, steps.major, theme.gridMajor);
  painter.setRenderHint(QPainter::Antialiasing, true);
}

QRectF scaleBarBox(const View& view, UnitSystem units, const QFont& font, Qt::Corner corner) {
  const double length = barLength(view.scale(), units, kBarPixels);
  const double text = QFontMetricsF(font).horizontalAdvance(barText(length, units));
  constexpr double kAside = 10, kAbove = 6;
  const double width = kArrowPixels + length * view.scale() + text + 22;
  const bool left = corner == Qt::BottomLeftCorner || corner == Qt::TopLeftCorner;
  const bool top = corner == Qt::TopLeftCorner || corner == Qt::TopRightCorner;
  return {left ? kAside : view.size().width() - width - kAside,
          top ? kAbove : view.size().height() - kArrowPixels - kAbove, width, kArrowPixels};
}

namespace {

/// A needle, its right half filled, with the letter beyond its tip.
void paintNorth(QPainter& painter, QPointF middle, Angle north, const CanvasTheme& theme) {
  constexpr double kTip = 9, kTail = 11, kHalf = 6, kNotch = 7, kLetter = 15; // px
  const double a = inRadians(north);
  const QPointF up(-std::sin(a), -std::cos(a)), right(std::cos(a), -std::sin(a));
  const QPointF tip = middle + up * kTip, notch = middle - up * kNotch;
  const QPointF left = middle - up * kTail - right * kHalf;
  const QPointF other = middle - up * kTail + right * kHalf;
  painter.setPen(QPen(theme.text, 1));
  painter.setBrush(theme.background);
  painter.drawPolygon(QPolygonF({tip, left, notch}));
  painter.setBrush(theme.text);
  painter.drawPolygon(QPolygonF({tip, other, notch}));
  const QPointF at = middle + up * kLetter;
  painter.drawText(QRectF(at.x() - 10, at.y() - 10, 20, 20), Qt::AlignCenter, "N");
}

} // namespace

void paintScaleBar(QPainter& painter, const QRectF& box, double pixelsPerMetre, UnitSystem units,
                   Angle north, const CanvasTheme& theme) {
  const double length = barLength(pixelsPerMetre, units, kBarPixels);
  const double pixels = length * pixelsPerMetre;
  const QPointF left(box.left() + kArrowPixels + 4, box.center().y());
  painter.setPen(Qt::NoPen);
  painter.setBrush(theme.halo);
  painter.drawRoundedRect(box, 4, 4);
  painter.setBrush(theme.background);
  painter.setPen(QPen(theme.text, 1));
  painter.drawRect(QRectF(left.x(), left.y() - 2, pixels, 4));
  painter.fillRect(QRectF(left.x(), left.y() - 2, pixels / 2, 4), theme.text);
  painter.drawText(box.adjusted(kArrowPixels + pixels + 12, 0, 0, 0),
                   Qt::AlignLeft | Qt::AlignVCenter, barText(length, units));
  paintNorth(painter, box.topLeft() + QPointF(kArrowPixels / 2, kArrowPixels / 2), north, theme);
}

} // namespace sump
