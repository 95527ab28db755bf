// Baffles and manways put in, moved and taken out. Expected values are worked out by hand from the
// sizes beside them.

#include "core/plan/edits_vaults.h"

#include "core/exchange/plan_file.h"
#include "core/plan/consistency.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

namespace sump {

namespace {

/// 4.4 m outside, 4 m inside from -2 to 2, 2 m wide inside, one baffle of 0.2 m in its middle:
/// chambers from -2 to -0.1 and from 0.1 to 2.
Plan twoChambers() {
  Vault vault;
  vault.id = "V-1";
  vault.length = metres(4.4);
  vault.width = metres(2.4);
  vault.wall = vault.lidThickness = vault.floorThickness = metres(0.2);
  vault.insideHeight = metres(1.5);
  vault.centre = {10, 20};
  vault.angle = degrees(90); // local x is north
  vault.baffles = {{"V-1-B-1", metres(1.9), metres(0.2), {}, {}}};
  vault.manways = {{"V-1-M-1", {-1, 0}, metres(0.6), std::nullopt, false}};
  Plan plan;
  plan.vaults.append(vault);
  return plan;
}

RunEnd in(int chamber, Point2 local) {
  RunEnd end;
  end.kind = EndKind::Chamber;
  end.target = "V-1";
  end.chamber = chamber;
  end.at = local;
  end.invert = metres(1);
  return end;
}

sump::Run runOf(const char* id, Service service, RunEnd from, RunEnd to) {
  sump::Run run;
  run.id = id;
  run.service = service;
  run.pipe = "pvc-sch80";
  run.size = "6";
  run.from = std::move(from);
  run.to = std::move(to);
  return run;
}

RunEnd open(Point2 at) {
  RunEnd end;
  end.at = at;
  end.invert = metres(1);
  return end;
}

} // namespace

TEST(BaffleOffset, KeepsAnInchOfChamberOnBothSides) {
  const Vault vault = twoChambers().vaults[0];
  // In the first chamber, 1.9 m long: from 0.0254 to 1.9 - 0.0254 - 0.2.
  EXPECT_NEAR(inMetres(*baffleOffset(vault, metres(0.8), metres(0.2))), 0.8, 1e-12);
  EXPECT_NEAR(inMetres(*baffleOffset(vault, metres(-3), metres(0.2))), 0.0254, 1e-12);
  EXPECT_NEAR(inMetres(*baffleOffset(vault, metres(1.8), metres(0.2))), 1.6746, 1e-12);
  EXPECT_NEAR(inMetres(*baffleOffset(vault, metres(9), metres(0.2))), 3.7746, 1e-12);
  EXPECT_FALSE(baffleOffset(vault, metres(0.1), metres(1.9)));
}

TEST(AddBaffle, RenumbersTheChambersThatRunEndsStandIn) {
  Plan plan = twoChambers();
  plan.runs.append(runOf("WW-1", Service::Inlet, open({10, 10}), in(1, {-1.8, 0})));
  plan.runs.append(runOf("SU-1", Service::Suction, in(2, {1.5, 0}), open({10, 30})));
  plan.runs.append(runOf("VT-1", Service::Vent, in(1, {-0.95, 0.5}), open({0, 20})));
  Id made;
  // From 1.0 to 1.2 m: local -1.0 to -0.8, with the vent in its way, nearer to the first chamber.
  const Plan next = addBaffle(plan, "V-1", metres(1.0), made);
  EXPECT_TRUE(inconsistencies(next).empty());
  ASSERT_EQ(next.vaults[0].baffles.size(), 2u);
  EXPECT_EQ(next.vaults[0].baffles[0].id, made);
  EXPECT_EQ(next.vaults[0].baffles[0].thickness, metres(0.2)) << "as the one that is there";
  EXPECT_EQ(next.runs.find("WW-1")->to.chamber, 1);
  EXPECT_EQ(next.runs.find("SU-1")->from.chamber, 3);
  EXPECT_EQ(next.runs.find("VT-1")->from.chamber, 1);
  EXPECT_NEAR(next.runs.find("VT-1")->from.at.x, -1.0, 1e-12);
  EXPECT_EQ(addBaffle(plan, "none", metres(1), made), plan);
}

TEST(MoveBaffle, TakesTheInterconnectAlongAndPushesOthers) {
  Plan plan = twoChambers();
  sump::Run through = runOf("IC-1", Service::Interconnect, in(1, {-0.4, 0}), in(2, {0.4, 0}));
  through.vertices = {{{10, 20}, metres(1)}}; // in the baffle
  plan.runs.append(through);
  plan.runs.append(runOf("SU-1", Service::Suction, in(2, {0.7, 0.5}), open({10, 30})));
  // 1 m along the flow, which is north.
  const Plan next = moveBaffle(plan, "V-1-B-1", metres(2.9));
  EXPECT_TRUE(inconsistencies(next).empty());
  const sump::Run& moved = *next.runs.find("IC-1");
  EXPECT_NEAR(moved.from.at.x, 0.6, 1e-12);
  EXPECT_NEAR(moved.to.at.x, 1.4, 1e-12);
  EXPECT_NEAR(moved.vertices[0].at.x, 10, 1e-12);
  EXPECT_NEAR(moved.vertices[0].at.y, 21, 1e-12);
  // The suction's chamber now starts at local 1.1.
  EXPECT_EQ(next.runs.find("SU-1")->from.chamber, 2);
  EXPECT_NEAR(next.runs.find("SU-1")->from.at.x, 1.1, 1e-12);
  // Not past the end wall: an inch of chamber stays.
  const Plan far = moveBaffle(plan, "V-1-B-1", metres(99));
  EXPECT_NEAR(inMetres(far.vaults[0].baffles[0].offset), 4 - 0.0254 - 0.2, 1e-12);
  EXPECT_TRUE(inconsistencies(far).empty());
  EXPECT_EQ(moveBaffle(plan, "V-1-M-1", metres(1)), plan);
}

TEST(EraseBaffle, JoinsTheChambersAndDropsTheInterconnectBetweenThem) {
  Plan plan = twoChambers();
  plan.runs.append(runOf("IC-1", Service::Interconnect, in(1, {-0.4, 0}), in(2, {0.4, 0})));
  plan.runs.append(runOf("SU-1", Service::Suction, in(2, {1.5, 0}), open({10, 30})));
  const Plan next = eraseBaffle(plan, "V-1-B-1");
  EXPECT_TRUE(inconsistencies(next).empty());
  EXPECT_EQ(chamberCount(next.vaults[0]), 1);
  EXPECT_EQ(next.runs.find("IC-1"), nullptr);
  EXPECT_EQ(next.runs.find("SU-1")->from.chamber, 1);
  EXPECT_EQ(next.runs.find("SU-1")->from.at, (Point2{1.5, 0}));
}

TEST(Manways, StayWithinTheInsideFaces) {
  const Plan plan = twoChambers();
  Id made;
  // 24 in = 0.6096 m: its middle reaches to 2 - 0.3048 along and 1 - 0.3048 across.
  const Plan added = addManway(plan, "V-1", {1.9, -5}, made);
  ASSERT_EQ(added.vaults[0].manways.size(), 2u);
  EXPECT_NEAR(added.vaults[0].manways[1].at.x, 1.6952, 1e-12);
  EXPECT_NEAR(added.vaults[0].manways[1].at.y, -0.6952, 1e-12);
  EXPECT_TRUE(inconsistencies(added).empty());
  const Plan moved = moveManway(added, made, {1, 0.2});
  EXPECT_EQ(moved.vaults[0].manways[1].at, (Point2{1, 0.2}));
  const Plan gone = eraseManway(moved, made);
  EXPECT_EQ(gone, plan);
}

TEST(EraseManway, LeavesTheEductorsRunWithoutItsMount) {
  const Plan plan = readPlanFile(sampleFile("transit-depot"));
  Id manway;
  for (const sump::Run& run : plan.runs) {
    if (run.eductor) manway = run.eductor->manway;
  }
  ASSERT_FALSE(manway.empty());
  const Plan next = eraseManway(plan, manway);
  EXPECT_TRUE(inconsistencies(next).empty());
  for (const sump::Run& run : next.runs)
    EXPECT_FALSE(run.eductor) << run.id;
}

TEST(VaultHolding, FindsTheVaultUnderAPlace) {
  const Plan plan = twoChambers();
  ASSERT_NE(vaultHolding(plan, {10.5, 22}), nullptr);
  EXPECT_EQ(vaultHolding(plan, {12, 20}), nullptr) << "it is 2.4 m wide, standing northward";
}

// Every baffle of the samples dragged to either side and taken out leaves a plan.
TEST(MoveBaffle, GivesPlansFromTheSamples) {
  const Plan plan = readPlanFile(sampleFile("transit-depot"));
  int tried = 0;
  for (const Vault& vault : plan.vaults) {
    for (const Baffle& baffle : vault.baffles) {
      for (double by : {-5.0, -0.5, -0.05, 0.05, 0.5, 5.0}) {
        const Plan next = moveBaffle(plan, baffle.id, baffle.offset + metres(by));
        EXPECT_TRUE(inconsistencies(next).empty()) << baffle.id << " by " << by;
        EXPECT_FALSE(next == plan);
        ++tried;
      }
      EXPECT_TRUE(inconsistencies(eraseBaffle(plan, baffle.id)).empty()) << baffle.id;
    }
  }
  EXPECT_GE(tried, 12);
}

} // namespace sump
