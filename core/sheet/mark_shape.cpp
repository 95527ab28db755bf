#include "core/sheet/mark_shape.h"

#include "core/units/quantity.h"

#include <cmath>

namespace sump {

bool isSymbol(const Mark& mark) {
  const bool layer = mark.layer == Layer::Part || mark.layer == Layer::Symbol ||
                     mark.layer == Layer::Ground || mark.layer == Layer::Basin;
  return mark.symbol.number != 0 || (mark.round && layer);
}

bool isThing(const Mark& mark) {
  if (!mark.closed || mark.round || !mark.line) return false;
  constexpr double kOutline = 0.45; // mm; what is drawn thinner is a part of its vault or room
  const bool heavy = mark.line->width > kOutline;
  switch (mark.layer) {
  case Layer::Building:
  case Layer::Basin:
    return true;
  case Layer::Vault:
    return heavy; // not its chambers
  case Layer::Room:
    return !heavy; // what stands in it: it may fill the building that is named
  default:
    return false;
  }
}

PaperBox extentOf(const Mark& mark, const SheetView& view) {
  Polyline points;
  for (Point2 p : mark.points)
    points.push_back(view.toPaper(p));
  if (!mark.round) return around(points);
  return PaperBox{points[0], points[0]}.grown(distance(points[0], points[1]));
}

Polyline paperLine(const Mark& mark, const SheetView& view) {
  Polyline line;
  for (Point2 p : mark.points)
    line.push_back(view.toPaper(p));
  if (mark.round) {
    constexpr int kCorners = 16;
    const Point2 centre = line[0];
    const double radius = distance(line[0], line[1]);
    line.clear();
    for (int i = 0; i <= kCorners; ++i) {
      const double a = 2 * kPi * i / kCorners;
      line.push_back(centre + Point2{std::cos(a), std::sin(a)} * radius);
    }
  } else if (mark.closed) {
    line.push_back(line.front());
  }
  return line;
}

} // namespace sump
