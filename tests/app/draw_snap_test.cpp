// What the pointer catches, typed places and gaps, without a window. Expected values by hand from
// the coordinates beside them.

#include "app/canvas/gaps.h"
#include "app/canvas/snap_field.h"
#include "app/canvas/tools/snap_words.h"
#include "app/canvas/typed_point.h"

#include <gtest/gtest.h>

namespace sump {

namespace {

/// A square of 10 m with a line across it.
SnapField square() {
  std::vector<SnapPoint> points = {
      {{0, 0}, SnapKind::End, "Q"},    {{10, 0}, SnapKind::End, "Q"},
      {{10, 10}, SnapKind::End, "Q"},  {{0, 10}, SnapKind::End, "Q"},
      {{5, 0}, SnapKind::Middle, "Q"}, {{5, 5}, SnapKind::Centre, "Q"}};
  std::vector<SnapEdge> edges = {{{0, 0}, {10, 0}, "Q"},
                                 {{10, 0}, {10, 10}, "Q"},
                                 {{10, 10}, {0, 10}, "Q"},
                                 {{0, 10}, {0, 0}, "Q"},
                                 {{3, -5}, {3, 15}, "L"}};
  return {std::move(points), std::move(edges)};
}

Snapped at(Point2 p, double grid = 0) {
  SnapQuery query;
  query.at = p;
  query.reach = 0.5;
  query.grid = grid;
  return square().snap(query);
}

} // namespace

TEST(Snap, CatchesEachKindAndSaysWhich) {
  EXPECT_EQ(at({0.2, -0.3}).kind, SnapKind::End);
  EXPECT_EQ(at({0.2, -0.3}).at, (Point2{0, 0}));
  EXPECT_EQ(at({5.1, 0.2}).kind, SnapKind::Middle);
  EXPECT_EQ(at({5.1, 4.8}).kind, SnapKind::Centre);
  EXPECT_EQ(at({3.2, 0.2}).kind, SnapKind::Crossing);
  EXPECT_NEAR(at({3.2, 0.2}).at.x, 3, 1e-9);
  EXPECT_EQ(at({7.3, 0.1}).kind, SnapKind::Face);
  EXPECT_EQ(at({7.3, 0.1}).at, (Point2{7.3, 0}));
  // East of the corner (10, 0): level with it, the other coordinate on the grid.
  const Snapped line = at({14.4, 0.1}, 1);
  EXPECT_EQ(line.kind, SnapKind::Aligned);
  EXPECT_EQ(line.at, (Point2{14, 0}));
  ASSERT_EQ(line.guides.size(), 1u);
  EXPECT_EQ(line.guides[0].at, (Point2{10, 0}));
  EXPECT_EQ(at({14.4, 2.3}, 1).kind, SnapKind::Grid);
  EXPECT_EQ(at({14.4, 2.3}).kind, SnapKind::None);
}

TEST(Snap, MeetsAnEdgeSquarelyFromTheLastCorner) {
  SnapQuery query;
  query.at = {9.8, 7.2};
  query.reach = 0.5;
  query.last = Point2{6.5, 7.4};
  const Snapped found = square().snap(query);
  EXPECT_EQ(found.kind, SnapKind::Perpendicular);
  EXPECT_EQ(found.at, (Point2{10, 7.4}));
}

TEST(Snap, StraightKeepsTheDirectionAndStillMeetsFaces) {
  SnapQuery query;
  query.at = {9.7, 7.1};
  query.reach = 0.5;
  query.grid = 1;
  query.straight = true;
  query.last = Point2{5, 7.5};
  EXPECT_EQ(square().snap(query).at, (Point2{10, 7.5}));
  query.at = {8.3, 7.1};
  const Snapped onStep = square().snap(query);
  EXPECT_EQ(onStep.at, (Point2{8, 7.5})); // 3.3 m along, on the grid 3 m
}

TEST(Snap, WhatIsDraggedDoesNotCatchItself) {
  const std::set<Id> own = {"Q"};
  SnapQuery query;
  query.at = {0.1, 0.1};
  query.reach = 0.5;
  query.without = &own;
  EXPECT_EQ(square().snap(query).kind, SnapKind::None);
  Point2 shift;
  query.without = nullptr;
  const auto caught = square().snapAny({{20, 20}, {10.3, 9.9}}, query, shift);
  ASSERT_TRUE(caught);
  EXPECT_EQ(caught->at, (Point2{10, 10}));
  EXPECT_NEAR(shift.x, -0.3, 1e-12);
}

TEST(Snap, APlansVaultGivesCornersChambersAndManways) {
  Vault vault;
  vault.id = "V-1";
  vault.length = metres(4);
  vault.width = metres(2);
  vault.wall = metres(0.2);
  Plan plan;
  plan.vaults.append(vault);
  SnapQuery query;
  query.reach = 0.1;
  query.at = {2.04, 0.97};
  EXPECT_EQ(snapField(plan).snap(query).at, (Point2{2, 1}));
  query.at = {0.02, 0.03};
  EXPECT_EQ(snapField(plan).snap(query).kind, SnapKind::Centre);
  EXPECT_TRUE(gripPoints(plan, {"V-2"}).empty());
  EXPECT_FALSE(gripPoints(plan, {"V-1"}).empty());
}

TEST(SnapWords, SayOfWhatAndWithWhat) {
  Plan plan;
  Vault vault;
  vault.id = "V-1";
  vault.length = metres(4);
  vault.width = metres(2);
  plan.vaults.append(vault);
  Pavement yard;
  yard.id = "PV-1";
  plan.pavements.append(yard);
  sump::Run run;
  run.id = "WW-1";
  run.from.at = {10, 0};
  run.vertices = {{{10, 5}, {}}};
  run.to.at = {15, 5};
  plan.runs.append(run);
  const auto words = [&](Point2 at, SnapKind kind, const Id& owner) {
    return snapWords(plan, {at, kind, owner, {}});
  };
  EXPECT_EQ(words({2, 1}, SnapKind::End, "V-1"), "corner of V-1");
  EXPECT_EQ(words({1, 1}, SnapKind::Face, "V-1"), "wall of V-1");
  EXPECT_EQ(words({0, 0}, SnapKind::Centre, "V-1"), "centre of V-1");
  EXPECT_EQ(words({1, 0}, SnapKind::Centre, "V-1"), "middle of a chamber of V-1");
  EXPECT_EQ(words({3, 3}, SnapKind::Face, "PV-1"), "edge of PV-1");
  EXPECT_EQ(words({10, 2}, SnapKind::Face, "WW-1"), "pipe WW-1");
  EXPECT_EQ(words({10, 0}, SnapKind::End, "WW-1"), "end of WW-1");
  EXPECT_EQ(words({10, 5}, SnapKind::End, "WW-1"), "corner of WW-1");
  EXPECT_EQ(words({3, 3}, SnapKind::Grid, ""), "");
  const Snapped both{
      {2, 5}, SnapKind::Aligned, {}, {{{2, 1}, SnapKind::End, "V-1"}, {{7, 5}, SnapKind::End, {}}}};
  EXPECT_EQ(snapWords(plan, both), "in line with corner of V-1 and the last corner");
}

TEST(TypedPoint, LengthAndBearingEastAndNorth) {
  const Point2 last{10, 20}, pointer{30, 20};
  const auto east = placeOf({5.0, {}, {}, {}}, last, pointer);
  EXPECT_NEAR(east->x, 15, 1e-12);
  const auto south = placeOf({5.0, kPi, {}, {}}, last, pointer);
  EXPECT_NEAR(south->y, 15, 1e-12);
  EXPECT_EQ(*placeOf({{}, {}, 7.0, {}}, last, pointer), (Point2{7, 20}));
  // North-east until 14 east: 4 m over, 4 m up.
  const auto slanted = placeOf({{}, kPi / 4, 14.0, {}}, last, pointer);
  EXPECT_NEAR(slanted->y, 24, 1e-9);
  EXPECT_FALSE(placeOf({{}, kPi / 4, 3.0, {}}, last, pointer)) << "it never gets that far west";
  // 5 m long and 13 east: 3 over, 4 north or south; the pointer is not south.
  EXPECT_NEAR(placeOf({5.0, {}, 13.0, {}}, last, pointer)->y, 24, 1e-9);
  EXPECT_FALSE(placeOf({5.0, {}, {}, {}}, std::nullopt, pointer));
}

TEST(Bearing, ReadsAzimuthAndQuadrant) {
  EXPECT_NEAR(*parseBearing("90").value, kPi / 2, 1e-12);
  EXPECT_NEAR(*parseBearing("S 30 W").value, 210 * kPi / 180, 1e-12);
  EXPECT_NEAR(*parseBearing("n45e").value, kPi / 4, 1e-12);
  EXPECT_NEAR(*parseBearing("W").value, 1.5 * kPi, 1e-12);
  EXPECT_FALSE(parseBearing("N 100 E"));
  EXPECT_FALSE(parseBearing("up"));
  EXPECT_EQ(printBearing(bearingOf({0, 0}, {1, 1})), "N 45.0° E");
  EXPECT_EQ(printBearing(bearingOf({0, 0}, {-1, -2})), "S 26.6° W");
  EXPECT_EQ(printBearing(0), "N");
}

TEST(Gaps, AreShortestAndNearestFirst) {
  Plan plan;
  for (const auto& [id, x] : {std::pair{"V-1", 0.0}, {"V-2", 7.0}, {"V-3", 20.0}}) {
    Vault vault;
    vault.id = id;
    vault.length = metres(4);
    vault.width = metres(2);
    vault.centre = {x, 0};
    plan.vaults.append(vault);
  }
  const std::vector<Gap> gaps = nearestGaps(plan, {"V-1"}, 5);
  ASSERT_EQ(gaps.size(), 2u);
  EXPECT_EQ(gaps[0].neighbour, "V-2");
  EXPECT_NEAR(gaps[0].distance, 3, 1e-12);
  EXPECT_NEAR(gaps[1].distance, 16, 1e-12);
}

} // namespace sump
