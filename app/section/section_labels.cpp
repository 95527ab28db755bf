#include "app/section/section_labels.h"

#include <QFontMetricsF>

#include <algorithm>
#include <array>
#include <cmath>

namespace sump {

namespace {

constexpr double kGap = 5;         ///< between a text and what it is about, pixels
constexpr double kPadding = 2;     ///< round a text
constexpr double kLeaderFrom = 14; ///< a text this far off gets a leader

struct Offset {
  double right = 0, down = 0; ///< of the box's middle from the anchor
};

class NotePlacer {
public:
  NotePlacer(const ToPixel& toPixel, const QRectF& area, std::vector<QRectF> taken,
             const QFont& font)
      : toPixel_(toPixel), area_(area), taken_(std::move(taken)), metrics_(font) {}

  void place(const SectionNote& note) {
    const QPointF anchor = toPixel_(note.station, note.level);
    // What lies out of sight is not pointed at from afar.
    if (!area_.adjusted(-2, -2, 2, 2).contains(anchor) && note.side != NoteSide::Centre) return;
    const QString text = QString::fromStdString(note.text);
    const QSizeF size(metrics_.horizontalAdvance(text) + 2 * kPadding,
                      metrics_.ascent() + metrics_.descent());
    for (const Offset& offset : offsets(note.side, size)) {
      QRectF box({}, size);
      box.moveCenter(anchor + QPointF(offset.right, offset.down));
      if (note.side == NoteSide::Centre) box.moveBottom(area_.bottom() - 2 + offset.down);
      if (!free(box)) continue;
      taken_.push_back(box);
      placed_.push_back({note, box, leader(box, anchor)});
      return;
    }
  }
  std::vector<PlacedNote> take() { return std::move(placed_); }

private:
  bool free(const QRectF& box) const {
    return area_.contains(box) &&
           std::ranges::none_of(taken_, [&](const QRectF& other) { return other.intersects(box); });
  }

  std::optional<QLineF> leader(const QRectF& box, QPointF anchor) const {
    const QPointF near(std::clamp(anchor.x(), box.left(), box.right()),
                       std::clamp(anchor.y(), box.top(), box.bottom()));
    const QLineF line(near, anchor);
    if (line.length() < kLeaderFrom) return std::nullopt;
    return line;
  }

  /// The wished side first, nearest first, then the opposite one, then the other two.
  static std::vector<Offset> offsets(NoteSide side, QSizeF size) {
    const double w = size.width() / 2, h = size.height() / 2;
    std::vector<Offset> all;
    const auto add = [&](NoteSide at, double away) {
      const double y = at == NoteSide::Above ? -(h + away) : h + away;
      const double x = at == NoteSide::Left ? -(w + away) : w + away;
      if (at == NoteSide::Above || at == NoteSide::Below) {
        for (double shift : {0.0, 0.6, -0.6, 1.0, -1.0})
          all.push_back({shift * w, y});
      } else {
        for (double shift : {0.0, 1.2, -1.2, 2.4, -2.4})
          all.push_back({x, shift * h});
      }
    };
    std::array<NoteSide, 4> order{NoteSide::Above, NoteSide::Below, NoteSide::Right,
                                  NoteSide::Left};
    if (side == NoteSide::Below) std::swap(order[0], order[1]);
    if (side == NoteSide::Right)
      order = {NoteSide::Right, NoteSide::Left, NoteSide::Above, NoteSide::Below};
    if (side == NoteSide::Left)
      order = {NoteSide::Left, NoteSide::Right, NoteSide::Above, NoteSide::Below};
    add(order[0], kGap);
    add(order[1], kGap);
    for (double away : {kGap, 20.0, 36.0, 54.0, 74.0}) {
      for (NoteSide at : order)
        add(at, away);
    }
    return all;
  }

  const ToPixel& toPixel_;
  QRectF area_;
  std::vector<QRectF> taken_;
  QFontMetricsF metrics_;
  std::vector<PlacedNote> placed_;
};

} // namespace

QFont noteFont(QFont font) {
  font.setPixelSize(11);
  return font;
}

std::vector<PlacedNote> placeNotes(const std::vector<SectionNote>& notes, const ToPixel& toPixel,
                                   const QRectF& area, std::vector<QRectF> taken,
                                   const QFont& font) {
  NotePlacer placer(toPixel, area, std::move(taken), font);
  for (const SectionNote& note : notes)
    placer.place(note);
  return placer.take();
}

void paintSectionNotes(QPainter& painter, const std::vector<PlacedNote>& notes,
                       const CanvasTheme& theme) {
  for (const PlacedNote& placed : notes) {
    if (!placed.leader) continue;
    painter.setPen(QPen(theme.ink(Ink::Grey), 0.8));
    painter.drawLine(*placed.leader);
  }
  for (const PlacedNote& placed : notes) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme.halo);
    painter.drawRoundedRect(placed.box, 2, 2);
    painter.setPen(placed.note.ink == Ink::Black ? theme.text : theme.ink(placed.note.ink));
    painter.drawText(placed.box, Qt::AlignCenter, QString::fromStdString(placed.note.text));
  }
}

} // namespace sump
