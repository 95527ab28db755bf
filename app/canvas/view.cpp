#include "app/canvas/view.h"

#include <algorithm>

namespace sump {

QPointF View::toScreen(Point2 site) const {
  return {size_.width() / 2 + (site.x - centre_.x) * scale_,
          size_.height() / 2 - (site.y - centre_.y) * scale_};
}

Point2 View::toSite(QPointF screen) const {
  return {centre_.x + (screen.x() - size_.width() / 2) / scale_,
          centre_.y - (screen.y() - size_.height() / 2) / scale_};
}

QPolygonF View::toScreen(const std::vector<Point2>& site) const {
  QPolygonF polygon;
  polygon.reserve(static_cast<qsizetype>(site.size()));
  for (Point2 p : site)
    polygon << toScreen(p);
  return polygon;
}

Box View::visible() const {
  const Point2 topLeft = toSite({0, 0});
  const Point2 bottomRight = toSite({size_.width(), size_.height()});
  return {{topLeft.x, bottomRight.y}, {bottomRight.x, topLeft.y}};
}

void View::zoomAt(QPointF at, double factor) {
  const Point2 fixed = toSite(at);
  scale_ = std::clamp(scale_ * factor, kLeastScale, kMostScale);
  const Point2 moved = toSite(at);
  centre_ = centre_ + (fixed - moved);
}

void View::pan(QPointF byPixels) {
  centre_.x -= byPixels.x() / scale_;
  centre_.y += byPixels.y() / scale_;
}

void View::fit(const Box& box, double margin) {
  constexpr double kLeastExtent = 10; // metres
  double width = box.high.x - box.low.x, height = box.high.y - box.low.y;
  if (!(width > 0) && !(height > 0)) width = height = kLeastExtent;
  const double across = std::max(size_.width() - 2 * margin, 40.0);
  const double down = std::max(size_.height() - 2 * margin, 40.0);
  const double byWidth = width > 0 ? across / width : kMostScale;
  const double byHeight = height > 0 ? down / height : kMostScale;
  scale_ = std::clamp(std::min(byWidth, byHeight), kLeastScale, kMostScale);
  centre_ = lerp(box.low, box.high, 0.5);
}

} // namespace sump
