#include "core/units/parse.h"

#include <gtest/gtest.h>

#include <clocale>
#include <optional>
#include <string>

namespace sump {
namespace {

constexpr auto us = UnitSystem::UsCustomary;
constexpr auto metric = UnitSystem::Metric;

struct Accepted {
  const char* text;
  double value; ///< in the unit named by the test
};

TEST(Parse, LengthsWithUsUnits) {
  constexpr Accepted rows[] = {
      {"12'-6 1/2\"", 150.5},
      {"12' 6.5\"", 150.5},
      {"12'6 1/2\"", 150.5},
      {"12' - 6 1/2\"", 150.5},
      {"12'-6-1/2\"", 150.5},
      {"12'-6\"", 150},
      {"12'6", 150},
      {"12'", 144},
      {"-1'-3\"", -15},
      {"-0'-3\"", -3},
      {"\u22121'-3\"", -15},
      {"6 1/2\"", 6.5},
      {"6-1/2\"", 6.5},
      {"1/2 in", 0.5},
      {"12.54'", 150.48},
      {"12.54 ft", 150.48},
      {"12,54 ft", 150.48},
      {"12 ft 6 in", 150},
      {"12 ft. 6 in.", 150},
      {"12 feet 6 inches", 150},
      {"1 FOOT 1 Inch", 13},
      {"150 in", 150},
      {"150IN", 150},
      {"  150\tin  ", 150},
      {"12\u2032-6\u00BD\u2033", 150.5},
      {"12\u2019-6 \u00BC\u201D", 150.25},
      {"6\u00BE\u2033", 6.75},
      {"\u215C in", 0.375},
      {"1\u20442 in", 0.5},
      {"12''", 12},
      {"12\u2032\u00A06\u2033", 150},
      {".5 ft", 6},
      {"5. ft", 60},
      {"0'-0\"", 0},
      {"3", 36},
      {"2 1/2", 30},
      {"3.81 m", 150},
      {"3810 mm", 150},
      {"381 cm", 150},
  };
  for (const auto& row : rows) {
    const auto length = parseLength(row.text, us);
    ASSERT_TRUE(length) << length.error;
    EXPECT_NEAR(inInches(*length.value), row.value, 1e-9) << row.text;
    EXPECT_TRUE(length.error.empty());
  }
}

TEST(Parse, LengthsWithMetricUnits) {
  constexpr Accepted rows[] = {
      {"3.81 m", 3.81}, {"3,81 m", 3.81}, {"3,810 m", 3.81}, {"3810 mm", 3.81},
      {"381cm", 3.81},  {"-0.5", -0.5},   {"0,5", 0.5},      {"3,810", 3.81},
      {"10'", 3.048},   {"1 M", 1},       {"1/2 m", 0.5},
  };
  for (const auto& row : rows) {
    const auto length = parseLength(row.text, metric);
    ASSERT_TRUE(length) << length.error;
    EXPECT_NEAR(inMetres(*length.value), row.value, 1e-12) << row.text;
  }
}

TEST(Parse, CommaBeforeThreeDigitsIsReadAsItsUnitIsWritten) {
  constexpr Accepted feetRows[] = {
      {"5,280 ft", 5280},        {"5,280", 5280},        {"5,280'-6\"", 5280.5},
      {"1,234,567 ft", 1234567}, {"1,234.5 ft", 1234.5}, {"0,125 ft", 0.125},
      {"12,5 ft", 12.5},         {"12,5000 ft", 12.5},   {"-1,000 1/2 ft", -1000.5},
  };
  for (const auto& row : feetRows) {
    const auto length = parseLength(row.text, us);
    ASSERT_TRUE(length) << length.error;
    EXPECT_NEAR(inFeet(*length.value), row.value, 1e-9) << row.text;
  }
  EXPECT_NEAR(inGallons(*parseVolume("2,992 gal", metric).value), 2992, 1e-9);
  EXPECT_NEAR(parseVolume("11,326 m3", us).value->value(), 11.326, 1e-12);
  EXPECT_NEAR(inMetres(*parseLength("1,234,567 mm", us).value), 1234.567, 1e-9);
  EXPECT_NEAR(inMetres(*parseLength("1,234.5 m", metric).value), 1234.5, 1e-9);
  EXPECT_NEAR(inDegrees(*parseAngle("22,125").value), 22.125, 1e-12);
  EXPECT_NEAR(*parseSlope("2,125 %", us).value, 0.02125, 1e-12);
}

TEST(Parse, RefusedLengthsSayWhyInOneSentence) {
  const std::string tooLarge = std::string(400, '9') + " ft";
  const char* const rows[] = {
      "",
      " ",
      "abc",
      "ft",
      "-",
      "--5",
      "+5 ft",
      "5 ft x",
      "5 gal",
      "12'-6\"x",
      "12'-12\"",
      "12'-6'",
      "12\"-6\"",
      "12'-6 1/0\"",
      "12'--6\"",
      "1/0 ft",
      "1/ ft",
      "1//2 ft",
      "1.2.3 ft",
      "1.234,5 m",
      "1,23,456 ft",
      "1,2345,6 ft",
      "1e3 ft",
      "nan",
      "inf ft",
      "NaN m",
      "0x10 ft",
      "6 - 1/2\"",
      "3 000 ft",
      "3 m 5",
      "3 m 5 mm",
      "'",
      "\"",
      ".",
      ",",
      ". ft",
      "12'-6\" 3",
      "12' 6' 3",
      "$5",
      "5 \u00B5m",
      "(5 ft)",
      "5 ft - 3 ft",
      tooLarge.c_str(),
  };
  for (const char* text : rows) {
    const auto length = parseLength(text, us);
    EXPECT_FALSE(length) << text << " gave " << inMetres(length.value.value_or(Length()));
    EXPECT_NE(length.error.find("; type it like 12'-6 1/2\""), std::string::npos) << text;
    EXPECT_EQ(length.error.find('\n'), std::string::npos);
  }
}

TEST(Parse, ErrorNamesWhatWasTypedAndWhatIsWrong) {
  EXPECT_EQ(parseVolume("12 acres", us).error,
            "'12 acres' has no unit that is known here; type it like 3000 gal, 11.4 m3 or 11400 L");
  EXPECT_EQ(parseLength("12'-14\"", us).error.substr(0, 46),
            "'12'-14\"' has 12 or more inches after the feet");
  EXPECT_NE(parseLength(std::string(400, '9'), us).error.find("is too large"), std::string::npos);
  EXPECT_NE(parseSlope("1:0." + std::string(400, '0') + "1", us).error.find("ratio of rise"),
            std::string::npos);
  EXPECT_NE(parseSlope("9:0." + std::string(309, '0') + "1", us).error.find("is too large"),
            std::string::npos);
}

TEST(Parse, ErrorForAPastedPageStaysShortAndWholeUtf8) {
  std::string page = "x";
  for (int i = 0; i < 1000; ++i)
    page += "\u00BD\u2032";
  const std::string error = parseLength(page, us).error;
  EXPECT_LT(error.size(), 200U);
  const std::size_t cut = error.find("...'");
  ASSERT_NE(cut, std::string::npos);
  const std::string kept = error.substr(1, cut - 1);
  EXPECT_TRUE(kept.ends_with("\u00BD") || kept.ends_with("\u2032")) << kept;
}

TEST(Parse, Volumes) {
  EXPECT_NEAR(inGallons(*parseVolume("3000 gal", us).value), 3000, 1e-9);
  EXPECT_NEAR(inGallons(*parseVolume("3000", us).value), 3000, 1e-9);
  EXPECT_NEAR(parseVolume("11.4", metric).value->value(), 11.4, 1e-12);
  EXPECT_NEAR(parseVolume("11.4 m\u00B3", us).value->value(), 11.4, 1e-12);
  EXPECT_NEAR(parseVolume("11400 L", us).value->value(), 11.4, 1e-12);
  EXPECT_NEAR(parseVolume("11400 litres", us).value->value(), 11.4, 1e-12);
  EXPECT_NEAR(inGallons(*parseVolume("105 ft3", us).value), 105 * 1728 / 231.0, 1e-9);
  EXPECT_FALSE(parseVolume("3000 ft", us));
  EXPECT_FALSE(parseVolume("gal", us));
}

TEST(Parse, Flows) {
  EXPECT_NEAR(inGallonsPerMinute(*parseFlow("45 gpm", metric).value), 45, 1e-12);
  EXPECT_NEAR(inGallonsPerMinute(*parseFlow("45", us).value), 45, 1e-12);
  EXPECT_NEAR(parseFlow("170", metric).value->value() * 60000, 170, 1e-9);
  EXPECT_NEAR(parseFlow("2.8 L/s", us).value->value(), 0.0028, 1e-15);
  EXPECT_NEAR(parseFlow("168 L/min", us).value->value(), 0.0028, 1e-15);
  EXPECT_NEAR(parseFlow("10 m3/h", us).value->value(), 1.0 / 360, 1e-15);
  EXPECT_NEAR(parseFlow("10 m\u00B3/h", us).value->value(), 1.0 / 360, 1e-15);
  EXPECT_FALSE(parseFlow("45 gal", us));
  EXPECT_FALSE(parseFlow("45 gpm gpm", us));
}

TEST(Parse, Pressures) {
  EXPECT_NEAR(inPsi(*parsePressure("40 psi", metric).value), 40, 1e-12);
  EXPECT_NEAR(inPsi(*parsePressure("40", us).value), 40, 1e-12);
  EXPECT_NEAR(parsePressure("280", metric).value->value(), 280e3, 1e-6);
  EXPECT_NEAR(parsePressure("280 kPa", us).value->value(), 280e3, 1e-6);
  EXPECT_NEAR(parsePressure("2.8 bar", us).value->value(), 280e3, 1e-6);
  EXPECT_NEAR(parsePressure("-5 psi", us).value->value(), -5 * kPascalsPerPsi, 1e-6);
  EXPECT_FALSE(parsePressure("92 ft", us));
}

TEST(Parse, Slopes) {
  for (const char* text : {"1/4 in/ft", "1/4\"/ft", "0.25 in/ft", "1/4", "\u00BC in/ft", "1:48"})
    EXPECT_NEAR(*parseSlope(text, us).value, 1.0 / 48, 1e-15) << text;
  for (const char* text : {"2 %", "2%", "1:50", "20 mm/m", "0.02 m/m", "0.02 ft/ft", "2"})
    EXPECT_NEAR(*parseSlope(text, metric).value, 0.02, 1e-15) << text;
  EXPECT_NEAR(*parseSlope("-1:50", us).value, -0.02, 1e-15);
  EXPECT_NEAR(*parseSlope("-2 %", us).value, -0.02, 1e-15);
  for (const char* text : {"", "1:0", "1:", ":50", "1:50:2", "1:50 %", "2 ft", "1:-50"})
    EXPECT_FALSE(parseSlope(text, us)) << text;
}

TEST(Parse, Angles) {
  EXPECT_NEAR(inDegrees(*parseAngle("45").value), 45, 1e-12);
  EXPECT_NEAR(inDegrees(*parseAngle("22 1/2").value), 22.5, 1e-12);
  EXPECT_NEAR(inDegrees(*parseAngle("22.5 deg").value), 22.5, 1e-12);
  EXPECT_NEAR(inDegrees(*parseAngle("22\u00BD\u00B0").value), 22.5, 1e-12);
  EXPECT_NEAR(inDegrees(*parseAngle("-30\u00B0").value), -30, 1e-12);
  EXPECT_NEAR(inRadians(*parseAngle("1 rad").value), 1, 1e-15);
  EXPECT_FALSE(parseAngle("45 ft"));
  EXPECT_FALSE(parseAngle("\u00B0"));
}

/// Sets a locale for one test and restores the old one.
class InLocale {
public:
  explicit InLocale(const char* name)
      : before_(std::setlocale(LC_ALL, nullptr)), set_(std::setlocale(LC_ALL, name) != nullptr) {}
  ~InLocale() { std::setlocale(LC_ALL, before_.c_str()); }
  InLocale(const InLocale&) = delete;
  InLocale& operator=(const InLocale&) = delete;
  bool set() const { return set_; }

private:
  std::string before_;
  bool set_;
};

TEST(Parse, DoesNotDependOnTheLocale) {
  int tried = 0;
  for (const char* name : {"C.UTF-8", "de_DE.UTF-8", "tr_TR.UTF-8", "en_US.UTF-8"}) {
    const InLocale locale(name);
    if (!locale.set()) continue; // not installed here
    ++tried;
    EXPECT_NEAR(inInches(*parseLength("12.5 IN", us).value), 12.5, 1e-12) << name;
    EXPECT_NEAR(inInches(*parseLength("12,5 INCHES", us).value), 12.5, 1e-12) << name;
    EXPECT_FALSE(parseLength("12.5 \u0130n", us)) << name;
  }
  EXPECT_GT(tried, 0);
}

} // namespace
} // namespace sump
