#include "app/canvas/typed_point.h"

#include "core/units/print.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kFlat = 1e-9;

/// The ray in this direction where its x or y has the typed value.
std::optional<Point2> onRay(Point2 from, Point2 u, double Point2::*axis, double value) {
  if (std::abs(u.*axis) < kFlat) return std::nullopt;
  const double t = (value - from.*axis) / (u.*axis);
  if (t < 0) return std::nullopt;
  return from + u * t;
}

/// The point of the circle with this x or y that is nearer to the pointer.
std::optional<Point2> onCircle(Point2 from, double radius, double Point2::*axis, double value,
                               double Point2::*other, Point2 pointer) {
  const double d = value - from.*axis;
  const double square = radius * radius - d * d;
  if (square < 0) return std::nullopt;
  Point2 at;
  at.*axis = value;
  const double sign = pointer.*other < from.*other ? -1 : 1;
  at.*other = from.*other + sign * std::sqrt(square);
  return at;
}

std::optional<Point2> withAxis(const TypedPoint& typed, std::optional<Point2> last, Point2 pointer,
                               double Point2::*axis, double value, double Point2::*other) {
  if (last && typed.bearing) return onRay(*last, directionOf(*typed.bearing), axis, value);
  if (last && typed.length) return onCircle(*last, *typed.length, axis, value, other, pointer);
  Point2 at = pointer;
  at.*axis = value;
  return at;
}

std::string trimmedUpper(std::string_view text) {
  std::string out;
  for (char c : text) {
    if (c != ' ' && c != '\t')
      out += static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  }
  return out;
}

} // namespace

double bearingOf(Point2 from, Point2 to) {
  const Point2 d = to - from;
  if (d == Point2{}) return 0;
  const double b = std::atan2(d.x, d.y);
  return b < 0 ? b + 2 * kPi : b;
}

namespace {

double inFullTurn(double angle) {
  const double turned = std::fmod(angle, 2 * kPi);
  return turned < 0 ? turned + 2 * kPi : turned;
}

} // namespace

double fromTrueNorth(double bearing, Angle trueNorth) {
  return inFullTurn(bearing + inRadians(trueNorth));
}

double fromPlanNorth(double trueBearing, Angle trueNorth) {
  return inFullTurn(trueBearing - inRadians(trueNorth));
}

Point2 directionOf(double bearing) {
  return {std::sin(bearing), std::cos(bearing)};
}

std::optional<Point2> placeOf(const TypedPoint& typed, std::optional<Point2> last, Point2 pointer) {
  if (typed.east && typed.north) return Point2{*typed.east, *typed.north};
  if (typed.east) return withAxis(typed, last, pointer, &Point2::x, *typed.east, &Point2::y);
  if (typed.north) return withAxis(typed, last, pointer, &Point2::y, *typed.north, &Point2::x);
  if (!last) return typed.length || typed.bearing ? std::nullopt : std::optional(pointer);
  const double length = distance(*last, pointer);
  if (typed.length) {
    const Point2 u =
        typed.bearing ? directionOf(*typed.bearing) : directionOf(bearingOf(*last, pointer));
    return *last + u * *typed.length;
  }
  if (typed.bearing) {
    const Point2 u = directionOf(*typed.bearing);
    return *last + u * (length > 0 ? std::max(0.0, dot(pointer - *last, u)) : 0.0);
  }
  return pointer;
}

Parsed<double> parseBearing(std::string_view text) {
  std::string word = trimmedUpper(text);
  const auto bad = [] {
    return Parsed<double>{std::nullopt,
                          "Type degrees clockwise from true north, like 90, or N 45 E."};
  };
  if (word.empty()) return bad();
  const bool quadrant = word.front() == 'N' || word.front() == 'S';
  if (word == "E" || word == "W") return {word == "E" ? kPi / 2 : 3 * kPi / 2, {}};
  if (quadrant && word.size() == 1) return {word == "N" ? 0.0 : kPi, {}};
  if (!quadrant) {
    const Parsed<Angle> angle = parseAngle(text);
    if (!angle) return bad();
    return {inRadians(*angle.value), {}};
  }
  const char side = word.back();
  if (side != 'E' && side != 'W') return bad();
  const Parsed<Angle> angle = parseAngle(word.substr(1, word.size() - 2));
  if (!angle || inDegrees(*angle.value) < 0 || inDegrees(*angle.value) > 90) return bad();
  const double a = inRadians(*angle.value);
  if (word.front() == 'N') return {side == 'E' ? a : 2 * kPi - a, {}};
  return {side == 'E' ? kPi - a : kPi + a, {}};
}

std::string printBearing(double bearing) {
  double degrees = std::fmod(bearing * 180 / kPi, 360.0);
  if (degrees < 0) degrees += 360;
  degrees = std::round(degrees * 10) / 10;
  for (const auto& [at, name] :
       {std::pair{0.0, "N"}, {90.0, "E"}, {180.0, "S"}, {270.0, "W"}, {360.0, "N"}}) {
    if (degrees == at) return name;
  }
  const bool north = degrees < 90 || degrees > 270, east = degrees < 180;
  const double turn = north ? std::min(degrees, 360 - degrees) : std::abs(180 - degrees);
  return std::string(north ? "N " : "S ") + fixed(turn, 1) + "° " + (east ? "E" : "W");
}

} // namespace sump
