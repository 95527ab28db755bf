// The report of the digs: trenches, collar, footings and ways out, to be followed by hand.

#include "core/exchange/plan_file.h"
#include "core/study/context.h"
#include "tests/study/report_support.h"
#include "tests/support/places.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

namespace sump::test {
namespace {

/// One vault in type B soil, 7.5 ft deep, sloped; a building 9 ft off with a footing at 95 ft; a
/// run 100 ft long in a trench of its own.
Plan digPlan() {
  Plan plan;
  plan.site.groundDefault = feet(96.5);
  plan.site.groundwater = feet(96);
  plan.basis.earth.soil = SoilClass::StableRock;
  plan.basis.earth.protection = ProtectiveSystem::Sloped;
  plan.basis.earth.soilHold = SoilHold::Column;
  Vault vault = twoChamberVault("V1", {}, feet(90));
  vault.manways = {{"V1-M1", ft(-3, 0), inches(24), std::nullopt, false}};
  plan.vaults.append(std::move(vault));
  plan.buildings.append({"B1", "", {ft(-20, 9), ft(20, 9), ft(20, 30), ft(-20, 30)}, {}, feet(95)});
  plan.runs.append(makeRun("R", Service::Overflow, "pvc-sch80", "6", freeEnd(ft(0, -60), feet(92)),
                           freeEnd(ft(100, -60), feet(92))));
  return plan;
}

std::vector<Calculation> reported(const Plan& plan) {
  return earthCalculations(plan, studyOf(plan));
}

TEST(DigReport, TrenchOfEvenDepthByHand) {
  const auto all = reported(digPlan());
  const Calculation& dug = calculation(all, "trench.volume", "R");
  // Stable rock: upright sides, m = 0.
  EXPECT_EQ(inputOf(dug, "m"), 0);
  EXPECT_NEAR(dug.result, inputOf(dug, "L") * inputOf(dug, "w") * inputOf(dug, "h"), 1e-9);
  const Calculation& bed = calculation(all, "trench.bedding", "R");
  EXPECT_NEAR(bed.result, inputOf(dug, "L") * inputOf(dug, "w") * inputOf(bed, "t"), 1e-9);
  const Calculation& back = calculation(all, "trench.backfill", "R");
  const double outside = 6.625 * kMetresPerInch;
  const double pipe = inputOf(dug, "L") * kPi / 4 * outside * outside;
  EXPECT_NEAR(back.result,
              inputOf(back, "V_d") - inputOf(back, "V_b") - inputOf(back, "V_z") - pipe, 1e-9);
  EXPECT_NEAR(calculation(all, "trench.width", "R").result, 22.625 * kMetresPerInch, 1e-9);
  // 100 ft x 22.625 in x (4.5 ft + (6.625 - 5.709) / 2 in + 4 in) = 918.5 ft3.
  EXPECT_TRUE(hasStep(dug, "that is 34.0 yd\u00B3 or 26.0 m\u00B3"));
}

TEST(DigReport, PitByHand) {
  const auto all = reported(digPlan());
  const Calculation& depth = calculation(all, "dig.depth", "V1");
  EXPECT_NEAR(depth.result, inputOf(depth, "z_g") - inputOf(depth, "z_b"), 1e-9);
  const Calculation& bed = calculation(all, "dig.bedding", "V1");
  // 11.5 x 6 ft vault with 2 ft of working space all round.
  EXPECT_NEAR(bed.result, 15.5 * 10 * kMetresPerFoot * kMetresPerFoot * inputOf(bed, "t"), 1e-9);
  // A 24 in manway with walls of 3 in, 1 ft from the lid up to the grade.
  EXPECT_NEAR(calculation(all, "dig.risers", "V1").result,
              kPi / 4 * 2.5 * 2.5 * std::pow(kMetresPerFoot, 3), 1e-9);
  const Calculation& back = calculation(all, "dig.backfill", "V1");
  const double vault = 11.5 * 6 * 6 * std::pow(kMetresPerFoot, 3);
  EXPECT_NEAR(back.result,
              inputOf(back, "V_d") - inputOf(back, "V_b") - inputOf(back, "V_r") - vault, 1e-9);
  EXPECT_TRUE(hasStep(calculation(all, "dig.deepest"), "a protective system is needed") == false)
      << "stable rock needs none by depth";
}

TEST(DigReport, FootingByHand) {
  const auto all = reported(digPlan());
  const Calculation& footing = calculation(all, "dig.footing.B1", "V1");
  EXPECT_NEAR(footing.result, 95 * kMetresPerFoot - inputOf(footing, "d") - inputOf(footing, "z_t"),
              1e-9);
  EXPECT_NEAR(footing.result, 2 * kMetresPerFoot, 1e-6);
  Plan unknown = digPlan();
  Building building = unknown.buildings[0];
  building.footing.reset();
  unknown.buildings.put(building);
  EXPECT_EQ(calculation(reported(unknown), "dig.footing.B1", "V1").needs, "footing level of B1");
}

TEST(DigReport, WaysOutByHand) {
  Plan plan = digPlan();
  const auto open = reported(plan);
  const Calculation& count = calculation(open, "dig.ladders", "V1");
  EXPECT_EQ(count.result, std::ceil(15.5 * kMetresPerFoot / (2 * inputOf(count, "r"))));
  EXPECT_EQ(inputOf(count, "n"), 0);
  EXPECT_EQ(calculation(open, "dig.ladder-way", "V1").needs, "a ladder in the dig");
  // 100 ft of trench, 4.87 ft deep: a ladder for each 50 ft begun.
  const Calculation& trench = calculation(open, "trench.ladders", "R");
  EXPECT_EQ(trench.result, 2);
  plan.basis.earth.ladders = {ft(0, 0)};
  const auto placed = reported(plan);
  EXPECT_NEAR(calculation(placed, "dig.ladder-way", "V1").result,
              std::hypot(7.75, 5) * kMetresPerFoot, 1e-9);
}

TEST(DigReport, ClashesAreNamed) {
  Plan plan = digPlan();
  plan.basis.earth.soil = SoilClass::TypeC;
  const auto all = reported(plan);
  const Calculation& clash = calculation(all, "dig.clashes", "V1");
  EXPECT_EQ(clash.result, 1);
  EXPECT_TRUE(hasStep(clash, "building B1"));
  EXPECT_EQ(calculation(all, "trench.clashes", "R").result, 0);
  EXPECT_TRUE(hasStep(calculation(all, "dig.deepest"), "a protective system is needed"));
}

TEST(DigReport, WeightCollarAndLidByHand) {
  const Plan plan = digPlan();
  const Study study = studyOf(plan);
  const auto all = earthCalculations(plan, study);
  const Calculation& weight = calculation(all, "vault.weight", "V1");
  EXPECT_NEAR(weight.result, inputOf(weight, "V_c") * inputOf(weight, "rho_c"), 1e-6);
  const Calculation& lift = calculation(all, "vault.lift", "V1");
  EXPECT_NEAR(lift.result,
              std::max(inputOf(lift, "W_l"), inputOf(lift, "W") - inputOf(lift, "W_l")), 1e-9);
  const Calculation& collar = calculation(all, "buoyancy.collar", "V1");
  EXPECT_EQ(collar.result, study.earth.buoyancy[0].collar->value());
  const Calculation& earth = calculation(all, "lid.earth", "V1");
  EXPECT_NEAR(earth.result, inputOf(earth, "rho") * kGravity * inputOf(earth, "H"), 1e-9);
  EXPECT_EQ(findCalculation(all, "lid.live", "V1"), nullptr) << "nothing drives over it";
  EXPECT_EQ(calculation(all, "lid.traffic", "V1").result, 0);
}

TEST(DigReport, IsCompleteAndUniqueOnTheSamples) {
  for (const char* name : {"transit-depot", "boatyard-pad"}) {
    const Plan plan = readPlanFile(sampleFile(name));
    const Study study = studyOf(plan);
    std::set<std::pair<std::string, Id>> seen;
    for (const Calculation& c : calculations(plan, study)) {
      EXPECT_TRUE(seen.emplace(c.id, c.object).second) << c.id << " " << c.object;
      EXPECT_FALSE(c.section.empty() || c.title.empty() || c.formula.empty() || c.source.empty())
          << c.id;
      EXPECT_EQ(c.decided, c.needs.empty()) << c.id;
      EXPECT_EQ(c.needs.find("not worked out"), std::string::npos) << c.id;
    }
    EXPECT_GE(seen.size(), 150u) << name;
    EXPECT_EQ(std::ranges::count_if(seen, [](auto& k) { return k.first == "trench.volume"; }),
              static_cast<std::ptrdiff_t>(study.earth.trenches.size()));
  }
}

} // namespace
} // namespace sump::test
