#pragma once
// A local coordinate frame on the site: an origin and an angle counter-clockwise from east. Vaults,
// rooms and basins keep what belongs to them in local coordinates, so moving the frame moves all.

#include "core/geometry/point.h"
#include "core/units/quantity.h"

namespace sump {

struct Frame {
  Point2 origin;
  Angle angle;

  Point2 toSite(Point2 local) const {
    const double c = std::cos(inRadians(angle)), s = std::sin(inRadians(angle));
    return {origin.x + c * local.x - s * local.y, origin.y + s * local.x + c * local.y};
  }
  Point2 toLocal(Point2 site) const {
    const double c = std::cos(inRadians(angle)), s = std::sin(inRadians(angle));
    const Point2 d = site - origin;
    return {c * d.x + s * d.y, -s * d.x + c * d.y};
  }
  /// The site outline of a rectangle given by two opposite local corners, counter-clockwise.
  Ring rectangle(Point2 low, Point2 high) const {
    return {toSite(low), toSite({high.x, low.y}), toSite(high), toSite({low.x, high.y})};
  }
};

} // namespace sump
