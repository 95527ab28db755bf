// Levels along a run, against hand work and what must hold for any run.

#include "core/study/circular_flow.h"
#include "core/study/water_levels.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace sump::test {
namespace {

constexpr double kN = 0.013;

WaterWay straight(double length, double diameter, double from, double to, double entry = 0) {
  return {{from, to}, {{length, diameter, 0}}, {entry, 0}};
}

double velocityHead(double flow, double diameter, double fill) {
  const double v = flow / circularSection(metres(diameter), fill).area.value();
  return v * v / (2 * kGravity);
}

TEST(WaterLevels, WithoutFlowWaterStandsAtTheTailOrTheHighestInvert) {
  const WaterWay riser{{1, 2, 1.9}, {{1, 0.15, 0}, {3, 0.15, 0}}, {0.78, 0.45, 0}};
  EXPECT_NEAR(levelsAlong(riser, 0, 1.5, kN).upstream, 2, 1e-12);
  EXPECT_NEAR(levelsAlong(riser, 0, 2.5, kN).upstream, 2.5, 1e-12);
}

// By hand: D 0.15 m, A 0.0176715 m2, R 0.0375 m, Q 0.020 m3/s: v 1.13177 m/s, v2/2g 0.065308 m,
// Sf = (0.013 x 1.13177 / 0.0375^(2/3))^2 = 0.0172463 (0.0375^(2/3) = 0.112035). 10 m under water
// at 5 m: 5 + 0.065308 (exit) + 0.172463 + 0.78 x 0.065308 = 5.288711.
TEST(WaterLevels, FullPipeByHand) {
  const WayLevels levels = levelsAlong(straight(10, 0.15, 1, 1, 0.78), 0.020, 5, kN);
  EXPECT_NEAR(levels.upstream, 5.288711, 1e-5);
  EXPECT_TRUE(levels.points[0].full);
  EXPECT_NEAR(levels.points[1].water, 5, 1e-9);
}

TEST(WaterLevels, ALongFlatPipeEndsInUniformFlow) {
  const double slope = 0.003, flow = 0.005, d = 0.15;
  const double fill = *normalFill(Flow::from_value(flow), metres(d), slope, kN);
  ASSERT_GT(fill, criticalFill(Flow::from_value(flow), metres(d))) << "a mild slope";
  const WayLevels levels = levelsAlong(straight(200, d, 0.6, 0), flow, -1, kN);
  EXPECT_NEAR(levels.points[0].water, 0.6 + fill * d, 1e-6);
  EXPECT_NEAR(levels.upstream, 0.6 + fill * d + velocityHead(flow, d, fill), 1e-6);
}

TEST(WaterLevels, ABrinkIsAtCriticalDepth) {
  const double flow = 0.005, d = 0.15;
  const double fill = criticalFill(Flow::from_value(flow), metres(d));
  const WayLevels levels = levelsAlong(straight(20, d, 0.06, 0), flow, -1, kN);
  EXPECT_NEAR(levels.points[1].water, fill * d, 1e-9);
}

TEST(WaterLevels, ASteepPipeIsGovernedByItsEntry) {
  const double flow = 0.005, d = 0.15, k = 0.5;
  const double fill = criticalFill(Flow::from_value(flow), metres(d));
  const double head = velocityHead(flow, d, fill);
  const double byHand = 1 + fill * d + (1 + k) * head;
  EXPECT_NEAR(levelsAlong(straight(20, d, 1, 0, k), flow, -1, kN).upstream, byHand, 1e-9);
  EXPECT_NEAR(levelsAlong(straight(20, d, 1, 0, k), flow, 0.5, kN).upstream, byHand, 1e-9)
      << "a tail that does not reach up to the entry is not felt";
}

TEST(WaterLevels, TooMuchForThePipeMakesItRunFull) {
  const double slope = 0.01, d = 0.15;
  const double most = manningFlow(metres(d), 1, slope, kN).value();
  const WayLevels levels = levelsAlong(straight(50, d, 0.5, 0), 1.2 * most, -1, kN);
  EXPECT_TRUE(levels.points[0].full);
  EXPECT_GT(levels.points[0].water, 0.5 + d);
}

/// A run of a few legs, most of them falling.
WaterWay randomWay(std::mt19937& random) {
  std::uniform_real_distribution<double> share(0, 1);
  WaterWay way;
  double z = 2;
  way.inverts = {z};
  way.losses = {share(random)};
  const double d = 0.05 + 0.2 * share(random);
  for (int i = 0; i < 1 + static_cast<int>(random() % 4); ++i) {
    z += 0.3 * (share(random) - 0.7);
    way.inverts.push_back(z);
    way.losses.push_back(random() % 2 == 0 ? 0.5 * share(random) : 0);
    way.legs.push_back({std::max(0.2, 15 * share(random)), random() % 5 == 0 ? 0.8 * d : d,
                        random() % 4 == 0 ? share(random) : 0});
  }
  return way;
}

TEST(WaterLevels, EnergyNeverRisesWithTheFlow) {
  std::mt19937 random(41);
  std::uniform_real_distribution<double> share(0, 1);
  for (int turn = 0; turn < 500; ++turn) {
    const WaterWay way = randomWay(random);
    const double flow = 0.02 * share(random), tail = 2 * share(random) + 0.8;
    const WayLevels levels = levelsAlong(way, flow, tail, kN);
    EXPECT_GE(levels.upstream, tail);
    EXPECT_GE(levels.upstream, levels.points.front().energy - 1e-9);
    for (std::size_t i = 1; i < levels.points.size(); ++i) {
      EXPECT_LE(levels.points[i].energy, levels.points[i - 1].energy + 1e-9) << turn << ' ' << i;
      EXPECT_LE(levels.points[i].water, levels.points[i].energy + 1e-9);
      EXPECT_GE(levels.points[i].water, way.inverts[i] - 1e-9);
    }
  }
}

TEST(WaterLevels, MoreFlowOrMoreTailIsNeverALowerLevel) {
  std::mt19937 random(42);
  std::uniform_real_distribution<double> share(0, 1);
  for (int turn = 0; turn < 200; ++turn) {
    const WaterWay way = randomWay(random);
    const double tail = 2 * share(random) + 0.8;
    double last = 0;
    for (double flow = 0; flow < 0.02; flow += 0.001) {
      const double level = levelsAlong(way, flow, tail, kN).upstream;
      EXPECT_GE(level, last - 1e-7) << turn << " flow " << flow;
      last = level;
    }
    last = 0;
    for (double t = 0; t < 3; t += 0.15) {
      const double level = levelsAlong(way, 0.008, t, kN).upstream;
      EXPECT_GE(level, last - 1e-7) << turn << " tail " << t;
      last = level;
    }
  }
}

TEST(WaterLevels, RougherPipeIsNeverALowerLevel) {
  std::mt19937 random(43);
  for (int turn = 0; turn < 200; ++turn) {
    const WaterWay way = randomWay(random);
    EXPECT_LE(levelsAlong(way, 0.007, 1.5, 0.009).upstream,
              levelsAlong(way, 0.007, 1.5, 0.013).upstream + 1e-7);
  }
}

} // namespace
} // namespace sump::test
