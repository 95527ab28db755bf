// Outlines worked by hand, and the degenerate ones that a random test never draws.

#include "core/geometry/polygon.h"

#include "core/geometry/box_index.h"
#include "core/geometry/frame.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

namespace sump {
namespace {

const Ring kVault = {{0, 0}, {4, 0}, {4, 2}, {0, 2}};
const Ring kEll = {{0, 0}, {4, 0}, {4, 1}, {1, 1}, {1, 3}, {0, 3}}; // 4x1 and 1x2

Ring reversed(Ring ring) {
  std::ranges::reverse(ring);
  return ring;
}

TEST(Polygon, MeasuresDoNotDependOnDirection) {
  for (const Ring& ring : {kEll, reversed(kEll)}) {
    EXPECT_DOUBLE_EQ(area(ring), 6);
    EXPECT_DOUBLE_EQ(perimeter(ring), 14);
    // (4 * (2, 0.5) + 2 * (0.5, 2)) / 6
    EXPECT_NEAR(centroid(ring).x, 1.5, 1e-12);
    EXPECT_NEAR(centroid(ring).y, 1.0, 1e-12);
    EXPECT_TRUE(isSimple(ring));
    EXPECT_TRUE(contains(ring, {0.5, 2}));
    EXPECT_TRUE(contains(ring, {1, 2})) << "on the outline";
    EXPECT_FALSE(contains(ring, {2, 2}));
    EXPECT_DOUBLE_EQ(distance({2, 2}, ring), 1);
    EXPECT_DOUBLE_EQ(distance({0.5, 2}, ring), 0);
    EXPECT_DOUBLE_EQ(distanceToEdge({0.5, 2}, ring), 0.5);
    EXPECT_DOUBLE_EQ(overlapArea(ring, kVault), 5); // 4x1 and 1x1
    EXPECT_DOUBLE_EQ(overlapArea(kVault, ring), 5);
  }
}

TEST(Polygon, SideBySideVaultsTouchButDoNotOverlap) {
  for (double turn : {0.0, 17.0, 45.0, 213.7}) {
    const Frame frame{{500000, 4000000}, degrees(turn)};
    const Ring first = frame.rectangle({0, 0}, {3.6576, 1.8288});
    const Ring second = frame.rectangle({0, 1.8288}, {3.6576, 3.6576});
    const Ring sunk = frame.rectangle({0, 1.8}, {3.6576, 3.6576});
    EXPECT_FALSE(overlaps(first, second)) << turn;
    EXPECT_NEAR(distance(first, second), 0, 1e-7) << turn;
    EXPECT_TRUE(overlaps(first, sunk)) << turn;
    EXPECT_NEAR(overlapArea(first, sunk), 3.6576 * 0.0288, 1e-6) << turn;
  }
}

TEST(Polygon, OutlinesThatAreNoneAreNotSimple) {
  const Ring bowTie = {{0, 0}, {2, 2}, {2, 0}, {0, 2}};
  const Ring spike = {{0, 0}, {2, 0}, {4, 0}, {2, 0}, {2, 2}};
  const Ring flat = {{0, 0}, {1, 0}, {2, 0}};
  const Ring touchingItself = {{0, 0}, {4, 0}, {4, 4}, {2, 0}, {0, 4}};
  for (const Ring& ring :
       {Ring{}, Ring{{1, 1}}, Ring{{1, 1}, {2, 2}}, bowTie, spike, flat, touchingItself}) {
    EXPECT_FALSE(isSimple(ring)) << ring.size();
  }
}

TEST(Polygon, NothingIsNowhereNear) {
  constexpr double never = std::numeric_limits<double>::infinity();
  EXPECT_EQ(area({}), 0);
  EXPECT_EQ(centroid({}), Point2());
  EXPECT_EQ(planLength({}), 0);
  EXPECT_FALSE(contains({}, {0, 0}));
  EXPECT_EQ(distance(kVault, Ring{}), never);
  EXPECT_EQ(distance(Point2{}, Ring{}), never);
  EXPECT_EQ(distanceLineToRing({}, kVault), never);
  EXPECT_EQ(distanceBetweenLines({}, {{0, 0}, {1, 1}}), never);
  EXPECT_EQ(overlapArea(kVault, {}), 0);
  EXPECT_TRUE(crossings({}, kVault).empty());
  EXPECT_FALSE(passesThrough({}, kVault));
}

TEST(Polygon, LinesOfOnePointAreMeasuredAsPoints) {
  EXPECT_DOUBLE_EQ(distanceLineToRing({{7, 6}}, kVault), 5); // 3-4-5 from the corner (4, 2)
  EXPECT_DOUBLE_EQ(distanceBetweenLines({{0, 5}}, {{-1, 1}, {1, 1}}), 4);
  EXPECT_DOUBLE_EQ(distanceToLine({3, 4}, {{0, 0}}), 5);
}

TEST(Polygon, CrossingsComeInOrderAlongTheLine) {
  const Polyline line = {{5, 0.5}, {0.5, 0.5}, {0.5, 5}};
  const std::vector<Point2> expected = {{4, 0.5}, {0.5, 3}};
  EXPECT_EQ(crossings(line, kEll), expected);
  // Through a corner: one crossing there, not two.
  const auto throughCorner = crossings({{3, -1}, {5, 1}}, kVault);
  ASSERT_EQ(throughCorner.size(), 1U);
  EXPECT_LT(distance(throughCorner.front(), {4, 0}), 1e-9);
}

TEST(Polygon, PassingThroughIsMoreThanTouching) {
  EXPECT_TRUE(passesThrough({{-1, 1}, {5, 1}}, kVault));
  EXPECT_TRUE(passesThrough({{1, 1}, {2, 1}}, kVault)) << "wholly inside";
  EXPECT_FALSE(passesThrough({{-1, 2}, {5, 2}}, kVault)) << "along the edge";
  EXPECT_FALSE(passesThrough({{3, -1}, {5, 1}}, kVault)) << "touching a corner";
  EXPECT_TRUE(passesThrough({{-1, 1}, {5, 1}}, kEll)) << "along one edge, then inside";
}

TEST(Polygon, SegmentsCrossAtFractionsOfEach) {
  const auto hit = crossSegments({0, 0}, {4, 0}, {1, -1}, {1, 3});
  ASSERT_TRUE(hit);
  EXPECT_DOUBLE_EQ(hit->alongFirst, 0.25);
  EXPECT_DOUBLE_EQ(hit->alongSecond, 0.25);
  EXPECT_FALSE(crossSegments({0, 0}, {4, 0}, {0, 1}, {4, 1})) << "parallel";
  EXPECT_FALSE(crossSegments({0, 0}, {4, 0}, {1, 0}, {2, 0})) << "in one line";
  EXPECT_FALSE(crossSegments({0, 0}, {4, 0}, {5, -1}, {5, 1})) << "apart";
  EXPECT_FALSE(crossSegments({0, 0}, {0, 0}, {-1, -1}, {1, 1})) << "no length";
  const Foot foot = nearestOnSegment({1, 2}, {0, 0}, {4, 0});
  EXPECT_EQ(foot.at, (Point2{1, 0}));
  EXPECT_DOUBLE_EQ(foot.along, 0.25);
  EXPECT_DOUBLE_EQ(foot.distance, 2);
  EXPECT_DOUBLE_EQ(nearestOnSegment({-3, 4}, {0, 0}, {4, 0}).distance, 5);
  EXPECT_DOUBLE_EQ(nearestOnSegment({3, 4}, {0, 0}, {0, 0}).distance, 5);
}

TEST(Frame, TurnsAndMovesBothWays) {
  const Frame frame{{10, 20}, degrees(90)};
  EXPECT_LT(distance(frame.toSite({2, 1}), {9, 22}), 1e-12);
  EXPECT_LT(distance(frame.toLocal({9, 22}), {2, 1}), 1e-12);
  EXPECT_NEAR(area(frame.rectangle({0, 0}, {3, 2})), 6, 1e-12);
}

TEST(OutlineSet, FindsTheOutlineThatHoldsAPoint) {
  std::vector<Ring> rings;
  for (int i = 0; i < 100; ++i) {
    const double x = 10.0 * (i % 10), y = 10.0 * (i / 10);
    rings.push_back({{x, y}, {x + 5, y}, {x, y + 5}});
  }
  const OutlineSet set(rings);
  EXPECT_EQ(set.holding({71, 31}), 37);
  EXPECT_EQ(set.holding({74, 34}), -1) << "in the box but not in the triangle";
  EXPECT_EQ(set.holding({7, 7}), -1);
  EXPECT_EQ(set.touching({{4, 4}, {11, 11}}), (std::vector<std::size_t>{0, 1, 10, 11}));
  EXPECT_TRUE(OutlineSet().touching({{0, 0}, {1, 1}}).empty());
}

TEST(BoxIndex, AgreesWithLookingAtEveryBox) {
  std::vector<Box> boxes;
  for (int i = 0; i < 500; ++i) {
    const Point2 low{std::fmod(i * 37.7, 100), std::fmod(i * 91.3, 100)};
    boxes.push_back({low, low + Point2{1.0 + i % 7, 1.0 + i % 5}});
  }
  const BoxIndex index(boxes);
  for (int k = 0; k < 200; ++k) {
    const Point2 low{std::fmod(k * 13.1, 100), std::fmod(k * 57.9, 100)};
    const Box asked = grown({low, low}, k % 9);
    std::vector<std::size_t> expected;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
      const Box& box = boxes[i];
      if (box.low.x <= asked.high.x && asked.low.x <= box.high.x && box.low.y <= asked.high.y &&
          asked.low.y <= box.high.y) {
        expected.push_back(i);
      }
    }
    EXPECT_EQ(index.touching(asked), expected) << k;
  }
}

} // namespace
} // namespace sump
