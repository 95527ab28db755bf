// Quantities of the calculation report in both systems of units.

#include "core/study/calculation_print.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

// Factors: NIST SP 811, app. B.
TEST(CalculationPrint, WritesEachKindInTheUnitsThatPeopleRead) {
  const auto us = UnitSystem::UsCustomary, metric = UnitSystem::Metric;
  EXPECT_EQ(printQuantity(0.3048, QuantityKind::Length, us), "1 ft");
  EXPECT_EQ(printQuantity(0.3048, QuantityKind::Length, metric), "0.3048 m");
  EXPECT_EQ(printQuantity(6.30902e-5, QuantityKind::Flow, us), "1 gpm");
  EXPECT_EQ(printQuantity(0.00126, QuantityKind::Flow, metric), "1.26 L/s");
  EXPECT_EQ(printQuantity(6894.757, QuantityKind::Pressure, us), "1 psi");
  EXPECT_EQ(printQuantity(0.25, QuantityKind::Share, us), "25 %");
  EXPECT_EQ(printQuantity(5400, QuantityKind::Time, us), "90 min");
  EXPECT_EQ(printQuantity(4.4482216, QuantityKind::Force, us), "1 lbf");
  EXPECT_EQ(printQuantity(16.018463, QuantityKind::Density, us), "1 lb/ft\u00B3");
  EXPECT_EQ(printQuantity(1.5, QuantityKind::Number, us), "1.5");
  EXPECT_EQ(printQuantity(123456.4, QuantityKind::Volume, metric), "123456 m\u00B3")
      << "no 1.2e+05";
  EXPECT_EQ(printQuantity(5.29684, QuantityKind::HeadOfWater, metric, 3), "5.3 m of water");
  EXPECT_EQ(printQuantity(1234.4, QuantityKind::Length, metric, 3), "1234 m");
}

// 1 yd3 is 27 ft3, 0.764554857984 m3; 1 ft3 0.028316846592 m3 (NIST SP 811, app. B, by the foot).
TEST(CalculationPrint, EarthIsInCubicYardsWaterInGallonsAndWhatIsDisplacedInCubicFeet) {
  Calculation dig;
  dig.kind = QuantityKind::SolidVolume;
  dig.result = 10 * 0.764554857984;
  dig.inputs = {{"V_d", "dug", 2 * 0.764554857984, QuantityKind::SolidVolume, "plan"},
                {"d", "depth", 0.3048, QuantityKind::Length, "plan"}};
  EXPECT_EQ(printResult(dig, UnitSystem::UsCustomary), "10 yd\u00B3");
  EXPECT_EQ(printResult(dig, UnitSystem::Metric), "7.6455 m\u00B3");
  EXPECT_EQ(printInput(dig.inputs[0], UnitSystem::UsCustomary), "2 yd\u00B3");
  EXPECT_EQ(printInput(dig.inputs[1], UnitSystem::UsCustomary), "1 ft");
  dig.kind = QuantityKind::Volume;
  EXPECT_EQ(printResult(dig, UnitSystem::UsCustomary), "2,019.7 gal");
  dig.kind = QuantityKind::DisplacedVolume;
  EXPECT_EQ(printResult(dig, UnitSystem::UsCustomary), "270 ft\u00B3");
  EXPECT_EQ(printResult(dig, UnitSystem::Metric), "7.6455 m\u00B3");
  EXPECT_EQ(printSi(7.5, QuantityKind::SolidVolume), "7.5 m\u00B3");
}

TEST(CalculationPrint, WritesSiAsTheFormulasTakeIt) {
  EXPECT_EQ(printSi(1600.2543, QuantityKind::Length), "1600.254 m");
  EXPECT_EQ(printSi(9.812345678, QuantityKind::HeadOfWater), "9.812346 m");
  EXPECT_EQ(printSi(0.00126, QuantityKind::Flow), "0.00126 m\u00B3/s");
  EXPECT_EQ(printSi(101325, QuantityKind::Pressure), "101325 Pa");
  EXPECT_EQ(printSi(0.25, QuantityKind::Share), "0.25");
  EXPECT_EQ(printSi(0.0208, QuantityKind::Slope), "0.0208");
  EXPECT_EQ(printSi(293.15, QuantityKind::Temperature), "293.15 K");
  EXPECT_EQ(printSi(5400, QuantityKind::Time), "5400 s");
  EXPECT_EQ(printSi(4.5e-5, QuantityKind::SmallLength), "4.5e-05 m");
}

TEST(CalculationPrint, SaysWhatAnUndecidedOneNeeds) {
  Calculation c;
  c.section = "Suction";
  c.title = "Lift";
  c.formula = "h = a - b";
  c.inputs = {{"a", "port", 3.048, QuantityKind::Length, "plan"}};
  c.decided = false;
  c.needs = "water temperature";
  c.source = "definition";
  EXPECT_EQ(calculationText({c}, UnitSystem::UsCustomary),
            "Suction\n=======\n\nLift: cannot be decided: needs water temperature\n  h = a - b\n"
            "  a = 10 ft  port [plan]\n  source: definition\n");
}

} // namespace
} // namespace sump
