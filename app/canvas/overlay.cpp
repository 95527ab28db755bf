#include "app/canvas/overlay.h"

#include "app/canvas/drawn_lines.h"
#include "app/canvas/label_places.h"

#include <algorithm>
#include <limits>

namespace sump {

namespace {

constexpr double kEdge = 3;                ///< between a text and the rim of the drawing, pixels
constexpr double kAwayX = 14, kAwayY = 12; ///< of a plate from its point
constexpr double kPadX = 6, kPadY = 2;     ///< round a text on its plate
constexpr int kSteps = 10;                 ///< how many rows or columns a text may give way
constexpr double kTagLeaderFrom = 20;      ///< from what it tells; a text farther off gets a leader

bool meetsAny(const QRectF& box, const std::vector<QRectF>& others) {
  return std::ranges::any_of(others, [&](const QRectF& o) { return o.intersects(box); });
}

bool meetsAny(const QPolygonF& shape, const std::vector<QPolygonF>& others) {
  const QRectF bounds = shape.boundingRect().adjusted(-0.5, -0.5, 0.5, 0.5); // of upright lines too
  return std::ranges::any_of(others, [&](const QPolygonF& other) {
    return other.boundingRect().adjusted(-0.5, -0.5, 0.5, 0.5).intersects(bounds) &&
           convexOverlap(shape, other);
  });
}

/// The box where it is wished and a nudge from there, then row by row and column by column away.
std::vector<QRectF> fromHereOn(const std::vector<QRectF>& wished) {
  std::vector<QRectF> all = wished;
  for (const double nudge : {8.0, 16.0, 24.0, 36.0}) {
    for (const QRectF& box : wished) {
      for (const QPointF by :
           {QPointF(nudge, 0), QPointF(-nudge, 0), QPointF(0, nudge), QPointF(0, -nudge)})
        all.push_back(box.translated(by));
    }
  }
  for (int step = 1; step <= kSteps; ++step) {
    for (const QRectF& box : wished) {
      const double down = step * (box.height() + 2), right = step * (box.width() / 2 + 4);
      const double half = right / 2;
      for (const QPointF by : {QPointF(0, -down), QPointF(0, down), QPointF(right, 0),
                               QPointF(-right, 0), QPointF(half, 0), QPointF(-half, 0),
                               QPointF(half, -down), QPointF(half, down), QPointF(-half, -down),
                               QPointF(-half, down), QPointF(right, -down), QPointF(-right, down)})
        all.push_back(box.translated(by));
    }
  }
  return all;
}

/// Each figure on a line of its own: two spaces part them.
QStringList broken(const QStringList& lines) {
  QStringList all;
  for (const QString& line : lines)
    all += line.split(QStringLiteral("  "), Qt::SkipEmptyParts);
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

template <typename Boxes> void Overlay::wish(QPointF at, const QStringList& lines, Boxes boxesFor) {
  Wish wish{at, {}};
  for (const QStringList& shape : {lines, broken(lines)}) {
    if (wish.shapes.empty() || shape != lines)
      wish.shapes.push_back({shape, fromHereOn(boxesFor(sizeOf(shape)))});
  }
  wishes_.push_back(std::move(wish));
}

void Overlay::tag(QPointF about, const QStringList& lines, QPointF off, TagAnchor anchor) {
  const QPointF at = about + off;
  wish(about, lines, [&](QSizeF size) {
    QRectF box({}, size);
    box.moveCenter(at);
    if (anchor == TagAnchor::Left) box.moveLeft(at.x());
    return std::vector{box};
  });
}

void Overlay::plate(QPointF at, const QStringList& lines) {
  wish(at, lines, [at](QSizeF size) {
    QRectF box({}, size);
    std::vector<QRectF> sides;
    box.moveTopLeft(at + QPointF(kAwayX, kAwayY));
    sides.push_back(box);
    box.moveBottomLeft(at + QPointF(kAwayX, -kAwayY));
    sides.push_back(box);
    box.moveTopRight(at + QPointF(-kAwayX, kAwayY));
    sides.push_back(box);
    box.moveBottomRight(at + QPointF(-kAwayX, -kAwayY));
    sides.push_back(box);
    return sides;
  });
}

bool Overlay::isFree(const QRectF& box, Care care) const {
  if (meetsAny(box, kept_) || meetsAny(box, handles_) || meetsAny(box, marks_)) return false;
  const QPolygonF shape(box);
  const auto isIn = [&](const Tag& tag) {
    return tag.box.intersects(box) || (tag.leader && convexOverlap(asShape(*tag.leader), shape));
  };
  if (std::ranges::any_of(tags_, isIn)) return false;
  if (care < Care::InSightCovered && meetsAny(shape, inSight_)) return false;
  if (care < Care::NamesCovered && meetsAny(shape, names_)) return false;
  return care > Care::Everything || lines_ == nullptr || !lines_->cross(box);
}

/// Through no other text, and as long as there is another way through no name and across no line
/// that is being drawn.
bool Overlay::isClear(const QLineF& leader, Care care) const {
  const QPolygonF line = asShape(leader);
  const auto meets = [&](const QRectF& box) { return convexOverlap(line, QPolygonF(box)); };
  if (std::ranges::any_of(tags_, [&](const Tag& tag) { return meets(tag.box); })) return false;
  if (care >= Care::NamesCovered) return true;
  if (meetsAny(line, names_) || std::ranges::any_of(kept_, meets)) return false;
  if (care > Care::Everything) return true;
  constexpr double kAtItsEnd = 8; // pixels: there it meets the line that it tells of
  constexpr double kWide = 3;     // pixels: along a line it would be taken for that
  const QLineF most(leader.p1(),
                    leader.pointAt(1 - kAtItsEnd / std::max(leader.length(), kAtItsEnd)));
  const QPolygonF before = turnedBox(most.center(), most.angle(), {most.length(), kWide});
  const auto crosses = [&](const QPolygonF& shape) {
    return shape.size() == 2 && convexOverlap(before, shape);
  };
  return std::ranges::none_of(inSight_, crosses);
}

std::optional<QLineF> Overlay::leaderTo(QPointF at, const QRectF& box) const {
  const QLineF way = shortestBetween(box, {at, QSizeF(0, 0)});
  return way.length() < kTagLeaderFrom ? std::nullopt : std::optional(way);
}

std::optional<Overlay::Place> Overlay::best(const Wish& wish, const Shape& shape, Care care,
                                            double most) const {
  const QRectF room = QRectF(QPointF(0, 0), view_.size()).adjusted(kEdge, kEdge, -kEdge, -kEdge);
  std::optional<Place> best;
  int least = std::numeric_limits<int>::max();
  for (const QRectF& box : shape.boxes) {
    const QRectF moved = inside(box, room);
    const double away = shortestBetween(moved, {wish.at, QSizeF(0, 0)}).length();
    if (away > most || !isFree(moved, care)) continue;
    const auto leader = leaderTo(wish.at, moved);
    if (leader && !isClear(*leader, care)) continue;
    const int covered = care == Care::Everything || lines_ == nullptr ? 0 : lines_->count(moved);
    if (covered >= least) continue;
    least = covered;
    best = Place{&shape, moved};
    if (covered <= 1) break; // it covers something anyhow
  }
  return best;
}

Overlay::Place Overlay::chosen(const Wish& wish) const {
  using enum Care;
  // Better over a line of the drawing than far off.
  constexpr double kNear = 110, kAnywhere = 1e9; // pixels
  for (const auto& [care, most] : {std::pair(Everything, kNear),
                                   {LinesCovered, kNear},
                                   {Everything, kAnywhere},
                                   {LinesCovered, kAnywhere},
                                   {NamesCovered, kAnywhere},
                                   {InSightCovered, kAnywhere}}) {
    for (const Shape& shape : wish.shapes) {
      if (const auto place = best(wish, shape, care, most)) return *place;
    }
  }
  const QRectF room = QRectF(QPointF(0, 0), view_.size()).adjusted(kEdge, kEdge, -kEdge, -kEdge);
  return {&wish.shapes.front(), inside(wish.shapes.front().boxes.front(), room)};
}

bool Overlay::isTold(const Wish& wish) const {
  constexpr double kSamePlace = 30; // pixels
  return std::ranges::any_of(tags_, [&](const Tag& tag) {
    const auto isThis = [&](const Shape& shape) { return shape.lines == tag.lines; };
    return std::ranges::any_of(wish.shapes, isThis) &&
           shortestBetween(tag.box, {wish.at, QSizeF(0, 0)}).length() < kSamePlace;
  });
}

void Overlay::settle(const std::vector<QPolygonF>& names) {
  names_ = names;
  for (const Wish& wish : wishes_) {
    if (isTold(wish)) continue;
    const Place place = chosen(wish);
    tags_.push_back({place.shape->lines, place.box, leaderTo(wish.at, place.box)});
  }
  wishes_.clear();
}

void Overlay::paintLeader(const QLineF& leader) const {
  painter_.setPen(QPen(theme_.background, 2.5));
  painter_.drawLine(leader);
  painter_.setPen(QPen(theme_.accent, 0.8));
  painter_.drawLine(leader);
}

void Overlay::paintLeaders() const {
  for (const Tag& tag : tags_) {
    if (tag.leader) paintLeader(*tag.leader);
  }
}

void Overlay::paintTexts() const {
  QColor plate = theme_.background;
  plate.setAlpha(240);
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
