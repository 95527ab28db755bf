// The report of the wiring study: the study's own numbers, to be followed by hand.

#include "core/study/context.h"
#include "tests/study/report_support.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

/// A conduit 40 ft east and 30 ft north, 2 ft under level ground, that ends in a sweep up.
Plan conduitPlan() {
  Plan plan;
  plan.site.groundDefault = feet(100);
  sump::Run run =
      makeRun("PC", Service::Power, "pvc-conduit-sch40", "1", freeEnd(ft(0, 0), feet(97.9)),
              freeEnd(ft(40, 30), feet(97.9), EndFitting::ElbowUp), {{ft(40, 0), std::nullopt}});
  run.conductors = {{"8", 3, CircuitKind::Power}, {"14", 2, CircuitKind::Class2}};
  plan.runs.append(std::move(run));
  return plan;
}

std::vector<Calculation> wiringReported(const Plan& plan) {
  return wiringCalculations(plan, studyOf(plan));
}

TEST(WiringReport, FillFollowsFromTheAreas) {
  const auto all = wiringReported(conduitPlan());
  const Calculation& fill = calculation(all, "wiring.fill", "PC");
  EXPECT_NEAR(fill.result, inputOf(fill, "A_w") / inputOf(fill, "A_i"), 1e-12);
  EXPECT_NEAR(inputOf(fill, "f_max"), 0.40, 1e-12);
}

TEST(WiringReport, TurnsAddUp) {
  Plan plan = conduitPlan();
  const auto sum = [](const Calculation& c) {
    double turns = 0;
    for (const CalculationInput& in : c.inputs)
      turns += in.symbol == "a" ? in.value : 0;
    return turns;
  };
  const auto whole = wiringReported(plan);
  const Calculation& one = calculation(whole, "wiring.bends.1", "PC");
  EXPECT_NEAR(one.result, kPi, 1e-9) << "a corner and a sweep";
  EXPECT_NEAR(sum(one), one.result, 1e-9);
  sump::Run run = plan.runs[0];
  run.parts = {part("PB", PartKind::PullBox, 1, 0.5)};
  plan.runs.put(run);
  const auto split = wiringReported(plan);
  for (const char* id : {"wiring.bends.1", "wiring.bends.2"}) {
    const Calculation& half = calculation(split, id, "PC");
    EXPECT_NEAR(half.result, kPi / 2, 1e-9) << id;
    EXPECT_NEAR(sum(half), half.result, 1e-9) << id;
  }
}

TEST(WiringReport, CoverIsGroundLessTopOfTheConduit) {
  const Plan plan = conduitPlan();
  const Study study = studyOf(plan);
  const auto all = wiringCalculations(plan, study);
  const Calculation& cover = calculation(all, "wiring.cover", "PC");
  EXPECT_NEAR(cover.result, inputOf(cover, "z_g") - inputOf(cover, "z_t"), 1e-12);
  // 2.1 ft less the bore and one wall of 1 in Sch 40 (1.029 in inside, 1.315 in outside).
  EXPECT_NEAR(cover.result / kMetresPerFoot, 2.1 - (1.029 + 1.315) / 2 / 12, 1e-9);
  EXPECT_EQ(findCalculation(all, "wiring.cover-traffic", "PC"), nullptr);
  Plan driven = plan;
  driven.pavements.append({"P", "Drive", {ft(10, -5), ft(20, -5), ft(20, 5), ft(10, 5)}, true});
  EXPECT_NEAR(calculation(wiringReported(driven), "wiring.cover-traffic", "PC").result,
              cover.result, 1e-9);
}

TEST(WiringReport, UnknownLevelsAndGroundAreSaid) {
  Plan plan = conduitPlan();
  plan.site.groundDefault.reset();
  EXPECT_EQ(calculation(wiringReported(plan), "wiring.cover", "PC").needs, "ground levels");
  sump::Run run = plan.runs[0];
  run.from.invert.reset();
  plan.runs.put(run);
  const auto all = wiringReported(plan);
  EXPECT_EQ(calculation(all, "wiring.cover", "PC").needs, "levels of the run PC");
  EXPECT_EQ(calculation(all, "wiring.bends.1", "PC").needs, "levels of the run PC");
}

TEST(WiringReport, CircuitsThatMixAreCounted) {
  Plan plan = conduitPlan();
  const auto mixed = wiringReported(plan);
  const Calculation& both = calculation(mixed, "wiring.separation", "PC");
  EXPECT_EQ(both.result, std::min(inputOf(both, "P"), inputOf(both, "C")));
  EXPECT_EQ(both.result, 1);
  sump::Run run = plan.runs[0];
  run.conductors = {{"8", 3, CircuitKind::Power}};
  plan.runs.put(run);
  EXPECT_EQ(calculation(wiringReported(plan), "wiring.separation", "PC").result, 0);
  plan.basis.wiring.signalCircuits = {{"S", "wash", SignalKind::Dc24, "PC"}};
  EXPECT_EQ(calculation(wiringReported(plan), "wiring.separation", "PC").result, 1);
  run.conductors.clear();
  plan.runs.put(run);
  plan.basis.wiring = {};
  EXPECT_EQ(calculation(wiringReported(plan), "wiring.separation", "PC").needs, "conductors of PC");
}

TEST(WiringReport, WorkingSpaceAndDisconnect) {
  Plan plan;
  EquipmentRoom room;
  room.id = "ER";
  room.length = feet(10);
  room.width = feet(8);
  room.floor = feet(100);
  room.panel = RoomBox{ft(4, 0), feet(2), feet(0.5), feet(6)};
  room.skid = RoomBox{ft(3, 2), feet(4), feet(2), feet(4)};
  plan.rooms.append(room);
  plan.basis.wiring.supplies = {{"S1", "", SupplyKind::Motor3Phase, 208, 120, "", ft(5, 3)}};
  const auto all = wiringReported(plan);
  EXPECT_NEAR(calculation(all, "wiring.depth-needed", "ER").result, 3 * kMetresPerFoot, 1e-9);
  const Calculation& depth = calculation(all, "wiring.depth-clear", "ER");
  EXPECT_NEAR(depth.result, 1.5 * kMetresPerFoot, 1e-9);
  EXPECT_NEAR(inputOf(depth, "d"), 3 * kMetresPerFoot, 1e-9);
  EXPECT_TRUE(hasStep(depth, "the equipment skid"));
  EXPECT_NEAR(inputOf(calculation(all, "wiring.width-clear", "ER"), "w"), 2.5 * kMetresPerFoot,
              1e-9);
  const Calculation& way = calculation(all, "wiring.disconnect", "S1");
  EXPECT_NEAR(way.result, 2.75 * kMetresPerFoot, 1e-9) << "to the middle of the panel";
  EXPECT_TRUE(hasStep(way, "in sight"));
  plan.basis.wiring.supplies[0].voltsToGround.reset();
  plan.basis.wiring.supplies[0].disconnect.reset();
  const auto open = wiringReported(plan);
  EXPECT_EQ(calculation(open, "wiring.depth-needed", "ER").needs,
            "voltage to ground of every supply");
  EXPECT_EQ(calculation(open, "wiring.disconnect", "S1").needs, "place of the disconnect of S1");
}

} // namespace
} // namespace sump::test
