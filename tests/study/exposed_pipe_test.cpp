// Pipe in the open in an equipment room and the spacing of its supports.

#include "core/study/exposed_pipe.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

/// A room of 10 x 10 ft, its floor at 100 ft.
Plan roomPlan() {
  Plan plan;
  EquipmentRoom room;
  room.id = "R";
  room.length = room.width = feet(10);
  room.floor = feet(100);
  plan.rooms.put(room);
  plan.basis.water.temperature = fahrenheit(70);
  return plan;
}

std::vector<ExposedPipe> exposed(const Plan& plan) {
  return exposedPipes(plan, studyOf(plan), builtinSupplies());
}

// From 4 ft outside along 3 ft up and 6 ft inside; 2 in pipe at 80 F: 6.5 ft by the trade table,
// 4 ft by code (supplies.json); upright 10 ft by code.
TEST(ExposedPipe, OnlyWhatStandsInTheRoomCounts) {
  Plan plan = roomPlan();
  plan.runs.append(makeRun("P", Service::Product, "pvc-sch80", "2", freeEnd(ft(-4, 5), feet(101)),
                           freeEnd(ft(6, 5), feet(104)), {{ft(6, 5), feet(101)}}));
  const auto found = exposed(plan);
  ASSERT_EQ(found.size(), 2u);
  EXPECT_FALSE(found[0].all.vertical);
  EXPECT_NEAR(inFeet(found[0].all.length), 6, 1e-9);
  EXPECT_NEAR(inFeet(*found[0].spacing), 4, 1e-9);
  EXPECT_TRUE(found[1].all.vertical);
  EXPECT_NEAR(inFeet(found[1].all.length), 3, 1e-9);
  EXPECT_NEAR(inFeet(*found[1].spacing), 10, 1e-9);
}

// Under the floor it lies in the ground.
TEST(ExposedPipe, WhatLiesUnderTheFloorIsNotInTheOpen) {
  Plan plan = roomPlan();
  plan.runs.append(makeRun("P", Service::Product, "pvc-sch80", "2", freeEnd(ft(1, 5), feet(97)),
                           freeEnd(ft(9, 5), feet(97))));
  EXPECT_TRUE(exposed(plan).empty());
}

TEST(ExposedPipe, LegsOfOneSizeAndWayAddUp) {
  Plan plan = roomPlan();
  plan.runs.append(makeRun("P", Service::Product, "pvc-sch80", "1", freeEnd(ft(1, 1), feet(103)),
                           freeEnd(ft(8, 6), feet(103)), {{ft(8, 1), feet(103)}}));
  const auto found = exposed(plan);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(inFeet(found[0].all.length), 12, 1e-9);
  EXPECT_NEAR(inFeet(*found[0].spacing), 3, 1e-9);
}

// NEC table 352.30, from memory: 1 in each 3 ft, to 2 in each 5 ft, however warm the water.
TEST(ExposedPipe, ConduitGoesByTheElectricalCode) {
  Plan plan = roomPlan();
  plan.basis.water.temperature.reset();
  plan.runs.append(makeRun("C", Service::Power, "pvc-conduit-sch80", "1-1/2",
                           freeEnd(ft(1, 1), feet(103)), freeEnd(ft(8, 1), feet(103))));
  plan.runs.append(makeRun("P", Service::Product, "pvc-sch80", "1", freeEnd(ft(1, 3), feet(103)),
                           freeEnd(ft(8, 3), feet(103))));
  const auto found = exposed(plan);
  ASSERT_EQ(found.size(), 2u);
  EXPECT_NEAR(inFeet(*found[0].spacing), 5, 1e-9);
  EXPECT_EQ(needsText(found[1].spacing.needs), "water temperature");
}

/// All of it, whatever its way and size, in places of one kind.
std::pair<double, int> inFeetAndSupports(const std::vector<ExposedPipe>& found, ExposedIn where) {
  std::pair<double, int> sum;
  for (const ExposedPipe& pipe : found) {
    if (pipe.all.where != where) continue;
    sum.first += inFeet(pipe.all.length);
    sum.second += *pipe.supports;
  }
  return sum;
}

// A building's floor from x 10 to 30 ft at 100 ft, ground at 99 ft; the line comes up at x 5 ft,
// goes 30 ft along at 103 ft, 20 ft of it inside, and ends upright at 108 ft.
TEST(ExposedPipe, InBuildingsAndAboveTheGround) {
  Plan plan;
  plan.basis.water.temperature = fahrenheit(70);
  plan.site.groundDefault = feet(99);
  plan.buildings.append(
      {"B", "", {ft(10, 0), ft(30, 0), ft(30, 20), ft(10, 20)}, feet(100), std::nullopt});
  plan.runs.append(makeRun("P", Service::Product, "pvc-sch80", "2", freeEnd(ft(5, 5), feet(96)),
                           freeEnd(ft(35, 5), feet(108)),
                           {{ft(5, 5), feet(103)}, {ft(35, 5), feet(103)}}));
  const auto found = exposed(plan);
  // 20 ft by the code's 4 ft.
  EXPECT_NEAR(inFeetAndSupports(found, ExposedIn::Building).first, 20, 1e-6);
  EXPECT_EQ(inFeetAndSupports(found, ExposedIn::Building).second, 5);
  // 4 ft up, 5 ft and 5 ft along, 5 ft up: one for each upright leg, three for 10 ft along.
  EXPECT_NEAR(inFeetAndSupports(found, ExposedIn::Air).first, 19, 1e-6);
  EXPECT_EQ(inFeetAndSupports(found, ExposedIn::Air).second, 1 + 3 + 1);
}

// The riser's opening is 2 ft across about x 2.875 ft: 0.575 ft of the level pipe lie in it, held
// by the connector in its wall; 2 ft upright stand in riser and lid, 2 ft in the vault under it.
TEST(ExposedPipe, InAManwaysRiserItIsInTheOpen) {
  Plan plan;
  plan.basis.water.temperature = fahrenheit(70);
  plan.site.groundDefault = feet(98);
  Vault vault = twoChamberVault("V", {0, 0}, feet(90));
  vault.manways = {{"M", ft(2.875, 0), feet(2), feet(98), false}};
  plan.vaults.append(vault);
  plan.runs.append(makeRun("P", Service::Recirculation, "pvc-sch80", "1",
                           freeEnd(ft(10, 0), feet(97)), inChamber("V", 2, ft(3.3, 0), feet(93)),
                           {{ft(3.3, 0), feet(97)}}));
  const auto found = exposed(plan);
  ASSERT_EQ(found.size(), 2u);
  EXPECT_FALSE(found[0].all.vertical);
  EXPECT_NEAR(inFeet(found[0].all.length), 0.575, 1e-6);
  EXPECT_EQ(*found[0].supports, 0);
  EXPECT_TRUE(found[1].all.vertical);
  EXPECT_NEAR(inFeet(found[1].all.length), 4, 1e-6);
  EXPECT_EQ(inFeetAndSupports(found, ExposedIn::Vault).second, 1);
}

// As before, with the eductor's bracket at the foot: by code 10 ft apart, it carries all of the 4
// ft.
TEST(ExposedPipe, ABracketCarriesTheEductorsPipe) {
  Plan plan;
  plan.basis.water.temperature = fahrenheit(70);
  plan.site.groundDefault = feet(98);
  Vault vault = twoChamberVault("V", {0, 0}, feet(90));
  vault.manways = {{"M", ft(2.875, 0), feet(2), feet(98), false}};
  plan.vaults.append(vault);
  sump::Run run =
      makeRun("P", Service::Recirculation, "pvc-sch80", "1", freeEnd(ft(10, 0), feet(97)),
              inChamber("V", 2, ft(3.3, 0), feet(93)), {{ft(3.3, 0), feet(97)}});
  run.eductor.emplace();
  run.eductor->manway = "M";
  plan.runs.append(run);
  const auto found = exposed(plan);
  ASSERT_EQ(found.size(), 2u);
  EXPECT_FALSE(found[0].all.bracket); // the level leg in the riser
  EXPECT_TRUE(found[1].all.bracket);
  EXPECT_EQ(*found[1].supports, 0);
}

// Inside the vault from x -5.25 to 5.25 ft; its wall's connector carries 2 ft of the 4 ft spacing.
TEST(ExposedPipe, InVaultsConnectorsCarryTheirShare) {
  struct {
    double end; ///< of the pipe, ft
    double length;
    int supports;
  } const cases[] = {{-3.3, 1.95, 0}, {-3.1, 2.15, 1}, {0.7, 5.95, 1}, {0.8, 6.05, 2}};
  for (const auto& c : cases) {
    Plan plan;
    plan.basis.water.temperature = fahrenheit(70);
    plan.runs.append(makeRun("P", Service::Suction, "pvc-sch80", "2", freeEnd(ft(-20, 1), feet(93)),
                             freeEnd(ft(c.end, 1), feet(93))));
    Vault vault = twoChamberVault("V", {}, feet(90));
    vault.baffles.clear();
    plan.vaults.append(vault);
    const auto vaults = inFeetAndSupports(exposed(plan), ExposedIn::Vault);
    EXPECT_NEAR(vaults.first, c.length, 1e-6) << c.end;
    EXPECT_EQ(vaults.second, c.supports) << c.end;
  }
}

TEST(ExposedPipe, AnUprightDropInAVaultHasASupport) {
  Plan plan;
  plan.vaults.append(twoChamberVault("V", {}, feet(90)));
  plan.runs.append(makeRun("P", Service::Suction, "pvc-sch80", "2", freeEnd(ft(2, 1), feet(91)),
                           freeEnd(ft(2, 1), feet(94.5))));
  const auto vaults = inFeetAndSupports(exposed(plan), ExposedIn::Vault);
  EXPECT_NEAR(vaults.first, 3.5, 1e-6);
  EXPECT_EQ(vaults.second, 1);
}

} // namespace
} // namespace sump::test
