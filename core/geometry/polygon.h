#pragma once
// Outline and line queries over Boost.Geometry. All lengths in metres, areas in square metres.
// Outlines are simple (not self-crossing) rings unless a function says otherwise; behaviour is
// checked against GEOS in tests/geometry. Distances to or from nothing are infinite.

#include "core/geometry/point.h"

#include <optional>
#include <vector>

namespace sump {

double area(const Ring& ring);      ///< always >= 0
double perimeter(const Ring& ring); ///< closed length
Point2 centroid(const Ring& ring);
bool isSimple(const Ring& ring); ///< false if fewer than 3 points, zero area or self-crossing
/// Inside or on the outline (to 1e-7 m).
bool contains(const Ring& ring, Point2 p);
double planLength(const Polyline& line);
double distance(Point2 p, const Ring& ring);       ///< 0 inside
double distanceToEdge(Point2 p, const Ring& ring); ///< to the outline itself, also from inside
double distanceToLine(Point2 p, const Polyline& line);
double distance(const Ring& a, const Ring& b);                     ///< 0 when they touch or overlap
double distanceLineToRing(const Polyline& line, const Ring& ring); ///< 0 when they touch or overlap
double distanceBetweenLines(const Polyline& a, const Polyline& b);
bool overlaps(const Ring& a, const Ring& b); ///< share more than 1 mm2 of interior area
double overlapArea(const Ring& a, const Ring& b);
/// Points where the line crosses the outline, in order along the line.
std::vector<Point2> crossings(const Polyline& line, const Ring& ring);
std::vector<Point2> lineCrossings(const Polyline& a, const Polyline& b);
/// True if any part of the line lies inside the ring (touching alone does not count).
bool passesThrough(const Polyline& line, const Ring& ring);

/// The nearest point of a segment a-b to p and how far along it lies (0..1).
struct Foot {
  Point2 at;
  double along = 0;
  double distance = 0;
};
Foot nearestOnSegment(Point2 p, Point2 a, Point2 b);
/// The crossing of segments a-b and c-d, as fractions along each; none when parallel or apart
/// (by more than 1e-7 m, so that a line through a corner always meets one of its edges).
struct SegmentCrossing {
  double alongFirst = 0;
  double alongSecond = 0;
};
std::optional<SegmentCrossing> crossSegments(Point2 a, Point2 b, Point2 c, Point2 d);

} // namespace sump
