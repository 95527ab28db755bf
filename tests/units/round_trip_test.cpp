// What is printed can be typed again: parse(print(x)) lies within half of the printed resolution
// of x, for random values and for values next to a carry.

#include "core/units/parse.h"
#include "core/units/print.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <string>

namespace sump {
namespace {

constexpr int kTrials = 20000;
constexpr auto kInFeet = UnitSystem::UsCustomary;
constexpr auto kInMetres = UnitSystem::Metric;

/// Feet and inches that tempt the carry: a hair round whole inches, feet and 1/16 in boundaries.
Length nearCarry(std::mt19937_64& random) {
  std::uniform_int_distribution<int> thirtySeconds(-400000, 400000);
  std::uniform_real_distribution<double> hair(-1e-6, 1e-6);
  const int step = random() % 2 == 0 ? 32 : 1;
  const double count = static_cast<double>(thirtySeconds(random) / step) * step;
  return inches(count / 32 + hair(random));
}

Length anyLength(std::mt19937_64& random) {
  if (random() % 2 == 0) return nearCarry(random);
  return metres(std::uniform_real_distribution<double>(-2000, 2000)(random));
}

/// Room for the rounding of the doubles themselves.
double slack(double value) {
  return 1e-12 + std::abs(value) * 1e-13;
}

template <class Print, class Parse>
void roundTrip(const char* what, double value, double resolution, Print print, Parse parse) {
  const std::string text = print(value);
  const auto back = parse(text);
  ASSERT_TRUE(back) << what << ": " << back.error;
  EXPECT_LE(std::abs(back.value->value() - value), resolution / 2 + slack(value))
      << what << ": " << text;
}

TEST(RoundTrip, Lengths) {
  std::mt19937_64 random(20240601);
  constexpr double inch = kMetresPerInch;
  for (int i = 0; i < kTrials && !::testing::Test::HasFatalFailure(); ++i) {
    const double v = inMetres(anyLength(random));
    const auto parseUs = [](const std::string& text) { return parseLength(text, kInFeet); };
    const auto parseMetric = [](const std::string& text) { return parseLength(text, kInMetres); };
    const int denominator = 1 << (i % 7); // 1 to 64
    roundTrip(
        "feet-inches", v, inch / denominator,
        [&](double x) { return feetInches(metres(x), denominator); }, parseMetric);
    roundTrip(
        "inches", v, inch / denominator,
        [&](double x) { return inchesOnly(metres(x), denominator); }, parseMetric);
    roundTrip(
        "length", v, inch / 16, [](double x) { return printLength(metres(x), kInFeet); }, parseUs);
    roundTrip(
        "length", v, 1e-3, [](double x) { return printLength(metres(x), kInMetres); }, parseUs);
    roundTrip(
        "short", v, inch / 8, [](double x) { return printShort(metres(x), kInFeet); }, parseUs);
    roundTrip(
        "short", v, 1e-3, [](double x) { return printShort(metres(x), kInMetres); }, parseUs);
    roundTrip(
        "elevation", v, kMetresPerFoot / 100,
        [](double x) { return printElevation(metres(x), kInFeet); }, parseUs);
    roundTrip(
        "elevation", v, 1e-3, [](double x) { return printElevation(metres(x), kInMetres); },
        parseMetric);
    roundTrip(
        "run", v, kMetresPerFoot / 10, [](double x) { return printRunLength(metres(x), kInFeet); },
        parseMetric);
    roundTrip(
        "run", v, 1e-2, [](double x) { return printRunLength(metres(x), kInMetres); }, parseUs);
  }
}

TEST(RoundTrip, PrintedFeetInchesAreWellFormed) {
  std::mt19937_64 random(7);
  for (int i = 0; i < kTrials; ++i) {
    const Length length = nearCarry(random);
    const std::string text = feetInches(length);
    const std::size_t hyphen = text.find("'-");
    ASSERT_NE(hyphen, std::string::npos) << text;
    const std::string inch = text.substr(hyphen + 2);
    ASSERT_LT(std::stoi(inch), 12) << text; // never 12 inches
    ASSERT_EQ(inch.find("16/16"), std::string::npos) << text;
    ASSERT_FALSE(text.starts_with("-0'-0\"")) << text;
  }
}

TEST(RoundTrip, VolumesFlowsPressures) {
  std::mt19937_64 random(20240602);
  std::uniform_real_distribution<double> size(-5, 5);
  for (int i = 0; i < kTrials && !::testing::Test::HasFatalFailure(); ++i) {
    const double v = (random() % 2 == 0 ? 1 : -1) * std::pow(10.0, size(random));
    const auto volume = [](const std::string& text) { return parseVolume(text, kInMetres); };
    const auto flow = [](const std::string& text) { return parseFlow(text, kInFeet); };
    const auto pressure = [](const std::string& text) { return parsePressure(text, kInFeet); };
    roundTrip(
        "volume", v, kCubicMetresPerGallon,
        [](double x) { return printVolume(cubicMetres(x), kInFeet); }, volume);
    roundTrip(
        "volume", v, 0.01, [](double x) { return printVolume(cubicMetres(x), kInMetres); }, volume);
    roundTrip(
        "flow", v / 1000, gallonsPerMinute(0.1).value(),
        [](double x) { return printFlow(cubicMetresPerSecond(x), kInFeet); }, flow);
    roundTrip(
        "flow", v / 1000, 1e-4 / 60,
        [](double x) { return printFlow(cubicMetresPerSecond(x), kInMetres); }, flow);
    roundTrip(
        "pressure", v * 1e4, psi(0.1).value(),
        [](double x) { return printPressure(pascals(x), kInFeet); }, pressure);
    roundTrip(
        "pressure", v * 1e4, 1e3, [](double x) { return printPressure(pascals(x), kInMetres); },
        pressure);
  }
}

TEST(RoundTrip, SlopesAndAngles) {
  std::mt19937_64 random(20240603);
  std::uniform_real_distribution<double> any(-1, 1);
  for (int i = 0; i < kTrials; ++i) {
    const double slope = any(random);
    const auto printed = parseSlope(printSlope(slope, kInFeet), kInMetres);
    ASSERT_TRUE(printed) << printed.error;
    // 1/16 in steps within 2 % (never more than half a step), else hundredths of an inch.
    const double sixteenth = 1.0 / 16 / 12, hundredth = 0.01 / 12;
    const double allowed =
        std::max(hundredth / 2, std::min(0.021 * std::abs(slope), sixteenth / 2));
    EXPECT_NEAR(*printed.value, slope, allowed + 1e-12) << printSlope(slope, kInFeet);
    const auto percent = parseSlope(printSlope(slope, kInMetres), kInFeet);
    ASSERT_TRUE(percent) << percent.error;
    EXPECT_NEAR(*percent.value, slope, 0.0001 / 2 + 1e-12);
    const Angle angle = degrees(360 * any(random));
    const auto back = parseAngle(printAngle(angle));
    ASSERT_TRUE(back) << back.error;
    EXPECT_NEAR(inDegrees(*back.value), inDegrees(angle), 0.05 + 1e-9);
  }
}

} // namespace
} // namespace sump
