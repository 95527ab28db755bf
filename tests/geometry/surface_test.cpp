// The ground surface: planes are reproduced, the triangulation is Delaunay and agrees with GEOS,
// and every odd set of spots still gives an elevation.

#include "core/geometry/surface.h"

#include "core/geometry/frame.h"
#include "core/geometry/polygon.h"
#include "tests/geometry/geos_oracle.h"
#include "tests/geometry/random_shapes.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

namespace sump {
namespace {

using random_shapes::Source;

double planeAt(Point2 p) {
  return 30.5 + 0.02 * p.x - 0.013 * p.y;
}

Point3 onPlane(Point2 p) {
  return raised(p, planeAt(p));
}

std::vector<Point3> randomSpots(Source& random, int count, double reach) {
  std::vector<Point3> spots;
  for (int i = 0; i < count; ++i)
    spots.push_back(raised(random.within({}, reach), random.real(28, 32)));
  return spots;
}

/// side x side spots, 10 ft apart, on a grid turned by an angle.
std::vector<Point3> gridSpots(int side, Angle turned, Point2 origin = {}) {
  const Frame frame{origin, turned};
  std::vector<Point3> spots;
  for (int i = 0; i < side * side; ++i) {
    const Point2 p = frame.toSite({3.048 * (i % side), 3.048 * (i / side)});
    spots.push_back(raised(p, 30 + 0.1 * ((i * 7) % 11)));
  }
  return spots;
}

Ring cornersOf(const Surface& surface, const std::array<int, 3>& t) {
  Ring ring;
  for (int i : t)
    ring.push_back(flat(surface.spots()[static_cast<std::size_t>(i)]));
  return ring;
}

double totalArea(const Surface& surface) {
  double sum = 0;
  for (const auto& t : surface.triangles())
    sum += area(cornersOf(surface, t));
  return sum;
}

struct Circle {
  Point2 centre;
  double radius = 0;
};

/// Through three points: the centre is where the perpendicular bisectors meet.
Circle circumcircle(const Ring& t) {
  const Point2 b = t[1] - t[0], c = t[2] - t[0];
  const double d = 2 * cross(b, c);
  const Point2 centre{(c.y * dot(b, b) - b.y * dot(c, c)) / d,
                      (b.x * dot(c, c) - c.x * dot(b, b)) / d};
  return {t[0] + centre, norm(centre)};
}

/// No spot may lie inside a triangle's circumcircle (Delaunay 1934). Sites are rounded to 0.1 mm,
/// so a spot may reach a millimetre into a circle of ordinary size, or more into a flat one's.
void expectEmptyCircumcircles(const Surface& surface) {
  for (const auto& t : surface.triangles()) {
    const Ring ring = cornersOf(surface, t);
    const Circle circle = circumcircle(ring);
    const double flatness = circle.radius * perimeter(ring) / area(ring);
    for (const Point3& spot : surface.spots()) {
      ASSERT_GT(distance(flat(spot), circle.centre), circle.radius - 1e-3 * (1 + flatness));
    }
  }
}

void expectCounterClockwise(const Surface& surface) {
  for (const auto& t : surface.triangles()) {
    const Ring ring = cornersOf(surface, t);
    ASSERT_GT(cross(ring[1] - ring[0], ring[2] - ring[0]), 0);
  }
}

TEST(Surface, ReproducesAPlane) {
  Source random(1);
  std::vector<Point3> spots;
  for (int i = 0; i < 400; ++i)
    spots.push_back(onPlane(random.within({}, 50)));
  for (Point2 corner : {Point2{-51, -51}, Point2{51, -51}, Point2{51, 51}, Point2{-51, 51}})
    spots.push_back(onPlane(corner));
  const Surface surface(spots);
  for (int i = 0; i < 10000; ++i) {
    const Point2 p = random.within({}, 50.9);
    ASSERT_NEAR(*surface.elevation(p), planeAt(p), 1e-9);
  }
}

TEST(Surface, PassesThroughItsSpots) {
  Source random(2);
  const Surface surface(randomSpots(random, 2000, 60));
  for (const Point3& spot : surface.spots())
    ASSERT_NEAR(*surface.elevation(flat(spot)), spot.z, 1e-6);
}

TEST(Surface, RandomSpotsGiveADelaunayTriangulation) {
  Source random(3);
  for (int i = 0; i < 40; ++i) {
    const Surface surface(randomSpots(random, random.whole(3, 120), 40));
    expectCounterClockwise(surface);
    expectEmptyCircumcircles(surface);
  }
}

TEST(Surface, GridSpotsGiveADelaunayTriangulation) {
  for (double turned : {0.0, 30.0, 45.0, 17.3}) {
    const Surface surface(gridSpots(12, degrees(turned)));
    EXPECT_EQ(surface.triangles().size(), 2U * 11 * 11) << turned;
    EXPECT_NEAR(totalArea(surface), std::pow(11 * 3.048, 2), 1e-6) << turned;
    expectCounterClockwise(surface);
    expectEmptyCircumcircles(surface);
  }
}

std::vector<Point2> placesOf(const Surface& surface) {
  std::vector<Point2> places;
  for (const Point3& spot : surface.spots())
    places.push_back(flat(spot));
  return places;
}

TEST(Surface, FillsTheConvexHullOfGeos) {
  const oracle::Geos geos;
  Source random(4);
  for (int i = 0; i < 200; ++i) {
    const Surface surface(randomSpots(random, random.whole(3, 200), 40));
    // Rims flatter than 1 mm are left out: at most half of 1 mm along a perimeter of 320 m.
    EXPECT_NEAR(totalArea(surface), geos.area(geos.convexHull(placesOf(surface))), 0.16);
  }
}

/// Four corner spots give a square hull: GEOS 3.11 leaves out some triangles along an irregular
/// one, because the triangle that it starts from is not infinitely far away.
TEST(Surface, HasTheTrianglesOfGeos) {
  const oracle::Geos geos;
  Source random(7);
  for (int i = 0; i < 60; ++i) {
    auto spots = randomSpots(random, random.whole(1, 150), 40);
    for (Point2 corner : {Point2{-41, -41}, Point2{41, -41}, Point2{41, 41}, Point2{-41, 41}})
      spots.push_back(raised(corner, 30));
    const Surface surface(spots);
    const auto theirs = geos.delaunay(placesOf(surface));
    ASSERT_EQ(static_cast<int>(surface.triangles().size()), geos.parts(theirs));
    EXPECT_NEAR(totalArea(surface), geos.area(theirs), 1e-9 * 82 * 82);
    const auto centres = geos.centroidsOfParts(theirs);
    for (const auto& t : surface.triangles()) {
      const Point2 ours = centroid(cornersOf(surface, t));
      const auto away = [&](Point2 p) { return distance(p, ours); };
      ASSERT_LT(away(std::ranges::min(centres, {}, away)), 1e-9) << "a triangle GEOS has not";
    }
  }
}

TEST(Surface, OutsideTheHullTakesTheNearestHullPoint) {
  // A square of 10 m, rising 1 m to the east.
  const Surface surface({{0, 0, 5}, {10, 0, 6}, {10, 10, 6}, {0, 10, 5}});
  EXPECT_NEAR(*surface.elevation({-7, 5}), 5, 1e-12);
  EXPECT_NEAR(*surface.elevation({30, 5}), 6, 1e-12);
  EXPECT_NEAR(*surface.elevation({2.5, -8}), 5.25, 1e-12);
  EXPECT_NEAR(*surface.elevation({13, 14}), 6, 1e-12) << "the corner";
  EXPECT_NEAR(*surface.elevation({2.5, 1e6}), 5.25, 1e-9);
}

TEST(Surface, IsContinuousAcrossItsHull) {
  // The spots of a straight side count just outside it as they do just inside, however the grid is
  // turned: no sliver along the side may hide them.
  for (double turned : {0.0, 30.0, 45.0, 17.3, 89.9}) {
    for (Point2 origin : {Point2{}, Point2{512345.6, 4012345.6}}) {
      const Frame frame{origin, degrees(turned)};
      const Surface surface(gridSpots(12, degrees(turned), origin));
      for (int i = 0; i < 1000; ++i) {
        const double along = i * 11 * 3.048 / 999;
        const double inside = *surface.elevation(frame.toSite({along, 1e-4}));
        const double outside = *surface.elevation(frame.toSite({along, -1e-4}));
        ASSERT_NEAR(inside, outside, 2e-4) << turned << " at " << along;
      }
    }
  }
}

TEST(Surface, NoSpotsGiveNoSurface) {
  const std::vector<Point3> none;
  EXPECT_TRUE(Surface().empty());
  EXPECT_TRUE(Surface(none).empty());
  EXPECT_FALSE(Surface(none).elevation({0, 0}));
  EXPECT_TRUE(Surface(none).triangles().empty());
  EXPECT_TRUE(Surface(none).spots().empty());
}

TEST(Surface, OneSpotIsLevelGroundAndTwoAreASlope) {
  const Surface one({{3, 4, 31.5}});
  EXPECT_FALSE(one.empty());
  EXPECT_EQ(one.elevation({-100, 100}), 31.5);
  const Surface two({{0, 0, 30}, {10, 0, 31}});
  EXPECT_TRUE(two.triangles().empty());
  EXPECT_NEAR(*two.elevation({2.5, 40}), 30.25, 1e-12);
  EXPECT_NEAR(*two.elevation({-5, 0}), 30, 1e-12);
  EXPECT_NEAR(*two.elevation({25, 3}), 31, 1e-12);
}

TEST(Surface, SpotsInOneLineAreJoinedInOrder) {
  // Shot out of order on a line at any angle; a ridge in the middle.
  const std::vector<double> stations = {40, 0, 30, 10, 20};
  for (double turned = 0; turned < 360; turned += 7.3) {
    for (Point2 origin : {Point2{}, Point2{512345.6, 4012345.6}}) {
      const Frame frame{origin, degrees(turned)};
      std::vector<Point3> spots;
      for (double s : stations)
        spots.push_back(raised(frame.toSite({s, 0}), 30 - std::abs(s - 20) / 20));
      const Surface surface(spots);
      EXPECT_TRUE(surface.triangles().empty()) << turned;
      for (double s = -10; s <= 50; s += 1.3) {
        for (double off : {0.0, 0.001, -0.001, 12.0, -12.0}) {
          const double expected = 30 - std::abs(std::clamp(s, 0.0, 40.0) - 20) / 20;
          ASSERT_NEAR(*surface.elevation(frame.toSite({s, off})), expected, 1e-6) << turned;
        }
      }
    }
  }
}

TEST(Surface, SpotsAtOnePlaceAreMeaned) {
  const Surface surface({{0, 0, 30}, {0.0004, 0.0004, 31}, {10, 0, 30}, {0, 10, 30}});
  ASSERT_EQ(surface.spots().size(), 3U);
  EXPECT_NEAR(*surface.elevation({0, 0}), 30.5, 1e-9);
  const Surface all({{5, 5, 1}, {5, 5, 2}, {5, 5, 6}});
  EXPECT_EQ(all.spots().size(), 1U);
  EXPECT_NEAR(*all.elevation({0, 0}), 3, 1e-12);
  // 1 mm apart and more, and across the boundary of any rounding: still told apart or joined.
  EXPECT_EQ(Surface({{0, 0, 1}, {0.0011, 0, 2}}).spots().size(), 2U);
  EXPECT_EQ(Surface({{0.00049, 0, 1}, {0.00051, 0, 2}}).spots().size(), 1U);
}

TEST(Surface, CloseAndCrowdedSpotsKeepWithinTheirElevations) {
  Source random(5);
  std::vector<Point3> spots = randomSpots(random, 300, 20);
  for (int i = 0; i < 300; ++i) { // a second shot 1 to 5 mm from another
    const Point3 near = spots[static_cast<std::size_t>(i)];
    spots.push_back(near + Point3{random.real(0.001, 0.004), random.real(-0.003, 0.003), 0.1});
  }
  const Surface surface(spots);
  for (int i = 0; i < 10000; ++i) {
    const double z = *surface.elevation(random.within({}, 25));
    ASSERT_GE(z, 28 - 1e-6);
    ASSERT_LE(z, 32.1 + 1e-6);
  }
}

TEST(Surface, IsTheSameOnAFarOffSurveyGrid) {
  Source random(6);
  const Point2 far{512345.678, 4012345.678};
  std::vector<Point3> here = randomSpots(random, 300, 40), there = here;
  for (Point3& spot : there)
    spot = spot + raised(far, 0);
  const Surface local(here), distant(there);
  EXPECT_EQ(local.triangles().size(), distant.triangles().size());
  for (int i = 0; i < 3000; ++i) {
    const Point2 p = random.within({}, 60);
    ASSERT_NEAR(*local.elevation(p), *distant.elevation(p + far), 1e-6);
  }
}

} // namespace
} // namespace sump
