// Conduit fill, turns, separation, working space.

#include "core/study/conduit_fill.h"
#include "core/study/disconnect_space.h"
#include "core/study/wiring_space.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

sump::Run conduit(std::vector<Conductor> conductors) {
  sump::Run run = makeRun("C", Service::Power, "pvc-conduit-sch40", "1",
                          freeEnd(ft(0, 0), feet(90)), freeEnd(ft(40, 0), feet(90)));
  run.conductors = std::move(conductors);
  return run;
}

ConduitStudy studied(const sump::Run& run, WiringBasis wiring = {}) {
  Plan plan;
  plan.basis.wiring = std::move(wiring);
  plan.runs.append(run);
  return studyOf(plan).wiring.conduits.at(0);
}

TEST(Wiring, FillByTheTables) {
  // NEC chapter 9: tables 4 (0.832 in2) and 5 (8 AWG 0.0366 in2), from memory; limits of table 1.
  const ConduitStudy nine = studied(conduit({{"8", 9, CircuitKind::Power}}));
  EXPECT_NEAR(*nine.fill, 9 * 0.0366 / 0.832, 1e-9);
  EXPECT_NEAR(nine.fillLimit, 0.40, 1e-12);
  EXPECT_LE(*nine.fill, nine.fillLimit);
  const ConduitStudy ten = studied(conduit({{"8", 10, CircuitKind::Power}}));
  EXPECT_GT(*ten.fill, ten.fillLimit);
  EXPECT_NEAR(fillLimit(1, builtinCatalog().limits), 0.53, 1e-12);
  EXPECT_NEAR(fillLimit(2, builtinCatalog().limits), 0.31, 1e-12);
}

TEST(Wiring, UnknownConductorsAreUndecided) {
  EXPECT_EQ(needsText(studied(conduit({})).fill.needs), "conductors of C");
  EXPECT_FALSE(studied(conduit({{"250", 3, CircuitKind::Power}})).fill);
}

TEST(Wiring, TurnsAreSplitAtPullBoxes) {
  sump::Run run = conduit({});
  run.to = freeEnd(ft(40, 30), feet(90), EndFitting::ElbowUp);
  run.vertices = {{ft(20, 0), {}}, {ft(20, 30), {}}};
  EXPECT_NEAR(studied(run).mostDegrees, 270, 1e-6); // two corners and a sweep
  run.parts = {part("PB", PartKind::PullBox, 1, 0.5)};
  const ConduitStudy split = studied(run);
  ASSERT_EQ(split.stretches.size(), 2u);
  EXPECT_NEAR(split.stretches[0].degrees, 90, 1e-6);
  EXPECT_NEAR(split.stretches[1].degrees, 180, 1e-6);
}

// The graded leg after it makes the sweep's turn a degree or so short of its 90.
TEST(Wiring, TurnsCountAsTheirFittingsMakeThem) {
  sump::Run run = conduit({});
  run.to = freeEnd(ft(40, 30), feet(90));
  run.vertices = {{ft(40, 0.5), {}}};
  Plan plan;
  plan.runs.append(run);
  const Study study = studyOf(plan);
  ASSERT_EQ(study.runs[0].bends.size(), 1u);
  EXPECT_NEAR(study.runs[0].bends[0].degrees, 89.28, 0.01);
  EXPECT_NEAR(study.wiring.conduits.at(0).mostDegrees, 90, 1e-9);
}

TEST(Wiring, Class2WithPowerIsMixed) {
  // NEC 725.136(A).
  EXPECT_FALSE(studied(conduit({{"12", 3, CircuitKind::Power}})).mixed());
  WiringBasis wiring;
  wiring.signalCircuits = {{"S", "wash", SignalKind::Dc24, "C"}};
  EXPECT_TRUE(studied(conduit({{"12", 3, CircuitKind::Power}}), wiring).mixed());
  wiring.signalCircuits[0].kind = SignalKind::Ac110;
  EXPECT_FALSE(studied(conduit({{"12", 3, CircuitKind::Power}}), wiring).mixed());
}

TEST(Wiring, WorkingDepthByVoltageAndCondition) {
  // NEC table 110.26(A)(1): 3 ft; 3, 3-1/2 (from memory), 4 ft.
  const Limits& limits = builtinCatalog().limits;
  EXPECT_NEAR(inFeet(*workingDepth(120, std::nullopt, limits)), 3, 1e-12);
  EXPECT_NEAR(inFeet(*workingDepth(277, FacingPanel::Insulated, limits)), 3, 1e-12);
  EXPECT_NEAR(inFeet(*workingDepth(277, FacingPanel::Grounded, limits)), 3.5, 1e-12);
  EXPECT_NEAR(inFeet(*workingDepth(277, FacingPanel::LiveParts, limits)), 4, 1e-12);
  EXPECT_FALSE(workingDepth(277, std::nullopt, limits));
  EXPECT_FALSE(workingDepth(std::nullopt, FacingPanel::Grounded, limits));
}

EquipmentRoom room(double width) {
  EquipmentRoom r;
  r.id = "ER";
  r.length = feet(10);
  r.width = feet(width);
  r.floor = feet(100);
  r.panel = RoomBox{ft(4, 0), feet(2), feet(0.5), feet(6)};
  return r;
}

TEST(Wiring, WorkingSpaceInFrontOfThePanel) {
  Plan plan;
  plan.basis.wiring.supplies = {{"S1", "", SupplyKind::Motor3Phase, 208, 120, "", ft(5, 3)}};
  plan.rooms.append(room(8));
  const Study free = studyOf(plan);
  const WorkingSpaceStudy& space = free.wiring.spaces.at(0);
  EXPECT_NEAR(inFeet(space.depthClear), 7.5, 1e-9);
  EXPECT_NEAR(inInches(space.widthNeeded), 30, 1e-9);
  EXPECT_TRUE(space.intrusions.empty());
  EXPECT_FALSE(free.wiring.supplies.at(0).inSight); // no skid is placed
  EquipmentRoom crowded = room(8);
  crowded.skid = RoomBox{ft(3, 2), feet(4), feet(2), feet(4)};
  plan.rooms.put(crowded);
  const Study full = studyOf(plan);
  EXPECT_NEAR(inFeet(full.wiring.spaces[0].depthClear), 1.5, 1e-9);
  ASSERT_EQ(full.wiring.spaces[0].intrusions.size(), 1u);
  EXPECT_EQ(full.wiring.spaces[0].intrusions[0].kind, WorkingSpaceObstacle::Skid);
  EXPECT_TRUE(*full.wiring.supplies[0].inSight);
  plan.rooms.put(room(3));
  EXPECT_EQ(studyOf(plan).wiring.spaces[0].intrusions.at(0).kind, WorkingSpaceObstacle::Wall);
}

// Enclosures are taken to reach 6 in from a disconnect's place.
TEST(Wiring, WorkingSpaceInFrontOfADisconnect) {
  Plan plan;
  plan.basis.wiring.facingPanel = FacingPanel::Grounded;
  plan.basis.wiring.supplies = {{"S1", "", SupplyKind::Motor3Phase, 460, 277, "", ft(1, 0.3)},
                                {"S2", "", SupplyKind::Control1Phase, 120, 120, "", ft(3, 7.9)},
                                {"S3", "", SupplyKind::Control1Phase, 120, 120, "", ft(50, 50)}};
  plan.rooms.append(room(8));
  const Limits& limits = builtinCatalog().limits;
  const auto spaces = disconnectSpaces(plan, limits, {});
  ASSERT_EQ(spaces.size(), 2u) << "one that stands in no room has no wall behind it";
  EXPECT_NEAR(inFeet(*spaces[0].depthNeeded), 3.5, 1e-9);
  EXPECT_NEAR(inFeet(*spaces[1].depthNeeded), 3, 1e-9);
  double low = 1e9, high = -1e9;
  for (Point2 p : spaces[0].zone) {
    low = std::min(low, p.y / kMetresPerFoot);
    high = std::max(high, p.y / kMetresPerFoot);
  }
  EXPECT_NEAR(low, 0.8, 1e-9) << "from the front of its enclosure";
  EXPECT_NEAR(high, 4.3, 1e-9);
  EXPECT_NEAR(inFeet(spaces[0].depthClear), 7.2, 1e-9) << "to the wall opposite";
  EXPECT_NEAR(inFeet(spaces[0].widthClear), 10, 1e-9) << "the panel stands out less";
  EXPECT_TRUE(spaces[0].intrusions.empty());
  // The other hangs on the wall opposite and is reached from the south.
  for (Point2 p : spaces[1].zone) {
    const double y = p.y / kMetresPerFoot;
    EXPECT_TRUE(std::abs(y - 7.4) < 1e-9 || std::abs(y - 4.4) < 1e-9) << y;
  }
}

// S1 hangs on the south wall, with its front 1 ft off it; from x = 3 ft on the panel stands out 2
// ft, and S2 hangs on the west wall: it reaches 0.8 ft into the room from y = 2 ft to 3 ft.
TEST(Wiring, WidthBeforeADisconnectIsTakenByAllThatStandsOutFarther) {
  Plan plan;
  EquipmentRoom r = room(8);
  r.panel = RoomBox{ft(3, 0), feet(2), feet(2), feet(6)};
  plan.rooms.append(r);
  plan.basis.wiring.supplies = {{"S1", "", SupplyKind::Control1Phase, 120, 120, "", ft(2, 0.5)}};
  const auto look = [&] { return disconnectSpaces(plan, builtinCatalog().limits, {}).at(0); };
  EXPECT_NEAR(inFeet(look().widthClear), 3, 1e-9) << "from the west wall to the panel";
  EXPECT_NEAR(inFeet(look().depthClear), 7, 1e-9);
  plan.basis.wiring.supplies.push_back(
      {"S2", "", SupplyKind::Motor3Phase, 208, 120, "", ft(0.3, 2.5)});
  EXPECT_NEAR(inFeet(look().widthClear), 2.2, 1e-9) << "from the other disconnect to the panel";
  EXPECT_NEAR(inFeet(look().depthClear), 1, 1e-9) << "30 in do not fit between them";
  ASSERT_EQ(look().intrusions.size(), 1u);
  // On the same wall it may share the width.
  plan.basis.wiring.supplies[1].disconnect = ft(1, 0.3);
  EXPECT_NEAR(inFeet(look().widthClear), 3, 1e-9);
}

// On the skid, which reaches 2 ft from the wall: the depth counts from the skid's front.
TEST(Wiring, ADisconnectOnTheSkidIsWorkedOnBeforeTheSkid) {
  Plan plan;
  EquipmentRoom r = room(8);
  r.skid = RoomBox{ft(0, 0), feet(3), feet(2), feet(4)};
  plan.rooms.append(r);
  plan.basis.wiring.supplies = {{"S1", "", SupplyKind::Motor3Phase, 208, 120, "", ft(1.5, 1)}};
  const auto spaces = disconnectSpaces(plan, builtinCatalog().limits, {});
  EXPECT_NEAR(inFeet(spaces.at(0).depthClear), 6, 1e-9);
  EXPECT_TRUE(spaces[0].intrusions.empty());
}

TEST(Wiring, ADisconnectBehindAWallIsOutOfSight) {
  Plan plan;
  EquipmentRoom r = room(8);
  r.skid = RoomBox{ft(0, 5), feet(4), feet(2), feet(4)};
  plan.rooms.append(r);
  plan.basis.wiring.supplies = {{"S1", "", SupplyKind::Motor3Phase, 460, 277, "", ft(5, -3)}};
  EXPECT_FALSE(*studyOf(plan).wiring.supplies[0].inSight);
}

} // namespace
} // namespace sump::test
