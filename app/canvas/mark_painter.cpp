#include "app/canvas/mark_painter.h"

#include <QPixmap>

#include <algorithm>
#include <cmath>
#include <map>

namespace sump {

namespace {

/// One tile of the hatch at the device's own resolution; plain Qt patterns blur when scaled.
QBrush hatchBrush(const FillStyle& fill, const CanvasTheme& theme, double ratio) {
  constexpr double kTile = 9; // pixels between hatch lines
  QPixmap tile(QSize(static_cast<int>(kTile * ratio), static_cast<int>(kTile * ratio)));
  tile.setDevicePixelRatio(ratio);
  tile.fill(Qt::transparent);
  QPainter p(&tile);
  p.setRenderHint(QPainter::Antialiasing);
  const QColor color = theme.ink(fill.ink);
  p.setPen(QPen(color, 1));
  if (fill.hatch == Hatch::Dots) {
    p.setPen(Qt::NoPen);
    p.setBrush(color);
    p.drawEllipse(QPointF(kTile / 2, kTile / 2), 1, 1);
  } else {
    for (double shift : {-kTile, 0.0, kTile}) {
      p.drawLine(QPointF(shift, kTile), QPointF(shift + kTile, 0));
      if (fill.hatch == Hatch::Cross) p.drawLine(QPointF(shift, 0), QPointF(shift + kTile, kTile));
    }
  }
  p.end();
  QBrush brush(tile);
  brush.setTransform(QTransform::fromScale(1 / ratio, 1 / ratio));
  return brush;
}

QBrush fillBrush(const FillStyle& fill, const CanvasTheme& theme, double ratio) {
  if (fill.hatch == Hatch::None) return theme.ink(fill.ink);
  return hatchBrush(fill, theme, ratio);
}

void drawShape(QPainter& painter, const View& view, const Mark& mark) {
  if (mark.round) {
    const double radius = distance(mark.points[0], mark.points[1]) * view.scale();
    painter.drawEllipse(view.toScreen(mark.points[0]), radius, radius);
  } else if (mark.closed) {
    painter.drawPolygon(view.toScreen(mark.points));
  } else {
    painter.drawPolyline(view.toScreen(mark.points));
  }
}

/// Filled details that cover the whole of a selected area would hide it; only edges glow.
std::vector<std::size_t> edgesOf(const Scene& scene, const View& view,
                                 const std::set<Id>& selection) {
  std::vector<std::size_t> edges;
  for (std::size_t i : scene.visible(view.visible())) {
    const Mark& mark = scene.marks()[i];
    if (mark.line && mark.layer != Layer::Symbol && selection.contains(scene.owner(i)))
      edges.push_back(i);
  }
  return edges;
}

QPolygonF regular(QPointF centre, double radius, int corners, double turn) {
  QPolygonF shape;
  for (int i = 0; i < corners; ++i) {
    const double a = turn + 2 * kPi * i / corners;
    shape << centre + QPointF(std::cos(a), std::sin(a)) * radius;
  }
  return shape;
}

} // namespace

QPen screenPen(const LineStyle& style, const CanvasTheme& theme) {
  const double width = std::max(1.0, style.width * kPixelsPerPaperMm);
  QPen pen(theme.ink(style.ink), width);
  pen.setCapStyle(Qt::FlatCap);
  pen.setJoinStyle(Qt::MiterJoin);
  if (!style.dash.empty()) {
    QList<qreal> pattern; // in pen widths
    for (double part : style.dash)
      pattern << std::max(0.5, part * kPixelsPerPaperMm / width);
    if (pattern.size() % 2 == 1) pattern << pattern.back();
    pen.setDashPattern(pattern);
  }
  return pen;
}

void paintMark(QPainter& painter, const View& view, const Mark& mark, const CanvasTheme& theme) {
  if (mark.points.size() < 2) return;
  painter.setPen(mark.line ? screenPen(*mark.line, theme) : QPen(Qt::NoPen));
  painter.setBrush(mark.fill ? fillBrush(*mark.fill, theme, painter.device()->devicePixelRatioF())
                             : QBrush());
  drawShape(painter, view, mark);
}

void paintSelected(QPainter& painter, const View& view, const Scene& scene,
                   const std::set<Id>& selection, const CanvasTheme& theme) {
  if (selection.empty()) return;
  QColor glow = theme.accent;
  glow.setAlpha(70);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(glow, 9, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  const std::vector<std::size_t> edges = edgesOf(scene, view, selection);
  for (std::size_t i : edges)
    drawShape(painter, view, scene.marks()[i]);
  painter.setPen(QPen(theme.accent, 1.6, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  for (std::size_t i : edges)
    drawShape(painter, view, scene.marks()[i]);
}

void paintSeverity(QPainter& painter, QPointF centre, double size, Severity severity,
                   const CanvasTheme& theme) {
  const double r = size / 2;
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(theme.background, 1.5));
  painter.setBrush(theme.severity(severity));
  double lower = 0;
  if (severity == Severity::Error) {
    painter.drawPolygon(regular(centre, r, 8, kPi / 8));
  } else if (severity == Severity::Warning) {
    painter.drawPolygon(regular(centre + QPointF(0, r * 0.2), r * 1.15, 3, -kPi / 2));
    lower = r * 0.28;
  } else {
    painter.drawEllipse(centre, r * 0.92, r * 0.92);
  }
  QFont font = painter.font();
  font.setBold(true);
  font.setPixelSize(std::max(7, static_cast<int>(size * 0.62)));
  painter.setFont(font);
  painter.setPen(theme.background);
  const QRectF box(centre.x() - r, centre.y() - r + lower, size, size);
  painter.drawText(box, Qt::AlignCenter, severity == Severity::Note ? "i" : "!");
  painter.restore();
}

SeveritySigns::SeveritySigns(const CanvasTheme& theme, double ratio) {
  for (Severity severity : {Severity::Note, Severity::Warning, Severity::Error}) {
    QPixmap sign(QSize(kSize, kSize) * ratio);
    sign.setDevicePixelRatio(ratio);
    sign.fill(Qt::transparent);
    QPainter painter(&sign);
    paintSeverity(painter, {kSize / 2.0, kSize / 2.0}, 18, severity, theme);
    painter.end();
    signs_[static_cast<std::size_t>(severity)] = sign;
  }
}

const SeveritySigns& severitySigns(const CanvasTheme& theme, double ratio) {
  static std::map<std::pair<bool, double>, SeveritySigns> made;
  const std::pair key(theme.dark, ratio);
  const auto known = made.find(key);
  return known != made.end() ? known->second
                             : made.emplace(key, SeveritySigns(theme, ratio)).first->second;
}

} // namespace sump
