#include "core/units/temperature.h"

#include <gtest/gtest.h>

namespace sump {

TEST(Temperature, TakesBothScalesAndTheProjectsOwn) {
  // 68 F = 20 C = 293.15 K exactly, by the definitions of the scales.
  for (const char* text : {"68 F", "68\u00B0F", "68 \u00B0 f", "20 C", "20,0 C", "293.15 K"}) {
    const auto parsed = parseTemperature(text, UnitSystem::Metric);
    ASSERT_TRUE(parsed) << text << ": " << parsed.error;
    EXPECT_NEAR(inCelsius(*parsed.value), 20, 1e-9) << text;
  }
  EXPECT_NEAR(inFahrenheit(*parseTemperature("50", UnitSystem::UsCustomary).value), 50, 1e-9);
  EXPECT_NEAR(inCelsius(*parseTemperature("-5", UnitSystem::Metric).value), -5, 1e-9);
}

TEST(Temperature, RefusesWhatIsNone) {
  for (const char* text : {"", "warm", "20 X", "20 C F", "-300 C", "1 2 3"})
    EXPECT_FALSE(parseTemperature(text, UnitSystem::Metric)) << text;
}

TEST(Temperature, PrintsAndReadsBack) {
  EXPECT_EQ(printTemperature(celsius(20), UnitSystem::UsCustomary), "68 \u00B0F");
  EXPECT_EQ(printTemperature(celsius(12.5), UnitSystem::Metric), "12.5 \u00B0C");
  const auto back = parseTemperature("12.5 \u00B0C", UnitSystem::Metric);
  ASSERT_TRUE(back);
  EXPECT_NEAR(back.value->value(), celsius(12.5).value(), 1e-9);
}

} // namespace sump
