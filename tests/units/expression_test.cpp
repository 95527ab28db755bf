// Simple sums in number fields.

#include "core/units/expression.h"

#include <gtest/gtest.h>

#include <random>
#include <string>

namespace sump {

namespace {

constexpr auto kUs = UnitSystem::UsCustomary;
constexpr auto kMetric = UnitSystem::Metric;

double feetOf(const char* text) {
  const Parsed<Length> parsed = evaluateLength(text, kUs);
  EXPECT_TRUE(parsed) << text << ": " << parsed.error;
  return parsed ? inFeet(*parsed.value) : -1e9;
}

double metresOf(const char* text) {
  const Parsed<Length> parsed = evaluateLength(text, kMetric);
  EXPECT_TRUE(parsed) << text << ": " << parsed.error;
  return parsed ? inMetres(*parsed.value) : -1e9;
}

std::string errorOf(const std::string& text) {
  const Parsed<Length> parsed = evaluateLength(text, kUs);
  EXPECT_FALSE(parsed) << text;
  return parsed.error;
}

} // namespace

// Expected values worked out by hand.
TEST(Expression, AddsAndMultipliesLengths) {
  EXPECT_NEAR(feetOf("3' 6\" + 2*4\""), 3.5 + 8.0 / 12, 1e-12);
  EXPECT_NEAR(feetOf("12'-6 1/2\" + 1/2\""), 12 + 7.0 / 12, 1e-12);
  EXPECT_NEAR(feetOf("12'/2"), 6, 1e-12);
  EXPECT_NEAR(feetOf("3*(2' + 6\")"), 7.5, 1e-12);
  EXPECT_NEAR(feetOf("1 m + 1 ft"), 1 / 0.3048 + 1, 1e-12);
  EXPECT_NEAR(metresOf("(1.2+0.4)/2"), 0.8, 1e-12);
  EXPECT_NEAR(metresOf("10 m - 250 mm"), 9.75, 1e-12);
}

TEST(Expression, TakesDecimalCommaAndSigns) {
  EXPECT_NEAR(metresOf("1,2 + 0,4"), 1.6, 1e-12);
  EXPECT_NEAR(metresOf("-1,5 + 2"), 0.5, 1e-12);
  EXPECT_NEAR(metresOf("2 \u00D7 1,5 m \u00F7 3"), 1.0, 1e-12);
  EXPECT_NEAR(metresOf("3 \u2212 1"), 2, 1e-12);
  EXPECT_NEAR(metresOf("-(1+1)"), -2, 1e-12);
  EXPECT_NEAR(metresOf("5--2"), 7, 1e-12);
}

// `12' - 6"` is how drawings write twelve feet six.
TEST(Expression, AMinusSubtractsWhereItCannotBePartOfAValue) {
  EXPECT_NEAR(feetOf("12'-6\""), 12.5, 1e-12);
  EXPECT_NEAR(feetOf("12' - 6\""), 12.5, 1e-12);
  EXPECT_NEAR(feetOf("12' - 0'-6\""), 11.5, 1e-12);
  EXPECT_NEAR(feetOf("12'-6\"-1'"), 11.5, 1e-12);
  EXPECT_NEAR(feetOf("10'-3'"), 7, 1e-12);
  EXPECT_NEAR(feetOf("5 ft - 3 ft"), 2, 1e-12);
  EXPECT_NEAR(feetOf("6-1/2"), 6.5, 1e-12) << "a mixed number, as parseLength reads it";
  EXPECT_NEAR(feetOf("6 - 1/2"), 5.5, 1e-12);
  EXPECT_NEAR(feetOf("10-3"), 7, 1e-12);
}

TEST(Expression, BareNumbersTakeTheProjectsUnitOnlyInSums) {
  EXPECT_NEAR(feetOf("3' + 2"), 5, 1e-12);
  EXPECT_NEAR(feetOf("2*3"), 6, 1e-12);
  EXPECT_NEAR(feetOf("2*6\""), 1, 1e-12);
  EXPECT_NEAR(metresOf("3 ft * 2 + 1"), 6 * 0.3048 + 1, 1e-12);
}

TEST(Expression, SaysWhatIsWrong) {
  EXPECT_NE(errorOf("3' * 2'").find("two values that have units"), std::string::npos);
  EXPECT_NE(errorOf("3'/0 + 1").find("divides by 0"), std::string::npos);
  EXPECT_NE(errorOf("3'/(1-1)").find("divides by 0"), std::string::npos);
  EXPECT_NE(errorOf("(3'").find("not closed"), std::string::npos);
  EXPECT_NE(errorOf("3' + ").find("value should follow"), std::string::npos);
  EXPECT_NE(errorOf("3' + x").find("'x'"), std::string::npos);
  EXPECT_NE(errorOf("3') + 1").find("should end"), std::string::npos);
  EXPECT_NE(errorOf("6 / 2'").find("bare number"), std::string::npos);
  for (const char* text : {"3' * 2'", "(3'", "six inches", "", "   ", "3 +* 4"}) {
    EXPECT_NE(errorOf(text).find("type it like"), std::string::npos) << errorOf(text);
  }
  EXPECT_EQ(errorOf("six inches"), parseLength("six inches", kUs).error);
}

TEST(Expression, HostileTextsEndSoon) {
  errorOf(std::string(100'000, '('));
  errorOf(std::string(150, '('));
  errorOf(std::string(150, '-'));
  std::string ones = "1";
  while (ones.size() < 100'000)
    ones += "-1";
  errorOf(ones);
}

// Whatever the parser alone reads is read alike, and no text is read by chance.
TEST(Expression, AgreesWithTheParserOnSingleValues) {
  for (const char* text : {"12'-6 1/2\"", "12.54'", "150 in", "-1'-3\"", "3.81 m", "3810 mm",
                           "5,280 ft", "0,125", "1/4", "6 1/2\""}) {
    for (UnitSystem units : {kUs, kMetric}) {
      EXPECT_EQ(inMetres(*evaluateLength(text, units).value),
                inMetres(*parseLength(text, units).value))
          << text;
    }
  }
  EXPECT_NEAR(inGallonsPerMinute(*evaluateFlow("45 gpm + 15", kUs).value), 60, 1e-9);
  EXPECT_NEAR(inGallons(*evaluateVolume("2*1,500 gal", kUs).value), 3000, 1e-9);
  EXPECT_NEAR(inPsi(*evaluatePressure("40+20", kUs).value), 60, 1e-9);
  EXPECT_NEAR(inPounds(*evaluateMass("2*6,000 lb", kUs).value), 12000, 1e-9);
  EXPECT_NEAR(evaluateMass("5,5 t + 200", kMetric).value->value(), 5700, 1e-9);
  EXPECT_NEAR(*evaluateSlope("1/4 in/ft", kUs).value, 1.0 / 48, 1e-12);
  EXPECT_NEAR(*evaluateSlope("1:50", kMetric).value, 0.02, 1e-12);
  EXPECT_NEAR(*evaluateSlope("2*1 %", kMetric).value, 0.02, 1e-12);
  EXPECT_NEAR(inDegrees(*evaluateAngle("90 - 22.5").value), 67.5, 1e-9);
  EXPECT_NEAR(inDegrees(*evaluateAngle("180/8").value), 22.5, 1e-9);
}

TEST(Expression, CountsAreWhole) {
  EXPECT_EQ(*evaluateWhole("2*4 + 1").value, 9);
  EXPECT_FALSE(evaluateWhole("1/2"));
  EXPECT_FALSE(evaluateWhole("1e99"));
  EXPECT_FALSE(evaluateWhole("3 ft"));
  EXPECT_NEAR(*evaluateNumber("-2,5*2").value, -5, 1e-12);
}

// Random sums of feet against plain arithmetic.
TEST(Expression, RandomSumsComeOutAsArithmeticSays) {
  std::mt19937 rng(7);
  const auto whole = [&rng](int low, int high) {
    return std::uniform_int_distribution<int>(low, high)(rng);
  };
  for (int i = 0; i < 2000; ++i) {
    std::string text;
    double expected = 0;
    for (int k = whole(1, 6); k > 0; --k) {
      const int feet = whole(0, 40), inch = whole(0, 11), times = whole(1, 5);
      const bool minus = !text.empty() && whole(0, 1) == 1;
      if (!text.empty()) text += minus ? " - " : "+";
      text +=
          std::to_string(times) + "*" + std::to_string(feet) + "'-" + std::to_string(inch) + "\"";
      expected += (minus ? -1 : 1) * times * (feet + inch / 12.0);
    }
    EXPECT_NEAR(feetOf(text.c_str()), expected, 1e-9) << text;
  }
}

} // namespace sump
