// Demand, pressure runs and suction: worked examples, the samples by hand, and what must hold.

#include "core/study/hydraulics_parts.h"
#include "tests/rules/depot.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sump {
namespace {

using testing::depot;

HydraulicsStudy hydraulics(const Plan& plan) {
  const Catalog& catalog = builtinCatalog();
  return study(plan, catalog, catalog.limits.with(plan.limits)).hydraulics;
}

double available(double surface, double lift, double vapour, double loss) {
  return inFeet(npshAvailable(feet(surface), feet(lift), feet(vapour), feet(loss)));
}

// NP-1, NP-1b: example 10.11, climate-policy-watcher.org "Calculating NPSHA"; 0.01 ft.
TEST(Npsh, Np1LiftAndFlooded) {
  EXPECT_NEAR(available(34, 20, 0.6, 2.4), 11, 0.01);
  EXPECT_NEAR(available(34, -15, 0.6, 2.4), 46, 0.01);
}
// NP-2: Crane TP-410 example 7-32: 5 psig on the surface, 62.364 lb/ft3; 13.89 ft, needs 1.3 x 20.
TEST(Npsh, Np2LiftUnderPressure) {
  const double foot = 144 / 62.364; // of water in a psi
  const double got = available((14.696 + 5) * foot, 25, 0.256 * foot, 6);
  EXPECT_NEAR(got, 13.89, 0.02);
  EXPECT_NEAR(builtinCatalog().limits.number("suction.npsh-ratio") * 20, 26, 1e-9);
}
// NP-3b: civilengineeringhandbook.tk; 35.061 ft.
TEST(Npsh, Np3bFlooded) {
  EXPECT_NEAR(available(33.9, -6.0, 0.839, 4.0), 35.061, 0.001);
}

// By hand: two bars of 12 gpm and one of 10, fresh rinse 6; 15 % lost, 5 gpm other inflow.
TEST(Demand, DepotByHand) {
  const DemandStudy demand = hydraulics(depot()).demand;
  EXPECT_NEAR(inGallonsPerMinute(*demand.peakProduct), 34, 1e-3);
  EXPECT_NEAR(inGallonsPerMinute(*demand.peakFresh), 6, 1e-3);
  EXPECT_NEAR(inGallonsPerMinute(*demand.averageProduct), 24 * 0.8 + 10 * 0.6, 1e-3);
  EXPECT_NEAR(inGallonsPerMinute(*demand.peakToVaults), 40 * 0.85 + 5, 1e-3);
  EXPECT_EQ(*demand.vehiclesPerDay, 68);
  EXPECT_NEAR(inGallons(*demand.dailyWash), 56 * 110 + 12 * 150, 0.01);
  EXPECT_NEAR(inGallons(*demand.dailyFresh), 7960 * 1.2 / 26.4, 0.01);
}

/// Half of the last leg is 1-1/2 in then: the water is faster there, and no length is lost.
TEST(Losses, CountAReducerOnTheLastLeg) {
  Plan plan = depot();
  sump::Run product = *plan.runs.find("PW-1");
  const int last = static_cast<int>(product.vertices.size());
  product.parts.push_back({"R", PartKind::Reducer, last, 0.5, "1-1/2", {}});
  plan.runs.put(product);
  const HydraulicsStudy before = hydraulics(depot()), after = hydraulics(plan);
  const PressureRun &as = *before.run("PW-1"), &is = *after.run("PW-1");
  ASSERT_TRUE(is.loss) << needsText(is.loss.needs);
  const Length bore = builtinCatalog().pipeSize(product.pipe, "1-1/2")->inside;
  EXPECT_NEAR((is.loss->fastest * (kPi / 4 * bore * bore) / *is.flow).value(), 1, 1e-9);
  ASSERT_EQ(is.loss->pipe.size(), 2u);
  EXPECT_NEAR(inMetres(is.loss->pipe[0].length + is.loss->pipe[1].length),
              inMetres(as.loss->pipe.at(0).length), 1e-9);
  EXPECT_GT(inMetres(is.loss->pipe[1].length), 0.1);
  EXPECT_GT(is.loss->pipeSum, as.loss->pipeSum);
}

TEST(Demand, TheDayBalances) {
  for (double lost : {0.0, 0.04, 0.15, 0.6, 1.0}) {
    Plan plan = depot();
    plan.basis.demand.lostFraction = lost;
    const DemandStudy d = hydraulics(plan).demand;
    EXPECT_NEAR((*d.dailyFresh + *d.dailyMakeUp).value(),
                (*d.dailyWash * lost + *d.dailySurplus).value(), 1e-9);
  }
}

TEST(Demand, SaysWhatIsMissing) {
  Plan plan = depot();
  plan.basis.demand.simultaneity.reset();
  plan.basis.demand.vehicles.front().perDay.reset();
  const DemandStudy demand = hydraulics(plan).demand;
  EXPECT_EQ(demand.peakToVaults.needs, Needs{"simultaneity of the wash devices"});
  EXPECT_EQ(demand.dailyWash.needs, Needs{"vehicles a day of Standard bus"});
  EXPECT_EQ(hydraulics(Plan{}).demand.peakProduct.needs.front(), "wash devices");
}

TEST(PumpCurve, StraightBetweenPointsAndNothingBeyond) {
  const std::vector<PumpPoint> curve = {{gallonsPerMinute(10), feet(100), feet(4)},
                                        {gallonsPerMinute(30), feet(60), feet(8)}};
  EXPECT_NEAR(inFeet(*headAt(curve, gallonsPerMinute(15))), 90, 1e-9);
  EXPECT_NEAR(inFeet(*npshRequiredAt(curve, gallonsPerMinute(15))), 5, 1e-9);
  EXPECT_FALSE(headAt(curve, gallonsPerMinute(9)));
  EXPECT_FALSE(headAt(curve, gallonsPerMinute(31)));
  EXPECT_FALSE(headAt({}, gallonsPerMinute(15)));
}

TEST(Suction, EveryMemberIsDecidedForTheSamples) {
  for (const char* name : {"transit-depot.sump", "boatyard-pad.sump"}) {
    const HydraulicsStudy study = hydraulics(readPlanFile(testing::samples() / name));
    ASSERT_EQ(study.suctions.size(), 2u);
    for (const SuctionStudy& s : study.suctions) {
      EXPECT_TRUE(s.npshRatio) << needsText(s.npshRatio.needs);
      EXPECT_TRUE(s.primingTime) << needsText(s.primingTime.needs);
      EXPECT_TRUE(s.suctionLift && s.liftLimit && s.submergence);
      EXPECT_EQ(s.variants.size(), 5u);
    }
    for (const PressureRun& run : study.runs)
      EXPECT_TRUE(run.loss) << run.run << ": " << needsText(run.loss.needs);
    EXPECT_TRUE(study.workingPoint) << needsText(study.workingPoint.needs);
    for (const DevicePressure& d : study.devices)
      EXPECT_TRUE(d.available) << needsText(d.available.needs);
  }
}

// The foot valve, 34 + 8 gpm in 2 in Sch 80 (1.913 in): v = 0.4085 Q/d2 ft/s (pump manual).
TEST(Suction, DepotByHand) {
  const HydraulicsStudy study = hydraulics(depot());
  const PressureRun& run = *study.run("SU-1");
  EXPECT_NEAR(inFeetPerSecond(run.loss->fastest), 0.4085 * 42 / (1.913 * 1.913), 0.005);
  const SuctionStudy& suction = *study.suction("SU-1");
  EXPECT_NEAR(inFeet(*suction.lowWater), inFeet(metres(28.4226 + 0.8382)), 1e-9);
  // Priming: 0.149 gal/ft of 2 in Sch 80 (recalculated from the manual's D2/24.5), and strainer.
  const double pipe = inGallons(suction.pipeVolume);
  double length = 0;
  for (const PipeLoss& row : run.loss->pipe)
    length += inFeet(row.length);
  EXPECT_NEAR(pipe, 0.1493 * length, 0.001 * pipe);
  EXPECT_NEAR(inGallons(*suction.primingVolume), pipe + 1.5, 1e-3);
}

TEST(HydraulicsProperty, MoreElbowsAndMoreFeetLoseMore) {
  const HydraulicsStudy study = hydraulics(depot());
  for (const SuctionStudy& s : study.suctions) {
    const Length drawn = *s.variants[0].loss;
    EXPECT_LT(*s.variants[1].loss, drawn) << "straight";
    EXPECT_LT(*s.variants[2].loss, drawn) << "one size up";
    EXPECT_GT(*s.variants[3].loss, drawn) << "one more elbow";
    EXPECT_GT(*s.variants[4].loss, drawn) << "one more foot";
    EXPECT_LT(*s.variants[3].npshAvailable, *s.variants[0].npshAvailable);
  }
}

TEST(HydraulicsProperty, LargerPipeNeverLosesMore) {
  for (const PressureRun& run : hydraulics(depot()).runs) {
    ASSERT_TRUE(run.sizes) << run.run;
    ASSERT_EQ(run.sizes->size(), 3u) << run.run;
    for (std::size_t i = 1; i < run.sizes->size(); ++i) {
      EXPECT_LT((*run.sizes)[i].loss, (*run.sizes)[i - 1].loss) << run.run;
      EXPECT_LT((*run.sizes)[i].fastest, (*run.sizes)[i - 1].fastest) << run.run;
    }
  }
}

TEST(HydraulicsProperty, TheSameInBothUnits) {
  Plan plan = depot();
  plan.project.units = UnitSystem::Metric;
  const HydraulicsStudy us = hydraulics(depot()), metric = hydraulics(plan);
  EXPECT_EQ(us.suctions[0].npshAvailable, metric.suctions[0].npshAvailable);
  EXPECT_EQ(us.workingPoint->product, metric.workingPoint->product);
}

TEST(WorkingPoint, PumpAndSystemMeetThere) {
  const Plan& plan = depot();
  const HydraulicsStudy study = hydraulics(plan);
  const WorkingPoint& point = *study.workingPoint;
  EXPECT_EQ(*headAt(plan.basis.pump.curve, point.pump), point.head);
  ASSERT_GE(study.systemCurve.size(), 2u);
  for (std::size_t i = 1; i < study.systemCurve.size(); ++i) {
    const SystemPoint &a = study.systemCurve[i - 1], &b = study.systemCurve[i];
    EXPECT_LT(a.head, b.head);
    if (a.flow > point.pump || b.flow < point.pump) continue;
    EXPECT_LE(a.head, point.head + metres(1e-6));
    EXPECT_GE(b.head, point.head - metres(1e-6));
  }
}

TEST(Undecided, EachMissingInputIsNamed) {
  struct Row {
    void (*spoil)(Plan&);
    const char* need;
  };
  for (const Row& row :
       {Row{[](Plan& p) { p.basis.water.temperature.reset(); }, "water temperature"},
        {[](Plan& p) { p.basis.water.altitude.reset(); }, "altitude of the site"},
        {[](Plan& p) { p.basis.water.lowLevel.reset(); }, "low-level float"},
        {[](Plan& p) { p.basis.pump.strainerLoss.reset(); }, "loss of the clean strainer"},
        {[](Plan& p) { p.basis.pump.recirculation.reset(); }, "flow of the recirculation"}}) {
    Plan plan = depot();
    row.spoil(plan);
    const SuctionStudy suction = *hydraulics(plan).suction("SU-1");
    EXPECT_FALSE(suction.npshAvailable);
    EXPECT_EQ(suction.npshAvailable.needs, Needs{row.need});
  }
  Plan plan = depot();
  plan.basis.pump.curve.clear();
  EXPECT_FALSE(hydraulics(plan).suction("SU-1")->npshRequired);
  EXPECT_EQ(hydraulics(plan).workingPoint.needs, Needs{"pump curve"});
}

} // namespace
} // namespace sump
