#include "app/section/section_labels.h"

#include "app/canvas/label_places.h"

#include <QFontMetricsF>

#include <algorithm>
#include <array>
#include <cmath>

namespace sump {

namespace {

constexpr double kGap = 5;         ///< between a text and what it is about, pixels
constexpr double kPadding = 2;     ///< round a text
constexpr double kApart = 2;       ///< between two texts
constexpr double kLeaderFrom = 12; ///< a text this far off gets a leader
constexpr double kShort = 6;       ///< a leader ends so far from the middle of a handle

/// A place for a text and the point of the thing that it then stands by.
struct Place {
  QRectF box;
  QPointF anchor;
  bool led = true; ///< by a leader, where it stands off
};

/// The wished side first, then the opposite one, then the other two.
std::array<NoteSide, 4> sidesFrom(NoteSide side) {
  using enum NoteSide;
  if (side == Right) return {Right, Left, Above, Below};
  if (side == Left) return {Left, Right, Above, Below};
  if (side == Below) return {Below, Above, Right, Left};
  return {Above, Below, Right, Left};
}

void addBeside(NoteSide side, double away, QSizeF size, QPointF anchor, std::vector<Place>& out) {
  const double w = size.width() / 2, h = size.height() / 2;
  const bool level = side == NoteSide::Left || side == NoteSide::Right;
  const std::array<double, 7> shifts{0.0, 0.5, -0.5, 1.0, -1.0, 1.5, -1.5};
  for (double shift : shifts) {
    QRectF box({}, size);
    const double x = side == NoteSide::Left ? -(w + away) : w + away;
    const double y = side == NoteSide::Above ? -(h + away) : h + away;
    // Along the thing's own side no farther than the text's end.
    const double along = std::clamp(shift, -1.0, 1.0);
    box.moveCenter(anchor + (level ? QPointF(x, shift * 2 * h) : QPointF(along * w, y)));
    out.push_back({box, anchor});
  }
}

/// Round the anchor, nearest first.
std::vector<Place> placesRound(const SectionNote& note, QSizeF size, QPointF anchor) {
  std::vector<Place> all;
  const std::array<NoteSide, 4> order = sidesFrom(note.side);
  for (double away : {kGap, 11.0, 18.0, 26.0}) {
    for (NoteSide side : order)
      addBeside(side, away, size, anchor, all);
  }
  return all;
}

/// What crosses at an unknown level is a line from top to bottom: anywhere on it, from below.
std::vector<Place> placesUpright(QSizeF size, QPointF anchor, const QRectF& area) {
  std::vector<Place> all;
  for (double bottom = area.bottom() - 2; bottom - size.height() > area.top();
       bottom -= size.height() + 2) {
    for (double shift : {0.0, 0.6, -0.6, 1.0, -1.0}) {
      QRectF box({}, size);
      box.moveCenter({anchor.x() + shift * (size.width() / 2 + 2), 0});
      box.moveBottom(bottom);
      all.push_back({box, {anchor.x(), box.center().y()}});
    }
  }
  return all;
}

class NotePlacer {
public:
  NotePlacer(const std::vector<SectionNote>& notes, const ToPixel& toPixel, const SectionRoom& room,
             const QFont& font)
      : notes_(notes), toPixel_(toPixel), area_(room.area), metrics_(font) {
    for (const QRectF& box : room.taken)
      taken_.take(QPolygonF(box));
    for (const QPolygonF& shape : room.drawn)
      drawn_.take(shape);
  }

  void place(const SectionNote& note) {
    const bool number = std::ranges::all_of(note.text, [](char c) { return c >= '0' && c <= '9'; });
    const QPointF anchor = toPixel_(note.station, note.level);
    const bool upright = note.side == NoteSide::Centre;
    // What lies out of sight is not pointed at from afar.
    const QPointF seen(anchor.x(), upright ? area_.center().y() : anchor.y());
    if (!area_.adjusted(-2, -2, 2, 2).contains(seen)) return;
    // A chamber's number stands in its chamber or nowhere.
    if (number) return void(put(note, note.text, placesInChamber(note, anchor)));
    if (isTold(note, anchor)) return;
    if (put(note, note.text, anchor)) return;
    texts_.untold.emplace_back(note, seen);
    if (note.brief.empty()) return;
    // `Vault 1` of `Vault 1, settling` says more than its id.
    const std::string name = note.text.substr(0, note.text.find(','));
    if (name.size() < note.text.size() && put(note, name, anchor)) return;
    put(note, note.brief, anchor);
  }
  SectionTexts take() { return std::move(texts_); }

private:
  QSizeF sizeOf(const std::string& words) const {
    return {metrics_.horizontalAdvance(QString::fromStdString(words)) + 2 * kPadding,
            metrics_.ascent() + metrics_.descent()};
  }
  std::vector<Place> placesInChamber(const SectionNote& note, QPointF anchor) const {
    const QSizeF size = sizeOf(note.text);
    const QPointF end = toPixel_(note.station + note.span / 2, note.level);
    std::vector<Place> all;
    // Above the floor's level, which stands on the floor, where the chamber is high enough.
    const double overTheLevel = size.height() + kGap + kApart;
    for (double away : {overTheLevel, kGap, 13.0, kFarthestNote}) {
      for (double share : {0.0, -0.5, 0.5}) {
        QRectF box({}, size);
        box.moveCenter(anchor + QPointF(share * (end.x() - anchor.x()), -away - size.height() / 2));
        all.push_back({box, {box.center().x(), anchor.y()}, false});
      }
    }
    return all;
  }
  /// Two lines that meet have one level there, a short level one the same at both its ends.
  bool isTold(const SectionNote& note, QPointF anchor) const {
    constexpr double kSamePlace = 24, kSameLine = 60; // pixels
    const QString text = QString::fromStdString(note.text);
    return std::ranges::any_of(texts_.placed, [&](const PlacedNote& placed) {
      const double same = placed.note.object == note.object ? kSameLine : kSamePlace;
      return QString::fromStdString(placed.note.text) == text &&
             QLineF(placed.anchor, anchor).length() < same;
    });
  }
  bool put(const SectionNote& note, const std::string& words, QPointF anchor) {
    const QSizeF size = sizeOf(words);
    if (note.side == NoteSide::Centre) return put(note, words, placesUpright(size, anchor, area_));
    return put(note, words, placesAlong(note, size)) ||
           put(note, words, placesRound(note, size, anchor));
  }
  /// Of a level on the lines that show it: on its own side, then on the other.
  std::vector<Place> placesAlong(const SectionNote& note, QSizeF size) const {
    constexpr double kOff = 2, kEnd = 3; // pixels to the line and at its ends
    std::vector<Place> all;
    const double own = note.side == NoteSide::Below ? 1 : -1;
    for (const double side : {own, -own}) {
      for (const SectionArea& line : note.lines) {
        const QPointF a = toPixel_(line.from, line.low), b = toPixel_(line.to, line.low);
        const double low = std::max(a.x(), area_.left()) + kEnd + size.width() / 2;
        const double high = std::min(b.x(), area_.right()) - kEnd - size.width() / 2;
        for (double share : {0.5, 0.35, 0.65, 0.2, 0.8, 0.0, 1.0}) {
          if (high < low) break;
          QRectF box({}, size);
          box.moveCenter({std::lerp(low, high, share), a.y() + side * (size.height() / 2 + kOff)});
          all.push_back({box, {box.center().x(), a.y()}, false});
        }
      }
    }
    return all;
  }
  /// Nearer to its neighbour's place than to its own an invert would be taken for that one's.
  bool isInOrder(const SectionNote& note, const Place& place) const {
    if (!note.inOrder) return true;
    const double off = place.box.center().x() - place.anchor.x();
    return std::ranges::none_of(notes_, [&](const SectionNote& other) {
      if (!other.inOrder || other.object != note.object) return false;
      const double to = toPixel_(other.station, other.level).x() - place.anchor.x();
      if (std::abs(to) < 1) return false; // over or under it
      return to > 0 ? off > to / 2 : off < to / 2;
    });
  }
  /// Rather by a leader that crosses nothing: through a wall it seems to lead to the wall.
  bool put(const SectionNote& note, const std::string& words, const std::vector<Place>& places) {
    return put(note, words, places, true) || put(note, words, places, false);
  }
  bool put(const SectionNote& note, const std::string& words, const std::vector<Place>& places,
           bool clear) {
    for (const Place& place : places) {
      if (!area_.contains(place.box) || !drawn_.isFree(place.box)) continue;
      if (!isInOrder(note, place)) continue;
      const QLineF way = shortestBetween(place.box, {place.anchor, QSizeF(0, 0)});
      const bool led = place.led && way.length() >= kLeaderFrom;
      if (way.length() > kFarthestNote || !taken_.isFree(place.box)) continue;
      const QLineF leader(way.p1(), way.pointAt(1 - kShort / std::max(way.length(), kShort)));
      const QPolygonF line({leader.p1(), leader.p2()});
      if (led && (!taken_.isFree(line) || (clear && !drawn_.isFree(line)))) continue;
      taken_.take(QPolygonF(place.box.adjusted(-kApart, -kApart, kApart, kApart)));
      if (led) taken_.take(leader);
      texts_.placed.push_back({note, QString::fromStdString(words), place.box, place.anchor,
                               led ? std::optional(leader) : std::nullopt});
      return true;
    }
    return false;
  }

  const std::vector<SectionNote>& notes_;
  const ToPixel& toPixel_;
  QRectF area_;
  TakenBoxes taken_, drawn_;
  QFontMetricsF metrics_;
  SectionTexts texts_;
};

} // namespace

QFont noteFont(QFont font) {
  font.setPixelSize(11);
  return font;
}

SectionTexts placeNotes(const std::vector<SectionNote>& notes, const std::set<Id>& first,
                        const ToPixel& toPixel, const SectionRoom& room, const QFont& font) {
  NotePlacer placer(notes, toPixel, room, font);
  for (const bool chosen : {true, false}) {
    for (const SectionNote& note : notes) {
      if (first.contains(note.object) == chosen) placer.place(note);
    }
  }
  return placer.take();
}

void paintSectionNotes(QPainter& painter, const std::vector<PlacedNote>& notes,
                       const CanvasTheme& theme) {
  for (const PlacedNote& placed : notes) {
    if (!placed.leader) continue;
    painter.setPen(QPen(theme.ink(Ink::Grey), 0.8));
    painter.drawLine(*placed.leader);
  }
  QColor plate = theme.halo;
  plate.setAlpha(255); // a line that shows through the letters reads as part of them
  for (const PlacedNote& placed : notes) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(plate);
    painter.drawRoundedRect(placed.box, 2, 2);
    painter.setPen(placed.note.ink == Ink::Black ? theme.text : theme.ink(placed.note.ink));
    painter.drawText(placed.box, Qt::AlignCenter, placed.text);
  }
}

} // namespace sump
