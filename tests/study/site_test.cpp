// Shells, ground, cover, holes and high pockets: what a plan means on its site.

#include "core/study/context.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

TEST(Ground, TheDefaultLevelStandsInOnlyWhereNoSpotWasShot) {
  Plan plan;
  EXPECT_TRUE(studyOf(plan).ground.empty());
  plan.site.groundDefault = metres(30);
  EXPECT_NEAR(*studyOf(plan).ground.elevation({500, -500}), 30, 1e-12);
  plan.spots.put(spot("S", {0, 0}, metres(31)));
  EXPECT_NEAR(*studyOf(plan).ground.elevation({500, -500}), 31, 1e-12);
}

TEST(Shells, LevelsFollowTheFloor) {
  Plan plan;
  plan.vaults.put(twoChamberVault("V", ft(0, 0), feet(90)));
  const VaultStudy vault = studyOf(plan).vaults[0];
  EXPECT_NEAR(inFeet(vault.underside), 89.5, 1e-9);
  EXPECT_NEAR(inFeet(vault.lidUnderside), 95, 1e-9);
  EXPECT_NEAR(inFeet(vault.lidTop), 95.5, 1e-9);
  EXPECT_FALSE(vault.cover) << "no ground is known";
  EXPECT_EQ(vault.position, 1);
}

TEST(Shells, TrafficPavementAboveIsNamed) {
  Plan plan;
  plan.vaults.put(twoChamberVault("V", ft(0, 0), feet(90)));
  const Ring over = {ft(5, -10), ft(20, -10), ft(20, 10), ft(5, 10)};
  plan.pavements.put({"P", "", over, false});
  EXPECT_EQ(studyOf(plan).vaults[0].trafficPavement, "");
  plan.pavements.put({"P", "", over, true});
  EXPECT_EQ(studyOf(plan).vaults[0].trafficPavement, "P");
  plan.pavements.put({"P", "", {ft(5.75, -10), ft(20, -10), ft(20, 10), ft(5.75, 10)}, true});
  EXPECT_EQ(studyOf(plan).vaults[0].trafficPavement, "") << "touching is not under";
}

TEST(Shells, AManwayOverABaffleServesNoChamber) {
  Plan plan;
  Vault vault = twoChamberVault("V", ft(0, 0), feet(90));
  vault.manways = {{"M", ft(0, 0), inches(24), feet(95), false}};
  plan.vaults.put(vault);
  const ManwayStudy manway = studyOf(plan).vaults[0].manways[0];
  EXPECT_EQ(manway.chamber, 0);
  EXPECT_NEAR(inFeet(*manway.riser), -0.5, 1e-9) << "the lid stands proud of the rim";
}

sump::Run buried(Point2 from, Point2 to, double invert) {
  return makeRun("R", Service::Product, "pvc-sch80", "2", freeEnd(from, metres(invert)),
                 freeEnd(to, metres(invert)));
}
/// Outside top of 2 in Sch 80 over its invert: (1.913 + 2.375) / 2 in (ASTM D1785).
constexpr double kCrown = 2.144 * kMetresPerInch;

TEST(Cover, IsGradeLessCrown) {
  Plan plan;
  plan.site.groundDefault = metres(10);
  plan.runs.put(buried({0, 0}, {20, 0}, 9));
  const RunStudy run = studyOf(plan).runs[0];
  EXPECT_NEAR(inMetres(run.leastCover->cover), 1 - kCrown, 1e-9);
  EXPECT_FALSE(run.leastTrafficCover);
}

TEST(Cover, FindsTheBottomOfADitchBetweenItsLooks) {
  // A V-shaped ditch 1 m deep with its bottom at x = 7.3, 0.6 m wide.
  Plan plan;
  int n = 0;
  for (const auto& [x, z] :
       {std::pair(-5.0, 10.0), {7.0, 10.0}, {7.3, 9.5}, {7.6, 10.0}, {25.0, 10.0}}) {
    for (const double y : {-5.0, 5.0})
      plan.spots.put(spot("S" + std::to_string(n++), {x, y}, metres(z)));
  }
  plan.runs.put(buried({0, 0}, {20, 0}, 9));
  const CoverCheck least = *studyOf(plan).runs[0].leastCover;
  EXPECT_NEAR(inMetres(least.cover), 0.5 - kCrown, 0.02);
  EXPECT_NEAR(least.at.x, 7.3, 0.02);
}

TEST(Cover, BeginsAtTheWallOfAStructure) {
  // Ground rises away from the building, so the least cover is right at its wall.
  Plan plan;
  plan.spots.put(spot("S1", {0, -50}, metres(10)));
  plan.spots.put(spot("S2", {0, 50}, metres(10)));
  plan.spots.put(spot("S3", {50, 0}, metres(15)));
  plan.buildings.put(
      {"B", "", {{-5, -5}, {3.3, -5}, {3.3, 5}, {-5, 5}}, std::nullopt, std::nullopt});
  plan.runs.put(buried({0, 0}, {20, 0}, 9));
  const CoverCheck least = *studyOf(plan).runs[0].leastCover;
  EXPECT_NEAR(least.at.x, 3.3, 1e-6);
  EXPECT_NEAR(inMetres(least.cover), 1.33 - kCrown, 1e-6);
}

TEST(Cover, UnderTrafficIsKeptApart) {
  Plan plan;
  plan.spots.put(spot("S1", {0, -50}, metres(10)));
  plan.spots.put(spot("S2", {0, 50}, metres(10)));
  plan.spots.put(spot("S3", {50, 0}, metres(15)));
  plan.pavements.put({"P", "", {{10, -5}, {15, -5}, {15, 5}, {10, 5}}, true});
  plan.runs.put(buried({0, 0}, {20, 0}, 9));
  const RunStudy run = studyOf(plan).runs[0];
  EXPECT_NEAR(run.leastCover->at.x, 0, 1e-9);
  EXPECT_NEAR(run.leastTrafficCover->at.x, 10, 1e-6);
  EXPECT_NEAR(inMetres(run.leastTrafficCover->cover), 2 - kCrown, 1e-6);
}

TEST(Cover, IsNotLookedForInsideVaultsOrWithoutGround) {
  Plan plan;
  plan.vaults.put(twoChamberVault("V", {0, 0}, metres(8)));
  plan.runs.put(buried({-1, 0}, {1, 0}, 9));
  EXPECT_FALSE(studyOf(plan).runs[0].leastCover);
  plan.site.groundDefault = metres(10);
  EXPECT_FALSE(studyOf(plan).runs[0].leastCover);
}

Plan vaultAndRun(const sump::Run& run, double angle = 0) {
  Plan plan;
  plan.vaults.put(twoChamberVault("V", ft(0, 0), feet(90), degrees(angle)));
  plan.runs.put(run);
  return plan;
}

sump::Run along(std::vector<Point3> feetPoints) {
  std::vector<Vertex> vertices;
  for (std::size_t i = 1; i + 1 < feetPoints.size(); ++i)
    vertices.push_back({ft(feetPoints[i].x, feetPoints[i].y), feet(feetPoints[i].z)});
  const auto end = [](Point3 p) { return freeEnd(ft(p.x, p.y), feet(p.z)); };
  return makeRun("R", Service::Product, "pvc-sch80", "2", end(feetPoints.front()),
                 end(feetPoints.back()), vertices);
}

TEST(Penetrations, WallBaffleWallInTheOrderOfFlow) {
  const auto holes = studyOf(vaultAndRun(along({{10, 0, 93}, {-10, 0, 91}}))).runs[0].penetrations;
  ASSERT_EQ(holes.size(), 3u);
  EXPECT_NEAR(holes[0].at.x, 5.75 * kMetresPerFoot, 1e-9);
  EXPECT_EQ(holes[1].baffle, "V-B1");
  EXPECT_NEAR(inFeet(metres(holes[1].at.z)), 92, 1e-9);
  EXPECT_NEAR(holes[2].at.x, -5.75 * kMetresPerFoot, 1e-9);
}

TEST(Penetrations, OverTheLidAndUnderTheSlabThereIsNoHole) {
  EXPECT_TRUE(
      studyOf(vaultAndRun(along({{10, 0, 96}, {-10, 0, 96}}))).runs[0].penetrations.empty());
  EXPECT_TRUE(
      studyOf(vaultAndRun(along({{10, 0, 89}, {-10, 0, 89}}))).runs[0].penetrations.empty());
}

TEST(Penetrations, ACornerOfTheRunInTheWallIsOneHole) {
  const auto holes =
      studyOf(vaultAndRun(along({{10, 4, 93}, {5.75, 0, 93}, {2, 0, 93}}))).runs[0].penetrations;
  EXPECT_EQ(holes.size(), 1u);
}

TEST(Penetrations, PipeThroughABafflesGapNeedsNoHole) {
  Plan plan = vaultAndRun(along({{-3, 0, 90.5}, {3, 0, 90.5}}));
  Vault vault = plan.vaults[0];
  vault.baffles[0].bottomGap = feet(1);
  plan.vaults.put(vault);
  EXPECT_TRUE(studyOf(plan).runs[0].penetrations.empty());
}

TEST(Penetrations, FollowTheTurnedVaultAndTheReducedSize) {
  sump::Run run = along({{0, 10, 93}, {0, 2, 93}});
  run.parts = {part("X", PartKind::Reducer, 0, 0.25, "1")};
  const auto holes = studyOf(vaultAndRun(run, 90)).runs[0].penetrations;
  ASSERT_EQ(holes.size(), 1u);
  EXPECT_NEAR(holes[0].at.y, 5.75 * kMetresPerFoot, 1e-9);
  EXPECT_EQ(holes[0].size, "1");
}

std::optional<HighPocket> pocket(std::vector<double> inverts) {
  std::vector<RunPoint> points;
  for (double z : inverts)
    points.push_back({{0, 0, z}, 0, std::nullopt, 0});
  return highPocket(points, metres(0.01));
}

TEST(HighPocket, ALineThatRisesAllTheWayHasNone) {
  EXPECT_FALSE(pocket({1, 2, 2, 3}));
  EXPECT_FALSE(pocket({1}));
  EXPECT_FALSE(pocket({}));
}

TEST(HighPocket, AFallAfterAHighPointIsOne) {
  const auto found = pocket({1, 3, 2.5, 2, 4});
  ASSERT_TRUE(found);
  EXPECT_EQ(found->at.z, 3);
  EXPECT_NEAR(inMetres(found->rise), 1, 1e-12);
}

TEST(HighPocket, AFallAtTheEndCounts) {
  EXPECT_NEAR(inMetres(pocket({1, 3, 2.5})->rise), 0.5, 1e-12);
}

TEST(HighPocket, ManySmallFallsAddUpAndOneSmallFallDoesNot) {
  EXPECT_FALSE(pocket({1, 2, 1.995, 3}));
  EXPECT_TRUE(pocket({1, 2, 1.995, 1.99, 1.985, 3}));
}

TEST(HighPocket, IsLookedForInSuctionsOnly) {
  Plan plan;
  sump::Run run = along({{0, 0, 90}, {5, 0, 95}, {10, 0, 92}, {10, 0, 99}});
  plan.runs.put(run);
  EXPECT_FALSE(studyOf(plan).runs[0].pocket);
  for (const Service service : {Service::Suction, Service::SpareSuction}) {
    run.service = service;
    plan.runs.put(run);
    ASSERT_TRUE(studyOf(plan).runs[0].pocket);
    EXPECT_NEAR(inFeet(studyOf(plan).runs[0].pocket->rise), 3, 1e-9);
  }
}

} // namespace
} // namespace sump::test
