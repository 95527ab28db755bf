// The vault train: levels, balance, storage and drains, on the samples and on small plans.

#include "core/exchange/plan_file.h"
#include "core/study/circular_flow.h"
#include "tests/support/places.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace sump::test {
namespace {

Plan trainDepot() {
  return readPlanFile(sampleFile("transit-depot"));
}

Plan boatyard() {
  return readPlanFile(sampleFile("boatyard-pad"));
}

/// The depot with its drains carrying this and nothing lost.
TrainStudy withInflow(double litresPerSecond, Plan plan = trainDepot()) {
  plan.basis.demand.devices.clear();
  WashDevice device;
  device.id = "D";
  device.flow = cubicMetresPerSecond(litresPerSecond / 1000);
  plan.basis.demand.devices.push_back(device);
  plan.basis.demand.lostFraction = 0;
  plan.basis.demand.otherInflow = cubicMetresPerSecond(0);
  return studyOf(plan).train;
}

template <class T> bool lacks(const Decided<T>& result, const std::string& need) {
  return !result && std::ranges::find(result.needs, need) != result.needs.end();
}

/// What comes in goes out, at every chamber. Passages are listed in flow order.
void expectLevelBalance(const TrainLevels& levels) {
  EXPECT_NEAR((levels.inflow + levels.fromStorage).value(),
              (levels.drawn + levels.overflow).value(), 1e-12);
  const auto overflow = std::ranges::find_if(
      levels.passages, [](const PassageLevels& p) { return p.run.starts_with("OF"); });
  ASSERT_NE(overflow, levels.passages.end());
  EXPECT_NEAR(overflow->flow.value(), levels.overflow.value(), 1e-12);
}

TEST(Train, MassBalanceOfTheSamplesCloses) {
  for (const Plan& plan : {trainDepot(), boatyard()}) {
    const TrainStudy train = studyOf(plan).train;
    ASSERT_TRUE(train.pumpStopped) << needsText(train.pumpStopped.needs);
    ASSERT_TRUE(train.pumpRunning) << needsText(train.pumpRunning.needs);
    expectLevelBalance(*train.pumpStopped);
    expectLevelBalance(*train.pumpRunning);
    EXPECT_EQ(train.pumpStopped->overflow.value(), train.peakInflow->value());
  }
}

// Peak of the depot by hand: product 2 x 12 + 10 = 34 gpm, fresh 6 gpm; 0.85 x 40 + 5 = 39 gpm.
TEST(Train, PeakFlowsOfTheDepot) {
  const TrainStudy train = studyOf(trainDepot()).train;
  EXPECT_NEAR(inGallonsPerMinute(*train.peakDraw), 34, 0.01);
  EXPECT_NEAR(inGallonsPerMinute(*train.peakInflow), 39, 0.01);
  EXPECT_NEAR(inGallonsPerMinute(*train.recirculation), 8, 0.01);
}

TEST(Train, RecirculationFlowsFromItsChamberToTheSuction) {
  const TrainLevels levels = *studyOf(trainDepot()).train.pumpRunning;
  for (const PassageLevels& passage : levels.passages) {
    double gpm = 39; // inlet and first interconnect
    if (passage.run == "LK-1" || passage.run == "IC-2") gpm = 39 + 8;
    if (passage.run == "OF-1") gpm = 39 - 34;
    EXPECT_NEAR(inGallonsPerMinute(passage.flow), gpm, 0.02) << passage.run;
  }
}

TEST(Train, LevelsNeverRiseInTheDirectionOfFlow) {
  for (const Plan& plan : {trainDepot(), boatyard()}) {
    for (double q : {0.0, 0.1, 1.0, 3.0, 8.0, 20.0}) {
      const TrainLevels levels = *withInflow(q, plan).pumpStopped;
      for (std::size_t i = 0; i < levels.chambers.size(); ++i) {
        EXPECT_GE(levels.chambers[i].level, levels.chambers[i].rest - metres(1e-9));
        if (i > 0) {
          EXPECT_LE(levels.chambers[i].level, levels.chambers[i - 1].level);
        }
      }
      for (const PassageLevels& passage : levels.passages)
        EXPECT_GE(passage.upstream, passage.downstream) << passage.run;
    }
  }
}

TEST(Train, MoreFlowIsNeverALowerLevel) {
  std::vector<Length> last;
  for (double q = 0; q < 25; q += 0.5) {
    const TrainLevels levels = *withInflow(q).pumpStopped;
    std::vector<Length> now;
    for (const ChamberLevel& chamber : levels.chambers)
      now.push_back(chamber.level);
    for (std::size_t i = 0; i < last.size(); ++i)
      EXPECT_GE(now[i], last[i] - metres(1e-7)) << q;
    last = now;
  }
}

TEST(Train, WithoutFlowWaterStandsAtRest) {
  const TrainStudy still = withInflow(0);
  for (const ChamberLevel& chamber : still.pumpStopped->chambers)
    EXPECT_NEAR(inMetres(chamber.level), inMetres(chamber.rest), 1e-9);
}

// By hand: 6 in Sch 80, 5.709 in = 0.145009 m inside, A 0.0165152 m2; 20 gpm through the first
// interconnect, drowned: v 0.0764029 m/s, v2/2g 0.000297625 m. K: entry 0.78, tee through branch
// 60 fT = 0.90, elbow 30 fT = 0.45, exit 1 (fT 0.015): 3.13, 0.00093157 m. Friction over 2 ft:
// (0.013 v / R^(2/3))^2 L with R 0.0362522, R^(2/3) 0.109535: 0.00008224 x 0.6096 = 0.00005013.
TEST(Train, DrownedInterconnectByHand) {
  const double q = 20 * kCubicMetresPerGallon / 60 * 1000;
  const TrainLevels levels = *withInflow(q).pumpStopped;
  const double loss =
      inMetres(levels.chamber("V1", 1)->level) - inMetres(levels.chamber("V1", 2)->level);
  EXPECT_NEAR(loss, 0.00093157 + 0.00005013, 2e-6);
}

TEST(Train, TwoInterconnectsShareTheFlow) {
  Plan plan = trainDepot();
  sump::Run second = *plan.runs.find("IC-1");
  second.id = "IC-1B";
  second.from.at.y += 0.4;
  second.to.at.y += 0.4;
  plan.runs.put(second);
  const TrainStudy one = withInflow(4), two = withInflow(4, plan);
  double sum = 0;
  for (const PassageLevels& passage : two.pumpStopped->passages) {
    if (!passage.run.starts_with("IC-1")) continue;
    EXPECT_NEAR(passage.flow.value(), 0.002, 1e-6) << passage.run;
    sum += passage.flow.value();
  }
  EXPECT_NEAR(sum, 0.004, 1e-12);
  EXPECT_LT(two.pumpStopped->chamber("V1", 1)->level, one.pumpStopped->chamber("V1", 1)->level);
}

TEST(Train, AnOpeningUnderABaffleCarriesTheFlow) {
  Plan plan = trainDepot();
  Vault vault = *plan.vaults.find("V1");
  vault.baffles[0].bottomGap = metres(0.1);
  plan.vaults.put(vault);
  plan.runs.erase("IC-1");
  const TrainLevels levels = *withInflow(4, plan).pumpStopped;
  // v = 0.004 / (0.6 x 1.524 x 0.1) = 0.043745 m/s; v2/2g = 0.00009757 m.
  EXPECT_NEAR(inMetres(levels.chamber("V1", 1)->level) - inMetres(levels.chamber("V1", 2)->level),
              0.00009757, 1e-7);
}

TEST(Train, ABaffleThatWaterFallsOverHoldsItAtTheCrest) {
  Plan plan = trainDepot();
  Vault vault = *plan.vaults.find("V1");
  vault.baffles[0].topGap = metres(0.1); // crest at 28.4226 + 1.524 - 0.1 = 29.8466
  plan.vaults.put(vault);
  plan.runs.erase("IC-1");
  // 1.705 x 1.524 x H^1.5 = 0.004: H = 0.013334 m.
  EXPECT_NEAR(inMetres(withInflow(4, plan).pumpStopped->chamber("V1", 1)->level),
              29.8466 + 0.013334, 1e-5);
}

TEST(Train, TooMuchInflowSurchargesTheTrenchDrain) {
  const TrainLevels calm = *studyOf(trainDepot()).train.pumpStopped;
  ASSERT_EQ(calm.basins.size(), 1u);
  EXPECT_GT(calm.basins[0].freeboard.value(), 0);
  EXPECT_LT(calm.basins[0].surcharge.value(), 0);
  const TrainLevels flood = *withInflow(45).pumpStopped;
  EXPECT_LT(flood.basins[0].freeboard.value(), 0);
  EXPECT_GT(flood.basins[0].surcharge.value(), 0);
}

// By hand, from the plan: low level 28.4226 + 0.8382 = 29.2608; rest 29.6418; the link's highest
// invert 29.5656. One chamber is 1.6002 or 1.6002 m (3.3528 less baffle 0.1524, halved) x 1.524 m.
// 2 x 2.43870 x 0.3810 + 2 x 2.43870 x 0.0762 = 2.22995 m3.
TEST(Train, UsableVolumeStopsAtTheLinksInvert) {
  const TrainStudy train = studyOf(trainDepot()).train;
  EXPECT_NEAR(train.usable->value(), 2.22995, 1e-4);
  EXPECT_NEAR(train.fill->value(), 2.22995 / train.peakInflow->value(), 0.1);
  EXPECT_NEAR(train.drawDown->value(), 2.22995 / train.peakDraw->value(), 0.1);
  EXPECT_TRUE(lacks(train.drawDownNet, "a draw above the inflow: the level does not fall"));
}

// The same levels: the link holds vault 1 at its highest invert while the float's chamber falls.
// The interconnects lie lower than both and hold nothing back.
TEST(Train, LowWaterStandsAtTheLinkAndAtTheFloat) {
  const TrainStudy train = studyOf(trainDepot()).train;
  ASSERT_TRUE(train.lowWater);
  ASSERT_EQ(train.lowWater->size(), 4U);
  for (const ChamberLow& chamber : *train.lowWater)
    EXPECT_NEAR(inMetres(chamber.level), chamber.vault == "V1" ? 29.5656 : 29.2608, 1e-9);
  Plan plan = trainDepot();
  plan.basis.water.lowLevel.reset();
  EXPECT_TRUE(lacks(studyOf(plan).train.lowWater, "height of the low-level float"));
}

TEST(Train, DrawAboveTheInflowComesFromStorage) {
  Plan plan = trainDepot();
  plan.basis.demand.otherInflow = cubicMetresPerSecond(0);
  plan.basis.demand.lostFraction = 0.5;
  const TrainStudy train = studyOf(plan).train;
  EXPECT_NEAR(inGallonsPerMinute(train.pumpRunning->fromStorage), 34 - 20, 0.01);
  EXPECT_EQ(train.pumpRunning->overflow.value(), 0);
  EXPECT_NEAR(train.drawDownNet->value(), 2.22995 / gallonsPerMinute(14).value(), 2);
}

TEST(Train, EachMissingInputIsNamed) {
  const auto without = [](auto change) {
    Plan plan = trainDepot();
    change(plan);
    return studyOf(plan).train;
  };
  const TrainStudy empty = without([](Plan& p) { p.basis = {}; });
  EXPECT_FALSE(empty.pumpStopped);
  EXPECT_FALSE(empty.peakInflow);
  EXPECT_FALSE(empty.usable);
  EXPECT_FALSE(empty.sludgePerDay);
  EXPECT_FALSE(empty.gravity[0].share);
  EXPECT_TRUE(empty.gravity[0].fullFlow) << "needs no demand";
  EXPECT_FALSE(empty.highest("V1"));
  const TrainStudy noPump = without([](Plan& p) { p.basis.pump.recirculation.reset(); });
  EXPECT_TRUE(noPump.pumpStopped) << "does not depend on the pump";
  EXPECT_TRUE(lacks(noPump.pumpRunning, "flow of the recirculation"));
  EXPECT_TRUE(lacks(noPump.turnover, "flow of the recirculation"));
  const TrainStudy noFloat = without([](Plan& p) { p.basis.water.lowLevel.reset(); });
  EXPECT_TRUE(lacks(noFloat.usable, "height of the low-level float"));
  const TrainStudy noWay = without([](Plan& p) { p.runs.erase("IC-1"); });
  EXPECT_TRUE(lacks(noWay.pumpStopped, "a way on from every chamber"));
  const TrainStudy noInlet = without([](Plan& p) { p.runs.erase("WW-1"); });
  EXPECT_TRUE(lacks(noInlet.pumpStopped, "an inlet into a chamber"));
  const TrainStudy noOverflow = without([](Plan& p) { p.runs.erase("OF-1"); });
  EXPECT_TRUE(lacks(noOverflow.pumpStopped, "an overflow that every vault's water gets to"));
}

TEST(Train, ASecondWayToAnotherPlaceIsNotWorkedOut) {
  Plan plan = trainDepot();
  sump::Run early = *plan.runs.find("OF-1");
  early.id = "OF-2";
  early.from = inChamber("V1", 2, ft(4, 1), metres(29.7), EndFitting::Tee);
  plan.runs.put(early);
  EXPECT_TRUE(lacks(studyOf(plan).train.pumpStopped, "a train that does not branch"));
}

TEST(Train, HighestIsTheHigherOfBothCases) {
  const TrainStudy train = studyOf(trainDepot()).train;
  EXPECT_EQ(*train.highest("V2", 2), train.pumpStopped->chamber("V2", 2)->level);
  EXPECT_EQ(*train.highest("V1"), train.pumpStopped->chamber("V1", 1)->level);
  EXPECT_FALSE(train.highest("no such vault"));
}

TEST(Train, UnitsOfTheProjectChangeNothing) {
  Plan plan = trainDepot();
  plan.project.units =
      plan.project.units == UnitSystem::Metric ? UnitSystem::UsCustomary : UnitSystem::Metric;
  const TrainStudy a = studyOf(trainDepot()).train, b = studyOf(plan).train;
  EXPECT_EQ(a.pumpStopped->chambers[0].level, b.pumpStopped->chambers[0].level);
  EXPECT_EQ(a.usable, b.usable);
  EXPECT_EQ(a.pumpOutFirst, b.pumpOutFirst);
  EXPECT_EQ(a.chambers[0].particle, b.chambers[0].particle);
}

TEST(Train, DrainsAtThePeak) {
  const Study study = studyOf(trainDepot());
  const GravityStudy& inlet = *study.train.gravityOf("WW-1");
  EXPECT_NEAR(inInches(inlet.diameter), 5.915, 1e-6);
  EXPECT_EQ(*inlet.fullFlow, manningFlow(inlet.diameter, 1, *inlet.slope, 0.013));
  EXPECT_NEAR(*inlet.largestFlow / *inlet.fullFlow, 1.0757, 1e-4); // hydraulics notes 5c
  EXPECT_NEAR(*inlet.share, *inlet.peak / *inlet.fullFlow, 1e-12);
  const auto section = circularSection(inlet.diameter, (*inlet.depth / inlet.diameter).value());
  EXPECT_NEAR((section.area * *inlet.velocity / *inlet.peak).value(), 1, 1e-9);
  EXPECT_EQ(study.train.gravity.size(), 2u);
}

/// The flush of 20 gpm ends in the bay's trench drain, where the inlet of 39 gpm begins. What it
/// brings was drawn from the train, so that the overflow carries none of it.
TEST(Train, AnInletCarriesTheFlushThatJoinsIt) {
  Plan plan = trainDepot();
  const TrainStudy train = studyOf(plan).train;
  EXPECT_NEAR(inGallonsPerMinute(*train.gravityOf("WW-1")->peak), 39 + 20, 0.01);
  EXPECT_NEAR(inGallonsPerMinute(*train.gravityOf("OF-1")->peak), 39, 0.01);
  plan.basis.pump.underflow.reset();
  EXPECT_TRUE(lacks(studyOf(plan).train.gravityOf("WW-1")->peak, "flow of the underflow"));
  plan.runs.erase("UF-1");
  EXPECT_NEAR(inGallonsPerMinute(*studyOf(plan).train.gravityOf("WW-1")->peak), 39, 0.01);
}

TEST(Train, AReducerOnTheLastLegOfADrainIsItsSmallestBore) {
  Plan plan = trainDepot();
  sump::Run inlet = *plan.runs.find("WW-1");
  const int last = static_cast<int>(inlet.vertices.size());
  inlet.parts.push_back({"R", PartKind::Reducer, last, 0.5, "4", {}});
  plan.runs.put(inlet);
  const PipeSize* small = builtinCatalog().pipeSize(inlet.pipe, "4");
  const TrainStudy train = studyOf(plan).train, before = studyOf(trainDepot()).train;
  EXPECT_EQ(train.gravityOf("WW-1")->diameter, small->inside);
  EXPECT_LT(*train.gravityOf("WW-1")->fullFlow, *before.gravityOf("WW-1")->fullFlow);
  const auto energyBeforeLastLeg = [](const TrainStudy& of) {
    const auto passage = std::ranges::find(of.pumpStopped->passages, "WW-1", &PassageLevels::run);
    return passage->points.at(passage->points.size() - 2).energy;
  };
  EXPECT_GT(energyBeforeLastLeg(train), energyBeforeLastLeg(before));
}

TEST(Train, AnOverloadedDrainHasNoDepthButAVelocity) {
  const TrainStudy train = withInflow(40);
  const GravityStudy& inlet = *train.gravityOf("WW-1");
  EXPECT_GT(*inlet.share, 1);
  EXPECT_TRUE(lacks(inlet.depth, "a larger pipe or more fall: it runs full"));
  const Area bore = circularSection(inlet.diameter, 1).area;
  const Flow flush = *trainDepot().basis.pump.underflow; // joins it in the bay's trench drain
  EXPECT_NEAR((*inlet.velocity * bore).value(), 0.040 + flush.value(), 1e-9);
}

TEST(Train, ADrainThatRisesHasNoCapacity) {
  Plan plan = trainDepot();
  sump::Run inlet = *plan.runs.find("WW-1");
  inlet.to.invert = metres(30.3);
  plan.runs.put(inlet);
  EXPECT_TRUE(
      lacks(studyOf(plan).train.gravityOf("WW-1")->fullFlow, "a run that falls all the way"));
}

} // namespace
} // namespace sump::test
