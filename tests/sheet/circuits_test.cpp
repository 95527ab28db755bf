// The circuit schedule says what the plan says, and leaves blank what is the electrician's.

#include "core/sheet/circuits.h"
#include "core/sheet/room_parts.h"
#include "core/sheet/wall_elevation.h"
#include "tests/rules/depot.h"

#include <gtest/gtest.h>

#include <stdexcept>

namespace sump {
namespace {

using testing::depot;
using testing::reviewed;

SheetJob jobOf(const Review& review) {
  return {review, builtinCatalog(), *paperSize("arch-d"), 0, planMarks(review.plan, review.study)};
}

std::vector<Circuit> circuits(const Plan& plan) {
  const Review review = reviewed(plan);
  return circuitsOf(jobOf(review));
}

const Circuit& named(const std::vector<Circuit>& all, const std::string& name) {
  for (const Circuit& circuit : all)
    if (circuit.name == name) return circuit;
  throw std::runtime_error("no circuit " + name);
}

TEST(Circuits, GoFromTheSourceToThePanelAndOverTheDisconnectToTheLoad) {
  const auto all = circuits(depot());
  const Circuit& feed = named(all, "Pump and compressor: feed");
  EXPECT_EQ(feed.volts, "460 V AC, 3-phase");
  EXPECT_EQ(feed.to, "Panel, Equipment room");
  EXPECT_EQ(feed.conduit, "PC-1");
  EXPECT_EQ(feed.conductors, "4 no. 8 AWG power") << "those of the motor, not the controls' in it";
  EXPECT_FALSE(feed.inRoom);
  const Circuit& load = named(all, "Pump and compressor");
  EXPECT_EQ(load.from, feed.to);
  EXPECT_TRUE(load.to.starts_with("Its disconnect"));
  EXPECT_TRUE(load.inRoom);
  EXPECT_EQ(named(all, "Controls: feed").conductors, "3 no. 12 AWG control");
}

// A protective device that nobody sized would be a trap.
TEST(Circuits, LeaveEveryOvercurrentDeviceToTheElectrician) {
  const auto all = circuits(depot());
  EXPECT_EQ(all.size(), 7u); // two feeds, two loads, a solenoid valve, two signals
  for (const Circuit& circuit : all) {
    EXPECT_TRUE(circuit.overcurrent.starts_with("______ A")) << circuit.name;
    EXPECT_EQ(circuit.inRoom,
              circuit.conduit.starts_with("______ in the room") && circuit.name != "Solenoid valve")
        << circuit.name;
  }
}

TEST(Circuits, SayWhereTheFloatIsFedFromAndTheWashSignalComesFrom) {
  const auto all = circuits(depot());
  const Circuit& floating = named(all, "Low-level float");
  EXPECT_EQ(floating.volts, "24 V AC");
  EXPECT_TRUE(floating.from.starts_with("Panel, Equipment room: its 24 V AC source"));
  EXPECT_EQ(floating.to, "Switch in Vault 2, suction, ch. 2");
  const Circuit& wash = named(all, "Wash demand");
  EXPECT_TRUE(wash.from.starts_with("Wash arch: source"));
  EXPECT_EQ(wash.to, "Panel, Equipment room");
}

TEST(Circuits, WhatThePlanDoesNotSayIsBlank) {
  Plan plan = depot();
  plan.basis.wiring.supplies[0].run.clear();
  plan.basis.wiring.signalCircuits[0].run.clear();
  EquipmentRoom room = *plan.rooms.find("ER-1");
  room.panel.reset();
  plan.rooms.put(room);
  const auto all = circuits(plan);
  const Circuit& feed = named(all, "Pump and compressor: feed");
  EXPECT_EQ(feed.conduit, "______");
  EXPECT_EQ(feed.conductors, "______");
  EXPECT_EQ(feed.to, "Panel ______");
  EXPECT_EQ(named(all, "Wash demand").conduit, "______");
}

TEST(Circuits, ASolenoidValveIsFedFromThePanel) {
  const Circuit valve = named(circuits(depot()), "Solenoid valve");
  EXPECT_EQ(valve.to, "Valve MU-1-3 in MU-1");
}

std::vector<std::string> linesOf(const Drawing& drawing, const std::string& run) {
  for (const Callout& callout : drawing.callouts)
    if (callout.lines.front().starts_with(run + " ")) return callout.lines;
  throw std::runtime_error("no callout of " + run);
}

// SU-1 stands 0.4 m off the wall, PW-1 at the same place along it 0.65 m.
TEST(WallElevation, SaysWhichPipeStandsBehindAnother) {
  const Review review = reviewed(readPlanFile(testing::samples() / "boatyard-pad.sump"));
  const Drawing drawing = wallElevation(jobOf(review), *review.plan.rooms.find("ER-1"), {400, 300});
  EXPECT_EQ(linesOf(drawing, "SU-1").back(), "behind PW-1");
  EXPECT_EQ(linesOf(drawing, "PW-1").size(), 2u);
  EXPECT_EQ(linesOf(drawing, "RC-1").size(), 2u);
}

// MU-1-1 is 0.3 m outside the depot's room; the pipe stands neither there nor at MU-1-2.
TEST(RoomParts, AreThoseAboveTheFloorInTheRoom) {
  const Review review = reviewed(depot());
  const SheetJob job = jobOf(review);
  const EquipmentRoom& room = *review.plan.rooms.find("ER-1");
  const auto has = [](const std::vector<RoomPart>& parts, const Id& id) {
    return std::ranges::any_of(parts, [&](const RoomPart& p) { return p.part->id == id; });
  };
  const auto inside = partsIn(job, room);
  EXPECT_TRUE(has(inside, "MU-1-2"));
  EXPECT_TRUE(has(inside, "SU-1-1"));
  EXPECT_FALSE(has(inside, "MU-1-1"));
  EXPECT_TRUE(has(partsIn(job, room, 0.6), "MU-1-1"));
  for (const RoomPart& part : inside) {
    EXPECT_GT(part.height, 0) << part.part->id;
    EXPECT_EQ(part.upright, part.run->id != "MU-1") << part.part->id;
  }
}

} // namespace
} // namespace sump
