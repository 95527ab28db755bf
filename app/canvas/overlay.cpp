#include "app/canvas/overlay.h"

#include "app/canvas/drawn_lines.h"
#include "app/canvas/label_places.h"

#include <algorithm>

namespace sump {

namespace {

constexpr double kEdge = 3;                ///< between a text and the rim of the drawing, pixels
constexpr double kAwayX = 14, kAwayY = 12; ///< of a plate from its point
constexpr double kPadX = 6, kPadY = 2;     ///< round a text on its plate
constexpr int kSteps = 10;                 ///< how many rows or columns a text may give way
constexpr double kLeaderFrom = 14;         ///< from what it tells; a text farther off gets a leader

bool meetsAny(const QRectF& box, const std::vector<QRectF>& others) {
  return std::ranges::any_of(others, [&](const QRectF& o) { return o.intersects(box); });
}

/// The box where it is wished, then row by row and column by column away from there.
std::vector<QRectF> fromHereOn(const std::vector<QRectF>& wished) {
  std::vector<QRectF> all = wished;
  for (int step = 1; step <= kSteps; ++step) {
    for (const QRectF& box : wished) {
      const double down = step * (box.height() + 2), right = step * (box.width() / 2 + 4);
      for (const QPointF by : {QPointF(0, -down), QPointF(0, down), QPointF(right, 0),
                               QPointF(-right, 0), QPointF(right, -down), QPointF(-right, down)})
        all.push_back(box.translated(by));
    }
  }
  return all;
}

QRectF inside(QRectF box, const QRectF& room) {
  box.moveRight(std::min(box.right(), room.right()));
  box.moveBottom(std::min(box.bottom(), room.bottom()));
  box.moveLeft(std::max(box.left(), room.left()));
  box.moveTop(std::max(box.top(), room.top()));
  return box;
}

} // namespace

Overlay::Overlay(QPainter& painter, const View& view, const CanvasTheme& theme,
                 std::vector<QRectF> kept, const DrawnLines* lines)
    : painter_(painter), view_(view), theme_(theme), metrics_(painter.font()), lines_(lines),
      kept_(std::move(kept)) {}

QSizeF Overlay::sizeOf(const QStringList& lines) const {
  double width = 0;
  for (const QString& line : lines)
    width = std::max(width, metrics_.horizontalAdvance(line));
  return {width + 2 * kPadX, metrics_.height() * static_cast<double>(lines.size()) + 2 * kPadY};
}

void Overlay::tag(QPointF at, const QStringList& lines, TagAnchor anchor) {
  QRectF box({}, sizeOf(lines));
  box.moveCenter(at);
  if (anchor == TagAnchor::Left) box.moveLeft(at.x());
  wishes_.push_back({lines, at, fromHereOn({box})});
}

void Overlay::plate(QPointF at, const QStringList& lines) {
  QRectF box({}, sizeOf(lines));
  std::vector<QRectF> sides;
  box.moveTopLeft(at + QPointF(kAwayX, kAwayY));
  sides.push_back(box);
  box.moveBottomLeft(at + QPointF(kAwayX, -kAwayY));
  sides.push_back(box);
  box.moveTopRight(at + QPointF(-kAwayX, kAwayY));
  sides.push_back(box);
  box.moveBottomRight(at + QPointF(-kAwayX, -kAwayY));
  sides.push_back(box);
  wishes_.push_back({lines, at, fromHereOn(sides)});
}

bool Overlay::isFree(const QRectF& box, Care care) const {
  if (meetsAny(box, kept_) || meetsAny(box, handles_) || meetsAny(box, marks_)) return false;
  if (std::ranges::any_of(tags_, [&](const Tag& tag) { return tag.box.intersects(box); }))
    return false;
  const QPolygonF shape(box);
  if (care != Care::InSightCovered &&
      std::ranges::any_of(inSight_, [&](const QPolygonF& s) { return convexOverlap(shape, s); }))
    return false;
  return care != Care::Everything || lines_ == nullptr || !lines_->cross(box);
}

std::optional<QLineF> Overlay::leaderTo(QPointF at, const QRectF& box) const {
  const QLineF way = shortestBetween(box, {at, QSizeF(0, 0)});
  return way.length() < kLeaderFrom ? std::nullopt : std::optional(way);
}

QRectF Overlay::chosen(const Wish& wish) const {
  const QRectF room = QRectF(QPointF(0, 0), view_.size()).adjusted(kEdge, kEdge, -kEdge, -kEdge);
  const auto through = [&](const QRectF& box) { // another text
    const auto leader = leaderTo(wish.at, box);
    return leader && std::ranges::any_of(tags_, [&](const Tag& tag) {
             return convexOverlap(QPolygonF({leader->p1(), leader->p2()}), QPolygonF(tag.box));
           });
  };
  for (const Care care : {Care::Everything, Care::LinesCovered, Care::InSightCovered}) {
    for (const QRectF& box : wish.boxes) {
      const QRectF moved = inside(box, room);
      if (isFree(moved, care) && !through(moved)) return moved;
    }
  }
  return inside(wish.boxes.front(), room);
}

bool Overlay::isTold(const Wish& wish) const {
  constexpr double kSamePlace = 30; // pixels
  return std::ranges::any_of(tags_, [&](const Tag& tag) {
    return tag.lines == wish.lines &&
           shortestBetween(tag.box, {wish.at, QSizeF(0, 0)}).length() < kSamePlace;
  });
}

void Overlay::settle() {
  for (const Wish& wish : wishes_) {
    if (isTold(wish)) continue;
    const QRectF box = chosen(wish);
    tags_.push_back({wish.lines, box, leaderTo(wish.at, box)});
  }
  wishes_.clear();
}

void Overlay::paintTexts() const {
  QColor plate = theme_.background;
  plate.setAlpha(240);
  for (const Tag& tag : tags_) {
    if (!tag.leader) continue;
    painter_.setPen(QPen(theme_.background, 2.5));
    painter_.drawLine(*tag.leader);
    painter_.setPen(QPen(theme_.accent, 0.8));
    painter_.drawLine(*tag.leader);
  }
  for (const Tag& tag : tags_) {
    painter_.setPen(QPen(theme_.accent, 1));
    painter_.setBrush(plate);
    painter_.drawRoundedRect(tag.box, 3, 3);
    painter_.setPen(theme_.text);
    painter_.setBrush(Qt::NoBrush);
    const int align = tag.lines.size() > 1 ? Qt::AlignLeft | Qt::AlignVCenter : Qt::AlignCenter;
    painter_.drawText(tag.box.adjusted(kPadX - 1, 0, 1 - kPadX, 0), align, tag.lines.join('\n'));
  }
}

} // namespace sump
