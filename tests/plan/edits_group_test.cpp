// Turning, mirroring, aligning and spreading several objects, with what hangs on them.

#include "core/plan/edits_group.h"

#include "core/plan/consistency.h"
#include "core/plan/edits.h"
#include "core/plan/edits_objects.h"
#include "core/plan/note_ends.h"
#include "tests/support/nearly_same.h"
#include "tests/support/places.h"
#include "tests/support/random_plan.h"

#include <gtest/gtest.h>

namespace sump {

namespace {

using test::nearlySame;

Plan depot() {
  return readPlanFile(sampleFile("transit-depot"));
}

std::set<Id> all(const Plan& plan) {
  const std::vector<Id> ids = allObjects(plan);
  return {ids.begin(), ids.end()};
}

void expectConsistent(const Plan& plan) {
  for (const Problem& p : inconsistencies(plan))
    ADD_FAILURE() << p.pointer << " " << p.what;
}

/// Some of the plan's objects.
std::set<Id> some(const Plan& plan, std::mt19937& rng) {
  std::set<Id> ids;
  for (const Id& id : allObjects(plan)) {
    if (std::uniform_int_distribution<int>(0, 2)(rng) == 0) ids.insert(id);
  }
  return ids;
}

Point2 at(const Plan& plan, const RunEnd& end) {
  return *sitePosition(plan, end);
}

DimensionNote noteBetween(const Id& a, Point2 from, const Id& b, Point2 to) {
  return {"N-9", {a, from}, {b, to}, metres(1), ""};
}

Well well(const Id& id, Point2 at) {
  return {id, "", at};
}

} // namespace

TEST(RotateObjects, ThereAndBackIsTheSamePlan) {
  for (unsigned seed = 0; seed < 40; ++seed) {
    std::mt19937 rng(seed);
    const Plan before = test::randomPlan(rng);
    const std::set<Id> ids = all(before);
    const Plan there = rotateObjects(before, ids, {13, -7}, degrees(37 + seed));
    expectConsistent(there);
    EXPECT_FALSE(nearlySame(there, before));
    EXPECT_TRUE(nearlySame(rotateObjects(there, ids, {13, -7}, degrees(-37.0 - seed)), before))
        << "seed " << seed;
  }
}

TEST(MirrorObjects, TwiceIsTheSamePlan) {
  for (unsigned seed = 0; seed < 40; ++seed) {
    std::mt19937 rng(seed);
    const Plan before = test::randomPlan(rng);
    const std::set<Id> ids = all(before);
    const Plan once = mirrorObjects(before, ids, {3, 4}, {20, 10.0 + seed});
    expectConsistent(once);
    EXPECT_FALSE(nearlySame(once, before));
    EXPECT_TRUE(nearlySame(mirrorObjects(once, ids, {3, 4}, {20, 10.0 + seed}), before))
        << "seed " << seed;
  }
}

TEST(GroupEdits, KeepRandomPlansConsistent) {
  for (unsigned seed = 0; seed < 60; ++seed) {
    std::mt19937 rng(seed);
    Plan plan = test::randomPlan(rng);
    for (int i = 0; i < 6; ++i) {
      plan = rotateObjects(plan, some(plan, rng), {1, 2}, degrees(17));
      plan = mirrorObjects(plan, some(plan, rng), {1, 2}, {3, 3});
      plan = alignObjects(plan, some(plan, rng), static_cast<Alignment>(i));
      plan = alignWithVault(plan, some(plan, rng), plan.vaults[0].id, i % 2 == 0);
      plan = distributeObjects(plan, some(plan, rng), i % 2 == 0);
      expectConsistent(plan);
    }
  }
}

// Every end of every run stays on the same place of what it hangs on: seen from the site, it goes
// where the motion takes it.
TEST(RotateObjects, TakesEveryRunEndAlong) {
  const Plan before = depot();
  const Plan after = rotateObjects(before, all(before), {10, 10}, degrees(90));
  for (const sump::Run& run : before.runs) {
    const Point2 was = at(before, run.to), is = at(after, after.runs.find(run.id)->to);
    EXPECT_NEAR(is.x, 10 - (was.y - 10), 1e-9) << run.id;
    EXPECT_NEAR(is.y, 10 + (was.x - 10), 1e-9) << run.id;
  }
}

TEST(MirrorObjects, KeepsFlowChambersDoorsAndPorts) {
  const Plan before = depot();
  // About the line x = 10.
  const Plan after = mirrorObjects(before, all(before), {10, 0}, {10, 5});
  expectConsistent(after);
  const auto mirrored = [](Point2 p) { return Point2{20 - p.x, p.y}; };
  const auto expectThere = [&](Point2 is, Point2 was, const Id& id) {
    EXPECT_NEAR(distance(is, mirrored(was)), 0, 1e-9) << id;
  };
  for (const sump::Run& run : before.runs) {
    const sump::Run& now = *after.runs.find(run.id);
    expectThere(at(after, now.from), at(before, run.from), run.id);
    expectThere(at(after, now.to), at(before, run.to), run.id);
    EXPECT_EQ(now.from.chamber, run.from.chamber) << run.id;
  }
  for (const Vault& v : before.vaults) {
    const Vault& now = *after.vaults.find(v.id);
    EXPECT_EQ(now.baffles, v.baffles) << "chambers keep their order along the flow";
    for (std::size_t i = 0; i < v.manways.size(); ++i) {
      expectThere(now.frame().toSite(now.manways[i].at), v.frame().toSite(v.manways[i].at), v.id);
    }
    // The outlet end lies where the mirrored outlet end is.
    expectThere(now.frame().toSite({1, 0}), v.frame().toSite({1, 0}), v.id);
  }
  const EquipmentRoom &was = before.rooms[0], &now = after.rooms[0];
  for (std::size_t i = 0; i < was.ports.size(); ++i) {
    expectThere(now.frame().toSite(now.ports[i].at), was.frame().toSite(was.ports[i].at), "port");
  }
  const auto middle = [](const EquipmentRoom& room, const RoomBox& box) {
    return room.frame().toSite(box.corner +
                               Point2{inMetres(box.length), inMetres(box.depth)} * 0.5);
  };
  expectThere(middle(now, *now.skid), middle(was, *was.skid), "skid");
}

// By hand: a 5 x 3 m room at the origin, door 1 m wide, 0.5 m from the start of each wall in turn.
TEST(MirrorObjects, KeepsADoorWhereItIsInTheWall) {
  struct Case {
    Side side;
    Point2 doorMiddle; ///< in the room before
    Side sideAfter;
  };
  for (const Case& c : {Case{Side::South, {1, 0}, Side::North},
                        {Side::East, {5, 1}, Side::East},
                        {Side::North, {4, 3}, Side::South},
                        {Side::West, {0, 2}, Side::West}}) {
    EquipmentRoom room;
    room.id = "E";
    room.length = metres(5);
    room.width = metres(3);
    room.door = Door{c.side, metres(0.5), metres(1)};
    const Plan plan = withObject(Plan(), room);
    const EquipmentRoom now = mirrorObjects(plan, {"E"}, {0, 0}, {1, 0}).rooms[0];
    EXPECT_EQ(now.door->side, c.sideAfter);
    const bool ends = c.side == Side::South || c.side == Side::North;
    const double wall = ends ? 5 : 3, middle = inMetres(now.door->offset) + 0.5;
    EXPECT_NEAR(middle, wall - 1.0, 1e-12) << "measured from the wall's other end";
    // About y = 0 the room reaches from y = -3 to 0, and the door's middle lies at -y.
    Point2 local;
    switch (now.door->side) {
    case Side::South:
      local = {middle, 0};
      break;
    case Side::East:
      local = {5, middle};
      break;
    case Side::North:
      local = {5 - middle, 3};
      break;
    case Side::West:
      local = {0, 3 - middle};
      break;
    }
    const Point2 site = now.frame().toSite(local);
    EXPECT_NEAR(site.x, c.doorMiddle.x, 1e-12);
    EXPECT_NEAR(site.y, -c.doorMiddle.y, 1e-12);
  }
}

TEST(MoveObjects, TakesNoteEndsOnOutlinesAndRunsAlong) {
  Plan sample = depot();
  sample.notes = {};
  const Id building = sample.buildings[0].id;
  const Point2 corner = sample.buildings[0].outline[0];
  const Plan before = withObject(sample, noteBetween(building, corner, "V1", {0, 0}));
  const Plan after = moveObjects(before, {building}, {2, 3});
  EXPECT_EQ(after.notes[0].from.at, corner + Point2(2, 3)) << "follows the outline";
  EXPECT_EQ(after.notes[0].to, before.notes[0].to) << "vault 1 stays";
  // A run between two moved objects goes whole, and so do the notes on it.
  const Point2 onRun = sample.runs.find("SU-1")->vertices[0].at;
  const Plan noted = withObject(sample, noteBetween("SU-1", onRun, "", {0, 0}));
  const Plan moved = moveObjects(noted, {"V2", "ER-1"}, {0.5, 0.5});
  EXPECT_EQ(moved.notes[0].from.at, onRun + Point2(0.5, 0.5));
  EXPECT_EQ(moved.notes[0].to.at, Point2()) << "a site point that was not chosen";
}

TEST(MoveObjects, SetsANoteThatIsMovedAloneOffFurther) {
  Plan plan = withObject(Plan(), well("W1", {0, 0}));
  plan = withObject(plan, well("W2", {10, 0}));
  plan = withObject(plan, noteBetween("W1", {0, 0}, "W2", {10, 0}));
  const Plan after = moveObjects(plan, {"N-9"}, {4, 2});
  EXPECT_NEAR(inMetres(after.notes[0].offset), 3, 1e-12);
  EXPECT_EQ(after.notes[0].from, plan.notes[0].from);
}

TEST(MoveObjects, ARunThatTeesIntoACarriedRunGoesWithIt) {
  sump::Run main;
  main.id = "R-1";
  main.to.at = {10, 0};
  sump::Run branch;
  branch.id = "R-2";
  branch.from.at = {5, 5};
  branch.to = {EndKind::Run, "R-1", 0, {5, 0}, std::nullopt, EndFitting::Plain};
  const Plan plan = withObject(withObject(Plan(), main), branch);
  const Plan after = moveObjects(plan, {"R-1"}, {1, 1});
  EXPECT_EQ(at(after, after.runs.find("R-2")->to), Point2(6, 1));
  EXPECT_EQ(after.runs.find("R-2")->from.at, Point2(5, 5));
}

TEST(AlignObjects, BringsSidesAndMiddlesToOneLine) {
  Plan plan = withObject(Plan(), Pavement{"P1", "", {{0, 0}, {2, 0}, {2, 2}, {0, 2}}, false});
  plan = withObject(plan, Pavement{"P2", "", {{5, 7}, {9, 7}, {9, 8}, {5, 8}}, false});
  const std::set<Id> both = {"P1", "P2"};
  const auto corner = [&](Alignment to, const char* id) {
    return alignObjects(plan, both, to).pavements.find(id)->outline[0];
  };
  EXPECT_EQ(corner(Alignment::Left, "P2"), Point2(0, 7));
  EXPECT_EQ(corner(Alignment::Right, "P1"), Point2(7, 0));
  EXPECT_EQ(corner(Alignment::Centre, "P1"), Point2(3.5, 0));
  EXPECT_EQ(corner(Alignment::Centre, "P2"), Point2(2.5, 7));
  EXPECT_EQ(corner(Alignment::Bottom, "P2"), Point2(5, 0));
  EXPECT_EQ(corner(Alignment::Top, "P1"), Point2(0, 6));
  EXPECT_EQ(corner(Alignment::Middle, "P1"), Point2(0, 3));
}

TEST(AlignWithVault, BringsMiddlesOntoItsAxes) {
  Plan plan = depot();
  plan = rotateObjects(plan, {"V1"}, {0, 0}, degrees(30));
  const Frame frame = plan.vaults.find("V1")->frame();
  const Plan line = alignWithVault(plan, {"V1", "V2"}, "V1", false);
  EXPECT_NEAR(frame.toLocal(line.vaults.find("V2")->centre).y, 0, 1e-9);
  EXPECT_NEAR(frame.toLocal(line.vaults.find("V2")->centre).x,
              frame.toLocal(plan.vaults.find("V2")->centre).x, 1e-9);
  const Plan abreast = alignWithVault(plan, {"V1", "V2"}, "V1", true);
  EXPECT_NEAR(frame.toLocal(abreast.vaults.find("V2")->centre).x, 0, 1e-9);
  EXPECT_EQ(*abreast.vaults.find("V1"), *plan.vaults.find("V1"));
}

TEST(DistributeObjects, MakesGapsEqual) {
  Plan plan = withObject(Plan(), Pavement{"P1", "", {{0, 0}, {2, 0}, {2, 2}, {0, 2}}, false});
  plan = withObject(plan, Pavement{"P2", "", {{3, 0}, {4, 0}, {4, 1}, {3, 1}}, false});
  plan = withObject(plan, Pavement{"P3", "", {{9, 0}, {13, 0}, {13, 1}, {9, 1}}, false});
  const Plan after = distributeObjects(plan, {"P1", "P2", "P3"}, false);
  // 13 m in all, 7 m taken: two gaps of 3 m.
  EXPECT_EQ(after.pavements.find("P2")->outline[0], Point2(5, 0));
  EXPECT_EQ(*after.pavements.find("P1"), *plan.pavements.find("P1"));
  EXPECT_EQ(*after.pavements.find("P3"), *plan.pavements.find("P3"));
  EXPECT_EQ(distributeObjects(plan, {"P1", "P2"}, false), plan);
}

TEST(NoteEndAt, IsTheOtherWayRoundOfItsPosition) {
  for (unsigned seed = 0; seed < 10; ++seed) {
    std::mt19937 rng(seed);
    const Plan plan = test::randomPlan(rng);
    const Locator locator(plan);
    for (const Id& id : allObjects(plan)) {
      const std::optional<Point2> site = locator.position(noteEndAt(plan, id, {12.5, -3}));
      ASSERT_TRUE(site) << id;
      EXPECT_NEAR(distance(*site, {12.5, -3}), 0, 1e-9) << id;
    }
    EXPECT_EQ(noteEndAt(plan, "nobody", {1, 2}), (NoteEnd{{}, {1, 2}}));
  }
}

TEST(LockObjects, LocksAndFrees) {
  const Plan plan = depot();
  const Plan locked = lockObjects(plan, {"V1", "nobody"}, true);
  EXPECT_EQ(locked.locked, std::vector<Id>{"V1"});
  EXPECT_TRUE(isLocked(locked, "V1"));
  EXPECT_EQ(unlocked(locked, {"V1", "V2"}), std::set<Id>{"V2"});
  EXPECT_EQ(lockObjects(locked, {"V1"}, false), plan);
}

} // namespace sump
