#include "core/geometry/polygon.h"

#include "core/geometry/boost_types.h"
#include "core/geometry/box_index.h"

#include <algorithm>
#include <limits>

namespace sump {

namespace {

namespace geometry = boost::geometry;

/// Twice the signed area, relative to the first point so that far-off sites lose no digits.
double twiceSignedArea(const Ring& ring) {
  double sum = 0;
  for (std::size_t i = 2; i < ring.size(); ++i) {
    sum += cross(ring[i - 1] - ring[0], ring[i] - ring[0]);
  }
  return sum;
}

template <class Visit> void forEachEdge(const Ring& ring, Visit visit) {
  for (std::size_t i = 0; i < ring.size(); ++i)
    visit(ring[i], ring[(i + 1) % ring.size()]);
}

template <class Visit> void forEachSegment(const Polyline& line, Visit visit) {
  for (std::size_t i = 1; i < line.size(); ++i)
    visit(line[i - 1], line[i]);
}

/// Even-odd rule (Shimrat 1962); points on the outline are for the caller.
bool insideByParity(const Ring& ring, Point2 p) {
  bool inside = false;
  forEachEdge(ring, [&](Point2 a, Point2 b) {
    if ((a.y > p.y) == (b.y > p.y)) return;
    if (p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)) inside = !inside;
  });
  return inside;
}

/// What counts as on an edge: well above the rounding of a survey grid's coordinates (5e-10 m at
/// 4e6 m), well below anything that is built.
constexpr double kOnEdge = 1e-7;
/// Shared area that rounding alone can give to outlines that touch along an edge.
constexpr double kSharedByRounding = 1e-6;

std::vector<Point2> inOrderAlong(const Polyline& line,
                                 std::vector<std::pair<double, Point2>> hits) {
  std::ranges::sort(hits, {}, &std::pair<double, Point2>::first);
  std::vector<Point2> points;
  for (const auto& hit : hits) {
    if (points.empty() || distance(points.back(), hit.second) > kOnEdge) {
      points.push_back(hit.second);
    }
  }
  if (points.size() > 1 && line.size() > 2 && line.front() == line.back() &&
      distance(points.front(), points.back()) <= kOnEdge) {
    points.pop_back();
  }
  return points;
}

template <class ForEach>
std::vector<Point2> crossingsWith(const Polyline& line, ForEach forEachOther) {
  std::vector<std::pair<double, Point2>> hits;
  double station = 0;
  forEachSegment(line, [&](Point2 a, Point2 b) {
    const double length = distance(a, b);
    forEachOther([&](Point2 c, Point2 d) {
      if (const auto hit = crossSegments(a, b, c, d)) {
        hits.emplace_back(station + hit->alongFirst * length, lerp(a, b, hit->alongFirst));
      }
    });
    station += length;
  });
  return inOrderAlong(line, std::move(hits));
}

/// Whether the span of `a` and `b` ends before that of `c` and `d` starts, however they are
/// rounded.
bool liesBefore(double a, double b, double c, double d) {
  return std::max(a, b) + 2 * kOnEdge < std::min(c, d);
}

} // namespace

double area(const Ring& ring) {
  return std::abs(twiceSignedArea(ring)) / 2;
}

double perimeter(const Ring& ring) {
  double sum = 0;
  forEachEdge(ring, [&](Point2 a, Point2 b) { sum += distance(a, b); });
  return sum;
}

Point2 centroid(const Ring& ring) {
  if (ring.empty()) return {};
  const double twice = twiceSignedArea(ring);
  Point2 sum;
  if (twice == 0) {
    for (Point2 p : ring)
      sum = sum + p;
    return sum * (1.0 / static_cast<double>(ring.size()));
  }
  for (std::size_t i = 2; i < ring.size(); ++i) {
    const Point2 a = ring[i - 1] - ring[0], b = ring[i] - ring[0];
    sum = sum + (a + b) * cross(a, b);
  }
  return ring[0] + sum * (1.0 / (3 * twice));
}

bool isSimple(const Ring& ring) {
  if (ring.size() < 3 || area(ring) == 0) return false;
  return geometry::is_valid(bg::polygon(ring));
}

bool contains(const Ring& ring, Point2 p) {
  if (ring.size() < 3) return false;
  return insideByParity(ring, p) || distanceToEdge(p, ring) <= kOnEdge;
}

double planLength(const Polyline& line) {
  double sum = 0;
  forEachSegment(line, [&](Point2 a, Point2 b) { sum += distance(a, b); });
  return sum;
}

double distanceToEdge(Point2 p, const Ring& ring) {
  double best = std::numeric_limits<double>::infinity();
  forEachEdge(
      ring, [&](Point2 a, Point2 b) { best = std::min(best, nearestOnSegment(p, a, b).distance); });
  return best;
}

double distance(Point2 p, const Ring& ring) {
  return insideByParity(ring, p) ? 0 : distanceToEdge(p, ring);
}

double distanceToLine(Point2 p, const Polyline& line) {
  if (line.size() == 1) return distance(p, line.front());
  double best = std::numeric_limits<double>::infinity();
  forEachSegment(
      line, [&](Point2 a, Point2 b) { best = std::min(best, nearestOnSegment(p, a, b).distance); });
  return best;
}

double distance(const Ring& a, const Ring& b) {
  if (a.empty() || b.empty()) return std::numeric_limits<double>::infinity();
  return geometry::distance(bg::polygon(a), bg::polygon(b));
}

double distanceLineToRing(const Polyline& line, const Ring& ring) {
  if (line.empty() || ring.empty()) return std::numeric_limits<double>::infinity();
  if (line.size() == 1) return distance(line.front(), ring);
  return geometry::distance(bg::line(line), bg::polygon(ring));
}

double distanceBetweenLines(const Polyline& a, const Polyline& b) {
  if (a.empty() || b.empty()) return std::numeric_limits<double>::infinity();
  if (a.size() == 1) return distanceToLine(a.front(), b);
  if (b.size() == 1) return distanceToLine(b.front(), a);
  return geometry::distance(bg::line(a), bg::line(b));
}

namespace {

/// The part of a ring on the left of the line a-b (Sutherland and Hodgman 1974). Where the ring is
/// not convex its pieces stay joined along a-b, which adds no area.
Ring leftPart(const Ring& ring, Point2 a, Point2 b) {
  Ring kept;
  forEachEdge(ring, [&](Point2 p, Point2 q) {
    const double sideP = cross(b - a, p - a), sideQ = cross(b - a, q - a);
    if (sideP >= 0) kept.push_back(p);
    if ((sideP > 0 && sideQ < 0) || (sideP < 0 && sideQ > 0)) {
      kept.push_back(lerp(p, q, sideP / (sideP - sideQ)));
    }
  });
  return kept;
}

bool boxesApart(const Ring& a, const Ring& b) {
  const Box boxA = boxOf(a), boxB = boxOf(b);
  return boxA.low.x > boxB.high.x || boxB.low.x > boxA.high.x || boxA.low.y > boxB.high.y ||
         boxB.low.y > boxA.high.y;
}

} // namespace

/// b is a sum of triangles fanned from its first point, each counted with the sign of its turn; a
/// is clipped to each of them. Unlike a general overlay this cannot go wrong on shared edges, which
/// is how vaults usually stand. Worked near the origin so that far-off sites lose no digits.
double overlapArea(const Ring& a, const Ring& b) {
  if (a.size() < 3 || b.size() < 3 || boxesApart(a, b)) return 0;
  const Point2 origin = b.front();
  Ring local = a;
  for (Point2& p : local)
    p = p - origin;
  double sum = 0;
  for (std::size_t i = 2; i < b.size(); ++i) {
    Point2 first = b[i - 1] - origin, second = b[i] - origin;
    const double turn = cross(first, second);
    if (turn < 0) std::swap(first, second);
    if (turn == 0) continue;
    const Ring part = leftPart(leftPart(leftPart(local, {}, first), first, second), second, {});
    sum += std::copysign(area(part), turn);
  }
  return std::abs(sum); // negative when b runs clockwise
}

bool overlaps(const Ring& a, const Ring& b) {
  return overlapArea(a, b) > kSharedByRounding;
}

std::vector<Point2> crossings(const Polyline& line, const Ring& ring) {
  return crossingsWith(line, [&](auto visit) { forEachEdge(ring, visit); });
}

std::vector<Point2> lineCrossings(const Polyline& a, const Polyline& b) {
  return crossingsWith(a, [&](auto visit) { forEachSegment(b, visit); });
}

bool passesThrough(const Polyline& line, const Ring& ring) {
  const auto deepInside = [&](Point2 p) {
    return insideByParity(ring, p) && distanceToEdge(p, ring) > kOnEdge;
  };
  bool inside = false;
  forEachSegment(line, [&](Point2 a, Point2 b) {
    std::vector<double> cuts = {0, 1};
    forEachEdge(ring, [&](Point2 c, Point2 d) {
      if (const auto hit = crossSegments(a, b, c, d)) cuts.push_back(hit->alongFirst);
    });
    std::ranges::sort(cuts);
    for (std::size_t i = 1; i < cuts.size() && !inside; ++i) {
      inside = deepInside(lerp(a, b, (cuts[i - 1] + cuts[i]) / 2));
    }
  });
  return inside;
}

Foot nearestOnSegment(Point2 p, Point2 a, Point2 b) {
  const Point2 d = b - a;
  const double square = dot(d, d);
  const double t = square == 0 ? 0 : std::clamp(dot(p - a, d) / square, 0.0, 1.0);
  const Point2 foot = lerp(a, b, t);
  return {foot, t, distance(p, foot)};
}

std::optional<SegmentCrossing> crossSegments(Point2 a, Point2 b, Point2 c, Point2 d) {
  // Most pairs asked about lie apart, which is told without a root or a division.
  if (liesBefore(a.x, b.x, c.x, d.x) || liesBefore(c.x, d.x, a.x, b.x) ||
      liesBefore(a.y, b.y, c.y, d.y) || liesBefore(c.y, d.y, a.y, b.y))
    return std::nullopt;
  const Point2 r = b - a, s = d - c;
  const double denominator = cross(r, s);
  if (std::abs(denominator) <= 1e-14 * norm(r) * norm(s)) return std::nullopt;
  const double t = cross(c - a, s) / denominator;
  const double u = cross(c - a, r) / denominator;
  // A line through a corner must meet one of the edges there, whichever way it is rounded.
  const double hairT = kOnEdge / norm(r), hairU = kOnEdge / norm(s);
  if (t < -hairT || t > 1 + hairT || u < -hairU || u > 1 + hairU) return std::nullopt;
  return SegmentCrossing{std::clamp(t, 0.0, 1.0), std::clamp(u, 0.0, 1.0)};
}

} // namespace sump
