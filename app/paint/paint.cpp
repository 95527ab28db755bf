#include "app/paint/paint.h"

#include "core/sheet/hatch.h"

#include <QFontDatabase>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>

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

void paintShape(QPainter& painter, const PageShape& shape) {
  const bool solid = shape.fill && shape.fill->hatch == Hatch::None;
  if (shape.fill && !solid && !shape.round) paintHatch(painter, shape);
  painter.setPen(shape.line ? pen(*shape.line) : QPen(Qt::NoPen));
  painter.setBrush(solid ? QBrush(color(shape.fill->ink)) : QBrush(Qt::NoBrush));
  if (shape.round) {
    const double r = distance(shape.points[0], shape.points[1]);
    painter.drawEllipse(QPointF(shape.points[0].x, shape.points[0].y), r, r);
  } else if (shape.closed) {
    painter.drawPolygon(polygon(shape.points));
  } else {
    painter.drawPolyline(polygon(shape.points));
  }
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
