// Digs, trenches, ladders and footings.

#include "core/geometry/outline_union.h"
#include "core/geometry/polygon.h"
#include "core/study/dig_surroundings.h"
#include "core/study/excavation.h"
#include "core/study/trench.h"
#include "core/study/trench_outline.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sump::test {
namespace {

/// One vault, floor 90 ft, on level ground at 96.5 ft: 7.5 ft deep to under its 6 in bed.
Plan onePit(SoilClass soil, double floor = 90) {
  Plan plan;
  plan.site.groundDefault = feet(96.5);
  plan.basis.earth.soil = soil;
  plan.basis.earth.protection = ProtectiveSystem::Sloped;
  plan.vaults.append(twoChamberVault("V1", {}, feet(floor)));
  return plan;
}

TEST(Excavation, SidesByTableB1) {
  // 29 CFR 1926 Subpart P App. B table B-1: run over rise A 3/4, B 1, C 1-1/2, rock vertical.
  const std::pair<SoilClass, double> table[] = {{SoilClass::StableRock, 0},
                                                {SoilClass::TypeA, 0.75},
                                                {SoilClass::TypeB, 1},
                                                {SoilClass::TypeC, 1.5}};
  for (const auto& [soil, slope] : table) {
    const EarthStudy earth = studyOf(onePit(soil)).earth;
    ASSERT_EQ(earth.pits.size(), 1u);
    EXPECT_NEAR(inFeet(*earth.pits[0].depth), 7.5, 1e-9);
    const double l = 15.5 + 15 * slope, w = 10 + 15 * slope; // 2 ft working space all round
    EXPECT_NEAR(area(*earth.pits[0].top), l * w * 0.09290304, 1e-6);
  }
}

TEST(Excavation, FrustumByHand) {
  // Type B, 1:1, 7.5 ft: 15.5 x 10 below, 30.5 x 25 above, 23 x 17.5 in the middle: prismoidal
  // rule.
  const EarthStudy earth = studyOf(onePit(SoilClass::TypeB)).earth;
  const double ft3 = 7.5 / 6 * (15.5 * 10 + 4 * 23 * 17.5 + 30.5 * 25);
  EXPECT_NEAR(earth.dug->value(), ft3 * 0.028316846592, 1e-6);
  EXPECT_NEAR(earth.bedding->value(), 155 * 0.5 * 0.028316846592, 1e-6);
  const double back = ft3 - 77.5 - 11.5 * 6 * 6;
  EXPECT_NEAR(earth.backfill->value(), back * 0.028316846592, 1e-6);
  EXPECT_NEAR(*earth.truckloads, std::ceil((ft3 - back) * 1.25 / 270), 1e-9);
  EXPECT_TRUE(*earth.protectionNeeded);
  EXPECT_FALSE(*earth.engineerNeeded);
}

TEST(Excavation, RisersTakeUpBackfill) {
  // Lid at 95.5 ft under ground at 96.5: 24 in risers, 30 in outside, 1 ft high; the one with its
  // rim at 96 ft 0.5 ft; the one that stands out of the ground 1 ft of it: 2.5 x pi/4 x 2.5^2 ft3.
  Plan plan = onePit(SoilClass::StableRock);
  const double bare = studyOf(plan).earth.pits[0].backfill->value();
  Vault vault = *plan.vaults.find("V1");
  vault.manways = {{"M1", ft(-3, 0), inches(24), std::nullopt, false},
                   {"M2", ft(1, 0), inches(24), feet(96), false},
                   {"M3", ft(4, 0), inches(24), feet(97), false}};
  plan.vaults.put(vault);
  const PitStudy pit = studyOf(plan).earth.pits[0];
  const double risers = 12.271846 * 0.028316846592;
  EXPECT_NEAR(pit.risers->value(), risers, 1e-7);
  EXPECT_NEAR(pit.backfill->value(), bare - risers, 1e-7);
}

TEST(Excavation, ALineOverALidAndThroughTheDigLiesInItsBackfill) {
  // Upright sides 2 ft beyond a vault of 11.5 ft: 2 x 2 ft of dig, 11.5 ft of lid, and of 40 ft the
  // rest in a trench. Its underside 6 in less 0.458 in of wall over the lid at 95.5 ft.
  Plan plan = onePit(SoilClass::StableRock);
  plan.runs.append(makeRun("R", Service::Overflow, "pvc-sch80", "6", freeEnd(ft(-20, 0), feet(96)),
                           freeEnd(ft(20, 0), feet(96))));
  const EarthStudy earth = studyOf(plan).earth;
  ASSERT_EQ(earth.backfilled.size(), 1u);
  EXPECT_EQ(earth.backfilled[0].run, "R");
  EXPECT_NEAR(inFeet(earth.backfilled[0].length), 4, 1e-9);
  EXPECT_NEAR(inFeet(earth.backfilled[0].overLid), 11.5, 1e-9);
  EXPECT_NEAR(inInches(*earth.backfilled[0].lidGap), 5.542, 1e-6);
  ASSERT_EQ(earth.trenches.size(), 1u);
  EXPECT_NEAR(inFeet(earth.trenches[0].length), 24.5, 1e-9);
}

TEST(Excavation, ALineAwayFromDigsHasNoneOfItsLengthInBackfill) {
  Plan plan = onePit(SoilClass::StableRock);
  plan.runs.append(makeRun("R", Service::Overflow, "pvc-sch80", "6", freeEnd(ft(-20, 30), feet(96)),
                           freeEnd(ft(20, 30), feet(96))));
  EXPECT_TRUE(studyOf(plan).earth.backfilled.empty());
}

TEST(Excavation, UnclassifiedIsTypeCAndDisturbedAtBestB) {
  EarthBasis earth;
  EXPECT_EQ(soilForSides(earth), SoilClass::TypeC);
  earth.soil = SoilClass::TypeA;
  earth.previouslyDisturbed = true;
  EXPECT_EQ(soilForSides(earth), SoilClass::TypeB);
}

TEST(Excavation, WithoutGroundNothingIsDecided) {
  Plan plan = onePit(SoilClass::TypeB);
  plan.site.groundDefault.reset();
  const EarthStudy earth = studyOf(plan).earth;
  EXPECT_FALSE(earth.dug);
  EXPECT_FALSE(earth.protectionNeeded);
  EXPECT_EQ(needsText(earth.deepest.needs), "ground levels");
}

TEST(Excavation, DeeperIsNeverSmaller) {
  for (SoilClass soil : {SoilClass::StableRock, SoilClass::TypeA, SoilClass::TypeC}) {
    double last = 0;
    for (double floor = 96; floor > 70; floor -= 0.25) {
      const double dug = studyOf(onePit(soil, floor)).earth.dug->value();
      EXPECT_GE(dug, last - 1e-9);
      last = dug;
    }
  }
}

TEST(Excavation, NeighboursShareOneDig) {
  Plan plan = onePit(SoilClass::TypeB);
  plan.vaults.append(twoChamberVault("V2", ft(0, 8), feet(90)));
  const EarthStudy earth = studyOf(plan).earth;
  ASSERT_EQ(earth.pits.size(), 1u);
  EXPECT_EQ(earth.pits[0].vaults.size(), 2u);
  // As one rectangle, 15.5 x 18 ft below.
  const double ft3 = 7.5 / 6 * (15.5 * 18 + 4 * 23 * 25.5 + 30.5 * 33);
  EXPECT_NEAR(earth.dug->value(), ft3 * 0.028316846592, 0.01);
  plan.vaults.put(twoChamberVault("V2", ft(0, 80), feet(90)));
  EXPECT_EQ(studyOf(plan).earth.pits.size(), 2u);
}

TEST(Excavation, UnionOfCrossingOutlines) {
  const Ring a = {{0, 0}, {4, 0}, {4, 2}, {0, 2}}, b = {{1, -1}, {2, -1}, {2, 3}, {1, 3}};
  EXPECT_NEAR(unionArea({a, b}), 10, 1e-6); // 8 + 4 - 2
  ASSERT_EQ(unionOutlines({a, b}).size(), 1u);
  EXPECT_NEAR(area(unionOutlines({a, b})[0]), 10, 1e-6);
  EXPECT_EQ(unionOutlines({a, {{9, 9}, {10, 9}, {10, 10}}}).size(), 2u);
}

// A frame of four bars, 6 m square outside, with a hole of 4 m.
TEST(Excavation, UnionHasTheEdgesOfItsHoles) {
  const std::vector<Ring> edges = unionEdges({{{0, 0}, {6, 0}, {6, 1}, {0, 1}},
                                              {{0, 5}, {6, 5}, {6, 6}, {0, 6}},
                                              {{0, 0}, {1, 0}, {1, 6}, {0, 6}},
                                              {{5, 0}, {6, 0}, {6, 6}, {5, 6}}});
  ASSERT_EQ(edges.size(), 2u);
  EXPECT_NEAR(area(edges[0]), 36, 1e-6);
  EXPECT_NEAR(area(edges[1]), 16, 1e-6);
}

TEST(Excavation, LaddersWithinTwentyFiveFeet) {
  // 29 CFR 1926.651(c)(2): no more than 25 ft of lateral travel, so one for each 50 ft begun.
  EXPECT_EQ(laddersFor(10, 25), 1);
  EXPECT_EQ(laddersFor(50, 25), 1);
  EXPECT_EQ(laddersFor(50.5, 25), 2);
  Plan plan = onePit(SoilClass::TypeB);
  EXPECT_FALSE(studyOf(plan).earth.pits[0].egress.farthest);
  plan.basis.earth.ladders = {ft(500, 0), ft(0, 0)};
  const Egress egress = studyOf(plan).earth.pits[0].egress;
  EXPECT_TRUE(egress.needed);
  EXPECT_EQ(egress.ladders, std::vector<int>{2}) << "by their places in the plan's list";
  EXPECT_NEAR(inFeet(*egress.farthest), std::hypot(7.75, 5), 1e-9);
}

TEST(Excavation, FortyFiveDegreesFromAFooting) {
  EXPECT_NEAR(belowFootingPlane(10, 7, 2, 0), 1, 1e-12);
  EXPECT_NEAR(belowFootingPlane(10, 7, 4, 0), -1, 1e-12);
  Plan plan = onePit(SoilClass::StableRock);
  plan.buildings.append({"B1", "", {ft(-20, 9), ft(20, 9), ft(20, 30), ft(-20, 30)}, {}, feet(95)});
  const auto near = studyOf(plan).earth.pits[0]; // toe at y = 5 ft, 4 ft off, 6 ft below
  ASSERT_EQ(near.footings.size(), 1u);
  EXPECT_NEAR(inFeet(*near.footings[0].below), 2, 1e-6);
  EXPECT_TRUE(near.clashes.empty());
  Building unknown = plan.buildings[0];
  unknown.footing.reset();
  plan.buildings.put(unknown);
  EXPECT_FALSE(studyOf(plan).earth.pits[0].footings.at(0).below);
  plan.basis.earth.soil = SoilClass::TypeC;
  const auto wide = studyOf(plan).earth.pits[0];
  ASSERT_EQ(wide.clashes.size(), 1u);
  EXPECT_EQ(wide.clashes[0].kind, DigClashKind::Building);
}

TEST(Excavation, SpoilHeapFromTheEdge) {
  Plan plan = onePit(SoilClass::StableRock);
  EXPECT_FALSE(studyOf(plan).earth.spoilClear);
  plan.basis.earth.spoil = {ft(-5, 8), ft(5, 8), ft(5, 20), ft(-5, 20)};
  EXPECT_NEAR(inFeet(*studyOf(plan).earth.spoilClear), 3, 1e-9);
}

TEST(Excavation, SpoilHeapHoldsWhatIsKeptForBackfill) {
  Plan plan = onePit(SoilClass::StableRock);
  EXPECT_FALSE(studyOf(plan).earth.keptHeight);
  plan.basis.earth.spoil = {ft(-5, 8), ft(5, 8), ft(5, 20), ft(-5, 20)};
  const EarthStudy earth = studyOf(plan).earth;
  const double swell = 1 + earth.figures.swell;
  EXPECT_NEAR(earth.kept->value(), earth.backfill->value() * swell, 1e-9);
  EXPECT_NEAR(earth.kept->value() + earth.surplus->value(), earth.dug->value() * swell, 1e-9);
  EXPECT_NEAR(inFeet(*earth.keptHeight),
              earth.kept->value() / (120 * kMetresPerFoot * kMetresPerFoot) / kMetresPerFoot, 1e-9);
}

// A make-up's trench begins on the very line that it taps.
TEST(Excavation, ATrenchThatBeginsOnALineBaresIt) {
  Plan plan = onePit(SoilClass::StableRock);
  plan.runs.append(makeRun("R", Service::MakeUp, "pvc-sch80", "1", freeEnd(ft(100, 0), feet(93)),
                           freeEnd(ft(200, 0), feet(93))));
  Utility line;
  line.id = "U";
  line.path = {ft(99.9, -20), ft(99.9, 20)};
  plan.utilities.append(line);
  EXPECT_TRUE(studyOf(plan).earth.trenches.at(0).clashes.empty()) << "an inch and more off";
  line.diameter = inches(4);
  plan.utilities.put(line);
  const auto clashes = studyOf(plan).earth.trenches.at(0).clashes;
  ASSERT_EQ(clashes.size(), 1u);
  EXPECT_EQ(clashes[0].object, "U");
}

TEST(Trench, WidthByOutsideDiameter) {
  // ASTM D2321 practice, from memory: the greater of OD + 16 in and 1.25 OD + 12 in.
  const Limits& limits = builtinCatalog().limits;
  EXPECT_NEAR(inInches(trenchWidth(inches(6.625), limits)), 22.625, 1e-9);
  EXPECT_NEAR(inInches(trenchWidth(inches(20), limits)), 37, 1e-9);
}

TEST(Trench, VolumesOfAStraightRunByHand) {
  // 100 ft of 6 in Sch 80 (6.625 in OD, 0.432 in wall) at invert 93 ft under 96.5 ft: depth 3.5 ft
  // + (0.432 x ~1 + 4) in, under 5 ft, so upright. Plain arithmetic.
  Plan plan;
  plan.site.groundDefault = feet(96.5);
  plan.runs.append(makeRun("R", Service::Overflow, "pvc-sch80", "6", freeEnd(ft(0, 0), feet(93)),
                           freeEnd(ft(100, 0), feet(93))));
  const Study study = studyOf(plan);
  ASSERT_EQ(study.earth.trenches.size(), 1u);
  const TrenchStudy& trench = study.earth.trenches[0];
  const double wall =
      (inFeet(study.runs[0].outsideDiameter) - inFeet(study.runs[0].insideDiameter)) / 2;
  const double depth = 3.5 + wall + 4.0 / 12, width = 22.625 / 12, od = 6.625 / 12;
  const double ft3 = 0.028316846592;
  EXPECT_NEAR(inFeet(trench.depth), depth, 1e-9);
  EXPECT_NEAR(inFeet(trench.length), 100, 1e-9);
  EXPECT_NEAR(trench.dug.value(), 100 * width * depth * ft3, 1e-9);
  EXPECT_NEAR(trench.bedding.value(), 100 * width * 4 / 12 * ft3, 1e-9);
  EXPECT_NEAR(trench.pipeZone.value(), 100 * (width * (od + 1) - kPi / 4 * od * od) * ft3, 1e-9);
  EXPECT_FALSE(trench.egress.needed);
}

// Below the floor of a building a run is buried as outside; over the floor of a cellar it is not.
TEST(Trench, GoesOnBelowTheFloorOfABuilding) {
  Plan plan;
  plan.site.groundDefault = feet(96.5);
  plan.runs.append(makeRun("R", Service::Overflow, "pvc-sch80", "6", freeEnd(ft(0, 0), feet(93)),
                           freeEnd(ft(100, 0), feet(93))));
  const double open = studyOf(plan).earth.trenches.at(0).dug.value();
  Building building{"B1", "", {ft(20, -9), ft(50, -9), ft(50, 9), ft(20, 9)}, feet(97), feet(92)};
  plan.buildings.append(building);
  const TrenchStudy under = studyOf(plan).earth.trenches.at(0);
  EXPECT_NEAR(inFeet(under.length), 100, 1e-9);
  EXPECT_EQ(under.stretches.size(), 3u) << "its depth steps at both walls";
  const double ft3 = 0.028316846592; // the floor lies half a foot over the ground, for 30 ft
  EXPECT_NEAR(under.dug.value() - open, 30 * 0.5 * 22.625 / 12 * ft3, 1e-9);
  EXPECT_TRUE(under.clashes.empty()) << "it is meant to go there";
  building.floor = feet(92.9);
  plan.buildings.put(building);
  EXPECT_NEAR(inFeet(studyOf(plan).earth.trenches.at(0).length), 70, 1e-9) << "in a cellar";
  building.floor.reset();
  plan.buildings.put(building);
  EXPECT_NEAR(studyOf(plan).earth.trenches.at(0).dug.value(), open, 1e-9) << "floor not known";
}

// Both ways: the line that comes out of the vault and the one that goes in.
TEST(Trench, EndsAtTheUprightSideOfADig) {
  Plan plan = onePit(SoilClass::TypeB);
  plan.basis.earth.protection = ProtectiveSystem::Shored;
  const auto chamber = [](int number, Point2 at) { return inChamber("V1", number, at, feet(94)); };
  plan.runs.append(makeRun("VT-1", Service::Vent, "pvc-sch80", "3", chamber(2, ft(3, 1)),
                           freeEnd(ft(30, 1), feet(94))));
  plan.runs.append(makeRun("IN-1", Service::Inlet, "pvc-sch80", "6", freeEnd(ft(-30, 0), feet(94)),
                           chamber(1, ft(-3, 0))));
  const EarthStudy earth = studyOf(plan).earth;
  ASSERT_EQ(earth.pits.size(), 1u);
  ASSERT_EQ(earth.trenches.size(), 2u);
  const double edge = kMetresPerFoot * 15.5 / 2; // with 2 ft of working space
  for (const TrenchStudy& trench : earth.trenches) {
    ASSERT_EQ(trench.stretches.size(), 1u) << trench.run;
    double nearest = 1e9;
    for (const TrenchPoint& p : trench.stretches[0]) {
      nearest = std::min(nearest, std::abs(p.at.x));
      EXPECT_GT(p.depth, 0.5) << trench.run;
    }
    EXPECT_NEAR(nearest, edge, 1e-6) << trench.run;
  }
}

// The ground may rise behind the sheeting: the dig's own grade says nothing of it.
TEST(Trench, IsAsDeepAsTheGroundBesideADig) {
  Plan plan = onePit(SoilClass::StableRock);
  for (double x : {-60.0, 10.0})
    for (double y : {-60.0, 60.0})
      plan.spots.append(spot("E" + std::to_string(plan.spots.size()), ft(x, y), feet(96.5)));
  plan.spots.append(spot("E8", ft(60, -60), feet(101.5))); // a foot in ten
  plan.spots.append(spot("E9", ft(60, 60), feet(101.5)));
  plan.runs.append(makeRun("R", Service::Vent, "pvc-sch80", "2",
                           inChamber("V1", 2, ft(3, 0), feet(94)), freeEnd(ft(30, 0), feet(94))));
  const Study study = studyOf(plan);
  const TrenchStretch& stretch = study.earth.trenches.at(0).stretches.at(0);
  for (const TrenchPoint& p : stretch)
    EXPECT_NEAR(p.depth, *study.ground.elevation(p.at) - p.bottom, 1e-9) << p.at.x;
}

TEST(Trench, BesideAPitIsToldUnlessItGoesIn) {
  Plan plan = onePit(SoilClass::StableRock); // from y = -5 to 5 ft
  const auto clashes = [&](double y, double endsAt) {
    plan.runs = {};
    plan.runs.append(makeRun("R", Service::Vent, "pvc-sch80", "2", freeEnd(ft(-20, y), feet(94)),
                             freeEnd(ft(20, endsAt), feet(94))));
    return studyOf(plan).earth.pits.at(0).clashes;
  };
  // Half of 2.375 + 16 in.
  EXPECT_TRUE(clashes(5.77, 5.77).empty());
  ASSERT_EQ(clashes(5.76, 5.76).size(), 1u);
  EXPECT_EQ(clashes(5.76, 5.76)[0].kind, DigClashKind::Trench);
  ASSERT_EQ(clashes(5.76, 0).size(), 1u);
  EXPECT_EQ(clashes(5.76, 0)[0].kind, DigClashKind::Run) << "through the pit";
}

/// 40 ft east and 40 ft north, 6.5 ft and more deep, its sides upright: 22.625 in wide.
Plan bentTrench(std::vector<Point2> ladders) {
  Plan plan;
  plan.site.groundDefault = feet(96.5);
  plan.basis.earth.soil = SoilClass::StableRock;
  plan.basis.earth.ladders = std::move(ladders);
  plan.runs.append(makeRun("R", Service::Overflow, "pvc-sch80", "6", freeEnd(ft(0, 0), feet(90)),
                           freeEnd(ft(40, 40), feet(90)), {{ft(40, 0), {}}}));
  return plan;
}

// 29 CFR 1926.651(c)(2): lateral travel, in the trench and not over the ground between its legs.
TEST(Trench, TheWayToALadderFollowsTheBends) {
  const auto way = [](std::vector<Point2> ladders) {
    const Egress egress = studyOf(bentTrench(std::move(ladders))).earth.trenches.at(0).egress;
    EXPECT_TRUE(egress.needed);
    return egress.farthest ? inFeet(*egress.farthest) : -1;
  };
  EXPECT_NEAR(way({ft(0, 0)}), 80, 1e-9) << "56.6 ft straight across";
  EXPECT_NEAR(way({ft(40, 0)}), 40, 1e-9);
  EXPECT_NEAR(way({ft(0, 0), ft(40, 30)}), 35, 1e-9) << "half of 70 ft between the two";
  EXPECT_NEAR(way({ft(30, 0.5)}), 50, 1e-9) << "30 ft back, 10 + 40 ft on";
  EXPECT_NEAR(way({ft(40.8, -0.8)}), 40, 1e-9) << "in the outer corner of the bend";
  EXPECT_EQ(way({ft(41.2, -0.8)}), -1) << "outside";
}

TEST(Trench, SidesMeetAtABend) {
  const TrenchPoint a{{0, 0}, 0, 2, 2}, b{{10, 0}, 0, 2, 2}, left{{10, 10}, 0, 2, 2};
  const TrenchPoint right{{10, -10}, 0, 2, 2}, on{{20, 0}, 0, 2, 2};
  EXPECT_TRUE(trenchCorner(a, b, on).empty());
  EXPECT_TRUE(contains(trenchCorner(a, b, left), {10.9, -0.9}));
  EXPECT_TRUE(contains(trenchCorner(a, b, right), {10.9, 0.9}));
  // Two arms of 10 x 2 that share 1 x 1 inside the bend, and 1 x 1 outside it.
  EXPECT_NEAR(unionArea(trenchOutlines({a, b, left})), 20 + 20 - 1 + 1, 1e-3);
}

TEST(Excavation, ARoomThatNoBuildingHoldsHasAFootingToo) {
  Plan plan = onePit(SoilClass::StableRock);
  EquipmentRoom room;
  room.id = "ER";
  room.name = "Equipment room";
  room.corner = ft(-6, 9);
  room.length = room.width = feet(12);
  plan.rooms.append(room);
  const auto alone = studyOf(plan).earth.pits.at(0).footings;
  ASSERT_EQ(alone.size(), 1u);
  EXPECT_EQ(needsText(alone[0].below.needs), "footing level of Equipment room");
  plan.buildings.append({"B1", "", {ft(-7, 9), ft(7, 9), ft(7, 22), ft(-7, 22)}, {}, feet(95)});
  const auto held = studyOf(plan).earth.pits.at(0).footings;
  ASSERT_EQ(held.size(), 1u);
  EXPECT_EQ(held[0].building, "B1");
}

} // namespace
namespace {

TrenchStudy trenchOf(const char* run, std::vector<Point2> line, double width) {
  TrenchStudy trench;
  trench.run = run;
  trench.length = metres(planLength(line));
  trench.stretches.emplace_back();
  for (Point2 p : line)
    trench.stretches.back().push_back({p, 0, 1, width});
  return trench;
}

} // namespace

// Half a metre wide, 0.7 m apart: 0.2 m of ground is left between them.
TEST(Trenches, NextToEachOtherAreDugAsOne) {
  const TrenchStudy a = trenchOf("A", {{0, 0}, {4, 0}}, 0.5);
  const TrenchStudy beside = trenchOf("B", {{0, 0.7}, {6, 0.7}}, 0.5);
  EXPECT_TRUE(dugTogether(a, beside));
  EXPECT_TRUE(dugTogether(beside, a));
  EXPECT_FALSE(dugTogether(a, trenchOf("B", {{0, 0.85}, {6, 0.85}}, 0.5))) << "0.35 m stand";
  EXPECT_FALSE(dugTogether(a, trenchOf("B", {{2, -3}, {2, 3}}, 0.5))) << "they cross";
}

// 3 m of 12 m lie 0.1 m apart, and no end is near the other.
TEST(Trenches, SideBySideForAWhileAreDugAsOneThere) {
  const TrenchStudy a = trenchOf("A", {{0, 0}, {12, 0}}, 0.5);
  const TrenchStudy b = trenchOf("B", {{6, 8}, {6, 0.6}, {9, 0.6}, {9, 8}}, 0.5);
  EXPECT_TRUE(dugTogether(a, b));
  EXPECT_TRUE(dugTogether(b, a));
  EXPECT_FALSE(dugTogether(a, trenchOf("B", {{6, -6}, {10, 6}}, 0.5))) << "they cross at a slant";
}

// In one line, with 0.2 m of ground between their ends, then 0.35 m; as a branch, with 0.05 m and
// 0.35 m to the side of the other.
TEST(Trenches, OfWhichOneEndsAtTheOtherAreDugAsOne) {
  const TrenchStudy a = trenchOf("A", {{0, 0}, {12, 0}}, 0.5);
  const TrenchStudy on = trenchOf("B", {{16, 0}, {12.2, 0}}, 0.5);
  EXPECT_TRUE(dugTogether(a, on));
  EXPECT_TRUE(dugTogether(on, a));
  EXPECT_FALSE(dugTogether(a, trenchOf("B", {{12.35, 0}, {16, 0}}, 0.5)));
  EXPECT_TRUE(dugTogether(a, trenchOf("B", {{12, 0.3}, {12, 4}}, 0.5))) << "round a corner";
  for (const double gap : {0.05, 0.35}) {
    const double x = 12 + gap + 0.25;
    EXPECT_EQ(dugTogether(a, trenchOf("B", {{x, -40}, {x, 40}}, 0.5)), gap < 0.3) << "a branch";
    EXPECT_EQ(dugTogether(a, trenchOf("B", {{x, -4}, {x, 4}}, 0.5)), gap < 0.3) << "shorter";
  }
}

TEST(Trenches, ALineAloneIsInNoOtherTrench) {
  const TrenchStudy a = trenchOf("A", {{0, 0}, {4, 0}}, 0.5);
  const Polyline alone = lineAlone(a, {a, trenchOf("B", {{1, -3}, {1, 3}}, 0.5)}, {});
  ASSERT_EQ(alone.size(), 2u);
  EXPECT_NEAR(alone[0].x, 1.25, 0.1001);
  EXPECT_GT(alone[0].x, 1.25);
  EXPECT_NEAR(alone[1].x, 4, 1e-9);
  EXPECT_EQ(lineAlone(a, {a}, {}).size(), 2u);
  EXPECT_NEAR(planLength(lineAlone(a, {a, a, trenchOf("B", {{-1, 0}, {5, 0}}, 0.5)}, {})), 4, 1e-9)
      << "all of it where nothing is its own";
}

TEST(Trenches, ALineAloneIsOutdoorsWhereItCanBe) {
  const TrenchStudy a = trenchOf("A", {{0, 0}, {4, 0}}, 0.5);
  const TrenchStudy over = trenchOf("B", {{-1, 0}, {1, 0}}, 0.5);
  const std::vector<Ring> roof = {{{1, -2}, {9, -2}, {9, 2}, {1, 2}}};
  // Its first metre lies in the other trench, the rest under the roof.
  const Polyline line = lineAlone(a, {a, over}, roof);
  ASSERT_GE(line.size(), 2u);
  EXPECT_NEAR(line.front().x, 0, 1e-9);
  EXPECT_NEAR(line.back().x, 0.95, 0.0501);
  EXPECT_NEAR(planLength(lineAlone(a, {a}, {{{-1, -2}, {9, -2}, {9, 2}, {-1, 2}}})), 4, 1e-9)
      << "under a roof where all of it is";
}

} // namespace sump::test
