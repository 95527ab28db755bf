#pragma once
// Points and vectors. Coordinates are plain doubles in metres: x east, y north, z up, right-handed;
// z is elevation on the site datum.

#include <cmath>
#include <vector>

namespace sump {

struct Point2 {
  double x = 0;
  double y = 0;
  bool operator==(const Point2&) const = default;
};

struct Point3 {
  double x = 0;
  double y = 0;
  double z = 0;
  bool operator==(const Point3&) const = default;
};

/// A closed outline without a repeated last point; either direction.
using Ring = std::vector<Point2>;
using Polyline = std::vector<Point2>;

constexpr Point2 operator+(Point2 a, Point2 b) {
  return {a.x + b.x, a.y + b.y};
}
constexpr Point2 operator-(Point2 a, Point2 b) {
  return {a.x - b.x, a.y - b.y};
}
constexpr Point2 operator*(Point2 a, double k) {
  return {a.x * k, a.y * k};
}
constexpr Point3 operator+(Point3 a, Point3 b) {
  return {a.x + b.x, a.y + b.y, a.z + b.z};
}
constexpr Point3 operator-(Point3 a, Point3 b) {
  return {a.x - b.x, a.y - b.y, a.z - b.z};
}
constexpr Point3 operator*(Point3 a, double k) {
  return {a.x * k, a.y * k, a.z * k};
}
constexpr double dot(Point2 a, Point2 b) {
  return a.x * b.x + a.y * b.y;
}
constexpr double dot(Point3 a, Point3 b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}
/// z of the cross product: positive when b lies to the left of a.
constexpr double cross(Point2 a, Point2 b) {
  return a.x * b.y - a.y * b.x;
}
inline double norm(Point2 a) {
  return std::hypot(a.x, a.y);
}
inline double norm(Point3 a) {
  return std::hypot(a.x, a.y, a.z);
}
inline double distance(Point2 a, Point2 b) {
  return norm(b - a);
}
inline double distance(Point3 a, Point3 b) {
  return norm(b - a);
}
constexpr Point2 flat(Point3 a) {
  return {a.x, a.y};
}
constexpr Point3 raised(Point2 a, double z) {
  return {a.x, a.y, z};
}
constexpr Point2 lerp(Point2 a, Point2 b, double t) {
  return a + (b - a) * t;
}
constexpr Point3 lerp(Point3 a, Point3 b, double t) {
  return a + (b - a) * t;
}

} // namespace sump
