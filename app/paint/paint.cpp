#include "app/paint/paint.h"

#include "core/sheet/hatch.h"

#include <QFontDatabase>
#include <QPaintEngine>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

/// The fonts are in a static library: without this the linker leaves them out. Qt wants it outside
/// any namespace.
static void loadResources() {
  Q_INIT_RESOURCE(sumpwright);
}

namespace sump {

namespace {

// The face's capitals are 1493 of 2048 units high (resources/fonts/widths.json).
constexpr double kEmOverCap = 2048.0 / 1493.0;
constexpr int kFontPixels = 100; ///< drawn at this size and scaled, so that advances do not round
constexpr double kHatchSpacing = 2.5;
constexpr double kHatchWidth = 0.13;

QColor color(Ink ink) {
  const Color c = paperColor(ink);
  return QColor(c.red, c.green, c.blue);
}

QPen pen(const LineStyle& line) {
  QPen result(color(line.ink), line.width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
  if (!line.dash.empty()) {
    QList<qreal> pattern; // Qt counts dashes in pen widths
    for (double d : line.dash)
      pattern << d / line.width;
    result.setDashPattern(pattern);
  }
  return result;
}

QPolygonF polygon(const std::vector<Point2>& points) {
  QPolygonF result;
  for (Point2 p : points)
    result << QPointF(p.x, p.y);
  return result;
}

void paintHatch(QPainter& painter, const PageShape& shape) {
  painter.setPen(QPen(color(shape.fill->ink), kHatchWidth, Qt::SolidLine, Qt::FlatCap));
  QList<QLineF> lines;
  for (const auto& [a, b] : hatchLines(shape.points, shape.fill->hatch, kHatchSpacing))
    lines << QLineF(a.x, a.y, b.x, b.y);
  painter.drawLines(lines);
}

/// The dashes of a line one by one. Qt 6.4's SVG writes the dashes of lines thinner than half a
/// unit in the wrong length.
void paintDashes(QPainter& painter, std::vector<Point2> points, const PageShape& shape) {
  if (shape.closed) points.push_back(points.front());
  const std::vector<double>& dash = shape.line->dash;
  painter.setPen(pen({shape.line->ink, shape.line->width, {}}));
  std::size_t step = 0;
  double left = dash.front();
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const double length = distance(points[i], points[i + 1]);
    for (double at = 0; at < length;) {
      const double next = std::min(length, at + left);
      const Point2 a = lerp(points[i], points[i + 1], at / length);
      const Point2 b = lerp(points[i], points[i + 1], next / length);
      if (step % 2 == 0) painter.drawLine(QPointF(a.x, a.y), QPointF(b.x, b.y));
      left -= next - at;
      at = next;
      if (left <= 1e-9) left = dash[++step % dash.size()];
    }
  }
}

bool dashesByHand(const QPainter& painter, const PageShape& shape) {
  return shape.line && !shape.line->dash.empty() && shape.line->width < 0.5 && !shape.round &&
         painter.paintEngine()->type() == QPaintEngine::SVG;
}

void paintShape(QPainter& painter, const PageShape& shape) {
  const bool solid = shape.fill && shape.fill->hatch == Hatch::None;
  if (shape.fill && !solid && !shape.round) paintHatch(painter, shape);
  const bool byHand = dashesByHand(painter, shape);
  painter.setPen(shape.line && !byHand ? pen(*shape.line) : QPen(Qt::NoPen));
  painter.setBrush(solid ? QBrush(color(shape.fill->ink)) : QBrush(Qt::NoBrush));
  if (shape.round) {
    const double r = distance(shape.points[0], shape.points[1]);
    painter.drawEllipse(QPointF(shape.points[0].x, shape.points[0].y), r, r);
  } else if (shape.closed) {
    painter.drawPolygon(polygon(shape.points));
  } else {
    painter.drawPolyline(polygon(shape.points));
  }
  if (byHand) paintDashes(painter, shape.points, shape);
}

void paintText(QPainter& painter, const PageText& text) {
  painter.save();
  painter.translate(text.at.x, text.at.y);
  painter.rotate(-text.angle);
  const double width = textWidth(text.text, text.height, text.bold);
  if (text.align == Align::Centre) painter.translate(-width / 2, 0);
  if (text.align == Align::Right) painter.translate(-width, 0);
  const double scale = text.height * kEmOverCap / kFontPixels;
  painter.scale(scale, scale);
  painter.setFont(sheetFont(text.bold));
  painter.setPen(color(text.ink));
  painter.drawText(QPointF(0, 0), QString::fromStdString(text.text));
  painter.restore();
}

QString registered(const QString& file) {
  loadResources();
  const int id = QFontDatabase::addApplicationFont(file);
  const QStringList families = QFontDatabase::applicationFontFamilies(id);
  return families.isEmpty() ? QString("DejaVu Sans Condensed") : families.first();
}

} // namespace

QFont sheetFont(bool bold) {
  static const QString regular = registered(":/fonts/DejaVuSansCondensed.ttf");
  static const QString heavy = registered(":/fonts/DejaVuSansCondensed-Bold.ttf");
  QFont font(bold ? heavy : regular);
  font.setPixelSize(kFontPixels);
  font.setBold(bold);
  font.setStretch(QFont::SemiCondensed);
  font.setKerning(false); // the width table has none
  font.setHintingPreference(QFont::PreferNoHinting);
  font.setStyleStrategy(QFont::StyleStrategy(QFont::PreferOutline | QFont::NoFontMerging));
  return font;
}

double sheetFontCapHeight() {
  return kFontPixels / kEmOverCap;
}

void paintPage(QPainter& painter, const Page& page) {
  painter.setRenderHint(QPainter::Antialiasing);
  for (const PageItem& item : page.items) {
    if (const auto* text = std::get_if<PageText>(&item)) {
      paintText(painter, *text);
    } else {
      paintShape(painter, std::get<PageShape>(item));
    }
  }
}

} // namespace sump
