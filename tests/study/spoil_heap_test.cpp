// How much a place for spoil holds, against the formulas of solids.

#include "core/geometry/polygon.h"
#include "core/study/spoil_heap.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace sump::test {
namespace {

Ring rectangle(double length, double width, Point2 at = {}) {
  return {at, at + Point2{length, 0}, at + Point2{length, width}, at + Point2{0, width}};
}

/// A hipped roof: its middle part is a wedge, its two ends make a pyramid.
double hipped(double length, double width, double slope) {
  const double height = width / 2 / slope;
  return height * (width * (length - width) / 2 + width * width / 3);
}

TEST(SpoilHeap, OfARectangleIsAHippedRoof) {
  const SpoilHeap heap = spoilHeap(rectangle(14, 9), 1.5, metres(10));
  EXPECT_NEAR(inMetres(heap.height), 3, 1e-3);
  EXPECT_NEAR(heap.holds.value(), hipped(14, 9, 1.5), 0.15);
  EXPECT_NEAR(hipped(14, 9, 1.5), 148.5, 1e-9);
}

TEST(SpoilHeap, CutOffIsAFrustum) {
  // What the roof holds, less the smaller roof over the cut.
  const double cut = hipped(14 - 2 * 3, 9 - 2 * 3, 1.5);
  const SpoilHeap heap = spoilHeap(rectangle(14, 9), 1.5, metres(2));
  EXPECT_EQ(inMetres(heap.height), 2);
  EXPECT_NEAR(heap.holds.value(), hipped(14, 9, 1.5) - cut, 0.15);
}

TEST(SpoilHeap, OfACircleIsACone) {
  Ring circle;
  constexpr int kCorners = 180;
  const double radius = 5;
  for (int i = 0; i < kCorners; ++i) {
    const double a = 2 * std::numbers::pi * i / kCorners;
    circle.push_back({4e5 + radius * std::cos(a), 4e6 + radius * std::sin(a)});
  }
  const double cone = std::numbers::pi * radius * radius * (radius / 1.5) / 3;
  EXPECT_NEAR(spoilHeap(circle, 1.5, metres(10)).holds.value(), cone, 0.002 * cone);
}

/// Where an outline turns inwards the corner itself is what the heap falls away from: held against
/// the height at each place of a fine grid.
TEST(SpoilHeap, OfAnAngleIsTheSumOfItsHeights) {
  const Ring angle = {{0, 0}, {12, 0}, {12, 5}, {5, 5}, {5, 11}, {0, 11}};
  constexpr double kStep = 0.02;
  double sum = 0;
  for (double x = kStep / 2; x < 12; x += kStep) {
    for (double y = kStep / 2; y < 11; y += kStep) {
      if (!contains(angle, {x, y})) continue;
      sum += std::min(1.4, distanceToEdge({x, y}, angle) / 1.5) * kStep * kStep;
    }
  }
  EXPECT_NEAR(spoilHeap(angle, 1.5, metres(1.4)).holds.value(), sum, 0.002 * sum);
  Ring other(angle.rbegin(), angle.rend());
  EXPECT_NEAR(spoilHeap(other, 1.5, metres(1.4)).holds.value(), sum, 0.002 * sum);
}

TEST(SpoilHeap, OfADrawnPlaceIsInTheStudy) {
  Plan plan;
  EXPECT_FALSE(studyOf(plan).earth.heapHolds);
  plan.basis.earth.spoil = rectangle(14, 9, {100, 50});
  const EarthStudy earth = studyOf(plan).earth;
  EXPECT_NEAR(earth.heapHolds->value(), 148.5, 0.15);
  EXPECT_NEAR(inMetres(*earth.heapHeight), 3, 1e-3);
}

} // namespace
} // namespace sump::test
