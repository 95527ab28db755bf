// How the long section looks.

#include "app/section/long_section.h"

#include "app/canvas/grid.h"
#include "app/canvas/label_places.h"
#include "app/canvas/mark_painter.h"
#include "app/plain_text.h"
#include "core/units/print.h"

#include <QPainter>

#include <algorithm>
#include <cmath>
#include <limits>

namespace sump {

namespace {

constexpr double kHandle = 7;        // side of a handle, pixels
constexpr double kLabelPitch = 22;   // least distance of two elevations in the gutter
constexpr double kLineWide = 1.5;    // of a usual line
constexpr double kStationPitch = 64; // least distance of two stations

/// Whole multiples of `step` from `low` to `high`.
std::vector<double> multiples(double step, double low, double high) {
  std::vector<double> found;
  for (double i = std::ceil(low / step); i * step <= high; ++i)
    found.push_back(i * step);
  return found;
}

} // namespace

void LongSection::paintEvent(QPaintEvent*) {
  if (stale_) refresh();
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setFont(noteFont(font()));
  painter.fillRect(rect(), theme().background);
  if (drawing_.empty()) {
    texts_ = {};
    keptOff_.clear();
    return paintNothing(painter);
  }
  painter.save();
  painter.setClipRect(plot());
  painter.translate(plot().topLeft());
  paintMarks(painter, true);
  paintGrid(painter);
  paintMarks(painter, false);
  paintSelection(painter);
  painter.restore();
  keptOff_ = handleBoxes();
  if (const auto flag = dragFlag()) keptOff_.push_back(*flag);
  if (entry_->isVisible()) keptOff_.emplace_back(entry_->geometry());
  std::vector<QPolygonF> drawn = drawnShapes();
  const std::optional<QLineF> leader = entryLeader();
  if (leader) drawn.push_back(turnedBox(leader->center(), leader->angle(), {leader->length(), 3}));
  texts_ = placeNotes(
      drawing_.notes, selection_,
      [this](double station, Length level) { return place(station, level); },
      {plot().adjusted(2, 2, -2, -2), keptOff_, drawn}, noteFont(font()));
  if (leader) paintEntryLeader(painter, *leader);
  paintSectionNotes(painter, texts_.placed, theme());
  painter.setClipRect(plot());
  paintHandles(painter);
  paintDrag(painter);
  painter.setClipping(false);
  paintGutters(painter);
  paintFoot(painter);
}

/// Up to the mark round the handle.
std::optional<QLineF> LongSection::entryLeader() const {
  const std::optional<QLineF> way = entry_->leader();
  if (!way) return std::nullopt;
  constexpr double kMark = kHandle / 2 + 6;
  return QLineF(way->p1(), way->pointAt(1 - kMark / way->length()));
}

void LongSection::paintEntryLeader(QPainter& painter, const QLineF& leader) const {
  for (const QPen& pen : {QPen(theme().background, 3), QPen(theme().accent, 1)}) {
    painter.setPen(pen);
    painter.drawLine(leader);
  }
}

void LongSection::paintNothing(QPainter& painter) const {
  painter.setPen(theme().ink(Ink::Grey));
  const QString text = kind_ == SectionKind::Train ? tr("No vaults yet: place them in flow order.")
                       : run_.empty()              ? tr("Choose a line.")
                                      : tr("This line has no level yet: an end lacks its invert.");
  painter.drawText(rect().adjusted(16, 8, -16, -8), Qt::AlignCenter | Qt::TextWordWrap, text);
}

void LongSection::paintMarks(QPainter& painter, bool ground) const {
  for (const Mark& mark : marks_) {
    // The grid lies on the earth but under all lines, the ground's own among them.
    const bool earth = mark.layer == Layer::Ground;
    if (ground ? earth : !earth || mark.line) paintMark(painter, view_, mark, theme());
  }
}

void LongSection::paintGrid(QPainter& painter) const {
  const Box box = view_.visible();
  const double up = pixelsPerMetreUp();
  const auto lines = [&](double step, const QColor& color) {
    painter.setPen(QPen(color, 0));
    for (double level : multiples(step, box.low.y / plane_.stretch, box.high.y / plane_.stretch)) {
      const double y = std::round(view_.toScreen(Point2{0, level * plane_.stretch}).y()) + 0.5;
      painter.drawLine(QPointF(0, y), QPointF(plot().width(), y));
    }
  };
  painter.setRenderHint(QPainter::Antialiasing, false);
  lines(gridSteps(up, drawing_.units, 9).minor, theme().gridMinor);
  lines(gridSteps(up, drawing_.units, kLabelPitch).minor, theme().gridMajor);
  painter.setPen(QPen(theme().gridMinor, 0));
  const double step = gridSteps(view_.scale(), drawing_.units, kStationPitch).minor;
  for (double station : multiples(step, box.low.x, box.high.x)) {
    const double x = std::round(view_.toScreen(Point2{station, 0}).x()) + 0.5;
    painter.drawLine(QPointF(x, 0), QPointF(x, plot().height()));
  }
  painter.setRenderHint(QPainter::Antialiasing, true);
}

/// Lines and symbols as far as they are in sight, on this widget.
std::vector<QPolygonF> LongSection::drawnShapes() const {
  std::vector<QPolygonF> shapes;
  const QRectF area = plot();
  for (const Mark& mark : marks_) {
    const bool symbol = mark.layer == Layer::Symbol || mark.layer == Layer::Part;
    if (mark.points.size() < 2 || (!mark.line && !symbol)) continue;
    QPolygonF shape = view_.toScreen(mark.points).translated(area.topLeft());
    if (mark.round) {
      const double r = QLineF(shape[0], shape[1]).length();
      shape = QRectF(shape[0] - QPointF(r, r), QSizeF(2 * r, 2 * r));
    }
    if (mark.round || (symbol && mark.closed)) {
      constexpr double kApart = 2; // pixels from a sign to a text
      const QRectF box = shape.boundingRect().adjusted(-kApart, -kApart, kApart, kApart) & area;
      if (!box.isEmpty()) shapes.emplace_back(box);
      continue;
    }
    if (mark.closed) shape.push_back(shape.first());
    for (qsizetype i = 1; i < shape.size(); ++i) {
      const QLineF line = clipped({shape[i - 1], shape[i]}, area);
      if (line.length() > 0)
        shapes.push_back(turnedBox(line.center(), line.angle(), {line.length(), kLineWide}));
    }
  }
  return shapes;
}

void LongSection::paintSelection(QPainter& painter) const {
  QColor glow = theme().accent;
  glow.setAlpha(80);
  painter.setBrush(Qt::NoBrush);
  for (const QPen& pen : {QPen(glow, 6, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin),
                          QPen(theme().accent, 1.4, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin)}) {
    painter.setPen(pen);
    for (const Mark& mark : marks_) {
      if (!mark.line || mark.layer == Layer::Symbol || !selection_.contains(mark.object)) continue;
      // The line that the whole section is about keeps its colour.
      if (drawing_.kind == SectionKind::Line && mark.object == drawing_.run) continue;
      const QPolygonF shape = view_.toScreen(mark.points);
      mark.closed ? painter.drawPolygon(shape) : painter.drawPolyline(shape);
    }
  }
}

std::vector<QRectF> LongSection::handleBoxes() const {
  std::vector<QRectF> boxes;
  for (const SectionHandle& handle : drawing_.handles) {
    QRectF box(0, 0, kHandle + 2, kHandle + 2);
    box.moveCenter(place(handle));
    boxes.push_back(box);
  }
  return boxes;
}

/// Filled: stated. Open: graded. Round: known by what the end hangs on.
void LongSection::paintHandles(QPainter& painter) const {
  for (const SectionHandle& handle : drawing_.handles) {
    QRectF box(0, 0, kHandle, kHandle);
    box.moveCenter(place(handle));
    const bool chosen = hasFocus() && current_ && handle.same(*current_);
    if (chosen) {
      painter.setPen(QPen(theme().accent, 2));
      painter.setBrush(Qt::NoBrush);
      painter.drawRect(box.adjusted(-4, -4, 4, 4));
    }
    painter.setPen(QPen(chosen ? theme().accent : theme().text, 1.2));
    painter.setBrush(handle.typed ? (chosen ? theme().accent : theme().text) : theme().background);
    handle.held ? painter.drawEllipse(box) : painter.drawRect(box);
  }
}

/// Where the level that is being dragged is written: on the side of its handle where it covers
/// least.
std::optional<QRectF> LongSection::dragFlag() const {
  if (gesture_ != Gesture::Level || !dragged_ || !current_) return std::nullopt;
  const QPointF at = place(current_->station, *dragged_);
  const QFontMetricsF metrics(noteFont(font()));
  QRectF box(0, 0, metrics.horizontalAdvance(dragText()) + 10, metrics.height() + 4);
  const std::vector<QPolygonF> shapes = drawnShapes();
  constexpr qsizetype kOutside = 1000;
  qsizetype least = std::numeric_limits<qsizetype>::max();
  QRectF best;
  for (const double down : {-box.height() - 6, 6.0, -2 * box.height() - 12, box.height() + 12}) {
    for (const double right : {12.0, -12 - box.width(), 48.0, -48 - box.width()}) {
      const QRectF here = box.translated(at + QPointF(right, down));
      const QPolygonF shape(here);
      const auto covered = std::ranges::count_if(shapes, [&](const QPolygonF& other) {
        return other.boundingRect().intersects(here) && convexOverlap(shape, other);
      });
      const qsizetype cost = covered + (plot().contains(here) ? 0 : kOutside);
      if (cost >= least) continue;
      least = cost;
      best = here;
    }
  }
  return best;
}

QString LongSection::dragText() const {
  return tr("INV %1").arg(q(printElevation(*dragged_, drawing_.units)));
}

/// The level under the pointer at once, also before the study has followed.
void LongSection::paintDrag(QPainter& painter) const {
  const std::optional<QRectF> box = dragFlag();
  if (!box) return;
  const QPointF at = place(current_->station, *dragged_);
  painter.setPen(QPen(theme().accent, 1, Qt::DashLine));
  painter.drawLine(QPointF(plot().left(), at.y()), QPointF(plot().right(), at.y()));
  painter.setPen(Qt::NoPen);
  painter.setBrush(theme().accent);
  painter.drawRoundedRect(*box, 3, 3);
  painter.drawRect(QRectF(at.x() - kHandle / 2, at.y() - kHandle / 2, kHandle, kHandle));
  painter.setPen(theme().background);
  painter.drawText(*box, Qt::AlignCenter, dragText());
}

void LongSection::paintGutters(QPainter& painter) const {
  const Box box = view_.visible();
  const QRectF area = plot();
  painter.setPen(QPen(theme().ink(Ink::Grey), 1));
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(area);
  painter.setPen(theme().text);
  const double step = gridSteps(pixelsPerMetreUp(), drawing_.units, kLabelPitch).minor;
  for (double level : multiples(step, box.low.y / plane_.stretch, box.high.y / plane_.stretch)) {
    const double y = place(0, metres(level)).y();
    if (y < area.top() + 7 || y > area.bottom() - 7) continue;
    painter.drawText(QRectF(0, y - 8, area.left() - 6, 16), Qt::AlignRight | Qt::AlignVCenter,
                     q(printElevation(metres(level), drawing_.units)));
  }
  const double along = gridSteps(view_.scale(), drawing_.units, kStationPitch).minor;
  for (double station : multiples(along, box.low.x, box.high.x)) {
    const double x = view_.toScreen(Point2{station, 0}).x() + area.left();
    if (x < area.left() + 16 || x > area.right() - 24) continue;
    painter.drawText(QRectF(x - 32, area.bottom() + 1, 64, 15), Qt::AlignCenter,
                     q(printRunLength(metres(station), drawing_.units)));
  }
}

/// The scale that the drawing is stretched by, and what is under the pointer.
void LongSection::paintFoot(QPainter& painter) const {
  const QRectF foot(8, plot().bottom() + 17, width() - 16, 17);
  QString scale = plane_.stretch == 1 ? tr("Heights to the same scale as lengths")
                                      : tr("Heights stretched %1 times").arg(plane_.stretch);
  const QFontMetricsF metrics(painter.font());
  const QString more = "    " + tr("Rest the pointer on a thing for what has no room");
  const bool roomy = metrics.horizontalAdvance(scale + more + readOut_) + 40 < foot.width();
  if (!texts_.untold.empty() && roomy) scale += more;
  const double used = metrics.horizontalAdvance(scale) + 24;
  painter.setPen(theme().ink(Ink::Grey));
  painter.drawText(foot, Qt::AlignLeft | Qt::AlignVCenter, scale);
  painter.setPen(theme().text);
  const QRectF rest = foot.adjusted(used, 0, 0, 0);
  painter.drawText(rest, Qt::AlignRight | Qt::AlignVCenter,
                   metrics.elidedText(readOut_, Qt::ElideRight, rest.width()));
}

} // namespace sump
