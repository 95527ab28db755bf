// Power given to the water.

#include "core/study/water_power.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

HydraulicsStudy lifting(Flow flow, Length head) {
  HydraulicsStudy study;
  study.pumpFlow = flow;
  study.pumpHead = head;
  study.water.density = kilogramsPerCubicMetre(1000);
  return study;
}

// The trade's water horsepower, gpm x ft / 3960, is for water of 62.4 lb/ft3.
TEST(WaterPower, IsTheTradesWaterHorsepower) {
  HydraulicsStudy study = lifting(gallonsPerMinute(39.6), feet(100));
  study.water.density = kilogramsPerCubicMetre(62.4 * kKilogramsPerPound / 0.028316846592);
  EXPECT_NEAR(waterPower(study)->value() / kWattsPerHorsepower, 1, 1e-3);
  EXPECT_EQ(printPower(*waterPower(study), UnitSystem::UsCustomary), "1.00 hp");
}

// 1 m3/s of 1000 kg/m3 up 1 m takes 9.80665 kW.
TEST(WaterPower, FollowsFromFlowHeadAndDensity) {
  const auto power = waterPower(lifting(cubicMetresPerSecond(1), metres(1)));
  EXPECT_NEAR(power->value(), 9806.65, 1e-9);
  EXPECT_EQ(printPower(*power, UnitSystem::Metric), "9.81 kW");
}

TEST(WaterPower, SaysWhatItNeeds) {
  HydraulicsStudy study = lifting(cubicMetresPerSecond(1), metres(1));
  study.pumpHead = undecided<Length>({"pump curve at the peak flow"});
  EXPECT_EQ(needsText(waterPower(study).needs), "pump curve at the peak flow");
}

} // namespace
} // namespace sump
