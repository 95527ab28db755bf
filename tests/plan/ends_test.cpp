#include "core/plan/ends.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

Vault vaultAt(Point2 centre, double degreesFromEast) {
  Vault v;
  v.id = "V1";
  v.centre = centre;
  v.angle = degrees(degreesFromEast);
  v.length = metres(4);
  v.width = metres(2);
  v.manways.push_back({"V1-M1", {1, 0}, metres(0.6), {}, false});
  v.baffles.push_back({"V1-B1", metres(1.8), metres(0.1), metres(0), metres(0)});
  return v;
}

Run freeRun(const Id& id, Point2 from, Point2 to) {
  Run r;
  r.id = id;
  r.from.at = from;
  r.to.at = to;
  return r;
}

RunEnd endOn(EndKind kind, const Id& target, Point2 at) {
  RunEnd e;
  e.kind = kind;
  e.target = target;
  e.at = at;
  return e;
}

Plan smallPlan() {
  Plan plan;
  plan.vaults.put(vaultAt({10, 20}, 90));
  EquipmentRoom room;
  room.id = "E1";
  room.corner = {5, 5};
  room.angle = degrees(180);
  Port port;
  port.id = "P1";
  port.at = {1, 2};
  room.ports.push_back(port);
  plan.rooms.put(room);
  SewerConnection sewer;
  sewer.id = "S1";
  sewer.at = {40, 0};
  plan.sewers.put(sewer);
  plan.runs.put(freeRun("R1", {0, 0}, {10, 0}));
  return plan;
}

void expectNear(const std::optional<Point2>& got, Point2 want) {
  ASSERT_TRUE(got.has_value());
  EXPECT_NEAR(got->x, want.x, 1e-12);
  EXPECT_NEAR(got->y, want.y, 1e-12);
}

TEST(Locator, NamesWhatAnIdIs) {
  const Plan plan = smallPlan();
  const Locator where(plan);
  EXPECT_EQ(where.find("V1"), (ObjectPlace{ObjectKind::Vault, 0, 0}));
  EXPECT_EQ(where.find("V1-M1"), (ObjectPlace{ObjectKind::Manway, 0, 0}));
  EXPECT_EQ(where.find("V1-B1"), (ObjectPlace{ObjectKind::Baffle, 0, 0}));
  EXPECT_EQ(where.find("P1"), (ObjectPlace{ObjectKind::Port, 0, 0}));
  EXPECT_EQ(where.find("no such"), std::nullopt);
  EXPECT_EQ(where.vault("R1"), nullptr);
  EXPECT_EQ(where.roomOfPort("P1"), &plan.rooms[0]);
  EXPECT_EQ(where.vaultOfManway("V1-M1"), &plan.vaults[0]);
}

TEST(Locator, TurnsLocalEndsIntoSitePlaces) {
  const Plan plan = smallPlan();
  const Locator where(plan);
  expectNear(where.position(endOn(EndKind::Free, "", {3, 4})), {3, 4});
  // Local x of a vault turned by 90 degrees points north.
  expectNear(where.position(endOn(EndKind::Chamber, "V1", {1, 0.5})), {9.5, 21});
  expectNear(where.position(endOn(EndKind::Port, "P1", {0, 0})), {4, 3});
  expectNear(where.position(endOn(EndKind::Sewer, "S1", {0, 0})), {40, 0});
  expectNear(where.position(endOn(EndKind::Run, "R1", {4, 7})), {4, 0});
  expectNear(where.position(endOn(EndKind::Run, "R1", {14, 7})), {10, 0});
  EXPECT_EQ(where.position(endOn(EndKind::Basin, "V1", {0, 0})), std::nullopt);
}

TEST(Locator, SurvivesRunsThatHangOnEachOther) {
  Plan plan;
  for (int i = 0; i < 2; ++i) {
    sump::Run run = freeRun("R" + std::to_string(i), {0, 0}, {1, 0});
    run.from = endOn(EndKind::Run, "R" + std::to_string(1 - i), {0, 0});
    run.to = endOn(EndKind::Run, "R" + std::to_string(1 - i), {0, 0});
    plan.runs.put(run);
  }
  EXPECT_EQ(Locator(plan).centreline(plan.runs[0]), std::nullopt);
}

} // namespace
} // namespace sump
