// The circuit schedule says what the plan says, and leaves blank what is the electrician's.

#include "core/exchange/plan_file.h"
#include "core/geometry/polygon.h"
#include "core/sheet/circuits.h"
#include "core/sheet/room_circuits.h"
#include "core/sheet/room_figure.h"
#include "core/sheet/room_parts.h"
#include "core/sheet/wall_elevation.h"
#include "core/sheet/wall_pipes.h"
#include "core/study/part_place.h"
#include "tests/rules/depot.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
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
    EXPECT_EQ(circuit.inRoom, circuit.conduit.starts_with("______ in the room")) << circuit.name;
  }
}

TEST(Circuits, SayWhereTheFloatIsFedFromAndTheWashSignalComesFrom) {
  const auto all = circuits(depot());
  const Circuit& floating = named(all, "Low-level float");
  EXPECT_EQ(floating.volts, "24 V AC");
  EXPECT_TRUE(floating.from.starts_with("Panel, Equipment room: its 24 V AC source"));
  EXPECT_EQ(floating.to, "Switch in Vault 2, suction, ch. 2");
  const Circuit& wash = named(all, "Wash demand");
  EXPECT_TRUE(wash.from.starts_with("Existing wash arch: source"));
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
    if (callout.lines.front() == run) return callout.lines;
  throw std::runtime_error("no callout of " + run);
}

/// SU-1 stands 0.4 m off the wall, PW-1 at the same place along it 0.65 m.
Plan withProductBeforeSuction() {
  Plan plan = readPlanFile(testing::samples() / "boatyard-pad.sump");
  EquipmentRoom room = *plan.rooms.find("ER-1");
  const auto port = [&](const char* id) { return std::ranges::find(room.ports, id, &Port::id); };
  const double moved = port("P-SU")->at.x - port("P-PW")->at.x;
  port("P-PW")->at.x += moved;
  plan.rooms.put(std::move(room));
  sump::Run product = *plan.runs.find("PW-1");
  product.vertices.front().at.x += moved; // under the port; the room lies along the site's axes
  plan.runs.put(std::move(product));
  return plan;
}

TEST(WallElevation, SaysWhichPipeStandsBehindAnother) {
  const Review review = reviewed(withProductBeforeSuction());
  const Drawing drawing =
      riserElevation(jobOf(review), *review.plan.rooms.find("ER-1"), {300, 400});
  EXPECT_EQ(linesOf(drawing, "SU-1").back(), "behind PW-1");
  EXPECT_EQ(linesOf(drawing, "PW-1").size(), 3u); // run, port and size, height of its end
  EXPECT_EQ(linesOf(drawing, "RC-1").size(), 3u);
}

const Callout& calloutOf(const Drawing& drawing, const std::string& first) {
  for (const Callout& callout : drawing.callouts)
    if (callout.lines.front() == first) return callout;
  throw std::runtime_error("no callout " + first);
}

// The valve and the union of SU-1 stand behind PW-1 as their pipe does.
TEST(WallElevation, ShowsAHiddenValveDashed) {
  const Review review = reviewed(withProductBeforeSuction());
  const Drawing drawing =
      riserElevation(jobOf(review), *review.plan.rooms.find("ER-1"), {300, 400});
  for (const char* part : {"SU-1-1", "SU-1-2"}) {
    EXPECT_EQ(calloutOf(drawing, part).lines.back(), "behind PW-1") << part;
    std::size_t shapes = 0;
    for (const Mark& mark : drawing.marks) {
      if (mark.object != part) continue;
      ++shapes;
      EXPECT_FALSE(mark.fill) << part << " would hide what stands before it";
      EXPECT_TRUE(mark.line && !mark.line->dash.empty()) << part;
    }
    EXPECT_GT(shapes, 0u) << part;
  }
  EXPECT_EQ(calloutOf(drawing, "PW-1-1").lines.size(), 1u);
}

// MU-1 comes along the wall at 1.2 m over the floor, 0.95 m off it.
TEST(WallElevation, ShowsPipeThatIsLevel) {
  const Review review = reviewed(readPlanFile(testing::samples() / "boatyard-pad.sump"));
  const SheetJob job = jobOf(review);
  const EquipmentRoom& room = *review.plan.rooms.find("ER-1");
  const auto pipes = wallPipes(job, room, wallOf(room));
  EXPECT_TRUE(std::ranges::any_of(pipes, [](const WallPipe& pipe) {
    return pipe.tag == "MU-1" && !pipe.endOn() && std::abs(pipe.off - 0.95) < 0.01 &&
           std::abs(pipe.line.front().y - pipe.line.back().y) < 0.01;
  }));
  EXPECT_TRUE(std::ranges::is_sorted(pipes, {}, &WallPipe::off));
}

// The boatyard's pump has its disconnect on the east wall, the controls theirs beside the panel.
TEST(WallElevation, ShowsTheDisconnectsAtTheWall) {
  const Review review = reviewed(readPlanFile(testing::samples() / "boatyard-pad.sump"));
  const Drawing drawing = wallElevation(jobOf(review), *review.plan.rooms.find("ER-1"), {400, 300});
  std::vector<std::string> seen;
  for (const Callout& callout : drawing.callouts)
    if (callout.lines.front() == "Disconnect,") seen.push_back(callout.lines.at(1));
  EXPECT_EQ(seen, std::vector<std::string>{"Controls"});
}

// From the corner of the room to the disconnects on its east wall: 2'-6", and 1'-6" on to 4'-0";
// the plan at the panel does not show them.
TEST(ElectricalRoom, MeasuresDisconnectsOnOtherWalls) {
  const Review review = reviewed(depot());
  const SheetJob job = jobOf(review);
  const EquipmentRoom& room = *review.plan.rooms.find("ER-1");
  Drawing drawing;
  measureRoom(job, room, drawing);
  const double x = inMetres(room.length);
  std::vector<std::string> along;
  for (const Measure& measure : drawing.measures)
    if (measure.from.x == x && measure.to.x == x) along.push_back(measure.text);
  ASSERT_GE(along.size(), 2u);
  EXPECT_EQ(along[0], "2'-9 5/8\""); // 70.8 ft less the wall's 68.0 ft
  EXPECT_EQ(along[1], "1'-2 3/8\""); // 72.0 ft less 70.8 ft
  for (const RoomDisconnect& at : disconnectsIn(job, room))
    EXPECT_FALSE(isBesidePanel(room, at.local)) << at.supply->id;
}

// Circuit 3 goes on from its disconnect to the motors, 4 ends at its own, 5 at the valve.
TEST(CircuitLines, CarryTheNumbersOfTheSchedule) {
  const Review review = reviewed(depot());
  const EquipmentRoom& room = *review.plan.rooms.find("ER-1");
  const auto lines = circuitLines(jobOf(review), room);
  std::vector<std::string> names;
  for (const CircuitLine& line : lines)
    names.push_back(line.name);
  EXPECT_EQ(names, (std::vector<std::string>{"circuit 3", "circuit 3", "circuit 4", "circuit 5"}));
  const auto& makeUp = *review.plan.runs.find("MU-1");
  const auto valve = partPlace(*review.study.run("MU-1"), makeUp.parts[2]);
  EXPECT_LT(distance(lines.back().way.back(), room.frame().toLocal(flat(valve->at))), 1e-6);
}

// Only what feeds the motors goes into the skid.
TEST(CircuitLines, GoRoundTheSkidThatTheyDoNotFeed) {
  for (const char* sample : {"transit-depot.sump", "boatyard-pad.sump", "ferry-quay.sump"}) {
    const Review review = reviewed(readPlanFile(testing::samples() / sample));
    const EquipmentRoom& room = *review.plan.rooms.find("ER-1");
    const RoomBox& box = *room.skid;
    const PaperBox skid{box.corner, box.corner + Point2{inMetres(box.length), inMetres(box.depth)}};
    for (const CircuitLine& line : circuitLines(jobOf(review), room)) {
      for (std::size_t i = 0; line.name != "circuit 3" && i + 1 < line.way.size(); ++i)
        EXPECT_FALSE(cutsBox(line.way[i], line.way[i + 1], skid)) << sample << ": " << line.name;
    }
  }
}

TEST(CircuitLines, RunNowhereInOneAnother) {
  for (const char* sample : {"transit-depot.sump", "boatyard-pad.sump", "ferry-quay.sump"}) {
    const Review review = reviewed(readPlanFile(testing::samples() / sample));
    const auto lines = circuitLines(jobOf(review), *review.plan.rooms.find("ER-1"));
    for (std::size_t i = 0; i < lines.size(); ++i) {
      for (std::size_t k = i + 1; k < lines.size(); ++k) {
        for (std::size_t leg = 0; leg + 1 < lines[i].way.size(); ++leg) {
          const Point2 a = lines[i].way[leg], b = lines[i].way[leg + 1];
          if (distance(a, b) < 0.1) continue;
          for (std::size_t other = 0; other + 1 < lines[k].way.size(); ++other) {
            const Point2 c = lines[k].way[other], d = lines[k].way[other + 1];
            const bool along = std::abs(dot(b - a, d - c)) > 0.9 * norm(b - a) * norm(d - c);
            if (!along || distance(c, d) < 0.1) continue;
            EXPECT_GT(nearestOnSegment(lerp(a, b, 0.5), c, d).distance, 0.015)
                << sample << ": " << lines[i].name << " and " << lines[k].name;
          }
        }
      }
    }
  }
}

TEST(Circuits, AConduitTellsWhichAreInIt) {
  const Review review = reviewed(depot());
  EXPECT_EQ(circuitsIn(jobOf(review), "PC-1"), "circuits 1, 2");
  EXPECT_EQ(circuitsIn(jobOf(review), "FC-1"), "circuit 7");
  EXPECT_EQ(circuitsIn(jobOf(review), "WW-1"), "");
}

// MU-1-1 is 0.35 m outside the depot's room; the pipe stands neither there nor at MU-1-2.
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
