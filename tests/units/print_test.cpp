#include "core/units/print.h"

#include <gtest/gtest.h>

#include <limits>
#include <string>

namespace sump {
namespace {

struct PrintedInches {
  double inches;
  int denominator;
  const char* text;
};

TEST(Print, FeetInches) {
  constexpr PrintedInches rows[] = {
      {150.5, 16, "12'-6 1/2\""},
      {0, 16, "0'-0\""},
      {-3, 16, "-0'-3\""},
      {-15, 16, "-1'-3\""},
      {0.0625, 16, "0'-0 1/16\""},
      {144, 16, "12'-0\""},
      {6.375, 16, "0'-6 3/8\""},
      {6.75, 16, "0'-6 3/4\""},
      // 15/16+ carries to the inch, and on to the foot.
      {5.9375, 16, "0'-5 15/16\""},
      {5.97, 16, "0'-6\""},
      {143.96, 16, "11'-11 15/16\""},
      {143.97, 16, "12'-0\""},
      {-143.97, 16, "-12'-0\""},
      {11.99, 16, "1'-0\""},
      // Half a step goes away from zero; less than half of the first step leaves no sign.
      {0.03125, 16, "0'-0 1/16\""},
      {-0.03125, 16, "-0'-0 1/16\""},
      {-0.03, 16, "0'-0\""},
      {7.5, 1, "0'-8\""},
      {6.5, 2, "0'-6 1/2\""},
      {6.3, 8, "0'-6 1/4\""},
      {0.015625, 64, "0'-0 1/64\""},
      {120000, 16, "10000'-0\""},
  };
  for (const auto& row : rows)
    EXPECT_EQ(feetInches(inches(row.inches), row.denominator), row.text) << row.inches;
}

TEST(Print, InchesOnly) {
  constexpr PrintedInches rows[] = {
      {6.5, 16, "6 1/2\""},  {0.75, 16, "3/4\""}, {-0.75, 16, "-3/4\""},
      {4, 16, "4\""},        {0, 16, "0\""},      {-0.01, 16, "0\""},
      {1.25, 16, "1 1/4\""}, {30, 16, "30\""},    {-1.25, 16, "-1 1/4\""},
  };
  for (const auto& row : rows)
    EXPECT_EQ(inchesOnly(inches(row.inches), row.denominator), row.text) << row.inches;
}

TEST(Print, LengthsBeyondAnyDrawingAreStillText) {
  EXPECT_EQ(feetInches(feet(1e15)), "1000000000000000'");
  EXPECT_EQ(feetInches(feet(-1e15)), "-1000000000000000'");
  EXPECT_EQ(feetInches(metres(std::numeric_limits<double>::quiet_NaN())), "nan'");
  EXPECT_EQ(inchesOnly(metres(std::numeric_limits<double>::infinity())), "inf\"");
}

TEST(Print, LengthsInTheProjectsUnits) {
  constexpr auto us = UnitSystem::UsCustomary, metric = UnitSystem::Metric;
  EXPECT_EQ(printLength(metres(3.81), metric), "3.810 m");
  EXPECT_EQ(printLength(feet(12.5), us), "12'-6\"");
  EXPECT_EQ(printLength(metres(-0.0001), metric), "0.000 m");
  EXPECT_EQ(printShort(millimetres(150), metric), "150 mm");
  EXPECT_EQ(printShort(inches(18.1), us), "1'-6 1/8\"");
  EXPECT_EQ(printElevation(feet(101.25), us), "101.25");
  EXPECT_EQ(printElevation(metres(30.8614), metric), "30.861");
  EXPECT_EQ(printElevation(feet(-2.5), us), "-2.50");
  EXPECT_EQ(printRunLength(feet(23.44), us), "23.4 ft");
  EXPECT_EQ(printRunLength(metres(7.125), metric), "7.13 m");
}

TEST(Print, OtherQuantities) {
  constexpr auto us = UnitSystem::UsCustomary, metric = UnitSystem::Metric;
  EXPECT_EQ(printVolume(gallons(2992.2), us), "2,992 gal");
  EXPECT_EQ(printVolume(gallons(748.05), us), "748 gal");
  EXPECT_EQ(printVolume(gallons(-1234567), us), "-1,234,567 gal");
  EXPECT_EQ(printVolume(cubicMetres(11.326), metric), "11.33 m\u00B3");
  EXPECT_EQ(printFlow(gallonsPerMinute(45), us), "45 gpm");
  EXPECT_EQ(printFlow(gallonsPerMinute(7.25), us), "7.3 gpm");
  EXPECT_EQ(printFlow(cubicMetresPerSecond(170.0 / 60000), metric), "170 L/min");
  EXPECT_EQ(printPressure(psi(40), us), "40 psi");
  EXPECT_EQ(printPressure(psi(40), metric), "276 kPa");
  EXPECT_EQ(printMass(pounds(12500), us), "12,500 lb");
  EXPECT_EQ(printMass(kilograms(5670), metric), "5670 kg");
  EXPECT_EQ(printAngle(degrees(45)), "45\u00B0");
  EXPECT_EQ(printAngle(degrees(22.5)), "22.5\u00B0");
  EXPECT_EQ(printAngle(degrees(-30)), "-30\u00B0");
  EXPECT_EQ(printAngle(degrees(-0.01)), "0\u00B0");
}

TEST(Print, SlopeIsAFractionNearASixteenth) {
  constexpr auto us = UnitSystem::UsCustomary;
  EXPECT_EQ(printSlope(0.25 / 12, us), "1/4 in/ft");
  EXPECT_EQ(printSlope(0.125 / 12, us), "1/8 in/ft");
  EXPECT_EQ(printSlope(-0.25 / 12, us), "-1/4 in/ft");
  EXPECT_EQ(printSlope(0.254 / 12, us), "1/4 in/ft");  // 1.6 % off
  EXPECT_EQ(printSlope(0.256 / 12, us), "0.26 in/ft"); // 2.4 % off
  EXPECT_EQ(printSlope(0.21 / 12, us), "0.21 in/ft");
  EXPECT_EQ(printSlope(1.5 / 12, us), "1 1/2 in/ft");
  EXPECT_EQ(printSlope(0, us), "0.00 in/ft");
  EXPECT_EQ(printSlope(-1e-5, us), "0.00 in/ft");
  EXPECT_EQ(printSlope(0.021, UnitSystem::Metric), "2.10 %");
  EXPECT_EQ(printSlope(-0.005, UnitSystem::Metric), "-0.50 %");
  EXPECT_EQ(printSlope(0.02, UnitSystem::Metric), "2.00 %");
}

TEST(Print, FixedRoundsHalfAwayFromZero) {
  EXPECT_EQ(fixed(0.125, 2), "0.13"); // exact in binary; printf would say 0.12
  EXPECT_EQ(fixed(-0.125, 2), "-0.13");
  EXPECT_EQ(fixed(2.5, 0), "3");
  EXPECT_EQ(fixed(-0.4, 0), "0");
  EXPECT_EQ(fixed(1e21, 1), "1000000000000000000000.0");
  EXPECT_EQ(fixed(std::numeric_limits<double>::max(), 0).size(), 309U);
  EXPECT_EQ(grouped(999, 0), "999");
  EXPECT_EQ(grouped(999.5, 0), "1,000");
  EXPECT_EQ(grouped(-1234567.25, 2), "-1,234,567.25");
}

} // namespace
} // namespace sump
