// What the chambers do, by hand on the depot sample and as it must be.

#include "core/exchange/plan_file.h"
#include "core/study/settling.h"
#include "core/study/water_air.h"
#include "tests/support/places.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

Plan depot() {
  return readPlanFile(sampleFile("transit-depot"));
}

// By hand: a chamber is 1.6002 x 1.524 m = 2.438705 m2; water 29.6418 - 28.4226 = 1.2192 m; less
// 0.2032 sludge and 0.0508 oil 0.9652 m. 39 gpm = 0.00246052 m3/s into the first chamber:
// 2.438705 x 0.9652 = 2.353838 m3, / 0.00246052 = 956.6 s; 0.00246052 / 2.438705 = 0.00100894 m/s;
// 0.00246052 / (1.524 x 0.9652) = 0.00167272 m/s.
TEST(Duty, FirstChamberByHand) {
  const ChamberDuty duty = *studyOf(depot()).train.duty("V1", 1);
  EXPECT_NEAR(inMetres(*duty.activeDepth), 0.9652, 1e-6);
  EXPECT_NEAR(duty.activeVolume->value(), 2.353838, 1e-5);
  EXPECT_NEAR(duty.detention->value(), 956.6, 0.1);
  EXPECT_NEAR(duty.overflowRate->value(), 0.00100894, 1e-8);
  EXPECT_NEAR(duty.forward->value(), 0.00167272, 1e-7);
}

// ST-5, "3.3 Sedimentation" (scribd.com/document/582780741): t = V/Q; 2.4 ML a day for 3 h is
// 300 m3. Here the definition on the study's own numbers.
TEST(Duty, DetentionIsVolumeOverFlow) {
  EXPECT_NEAR((cubicMetres(300) / cubicMetresPerSecond(2400.0 / 86400)).value(), 3 * 3600, 1e-9);
  for (const ChamberDuty& duty : studyOf(depot()).train.chambers) {
    EXPECT_NEAR((*duty.detention * *duty.throughflow).value(), duty.activeVolume->value(), 1e-9);
  }
}

TEST(Duty, RecirculationLoadsTheChambersFromItsOwnOn) {
  const TrainStudy train = studyOf(depot()).train;
  EXPECT_NEAR(inGallonsPerMinute(*train.chambers[0].throughflow), 39, 0.01);
  for (std::size_t i : {1u, 2u, 3u})
    EXPECT_NEAR(inGallonsPerMinute(*train.chambers[i].throughflow), 47, 0.01);
}

TEST(Duty, WhatIsKeptSettlesAtTheRateOverTheShareThatCounts) {
  const ChamberDuty duty = *studyOf(depot()).train.duty("V1", 1);
  const Temperature t = celsius(30);
  const Settling grit{kilogramsPerCubicMetre(2650), *waterDensity(t), *waterViscosity(t)};
  EXPECT_NEAR(settlingVelocity(*duty.particle, grit) / (2.0 * *duty.overflowRate), 1, 1e-9);
  const Settling oil{kilogramsPerCubicMetre(880), *waterDensity(t), *waterViscosity(t)};
  const Velocity rise = settlingVelocity(*duty.droplet, oil);
  const double factor = *turbulenceFactor((*duty.forward / rise).value());
  EXPECT_NEAR(rise / (factor * *duty.overflowRate), 1, 1e-6);
}

TEST(Duty, WhatIsKeptDownTheTrainNeverGrows) {
  const TrainStudy train = studyOf(depot()).train;
  for (std::size_t i = 0; i < train.chambers.size(); ++i) {
    const ChamberDuty& duty = train.chambers[i];
    EXPECT_LE(*duty.particleSoFar, *duty.particle);
    EXPECT_LE(*duty.dropletSoFar, *duty.droplet);
    if (i > 0) {
      EXPECT_LE(*duty.particleSoFar, *train.chambers[i - 1].particleSoFar);
    }
  }
}

TEST(Duty, ColdWaterKeepsLess) {
  Plan cold = depot();
  cold.basis.water.temperature = celsius(5);
  const Length warm = *studyOf(depot()).train.chambers[0].particle;
  EXPECT_GT(*studyOf(cold).train.chambers[0].particle, warm);
}

// By hand: vehicles 56 x 0.001415842 + 12 x 0.002265348 = 0.1064713 m3, x 0.82 = 0.0873065 m3 a
// day. Solids: 0.82 x 0.8 / 500 x (56 x 0.416395 + 12 x 0.567812) = 0.03953: less.
TEST(Duty, SludgeOfADayIsTheLargerOfBothReckonings) {
  Plan plan = depot();
  EXPECT_NEAR(studyOf(plan).train.sludgePerDay->value(), 0.0873065, 1e-6);
  for (VehicleTraffic& vehicle : plan.basis.demand.vehicles)
    vehicle.sediment.reset();
  EXPECT_NEAR(studyOf(plan).train.sludgePerDay->value(), 0.03953, 2e-5);
}

// Dallas, 25 % rule: 0.25 x 1.2192 - 0.0508 = 0.254 m over 2.438705 m2 / 0.0873065 = 7.095 days.
TEST(Duty, PumpOutAtAQuarterOfTheDepth) {
  const TrainStudy train = studyOf(depot()).train;
  EXPECT_NEAR(train.pumpOutFirst->value() / 86400, 7.095, 0.001);
  EXPECT_NEAR(train.pumpOutTrain->value() / train.pumpOutFirst->value(), 4, 1e-6);
  EXPECT_EQ(*train.chambers[0].sludgeFull, *train.pumpOutFirst);
}

// By hand: 4 x 2.438705 x 1.2192 =
// 11.8931 m3 over 0.000504722 m3/s = 6.545 h.
TEST(Duty, Turnover) {
  EXPECT_NEAR(studyOf(depot()).train.turnover->value() / 3600, 6.545, 0.001);
}

TEST(Duty, MissingInputsAreNamed) {
  const auto duty = [](auto change) {
    Plan plan = depot();
    change(plan.basis);
    return *studyOf(plan).train.duty("V1", 1);
  };
  const ChamberDuty noTemperature = duty([](Basis& b) { b.water.temperature.reset(); });
  EXPECT_EQ(noTemperature.particle.needs, Needs{"water temperature"});
  EXPECT_TRUE(noTemperature.detention);
  const ChamberDuty noSludge = duty([](Basis& b) { b.water.sludgeDepth.reset(); });
  EXPECT_EQ(noSludge.detention.needs, Needs{"sludge allowance"});
  EXPECT_TRUE(noSludge.overflowRate) << "needs no depth";
  const ChamberDuty noOil = duty([](Basis& b) { b.water.oilDepth.reset(); });
  EXPECT_EQ(noOil.sludgeFull.needs, Needs{"oil allowance"});
  const ChamberDuty noDemand = duty([](Basis& b) { b.demand = {}; });
  EXPECT_FALSE(noDemand.detention);
  EXPECT_FALSE(noDemand.sludgeFull);
}

TEST(Duty, AllowancesThatFillTheVaultLeaveNoDetention) {
  Plan plan = depot();
  plan.basis.water.sludgeDepth = metres(2);
  const ChamberDuty duty = *studyOf(plan).train.duty("V1", 1);
  EXPECT_EQ(duty.activeDepth->value(), 0);
  EXPECT_EQ(duty.detention->value(), 0);
  EXPECT_FALSE(duty.forward);
  EXPECT_FALSE(duty.particle);
}

} // namespace
} // namespace sump::test
