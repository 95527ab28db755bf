// Conversion factors against the published ones.

#include "core/units/parse.h"
#include "core/units/quantity.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sump {
namespace {

/// Published factors carry seven significant digits: half a step of the last one is the tolerance.
void expectSevenDigits(double computed, double published) {
  const double lastDigit = std::pow(10.0, std::floor(std::log10(published)) - 6);
  EXPECT_NEAR(computed, published, lastDigit / 2);
}

// NIST SP 811 (2008), appendix B.8, "factors for units listed alphabetically"; the digits are from
// memory. Bold (exact) factors of that table are compared exactly.
TEST(Quantity, ExactFactorsOfNistSp811) {
  EXPECT_DOUBLE_EQ(inMetres(feet(1)), 0.3048);   // foot to m: 3.048 E-01
  EXPECT_DOUBLE_EQ(inMetres(inches(1)), 0.0254); // inch to m: 2.54 E-02
  EXPECT_DOUBLE_EQ(parseVolume("1 L", UnitSystem::Metric).value->value(), 1e-3); // litre to m3
  EXPECT_DOUBLE_EQ(parsePressure("1 bar", UnitSystem::Metric).value->value(), 1e5);
  EXPECT_DOUBLE_EQ(inFeet(inches(12)), 1);
}

TEST(Quantity, RoundedFactorsOfNistSp811) {
  expectSevenDigits(gallons(1).value(), 3.785412e-3);          // gallon (US) to m3
  expectSevenDigits(gallonsPerMinute(1).value(), 6.309020e-5); // gallon (US) per minute to m3/s
  expectSevenDigits(psi(1).value(), 6.894757e3);               // pound-force per square inch to Pa
  expectSevenDigits(inRadians(degrees(1)), 1.745329e-2);       // degree to rad
  expectSevenDigits(parseVolume("1 ft3", UnitSystem::Metric).value->value(), 2.831685e-2);
  expectSevenDigits(parseFlow("1 m3/h", UnitSystem::Metric).value->value(), 2.777778e-4);
}

// A gallon is 231 cubic inches: NIST Handbook 44, appendix C.
TEST(Quantity, GallonIs231CubicInches) {
  EXPECT_DOUBLE_EQ(gallons(1000).value(), 231000 * std::pow(0.0254, 3));
  // 5 x 5 ft at 4 ft of water: 100 ft3 = 172,800 in3 / 231 = 748.05 gal, worked by hand.
  const Volume chamber = feet(5) * feet(5) * feet(4);
  EXPECT_NEAR(inGallons(chamber), 748.05, 0.005);
}

TEST(Quantity, ReadersUndoFactories) {
  for (double v : {-1e6, -3.25, 0.0, 1e-9, 7.0, 123456.789}) {
    EXPECT_DOUBLE_EQ(inMetres(metres(v)), v);
    EXPECT_DOUBLE_EQ(inMillimetres(millimetres(v)), v);
    EXPECT_DOUBLE_EQ(inFeet(feet(v)), v);
    EXPECT_DOUBLE_EQ(inInches(inches(v)), v);
    EXPECT_DOUBLE_EQ(inGallons(gallons(v)), v);
    EXPECT_DOUBLE_EQ(inGallonsPerMinute(gallonsPerMinute(v)), v);
    EXPECT_DOUBLE_EQ(inPsi(psi(v)), v);
    EXPECT_DOUBLE_EQ(inDegrees(degrees(v)), v);
    EXPECT_DOUBLE_EQ(inRadians(radians(v)), v);
  }
}

} // namespace
} // namespace sump
