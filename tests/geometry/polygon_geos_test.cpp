// Our outline queries against GEOS on 10,000 random cases each. Tolerances are those of doubles at
// a survey grid's coordinates of 4e6 m (a step of 5e-10 m), never those of the algorithms.

#include "core/geometry/polygon.h"
#include "tests/geometry/geos_oracle.h"
#include "tests/geometry/random_shapes.h"

#include <gtest/gtest.h>

#include <sstream>
#include <string>

namespace sump {
namespace {

using random_shapes::Source;

constexpr int kCases = 10000;
constexpr double kLengthTolerance = 1e-7;
constexpr double kAreaTolerance = 1e-6;

std::string text(const std::vector<Point2>& points) {
  std::ostringstream out;
  out.precision(17);
  for (Point2 p : points)
    out << p.x << " " << p.y << ", ";
  return out.str();
}

class PolygonAgainstGeos : public ::testing::Test {
protected:
  oracle::Geos geos;
  Source random{20240604};
};

TEST_F(PolygonAgainstGeos, AreaPerimeterCentroid) {
  for (int i = 0; i < kCases; ++i) {
    const Ring ring = random.outline(anySite(random), 6);
    const auto shape = geos.polygon(ring);
    ASSERT_NEAR(area(ring), geos.area(shape), kAreaTolerance) << text(ring);
    ASSERT_NEAR(perimeter(ring), geos.length(shape), kLengthTolerance) << text(ring);
    ASSERT_LT(distance(centroid(ring), geos.centroid(shape)), kLengthTolerance) << text(ring);
    const Polyline line = random.line(anySite(random), 10);
    ASSERT_NEAR(planLength(line), geos.length(geos.line(line)), kLengthTolerance);
  }
}

TEST_F(PolygonAgainstGeos, PointsAndOutlines) {
  int inside = 0;
  for (int i = 0; i < kCases; ++i) {
    const Point2 site = anySite(random);
    const Ring ring = random.outline(site, 4);
    const Point2 p = random.within(site, 8);
    const auto shape = geos.polygon(ring), at = geos.point(p);
    ASSERT_NEAR(distance(p, ring), geos.distance(at, shape), kLengthTolerance) << text(ring);
    ASSERT_NEAR(distanceToEdge(p, ring), geos.distance(at, geos.edge(ring)), kLengthTolerance);
    const Polyline line = random.line(site, 8);
    ASSERT_NEAR(distanceToLine(p, line), geos.distance(at, geos.line(line)), kLengthTolerance);
    if (distanceToEdge(p, ring) > kLengthTolerance) {
      ASSERT_EQ(contains(ring, p), geos.touchesOrCovers(shape, at)) << text(ring) << text({p});
    }
    inside += contains(ring, p) ? 1 : 0;
  }
  EXPECT_GT(inside, kCases / 50); // both answers were asked for
  EXPECT_LT(inside, kCases / 2);
}

TEST_F(PolygonAgainstGeos, PointsOfTheOutlineAreContained) {
  for (int i = 0; i < kCases; ++i) {
    const Ring ring = random.outline(anySite(random), 4);
    for (std::size_t k = 0; k < ring.size(); ++k) {
      const Point2 next = ring[(k + 1) % ring.size()];
      ASSERT_TRUE(contains(ring, ring[k])) << text(ring) << k;
      ASSERT_TRUE(contains(ring, lerp(ring[k], next, random.real(0, 1)))) << text(ring) << k;
    }
  }
}

TEST_F(PolygonAgainstGeos, DistancesOfOutlinesAndLines) {
  int apart = 0;
  for (int i = 0; i < kCases; ++i) {
    const Point2 site = anySite(random);
    const auto [a, b] = pair(random, site);
    const Polyline line = random.line(site, 10), other = random.line(site, 10);
    const auto shapeA = geos.polygon(a), shapeB = geos.polygon(b);
    const auto lineShape = geos.line(line), otherShape = geos.line(other);
    ASSERT_NEAR(distance(a, b), geos.distance(shapeA, shapeB), kLengthTolerance) << text(a) << "\n"
                                                                                 << text(b);
    ASSERT_NEAR(distance(b, a), distance(a, b), kLengthTolerance);
    ASSERT_NEAR(distanceLineToRing(line, a), geos.distance(lineShape, shapeA), kLengthTolerance)
        << text(line) << "\n"
        << text(a);
    ASSERT_NEAR(distanceBetweenLines(line, other), geos.distance(lineShape, otherShape),
                kLengthTolerance)
        << text(line) << "\n"
        << text(other);
    apart += distance(a, b) > 0 ? 1 : 0;
  }
  EXPECT_GT(apart, kCases / 10);
  EXPECT_LT(apart, kCases * 9 / 10);
}

TEST_F(PolygonAgainstGeos, OverlapArea) {
  int shared = 0;
  for (int i = 0; i < kCases; ++i) {
    const auto [a, b] = pair(random, anySite(random));
    const auto shapeA = geos.polygon(a), shapeB = geos.polygon(b);
    const double expected = geos.area(geos.intersection(shapeA, shapeB));
    ASSERT_NEAR(overlapArea(a, b), expected, kAreaTolerance) << text(a) << "\n" << text(b);
    ASSERT_NEAR(overlapArea(b, a), expected, kAreaTolerance) << text(a) << "\n" << text(b);
    if (expected > 2 * kAreaTolerance || expected < kAreaTolerance / 2) {
      ASSERT_EQ(overlaps(a, b), expected > kAreaTolerance) << text(a) << "\n" << text(b);
    }
    shared += overlaps(a, b) ? 1 : 0;
  }
  EXPECT_GT(shared, kCases / 10);
  EXPECT_LT(shared, kCases * 9 / 10);
}

/// The same points, whatever their order.
void expectSamePoints(const std::vector<Point2>& ours, const std::vector<Point2>& theirs) {
  ASSERT_EQ(ours.size(), theirs.size()) << text(ours) << "\n" << text(theirs);
  for (Point2 p : ours) {
    double nearest = 1;
    for (Point2 q : theirs)
      nearest = std::min(nearest, distance(p, q));
    ASSERT_LT(nearest, kLengthTolerance) << text({p});
  }
}

TEST_F(PolygonAgainstGeos, Crossings) {
  for (int i = 0; i < kCases && !HasFatalFailure(); ++i) {
    const Point2 site = anySite(random);
    const Ring ring = random.outline(site, 5);
    const Polyline line = random.line(site, 10), other = random.line(site, 10);
    const auto lineShape = geos.line(line);
    const auto ours = crossings(line, ring);
    expectSamePoints(ours, geos.points(geos.intersection(lineShape, geos.edge(ring))));
    expectSamePoints(lineCrossings(line, other),
                     geos.points(geos.intersection(lineShape, geos.line(other))));
  }
}

TEST_F(PolygonAgainstGeos, CrossingsThroughCornersAreNeverLost) {
  for (int i = 0; i < kCases; ++i) {
    const Point2 site = anySite(random);
    const Ring ring = random.outline(site, 5);
    const Point2 corner = ring[static_cast<std::size_t>(random.whole(0, 100)) % ring.size()];
    const Point2 start = random.within(site, 15);
    const Polyline line = {start, lerp(start, corner, random.real(1.1, 3))};
    double nearest = 1;
    for (Point2 p : crossings(line, ring))
      nearest = std::min(nearest, distance(p, corner));
    ASSERT_LT(nearest, 1e-4) << text(ring) << "\n" << text(line);
  }
}

TEST_F(PolygonAgainstGeos, PassesThrough) {
  int through = 0;
  for (int i = 0; i < kCases; ++i) {
    const Point2 site = anySite(random);
    const Ring ring = random.outline(site, 5);
    const Polyline line = random.line(site, 10);
    const bool expected = geos.interiorsMeet(geos.line(line), geos.polygon(ring));
    ASSERT_EQ(passesThrough(line, ring), expected) << text(line) << "\n" << text(ring);
    through += expected ? 1 : 0;
  }
  EXPECT_GT(through, kCases / 10);
  EXPECT_LT(through, kCases * 9 / 10);
}

/// A line along one edge, from corner to corner of a rectangle, or across it: told by construction.
TEST_F(PolygonAgainstGeos, LinesAlongAnEdgeDoNotPassThrough) {
  for (int i = 0; i < kCases; ++i) {
    const Ring ring = random.rectangle(random.frame(anySite(random), 5));
    const Point2 along = ring[1] - ring[0];
    const Polyline edge = {ring[0] + along * random.real(-1, 0.4),
                           ring[0] + along * random.real(0.6, 2)};
    ASSERT_FALSE(passesThrough(edge, ring)) << text(edge) << "\n" << text(ring);
    ASSERT_TRUE(passesThrough({ring[0], ring[2]}, ring)) << text(ring);
    const Point2 side = ring[2] - ring[1];
    ASSERT_TRUE(passesThrough({ring[0] + side * 0.5 - along, ring[0] + side * 0.5 + along}, ring));
    ASSERT_LE(distanceLineToRing(edge, ring), kLengthTolerance);
  }
}

TEST_F(PolygonAgainstGeos, IsSimple) {
  int simple = 0;
  for (int i = 0; i < kCases; ++i) {
    Ring ring;
    const int count = random.whole(3, 7);
    const bool onGrid = random.coin(); // provokes repeated points, spikes and touching corners
    for (int k = 0; k < count; ++k) {
      const Point2 p = random.within({}, 3);
      ring.push_back(onGrid ? Point2{std::round(p.x), std::round(p.y)} : p);
    }
    ASSERT_EQ(isSimple(ring), geos.isValid(geos.polygon(ring))) << text(ring);
    simple += isSimple(ring) ? 1 : 0;
  }
  EXPECT_GT(simple, kCases / 10);
  EXPECT_LT(simple, kCases * 9 / 10);
  for (int i = 0; i < kCases; ++i) {
    const Ring ring = random.outline(anySite(random), 5);
    ASSERT_EQ(isSimple(ring), geos.isValid(geos.polygon(ring))) << text(ring);
  }
}

} // namespace
} // namespace sump
