#pragma once
// What a tool draws over the plan in one frame. Lines and marks are painted at once; texts wait
// until every mark is known and are then put, near what they tell, where they cover neither marks
// nor each other nor what must be seen.

#include "app/canvas/theme.h"
#include "app/canvas/view.h"

#include <QFontMetricsF>
#include <QLineF>
#include <QPainter>
#include <QRectF>
#include <QStringList>

#include <optional>
#include <vector>

namespace sump {

class DrawnLines;

enum class TagAnchor { Left, Centre };

class Overlay {
public:
  /// A text on its plate.
  struct Tag {
    QStringList lines;
    QRectF box;
    std::optional<QLineF> leader{}; ///< to what it tells, where it stands off
  };

  /// `kept` is where no text may stand: the typed entry, the scale bar. Texts also keep off the
  /// `lines` of the drawing as long as there is another place.
  Overlay(QPainter& painter, const View& view, const CanvasTheme& theme, std::vector<QRectF> kept,
          const DrawnLines* lines = nullptr);

  QPainter& painter() const { return painter_; }
  const View& view() const { return view_; }
  const CanvasTheme& theme() const { return theme_; }

  /// A mark that stays as long as something is selected: names make room for it.
  void keepHandle(QPointF at, double radius) { handles_.push_back(around(at, radius)); }
  /// A mark that comes and goes with the pointer: a name below it steps aside.
  void keepMark(QPointF at, double radius) { marks_.push_back(around(at, radius)); }
  void keepClear(const QRectF& box) { marks_.push_back(box); }
  /// What is dragged or drawn: texts stand outside of it as long as there is another place.
  void keepInSight(const QPolygonF& shape) { inSight_.push_back(shape); }
  /// A line of text about a place, its left end or its middle `off` from there, or as near to it as
  /// there is room; what is told already is not told again for the same place.
  void tag(QPointF about, const QString& text, QPointF off = {},
           TagAnchor anchor = TagAnchor::Centre) {
    tag(about, QStringList{text}, off, anchor);
  }
  void tag(QPointF about, const QStringList& lines, QPointF off = {},
           TagAnchor anchor = TagAnchor::Centre);
  /// Lines of text beside a point, on that side of it where there is room.
  void plate(QPointF at, const QStringList& lines);

  /// Finds the texts' places; to be called once all marks are known. They cover the drawing's names
  /// only where there is no other place.
  void settle(const std::vector<QPolygonF>& names = {});
  void paintLeader(const QLineF& leader) const;
  void paintLeaders() const;
  void paintTexts() const;

  const std::vector<QRectF>& handles() const { return handles_; }
  const std::vector<QRectF>& marks() const { return marks_; }
  const std::vector<Tag>& tags() const { return tags_; }

private:
  struct Shape {
    QStringList lines;
    std::vector<QRectF> boxes; ///< best first
  };
  struct Wish {
    QPointF at;                ///< what it tells
    std::vector<Shape> shapes; ///< as it is, and narrower for where there is less room
  };
  struct Place {
    const Shape* shape;
    QRectF box;
  };
  /// What a text may cover when there is no better place.
  enum class Care { Everything, LinesCovered, NamesCovered, InSightCovered };

  static QRectF around(QPointF at, double radius) {
    return {at - QPointF(radius, radius), QSizeF(2 * radius, 2 * radius)};
  }
  bool isFree(const QRectF& box, Care care) const;
  bool isClear(const QLineF& leader, Care care) const;
  std::optional<QLineF> leaderTo(QPointF at, const QRectF& box) const;
  bool isTold(const Wish& wish) const;
  Place chosen(const Wish& wish) const;
  std::optional<Place> best(const Wish& wish, const Shape& shape, Care care, double most) const;
  template <typename Boxes> void wish(QPointF at, const QStringList& lines, Boxes boxesFor);
  QSizeF sizeOf(const QStringList& lines) const;

  QPainter& painter_;
  const View& view_;
  const CanvasTheme& theme_;
  QFontMetricsF metrics_;
  const DrawnLines* lines_;
  std::vector<QRectF> kept_, handles_, marks_;
  std::vector<QPolygonF> inSight_, names_;
  std::vector<Wish> wishes_;
  std::vector<Tag> tags_;
};

} // namespace sump
