// Parts set on a run, moved and taken off; corners of outlines; what stands in a room. Expected
// values are worked out by hand from the coordinates beside them.

#include "core/plan/edits_parts.h"

#include "core/plan/consistency.h"
#include "core/plan/edits_outlines.h"
#include "core/plan/edits_rooms.h"

#include <gtest/gtest.h>

namespace sump {

namespace {

/// 10 m east, a drop, then 6 m north.
const Polyline kLine = {{0, 0}, {10, 0}, {10, 0}, {10, 6}};

Plan oneRun() {
  sump::Run run;
  run.id = "PW-1";
  run.service = Service::Product;
  run.pipe = "pvc-sch80";
  run.size = "2";
  run.from.at = kLine[0];
  run.from.invert = metres(3);
  run.vertices = {{kLine[1], metres(3)}, {kLine[2], metres(2)}};
  run.to.at = kLine[3];
  run.to.invert = metres(2);
  Plan plan;
  plan.runs.append(run);
  return plan;
}

/// 4 x 3 m with a skid, its plumbing area to the right of it and a panel by the north wall.
Plan oneRoom() {
  EquipmentRoom room;
  room.id = "ER-1";
  room.length = metres(4);
  room.width = metres(3);
  room.door = Door{Side::South, metres(1), metres(0.9)};
  room.skid = RoomBox{{1, 0}, metres(1.2), metres(0.6), metres(1.2)};
  room.plumbingArea = RoomBox{{2.2, 0}, metres(0.6), metres(0.6), metres(2)};
  room.panel = RoomBox{{0, 2.7}, metres(0.6), metres(0.3), metres(1.9)};
  room.ports = {{"P-SU", "", Service::Suction, {2.4, 0.3}, metres(0.5), "2"},
                {"P-PW", "", Service::Power, {0.3, 2.8}, metres(0.5), "1"},
                {"P-MU", "", Service::MakeUp, {3.5, 1}, metres(0.5), "1"}};
  Plan plan;
  plan.rooms.append(room);
  return plan;
}

} // namespace

TEST(Station, IsCountedInPlanAndNeverOnADrop) {
  const Station near = *stationNear(kLine, {4, 1});
  EXPECT_EQ(near.leg, 0);
  EXPECT_NEAR(near.along, 0.4, 1e-12);
  EXPECT_NEAR(near.run, 4, 1e-12);
  const Station after = *stationAt(kLine, 13);
  EXPECT_EQ(after.leg, 2) << "leg 1 is the drop";
  EXPECT_EQ(after.at, (Point2{10, 3}));
  EXPECT_NEAR(stationAt(kLine, 99)->run, 16, 1e-12);
  EXPECT_NEAR(stationAt(kLine, -1)->run, 0, 1e-12);
  EXPECT_FALSE(stationNear({{1, 1}, {1, 1}}, {0, 0}));
  const InlinePart part{"PW-1-1", PartKind::Union, 2, 0.5, {}};
  EXPECT_NEAR(stationOf(kLine, part)->run, 13, 1e-12);
  EXPECT_FALSE(stationOf(kLine, {"PW-1-1", PartKind::Union, 3, 0.5, {}}));
}

TEST(Parts, StayInTheirOrderAlongTheRun) {
  Id valve, joint;
  Plan plan = addPart(oneRun(), "PW-1", PartKind::BallValve, {}, *stationAt(kLine, 13), valve);
  plan = addPart(plan, "PW-1", PartKind::Union, {}, *stationAt(kLine, 2), joint);
  EXPECT_TRUE(inconsistencies(plan).empty());
  ASSERT_EQ(plan.runs[0].parts.size(), 2u);
  EXPECT_EQ(plan.runs[0].parts[0].id, joint);
  EXPECT_EQ(plan.runs[0].parts[1].id, valve);
  plan = movePart(plan, joint, *stationAt(kLine, 15));
  EXPECT_EQ(plan.runs[0].parts[1].id, joint);
  EXPECT_EQ(plan.runs[0].parts[1].leg, 2);
  EXPECT_NEAR(plan.runs[0].parts[1].along, 5.0 / 6, 1e-12);
  plan = erasePart(erasePart(plan, joint), valve);
  EXPECT_EQ(plan, oneRun());
  EXPECT_EQ(erasePart(plan, "PW-1"), plan) << "a run is no part";
}

TEST(Corners, AreMovedPutInAndTakenOut) {
  Plan plan;
  plan.site.boundary = {{0, 0}, {10, 0}, {10, 10}};
  plan.utilities.append({"U-1", "", UtilityKind::Gas, {{0, 0}, {5, 0}}, {}, {}, false});
  EXPECT_EQ(moveCorner(plan, "", 1, {12, 1}).site.boundary[1], (Point2{12, 1}));
  // The last leg of an outline leads back to the first corner.
  const Plan more = insertCorner(plan, "", 2, {0, 10});
  EXPECT_EQ(more.site.boundary, (Ring{{0, 0}, {10, 0}, {10, 10}, {0, 10}}));
  EXPECT_EQ(eraseCorner(more, "", 3), plan);
  EXPECT_EQ(eraseCorner(plan, "", 0), plan) << "three are the least";
  EXPECT_EQ(insertCorner(plan, "U-1", 1, {9, 9}), plan) << "a path has no leg back";
  EXPECT_EQ(eraseCorner(plan, "U-1", 0), plan) << "two are the least";
  EXPECT_EQ(insertCorner(plan, "U-1", 0, {2, 1}).utilities[0].path,
            (Polyline{{0, 0}, {2, 1}, {5, 0}}));
  EXPECT_FALSE(cornersOf(plan, "none"));
  EXPECT_FALSE(cornersOf(Plan{}, ""));
}

TEST(RoomBoxes, StayWithinTheWallsAndTakeTheirPortsAlong) {
  const Plan plan = oneRoom();
  // Skid and plumbing area reach from 1 to 2.8: at most 1.2 m further east.
  const Plan east = moveRoomBox(plan, "ER-1", RoomThing::Skid, {9, 0.5});
  EXPECT_TRUE(inconsistencies(east).empty());
  EXPECT_NEAR(east.rooms[0].skid->corner.x, 2.2, 1e-12);
  EXPECT_NEAR(east.rooms[0].skid->corner.y, 0.5, 1e-12);
  EXPECT_NEAR(east.rooms[0].plumbingArea->corner.x, 3.4, 1e-12);
  EXPECT_NEAR(east.rooms[0].ports[0].at.x, 3.6, 1e-12);
  EXPECT_EQ(east.rooms[0].ports[1], plan.rooms[0].ports[1]);
  EXPECT_EQ(east.rooms[0].ports[2], plan.rooms[0].ports[2]) << "it stands elsewhere";
  const Plan panel = moveRoomBox(plan, "ER-1", RoomThing::Panel, {3, 0});
  EXPECT_NEAR(panel.rooms[0].ports[1].at.x, 3.3, 1e-12);
  EXPECT_NEAR(panel.rooms[0].ports[1].at.y, 0.1, 1e-12);
  EXPECT_EQ(panel.rooms[0].skid, plan.rooms[0].skid);
}

TEST(RoomDoor, GoesToTheNearestWallAndStaysInIt) {
  const EquipmentRoom room = oneRoom().rooms[0];
  const Door east = doorNear(room, *room.door, {3.8, 1.5});
  EXPECT_EQ(east.side, Side::East);
  EXPECT_NEAR(inMetres(east.offset), 1.05, 1e-12); // 1.5 less half of 0.9
  const Door corner = doorNear(room, *room.door, {3.9, -0.5});
  EXPECT_EQ(corner.side, Side::South);
  EXPECT_NEAR(inMetres(corner.offset), 3.1, 1e-12);
  // The north wall starts in the north-east.
  const auto [from, to] = doorEnds(room, {Side::North, metres(1), metres(0.9)});
  EXPECT_EQ(from, (Point2{3, 3}));
  EXPECT_NEAR(to.x, 2.1, 1e-12);
}

TEST(RoomPort, StaysWithinTheWalls) {
  const Plan next = movePort(oneRoom(), "P-MU", {7, -1});
  EXPECT_EQ(next.rooms[0].ports[2].at, (Point2{4, 0}));
  EXPECT_EQ(movePort(oneRoom(), "ER-1", {1, 1}), oneRoom());
}

} // namespace sump
