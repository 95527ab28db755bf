// Ways out of a dig (29 CFR 1926.651(c)(2)).

#include "core/geometry/polygon.h"
#include "core/study/excavation.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>

namespace sump {

namespace {

double toNearest(Point2 p, const std::vector<Point2>& ladders) {
  double least = std::numeric_limits<double>::infinity();
  for (Point2 ladder : ladders)
    least = std::min(least, distance(p, ladder));
  return least;
}

/// Where the line of equal distance from two places meets the edge from a to b, as a place on it.
std::optional<Point2> equalOnEdge(Point2 first, Point2 second, Point2 a, Point2 b) {
  const Point2 way = second - first;
  const double along = dot(b - a, way);
  if (std::abs(along) < 1e-12) return std::nullopt;
  const double t = dot(lerp(first, second, 0.5) - a, way) / along;
  if (t < 0 || t > 1) return std::nullopt;
  return lerp(a, b, t);
}

/// The place equally far from three.
std::optional<Point2> equalFromThree(Point2 a, Point2 b, Point2 c) {
  const Point2 u = b - a, v = c - a;
  const double twice = 2 * cross(u, v);
  if (std::abs(twice) < 1e-12) return std::nullopt;
  const double uu = dot(u, u), vv = dot(v, v);
  return a + Point2{v.y * uu - u.y * vv, u.x * vv - v.x * uu} * (1 / twice);
}

/// The farthest place in an outline is a corner, or lies between two ladders on an edge, or
/// between three inside (the vertices of the ladders' Voronoi diagram cut to the outline).
double farthestIn(const Ring& ring, const std::vector<Point2>& ladders) {
  double most = 0;
  const auto look = [&](Point2 p) { most = std::max(most, toNearest(p, ladders)); };
  for (Point2 corner : ring)
    look(corner);
  for (std::size_t i = 0; i < ladders.size(); ++i) {
    for (std::size_t j = i + 1; j < ladders.size(); ++j) {
      for (std::size_t e = 0; e < ring.size(); ++e) {
        const auto p = equalOnEdge(ladders[i], ladders[j], ring[e], ring[(e + 1) % ring.size()]);
        if (p) look(*p);
      }
      for (std::size_t k = j + 1; k < ladders.size(); ++k) {
        const auto p = equalFromThree(ladders[i], ladders[j], ladders[k]);
        if (p && contains(ring, *p)) look(*p);
      }
    }
  }
  return most;
}

} // namespace

std::optional<double> farthestFrom(const std::vector<Ring>& outlines,
                                   const std::vector<Point2>& ladders) {
  if (ladders.empty()) return std::nullopt;
  double most = 0;
  for (const Ring& ring : outlines)
    most = std::max(most, farthestIn(ring, ladders));
  return most;
}

std::optional<double> farthestAlong(const std::vector<WayPart>& parts,
                                    std::vector<double> ladders) {
  if (ladders.empty()) return std::nullopt;
  std::ranges::sort(ladders);
  const auto toLadder = [&](double station) {
    const auto next = std::ranges::lower_bound(ladders, station);
    double least = std::numeric_limits<double>::infinity();
    if (next != ladders.end()) least = *next - station;
    if (next != ladders.begin()) least = std::min(least, station - *std::prev(next));
    return least;
  };
  double most = 0;
  for (const WayPart& part : parts) {
    most = std::max({most, toLadder(part.from), toLadder(part.to)});
    for (std::size_t i = 1; i < ladders.size(); ++i) {
      const double middle = (ladders[i - 1] + ladders[i]) / 2;
      if (middle > part.from && middle < part.to) most = std::max(most, toLadder(middle));
    }
  }
  return most;
}

int laddersFor(double length, double travel) {
  return std::max(1, static_cast<int>(std::ceil(length / (2 * travel) - 1e-9)));
}

} // namespace sump
