#pragma once
// A place told by typed values: length and bearing from the last corner, or east and north, with
// the pointer for whatever was not typed. Here bearings are clockwise from the top of the plan,
// which its coordinates go by; people read and type them from true north, which the north arrow
// shows.

#include "core/geometry/point.h"
#include "core/units/parse.h"
#include "core/units/quantity.h"

#include <optional>
#include <string>
#include <string_view>

namespace sump {

/// Metres and radians; what was not typed is missing.
struct TypedPoint {
  std::optional<double> length;
  std::optional<double> bearing;
  std::optional<double> east;
  std::optional<double> north;
  bool empty() const { return !length && !bearing && !east && !north; }
};

/// Where that is. East and north win over length and bearing when too much was typed. Nothing when
/// the values contradict each other (a bearing that never gets that far east).
std::optional<Point2> placeOf(const TypedPoint& typed, std::optional<Point2> last, Point2 pointer);

/// `90`, `90.5 deg`, `N 45 E`, `s30w`: radians clockwise from north.
Parsed<double> parseBearing(std::string_view text);
/// `N 45.0° E`, the quadrant form; `N`, `E`, `S` and `W` alone for the four main directions.
std::string printBearing(double bearing);
/// Clockwise from north in [0, 2 pi); 0 for one and the same point.
double bearingOf(Point2 from, Point2 to);
/// The same direction told from true north, which is turned counter-clockwise from the plan's top.
double fromTrueNorth(double bearing, Angle trueNorth);
double fromPlanNorth(double trueBearing, Angle trueNorth);
/// The unit vector of a bearing.
Point2 directionOf(double bearing);

} // namespace sump
