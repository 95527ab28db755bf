#pragma once
// Where a text may stand on the screen. Pure geometry in pixels.

#include <QHash>
#include <QLineF>
#include <QPolygonF>
#include <QRectF>
#include <QSizeF>

#include <vector>

namespace sump {

/// True if two convex outlines share any area (separating axes).
bool convexOverlap(const QPolygonF& a, const QPolygonF& b);
/// A line as an outline without area.
inline QPolygonF asShape(const QLineF& line) {
  return QPolygonF({line.p1(), line.p2()});
}
/// A box of this size about its middle, turned counter-clockwise by degrees.
QPolygonF turnedBox(QPointF centre, double angle, QSizeF size);
/// All of the box within the outline, which may be bent in.
bool liesWithin(const QPolygonF& box, const QPolygonF& outline);
/// Of the line what lies in the rectangle; of no length when nothing does.
QLineF clipped(const QLineF& line, const QRectF& area);
/// The angle of a line along which text stands upright, within -90..90 degrees.
double uprightAngle(const QLineF& line);
/// The outline's longest edge.
QLineF longestEdge(const QPolygonF& outline);
/// Middles of a text of this size that are spread over the area, the nearest to `wish` first.
std::vector<QPointF> spreadOver(const QRectF& area, QSizeF size, QPointF wish);
/// From the box to an outline that lies beside it.
QLineF wayTo(const QPolygonF& outline, const QRectF& box);
/// From the box to the nearest point of the rectangle; of no length where they meet.
QLineF shortestBetween(const QRectF& box, const QRectF& other);

/// The boxes that are taken, by cells of the screen: a label is compared with its neighbours only.
class TakenBoxes {
public:
  bool isFree(const QPolygonF& box) const { return isFree(box.boundingRect(), &box); }
  bool isFree(const QRectF& box) const { return isFree(box, nullptr); }
  void take(const QPolygonF& box);
  void take(const QLineF& line);

private:
  bool isFree(const QRectF& bounds, const QPolygonF* box) const;
  template <typename Visit> static void eachCell(const QRectF& bounds, Visit visit);

  std::vector<QPolygonF> boxes_;
  std::vector<QRectF> bounds_;
  QHash<qint64, std::vector<std::size_t>> cells_;
};

} // namespace sump
