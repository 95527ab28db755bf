// Friction against worked examples and published tables.

#include "core/study/friction.h"

#include "core/study/water_air.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <vector>

namespace sump {
namespace {

Flow litresPerMinute(double v) {
  return cubicMetresPerSecond(v / 60000);
}

// TP-410M, example 7-1, as quoted in the examples of an open fluid-dynamics library: water at 30 C,
// 200 L/min in plastic pipe of 52.5 mm: Re 100600, f 0.0179.
TEST(Friction, Fr1SmoothPlasticPipe) {
  const Velocity v = velocityIn(litresPerMinute(200), millimetres(52.5));
  const double re = reynoldsNumber(v, millimetres(52.5), *waterDensity(celsius(30)),
                                   *waterViscosity(celsius(30)));
  EXPECT_NEAR(re, 100600, 0.005 * 100600);
  EXPECT_NEAR(frictionFactor(re, 0), 0.0179, 1e-4);
}

// White, Fluid Mechanics, example 6.7: oil of 900 kg/m3 and 1e-5 m2/s, 0.2 m3/s, 500 m of 200 mm
// cast iron of 0.26 mm: Re 128000, f 0.0225, loss 117 m (the last from memory); 1 %.
TEST(Friction, Fr2RoughPipe) {
  const Length d = millimetres(200);
  const Velocity v = velocityIn(cubicMetresPerSecond(0.2), d);
  const double re = reynoldsNumber(v, d, kilogramsPerCubicMetre(900), pascalSeconds(900 * 1e-5));
  const double f = frictionFactor(re, 0.26 / 200);
  EXPECT_NEAR(re, 128000, 1280);
  EXPECT_NEAR(f, 0.0225, 0.000225);
  EXPECT_NEAR(darcyLoss(f, metres(500), d, v).value(), 117, 1.17);
}

// Concrete pipe of 1.2 m and 0.60 mm at 1 in 250, 1.005e-6 m2/s: 2.363 m/s (holooly.com, from
// Colebrook-White explicit in v, with 2.5 in place of 2.51); 0.1 %.
TEST(Friction, Fr3VelocityAtAGradient) {
  const Length d = metres(1.2);
  const auto loss = [&](double v) {
    const double re = v * 1.2 / 1.005e-6;
    return darcyLoss(frictionFactor(re, 0.6e-3 / 1.2), metres(250), d, metresPerSecond(v)).value();
  };
  double low = 1, high = 4;
  for (int i = 0; i < 60; ++i)
    (loss((low + high) / 2) < 1 ? low : high) = (low + high) / 2;
  EXPECT_NEAR(low, 2.363, 0.001 * 2.363);
}

struct HazenRow {
  double inside, gpm, c, printed, tolerance; ///< in, gpm, -, ft in 100 ft, share
  HazenWilliams form = HazenWilliams::FormA;
};

double feetIn100(const HazenRow& row) {
  return inFeet(
      hazenWilliamsLoss(gallonsPerMinute(row.gpm), inches(row.inside), row.c, feet(100), row.form));
}

void expectRows(const std::vector<HazenRow>& rows) {
  for (const HazenRow& row : rows) {
    EXPECT_NEAR(feetIn100(row), row.printed, row.tolerance * row.printed)
        << row.gpm << " gpm in " << row.inside << " in";
  }
}

// University table "Friction loss for PVC class 160 pipe" with the inside diameters printed; psi in
// 100 ft, here in ft by the 2.31 ft/psi of such tables. C = 150.
TEST(Friction, Fr5HazenWilliamsClass160) {
  constexpr double f = 2.31;
  expectRows({{1.195, 20, 150, 4.59 * f, 0.003},
              {1.195, 40, 150, 16.59 * f, 0.003},
              {1.195, 10, 150, 1.27 * f, 0.005},
              {3.230, 100, 150, 0.72 * f, 0.007}, // two digits printed
              {3.230, 130, 150, 1.17 * f, 0.007},
              {4.154, 200, 150, 0.76 * f, 0.007},
              {4.154, 225, 150, 0.95 * f, 0.007}});
  EXPECT_NEAR(inFeetPerSecond(velocityIn(gallonsPerMinute(20), inches(1.195))), 5.71, 0.003 * 5.71);
  EXPECT_NEAR(inFeetPerSecond(velocityIn(gallonsPerMinute(200), inches(4.154))), 4.72, 0.02);
}

// Illinois Administrative Code, title 77, part 906, appendix A, exhibit I: "Friction loss in
// Schedule 40 plastic pipe, C = 150"; inside diameters of steel pipe. 1.5 % for FR-6, the others
// within the 3 % of their rounding.
TEST(Friction, Fr6HazenWilliamsSchedule40) {
  expectRows({{2.067, 50, 150, 3.98, 0.015},
              {2.067, 20, 150, 0.74, 0.015},
              {1.049, 10, 150, 5.50, 0.015},
              {1.380, 20, 150, 5.23, 0.015},
              {1.610, 30, 150, 5.22, 0.015},
              {3.068, 100, 150, 2.09, 0.03},
              {4.026, 100, 150, 0.55, 0.035},
              {6.065, 300, 150, 0.58, 0.03}});
}

// engineeringtoolbox.com, "PVC pipes, friction loss": 1 in Sch 80, C = 150; 1 %.
TEST(Friction, Fr7HazenWilliamsSchedule80) {
  expectRows({{0.936, 10, 150, 9.6, 0.01},
              {0.936, 20, 150, 34.7, 0.01},
              {0.936, 30, 150, 73.5, 0.01},
              {0.722, 15, 150, 71.7, 0.01}});
  EXPECT_NEAR(inFeetPerSecond(velocityIn(gallonsPerMinute(10), inches(0.936))), 4.7, 0.047);
  EXPECT_NEAR(inFeetPerSecond(velocityIn(gallonsPerMinute(20), inches(0.936))), 9.4, 0.094);
}

// lawsupply.net, friction loss in steel pipe: 1 in Sch 40, C = 100, form B; 0.1 %.
TEST(Friction, Fr9HazenWilliamsFormB) {
  constexpr auto b = HazenWilliams::FormB;
  expectRows({{1.049, 10, 100, 11.63, 0.001, b},
              {1.049, 20, 100, 41.99, 0.001, b},
              {1.049, 30, 100, 88.97, 0.001, b}});
  EXPECT_NEAR(inFeetPerSecond(velocityIn(gallonsPerMinute(10), inches(1.049))), 3.71,
              0.001 * 3.71 + 0.005);
}

// The Practical Pumping Handbook, section 4.4.2.5: 340 gpm in 6 in steel: v^2/2g = 0.222 ft.
TEST(Friction, Fr11VelocityHead) {
  EXPECT_NEAR(inFeet(velocityHead(velocityIn(gallonsPerMinute(340), inches(6.065)))), 0.222, 0.001);
}

TEST(Friction, LaminarAndTransitionAreContinuous) {
  EXPECT_DOUBLE_EQ(frictionFactor(1000, 0.01), 0.064);
  EXPECT_EQ(frictionFactor(0, 0), 0);
  for (double k : {0.0, 1e-5, 1e-3, 0.02}) {
    for (double edge : {kLaminarReynolds, kTurbulentReynolds}) {
      EXPECT_NEAR(frictionFactor(edge * (1 - 1e-9), k), frictionFactor(edge * (1 + 1e-9), k), 1e-8);
    }
  }
}

TEST(Friction, SolvesColebrookToTheLastDigits) {
  for (double re : {4e3, 1e4, 1e5, 1e6, 1e8}) {
    for (double k : {0.0, 1e-6, 1e-4, 0.05}) {
      const double x = 1 / std::sqrt(frictionFactor(re, k));
      EXPECT_NEAR(x, -2 * std::log10(k / 3.7 + 2.51 * x / re), 1e-12 * x) << re << " " << k;
    }
  }
}

double lossOf(double flow, double inside, double roughness) {
  const Velocity v = velocityIn(cubicMetresPerSecond(flow), metres(inside));
  const double re =
      reynoldsNumber(v, metres(inside), kilogramsPerCubicMetre(998), pascalSeconds(1e-3));
  return darcyLoss(frictionFactor(re, roughness / inside), metres(10), metres(inside), v).value();
}

TEST(FrictionProperty, MoreFlowLosesMoreAndLargerPipeLess) {
  std::mt19937 random(4);
  std::uniform_real_distribution<double> share(0, 1);
  for (int round = 0; round < 5000; ++round) {
    const double flow = std::pow(10, -6 + 4.5 * share(random));
    const double inside = 0.01 + 0.3 * share(random);
    const double roughness = round % 3 == 0 ? 0 : 1e-4 * share(random);
    const double loss = lossOf(flow, inside, roughness);
    EXPECT_GT(lossOf(flow * (1 + 0.2 * share(random) + 1e-6), inside, roughness), loss);
    EXPECT_LT(lossOf(flow, inside * (1 + 0.2 * share(random) + 1e-6), roughness), loss);
    EXPECT_GE(lossOf(flow, inside, roughness + 1e-5), loss) << "rough pipe never loses less";
  }
}

} // namespace
} // namespace sump
