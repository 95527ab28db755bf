// Water and air against the check values of the releases and published tables.

#include "core/study/water_air.h"

#include <gtest/gtest.h>

#include <limits>
#include <string>

namespace sump {
namespace {

// IAPWS R12-08, table 4: the values for checking computer programs, all eleven.
TEST(WaterAir, ViscosityOfTheRelease) {
  struct Row {
    double kelvins, density, microPascalSeconds;
  };
  for (const Row& row : {Row{298.15, 998, 889.735100},
                         {298.15, 1200, 1437.649467},
                         {373.15, 1000, 307.883622},
                         {433.15, 1, 14.538324},
                         {433.15, 1000, 217.685358},
                         {873.15, 1, 32.619287},
                         {873.15, 100, 35.802262},
                         {873.15, 600, 77.430195},
                         {1173.15, 1, 44.217245},
                         {1173.15, 100, 47.640433},
                         {1173.15, 400, 64.154608}}) {
    const auto mu = waterViscosity(kelvin(row.kelvins), kilogramsPerCubicMetre(row.density));
    ASSERT_TRUE(mu);
    EXPECT_NEAR(mu->value() * 1e6, row.microPascalSeconds, 1e-6 * row.microPascalSeconds)
        << row.kelvins << " K, " << row.density << " kg/m3";
  }
}

// IAPWS-IF97, table 35.
TEST(WaterAir, SaturationPressureOfTheRelease) {
  for (const auto& [kelvins, kiloPascals] :
       {std::pair(300.0, 3.53658941), {500.0, 2638.89776}, {600.0, 12344.3146}}) {
    const auto p = saturationPressure(kelvin(kelvins));
    ASSERT_TRUE(p);
    EXPECT_NEAR(p->value() / 1000, kiloPascals, 1e-8 * kiloPascals) << kelvins << " K";
  }
}

// IAPWS-IF97, table 5 (the first seen, the others from memory; they try every term).
TEST(WaterAir, SpecificVolumeOfTheRelease) {
  struct Row {
    double kelvins, megaPascals, volume;
  };
  for (const Row& row :
       {Row{300, 3, 0.100215168e-2}, {300, 80, 0.971180894e-3}, {500, 3, 0.120241800e-2}}) {
    const auto v = liquidSpecificVolume(kelvin(row.kelvins), pascals(row.megaPascals * 1e6));
    ASSERT_TRUE(v);
    EXPECT_NEAR(*v, row.volume, 1e-8 * row.volume) << row.kelvins << " K";
  }
}

struct WorkingRow {
  double celsius, saturation, density, viscosity, head;
};
// At 101.325 kPa: kPa, kg/m3, uPa s, m of water. Computed by others' code that reproduces the check
// values above; p_sat agrees with steam tables to their three digits, density with International
// Critical Tables (1928).
constexpr WorkingRow kWorking[] = {
    {5, 0.8726, 999.97, 1518.2, 0.0890},  {10, 1.2282, 999.70, 1305.9, 0.1253},
    {15, 1.7057, 999.10, 1137.6, 0.1741}, {20, 2.3392, 998.21, 1001.6, 0.2390},
    {25, 3.1697, 997.05, 890.0, 0.3242},  {30, 4.2467, 995.65, 797.2, 0.4349},
    {35, 5.6286, 994.04, 719.1, 0.5774},  {40, 7.3844, 992.22, 652.7, 0.7589},
    {45, 9.5944, 990.22, 595.8, 0.9880},  {50, 12.3513, 988.05, 546.5, 1.2747},
};

TEST(WaterAir, WorkingTable) {
  for (const WorkingRow& row : kWorking) {
    const Temperature t = celsius(row.celsius);
    SCOPED_TRACE(std::to_string(row.celsius) + " C");
    EXPECT_NEAR(saturationPressure(t)->value() / 1000, row.saturation, 5.1e-5);
    EXPECT_NEAR(waterDensity(t)->value(), row.density, 5.1e-3);
    EXPECT_NEAR(waterViscosity(t)->value() * 1e6, row.viscosity, 0.051);
    EXPECT_NEAR(headOf(*saturationPressure(t), *waterDensity(t)).value(), row.head, 5.1e-5);
  }
}

// Published viscosities of an older table (engineersedge.com), about 0.2 % above IAPWS.
TEST(WaterAir, ViscosityNearAnOlderTable) {
  for (const auto& [t, mu] : {std::pair(5.0, 1519.0),
                              {10.0, 1308.0},
                              {20.0, 1002.0},
                              {25.0, 890.0},
                              {30.0, 797.8},
                              {40.0, 653.1},
                              {50.0, 547.1}}) {
    EXPECT_NEAR(waterViscosity(celsius(t))->value() * 1e6, mu, 0.0025 * mu) << t << " C";
  }
}

// Published table of the US Standard Atmosphere 1976 in psia by feet (engineersedge.com), made from
// rounded inches of mercury: within 0.1 %. The four of ATM-1 within 0.05 %.
TEST(WaterAir, StandardAtmosphere) {
  struct Row {
    double feetUp, psia, tolerance;
  };
  for (const Row& row : {Row{0, 14.696, 5e-4},
                         {500, 14.430, 1e-3},
                         {1000, 14.175, 1e-3},
                         {2000, 13.664, 5e-4},
                         {3000, 13.173, 1e-3},
                         {4000, 12.682, 1e-3},
                         {5000, 12.230, 5e-4},
                         {6000, 11.778, 1e-3},
                         {7000, 11.341, 5e-4},
                         {8000, 10.914, 1e-3},
                         {10000, 10.108, 5e-4}}) {
    const auto p = atmosphericPressure(feet(row.feetUp));
    ASSERT_TRUE(p);
    EXPECT_NEAR(inPsi(*p), row.psia, row.tolerance * row.psia) << row.feetUp << " ft";
  }
}

// The standard's table by geopotential altitude (from memory) and its tropopause (22632.1 Pa seen).
TEST(WaterAir, GeopotentialTable) {
  for (const auto& [h, p] : {std::pair(500.0, 95460.8),
                             {1000.0, 89874.6},
                             {1500.0, 84556.0},
                             {2000.0, 79495.2},
                             {2500.0, 74682.5},
                             {3000.0, 70108.5},
                             {11000.0, 22632.1}}) {
    EXPECT_NEAR(pressureAtGeopotential(metres(h))->value(), p, 0.06) << h << " m";
  }
}

TEST(WaterAir, NothingOutOfRange) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_FALSE(saturationPressure(celsius(-0.01)));
  EXPECT_FALSE(saturationPressure(kelvin(647.1)));
  EXPECT_FALSE(saturationPressure(kelvin(nan)));
  EXPECT_TRUE(waterDensity(celsius(99)));
  EXPECT_FALSE(waterDensity(celsius(101))) << "steam at 101,325 Pa";
  EXPECT_FALSE(waterDensity(celsius(20), pascals(101e6)));
  EXPECT_FALSE(waterViscosity(celsius(-1)));
  EXPECT_FALSE(waterViscosity(celsius(20), kilogramsPerCubicMetre(1201)));
  EXPECT_FALSE(waterViscosity(celsius(20), kilogramsPerCubicMetre(0)));
  EXPECT_FALSE(atmosphericPressure(metres(12000)));
  EXPECT_FALSE(atmosphericPressure(metres(-6000)));
  EXPECT_FALSE(atmosphericPressure(metres(nan)));
}

} // namespace
} // namespace sump
