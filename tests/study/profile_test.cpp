// Long sections: the two-vault plan's by hand (tests/reference/two_vault_plan.md has the levels),
// and what must hold for every run of any plan.

#include "core/study/profile.h"

#include "core/exchange/plan_file.h"
#include "tests/reference/two_vault_plan.h"
#include "tests/support/generated_plan.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace sump {

using namespace test;

namespace {

constexpr double kSixteenth = kMetresPerInch / 16; // as the plan is worked

#define EXPECT_FT(actual, expected) EXPECT_NEAR(actual, (expected)*kMetresPerFoot, kSixteenth)
#define EXPECT_LEVEL(actual, expected) EXPECT_NEAR(inMetres(actual), inMetres(expected), kSixteenth)

struct Worked {
  Plan plan;
  Study study;
  explicit Worked(Plan p) : plan(std::move(p)), study(studyOf(plan)) {}
  RunProfile run(const char* id) const {
    const auto profile = runProfile(plan, study, builtinCatalog(), id);
    EXPECT_TRUE(profile) << id;
    return profile.value_or(RunProfile{});
  }
  TrainProfile train() const {
    const auto profile = trainProfile(plan, study, builtinCatalog());
    EXPECT_TRUE(profile);
    return profile.value_or(TrainProfile{});
  }
};

const TrainRun* trainRun(const TrainProfile& train, const char* id) {
  for (const TrainRun& run : train.runs) {
    if (run.id == id) return &run;
  }
  return nullptr;
}

} // namespace

/// Open ends of the down legs by hand: 92'-9.6" and 92'-5.4".
TEST(TrainSection, HasTheDownLegsEnds) {
  const Worked worked(twoVaultPlan());
  const TrainProfile train = worked.train();
  const TrainRun &in = *trainRun(train, "IN"), &out = *trainRun(train, "OF");
  ASSERT_TRUE(in.endLeg && out.startLeg);
  EXPECT_LEVEL(*in.endLeg, feet(92 + 9.6 / 12));
  EXPECT_LEVEL(*out.startLeg, feet(92 + 5.4 / 12));
  EXPECT_FALSE(in.startLeg || out.endLeg);
  EXPECT_LEVEL(*worked.run("IN").endLeg, feet(92 + 9.6 / 12));
}

TEST(Profile, InletByHand) {
  const Worked worked(twoVaultPlan());
  const RunProfile in = worked.run("IN");
  ASSERT_EQ(in.points.size(), 4u);
  const double corner = std::sqrt(32.0); // 4 ft and 4 ft
  EXPECT_FT(in.points[0].station, 0);
  EXPECT_FT(in.points[1].station, 31);
  EXPECT_FT(in.points[2].station, 31 + corner);
  EXPECT_FT(in.points[3].station, 39 + corner);
  EXPECT_FT(in.length, 39 + corner);
  EXPECT_LEVEL(in.points[0].invert, level(95));
  EXPECT_LEVEL(in.points[1].invert, level(94, 5.752));
  EXPECT_LEVEL(in.points[2].invert, level(94, 4.612));
  EXPECT_LEVEL(in.points[3].invert, level(94, 3));
  EXPECT_LEVEL(*in.points[1].ground, feet(96.88));
  // The crown is 6.095 in over the invert: 96.88 - 94.479363 - 6.095/12.
  EXPECT_LEVEL(*in.points[1].cover, feet(1.892720));
  EXPECT_FALSE(in.points[0].cover) << "in the basin's wall";
  EXPECT_FALSE(in.points[3].cover) << "in the vault";
  ASSERT_TRUE(in.leastCover);
  EXPECT_LEVEL(in.leastCover->cover, level(1, 8.185));
  EXPECT_FT(in.leastCover->station, 0);
  // The basin knows the start, the plan types the end, the corners are graded.
  EXPECT_FALSE(in.points[0].typed);
  EXPECT_FALSE(in.points[1].typed);
  EXPECT_TRUE(in.points[3].typed);
  EXPECT_EQ(in.points[0].vertex, -1);
  EXPECT_EQ(in.points[3].vertex, 2);
  EXPECT_TRUE(in.drops.empty());
}

// The line goes on straight through the vault that it ends in: in at the north wall, y = 13, three
// feet before its end, out at y = 7.
TEST(Profile, InletCutsItsVaultAndBasin) {
  const Worked worked(twoVaultPlan());
  const RunProfile in = worked.run("IN");
  const double wall = 36 + std::sqrt(32.0);
  ASSERT_EQ(in.vaults.size(), 1u);
  const ProfileVault& vault = in.vaults[0];
  EXPECT_EQ(vault.id, "V1");
  EXPECT_FT(vault.from, wall);
  EXPECT_FT(vault.to, wall + 6);
  EXPECT_FT(vault.insideFrom, wall + 0.5);
  EXPECT_FT(vault.insideTo, wall + 5.5);
  EXPECT_LEVEL(vault.lidTop, level(95, 6));
  EXPECT_LEVEL(vault.underside, level(89, 6));
  ASSERT_EQ(vault.chambers.size(), 1u);
  EXPECT_EQ(vault.chambers[0].number, 1);
  EXPECT_LEVEL(*vault.chambers[0].rest, level(94));
  EXPECT_TRUE(vault.baffles.empty());
  ASSERT_EQ(vault.manways.size(), 1u) << "that of the chamber that the line ends in";
  EXPECT_TRUE(vault.manways[0].beyond) << "M1 is 1'-3\" off the line, its radius 1'-0\"";
  ASSERT_EQ(in.structures.size(), 1u);
  EXPECT_EQ(in.structures[0].id, "CB");
  EXPECT_FT(in.structures[0].to, 0);
  EXPECT_LEVEL(*in.structures[0].level, level(97));
  EXPECT_LEVEL(*in.structures[0].bottom, level(95));
  EXPECT_NEAR(in.to, vault.to + 0.5, 1e-9);
}

// Along y = 10 from x = 18'-9": V1's faces are at x = 14'-3" and 25'-9".
TEST(Profile, InterconnectShowsBothChambersAndTheBaffle) {
  const Worked worked(twoVaultPlan());
  const RunProfile ic = worked.run("IC-1");
  ASSERT_EQ(ic.vaults.size(), 1u);
  const ProfileVault& vault = ic.vaults[0];
  EXPECT_FT(vault.from, -4.5);
  EXPECT_FT(vault.to, 7);
  ASSERT_EQ(vault.chambers.size(), 2u);
  EXPECT_FT(vault.chambers[0].from, -4);
  EXPECT_FT(vault.chambers[0].to, 1);
  EXPECT_FT(vault.chambers[1].from, 1.5);
  EXPECT_FT(vault.chambers[1].to, 6.5);
  ASSERT_EQ(vault.baffles.size(), 1u);
  EXPECT_FT(vault.baffles[0].from, 1);
  EXPECT_FT(vault.baffles[0].to, 1.5);
  EXPECT_LEVEL(vault.baffles[0].bottom, level(90));
  EXPECT_LEVEL(vault.baffles[0].top, level(95));
  ASSERT_EQ(vault.manways.size(), 2u);
  EXPECT_FT(vault.manways[0].station, -1.5);
  EXPECT_LEVEL(*vault.manways[0].rim, feet(96.8275));
  EXPECT_FT(vault.manways[1].station, 4);
  EXPECT_LEVEL(*vault.manways[1].rim, level(97));
}

TEST(Profile, LinkDropsAtOneStation) {
  const Worked worked(twoVaultPlan());
  const RunProfile link = worked.run("LK");
  ASSERT_EQ(link.points.size(), 3u);
  EXPECT_FT(link.points[1].station, 6.5);
  EXPECT_FT(link.points[2].station, 6.5);
  ASSERT_EQ(link.drops.size(), 1u);
  EXPECT_FT(link.drops[0].station, 6.5);
  EXPECT_LEVEL(link.drops[0].start, level(93, 11));
  EXPECT_LEVEL(link.drops[0].end, level(91, 9));
  ASSERT_EQ(link.vaults.size(), 2u);
  EXPECT_EQ(link.vaults[0].id, "V1");
  EXPECT_EQ(link.vaults[1].id, "V2");
}

// A quarter of 46 ft after the first leg's 19 ft, falling 1/8 in a foot.
TEST(Profile, PartStandsOnItsLeg) {
  const Worked worked(twoVaultPlan());
  const RunProfile overflow = worked.run("OF");
  ASSERT_EQ(overflow.parts.size(), 1u);
  EXPECT_EQ(overflow.parts[0].kind, PartKind::BackwaterValve);
  EXPECT_FT(overflow.parts[0].station, 30.5);
  EXPECT_LEVEL(overflow.parts[0].invert, level(93, 9 - 30.5 / 8));
}

// At x = 0 the inlet is 19 ft on its way: invert 95 - 0.75 x 19 / 44.656854 = 94.680895, underside
// (6.275 - 5.915) / 2 = 0.18 in lower, top of pipe 6.095 in higher: 94.665895 and 95.188812.
TEST(Profile, CrossingsSayHowFarApart) {
  Plan plan = twoVaultPlan();
  plan.utilities.put({"MAIN",
                      "Main",
                      UtilityKind::PotableWater,
                      {ft(0, 0), ft(0, 40)},
                      feet(92),
                      inches(6),
                      true});
  plan.utilities.put({"GAS", "Gas", UtilityKind::Gas, {ft(2, 0), ft(2, 40)}, {}, {}, false});
  plan.runs.put(makeRun("DR", Service::Signal, "pvc-conduit-sch80", "1",
                        freeEnd(ft(4, 40), feet(96)), freeEnd(ft(4, 0), feet(96))));
  plan.runs.put(makeRun("BR", Service::Inlet, "pvc-sdr35", "6", freeEnd(ft(-10, 30), feet(95.5)),
                        onRun("IN", ft(-10, 22))));
  const Worked worked(plan);
  const RunProfile in = worked.run("IN");
  ASSERT_EQ(in.crossings.size(), 3u) << "a branch is no crossing";
  const ProfileCrossing &main = in.crossings[0], &gas = in.crossings[1], &conduit = in.crossings[2];
  EXPECT_EQ(main.id, "MAIN");
  EXPECT_FT(main.station, 19);
  EXPECT_FALSE(main.above);
  ASSERT_TRUE(main.clearance);
  EXPECT_LEVEL(*main.clearance, feet(94.665895 - 92.25));
  EXPECT_EQ(gas.id, "GAS");
  EXPECT_FALSE(gas.clearance) << "its level is not known";
  EXPECT_EQ(conduit.service, Service::Signal);
  EXPECT_TRUE(conduit.above);
  // 23 ft on: top of the inlet 95 - 0.75 x 23 / 44.656854 + 6.095/12 = 95.121638; the conduit's
  // underside is half the difference of its diameters below 96.
  const PipeSize& size = *builtinCatalog().pipeSize("pvc-conduit-sch80", "1");
  ASSERT_TRUE(conduit.clearance);
  EXPECT_LEVEL(*conduit.clearance, feet(96 - 95.121638) - (size.outside - size.inside) / 2.0);
}

// The conduit crosses the inlet at 95.12 ft (its top) 23 ft on its way, as above.
TEST(Profile, WhatPassesOverAFloorCrossesNothingUnderIt) {
  Plan plan = twoVaultPlan();
  plan.runs.put(makeRun("DR", Service::Signal, "pvc-conduit-sch80", "1",
                        freeEnd(ft(4, 40), feet(97)), freeEnd(ft(4, 0), feet(97))));
  ASSERT_EQ(Worked(plan).run("IN").crossings.size(), 1u);
  plan.buildings.put({"B", "", {ft(2, 10), ft(6, 10), ft(6, 30), ft(2, 30)}, feet(96), {}});
  EXPECT_TRUE(Worked(plan).run("IN").crossings.empty());
  EXPECT_TRUE(Worked(plan).run("DR").crossings.empty());
  plan.buildings.put({"B", "", {ft(2, 10), ft(6, 10), ft(6, 30), ft(2, 30)}, feet(98), {}});
  EXPECT_EQ(Worked(plan).run("IN").crossings.size(), 1u) << "both are in the ground";
}

TEST(Profile, ALineOfUnknownSizeIsToldByItsAxis) {
  Plan plan = twoVaultPlan();
  plan.utilities.put(
      {"ELEC", "", UtilityKind::Electric, {ft(2, 0), ft(2, 40)}, feet(97), {}, false});
  const RunProfile in = Worked(plan).run("IN");
  ASSERT_EQ(in.crossings.size(), 1u);
  EXPECT_EQ(in.crossings[0].underside, feet(97));
  EXPECT_EQ(in.crossings[0].top, feet(97));
  EXPECT_TRUE(in.crossings[0].above);
  EXPECT_FALSE(in.crossings[0].clearance) << "its outside is not known";
}

TEST(Profile, TheSewerOfARunsOwnConnectionIsJoined) {
  const Worked worked(readPlanFile(sampleFile("transit-depot")));
  const RunProfile overflow = worked.run("OF-1");
  const auto sewer = std::ranges::find(overflow.crossings, "U-SEWER", &ProfileCrossing::id);
  ASSERT_NE(sewer, overflow.crossings.end());
  EXPECT_TRUE(sewer->joined);
}

TEST(Profile, WithoutLevelsThereIsNone) {
  Plan plan = twoVaultPlan();
  plan.runs.put(makeRun("NO", Service::Vent, "pvc-sch80", "3", freeEnd(ft(0, 0), std::nullopt),
                        freeEnd(ft(5, 0), feet(95))));
  const Worked worked(plan);
  EXPECT_FALSE(runProfile(worked.plan, worked.study, builtinCatalog(), "NO"));
  EXPECT_FALSE(runProfile(worked.plan, worked.study, builtinCatalog(), "nobody"));
  EXPECT_FALSE(trainProfile(Plan{}, studyOf(Plan{}), builtinCatalog()));
}

TEST(Profile, UnknownGroundIsLeftOut) {
  Plan plan = twoVaultPlan();
  plan.spots = {};
  const Worked worked(plan);
  EXPECT_TRUE(worked.run("IN").ground.empty());
  EXPECT_FALSE(worked.run("IN").points[1].cover);
  EXPECT_TRUE(worked.train().ground.empty());
}

TEST(Profile, OnlyRisingRunIsCutAlongItsVault) {
  Plan plan = twoVaultPlan();
  plan.runs.put(makeRun("UP", Service::Vent, "pvc-sch80", "3",
                        inChamber("V1", 1, ft(-3, 0), feet(94.5)), freeEnd(ft(17, 10), feet(100))));
  const Worked worked(plan);
  const RunProfile up = worked.run("UP");
  EXPECT_NEAR(up.length, 0, 1e-9);
  ASSERT_EQ(up.vaults.size(), 1u);
  EXPECT_FT(up.vaults[0].from, -2.75);
  EXPECT_FT(up.vaults[0].to, 8.75);
}

// Both vaults lie along x, so every station is x - 14'-3".
TEST(Profile, TrainByHand) {
  const Worked worked(twoVaultPlan());
  const TrainProfile train = worked.train();
  ASSERT_EQ(train.vaults.size(), 2u);
  const ProfileVault &first = train.vaults[0], &second = train.vaults[1];
  EXPECT_FT(first.from, 0);
  EXPECT_FT(first.to, 11.5);
  EXPECT_FT(second.from, 14.5); // the link has 3'-0" outside
  EXPECT_FT(second.to, 26);
  EXPECT_FT(first.insideFrom, 0.5);
  EXPECT_FT(first.insideTo, 11);
  ASSERT_EQ(first.chambers.size(), 2u);
  EXPECT_FT(first.chambers[0].to, 5.5);
  EXPECT_FT(first.chambers[1].from, 6);
  EXPECT_FT(first.baffles[0].from, 5.5);
  EXPECT_LEVEL(*first.chambers[1].rest, level(94));
  EXPECT_LEVEL(*second.chambers[0].rest, level(93, 9));
  EXPECT_FALSE(first.chambers[0].peak) << "the plan gives no demand";
  ASSERT_EQ(first.manways.size(), 2u);
  EXPECT_FT(first.manways[0].station, 3);
  EXPECT_LEVEL(*first.manways[0].rim, feet(96.8275));
  EXPECT_FT(first.manways[1].station, 8.5);
  EXPECT_LEVEL(second.floor, level(89, 9));
  EXPECT_LEVEL(second.lidTop, level(95, 3));
}

TEST(Profile, TrainLinkAndInterconnectByHand) {
  const Worked worked(twoVaultPlan());
  const TrainProfile train = worked.train();
  const TrainRun* ic = trainRun(train, "IC-1");
  ASSERT_NE(ic, nullptr);
  ASSERT_EQ(ic->points.size(), 2u);
  EXPECT_FT(ic->points[0].station, 4.5);
  EXPECT_FT(ic->points[1].station, 7);
  EXPECT_LEVEL(ic->points[1].invert, level(91, 9));
  EXPECT_EQ(ic->startFitting, EndFitting::Tee);
  EXPECT_EQ(ic->endFitting, EndFitting::ElbowDown);
  const TrainRun* link = trainRun(train, "LK");
  ASSERT_NE(link, nullptr);
  ASSERT_EQ(link->points.size(), 5u);
  EXPECT_FT(link->points[0].station, 9.75);
  EXPECT_FT(link->points[1].station, 11.5);
  EXPECT_LEVEL(link->points[1].invert, level(93, 11.731));
  EXPECT_EQ(link->points[1].vertex, kNoVertex);
  EXPECT_FT(link->points[2].station, 14.5);
  EXPECT_LEVEL(link->points[2].invert, level(93, 11.269));
  EXPECT_FT(link->points[3].station, 16.25);
  EXPECT_EQ(link->points[3].vertex, 0);
  EXPECT_LEVEL(link->points[4].invert, level(91, 9));
  EXPECT_EQ(link->points[4].vertex, 1);
  EXPECT_TRUE(link->points[4].typed);
  ASSERT_EQ(link->drops.size(), 1u);
  EXPECT_FT(link->drops[0].station, 16.25);
  EXPECT_FALSE(link->comesFromElsewhere || link->goesElsewhere);
}

TEST(Profile, TrainEndsByHand) {
  const Worked worked(twoVaultPlan());
  const TrainProfile train = worked.train();
  const double stub = kTrainStub / kMetresPerFoot;
  const TrainRun* in = trainRun(train, "IN");
  ASSERT_NE(in, nullptr);
  ASSERT_EQ(in->points.size(), 3u);
  EXPECT_FT(in->points[0].station, -stub);
  EXPECT_LEVEL(in->points[0].invert, feet(94.25 + 0.75 * (3 + stub) / 44.656854));
  EXPECT_FT(in->points[1].station, 0);
  EXPECT_LEVEL(in->points[1].invert, level(94, 3.605));
  EXPECT_FT(in->points[2].station, 1.75);
  EXPECT_TRUE(in->comesFromElsewhere);
  const TrainRun* of = trainRun(train, "OF");
  ASSERT_NE(of, nullptr);
  ASSERT_EQ(of->points.size(), 3u);
  EXPECT_FT(of->points[0].station, 24.25);
  EXPECT_FT(of->points[1].station, 26);
  EXPECT_LEVEL(of->points[1].invert, level(93, 8.75));
  EXPECT_FT(of->points[2].station, 26 + stub);
  EXPECT_LEVEL(of->points[2].invert, level(93, 9 - (2 + stub) / 8));
  EXPECT_TRUE(of->goesElsewhere);
  const TrainRun* su = trainRun(train, "SU");
  ASSERT_NE(su, nullptr);
  ASSERT_EQ(su->points.size(), 3u);
  EXPECT_LEVEL(su->points[0].invert, level(91));
  EXPECT_EQ(su->startFitting, EndFitting::FootValve);
  EXPECT_FT(su->points[2].station, 24.25);
  EXPECT_LEVEL(su->points[2].invert, level(94, 3.3)); // in V2's north wall
  EXPECT_TRUE(su->throughSide && su->goesElsewhere);
}

namespace {

std::vector<Plan> plans() {
  const std::string samples = sourceFolder() + "/samples/";
  return {twoVaultPlan(), generatedPlan(120), readPlanFile(samples + "transit-depot.sump"),
          readPlanFile(samples + "boatyard-pad.sump"), readPlanFile(samples + "ferry-quay.sump")};
}

void expectVaultsHold(const std::vector<ProfileVault>& vaults) {
  for (const ProfileVault& v : vaults) {
    EXPECT_LT(v.from, v.to);
    EXPECT_LE(v.from, v.insideFrom);
    EXPECT_LE(v.insideTo, v.to);
    for (const ProfileChamber& c : v.chambers) {
      EXPECT_LT(c.from, c.to);
      EXPECT_GE(c.from, v.insideFrom - 1e-9);
      EXPECT_LE(c.to, v.insideTo + 1e-9);
    }
    for (const ProfileBaffle& b : v.baffles)
      EXPECT_LT(b.bottom, b.top);
  }
}

} // namespace

TEST(ProfileProperty, RunsAreTheStudysOwn) {
  for (const Plan& plan : plans()) {
    const Study study = studyOf(plan);
    for (const RunStudy& run : study.runs) {
      const auto profile = runProfile(plan, study, builtinCatalog(), run.id);
      ASSERT_EQ(profile.has_value(), run.resolved) << run.id;
      if (!profile) continue;
      ASSERT_EQ(profile->points.size(), run.points.size());
      for (std::size_t i = 0; i < run.points.size(); ++i) {
        const ProfilePoint& point = profile->points[i];
        EXPECT_EQ(inMetres(point.invert), run.points[i].at.z);
        EXPECT_EQ(point.vertex, run.points[i].vertex);
        if (i > 0) {
          EXPECT_GE(point.station, profile->points[i - 1].station);
        }
        EXPECT_GE(point.station, profile->from);
        EXPECT_LE(point.station, profile->to);
      }
      EXPECT_NEAR(profile->points.back().station, inMetres(run.plan), 1e-9);
      expectVaultsHold(profile->vaults);
    }
  }
}

TEST(ProfileProperty, GroundIsTheSurface) {
  for (const Plan& plan : plans()) {
    const Study study = studyOf(plan);
    for (const RunStudy& run : study.runs) {
      const auto profile = runProfile(plan, study, builtinCatalog(), run.id);
      if (!profile) continue;
      ASSERT_GE(profile->ground.size(), 2u);
      EXPECT_EQ(profile->ground.front().station, profile->from);
      EXPECT_EQ(profile->ground.back().station, profile->to);
      for (std::size_t i = 0; i < profile->ground.size(); ++i) {
        const ProfileGround& here = profile->ground[i];
        EXPECT_NEAR(inMetres(here.level), *study.ground.elevation(here.at), 1e-12);
        if (i == 0) continue;
        const ProfileGround& last = profile->ground[i - 1];
        EXPECT_LT(last.station, here.station);
        // Straight in between, and no longer on the section than on the site.
        const Point2 third = lerp(last.at, here.at, 0.3);
        EXPECT_NEAR(*study.ground.elevation(third),
                    inMetres(last.level + 0.3 * (here.level - last.level)), 0.01);
        EXPECT_LE(distance(last.at, here.at), here.station - last.station + 1e-9);
      }
    }
  }
}

TEST(ProfileProperty, CrossingsAreMutual) {
  for (const Plan& plan : plans()) {
    const Study study = studyOf(plan);
    for (const RunStudy& run : study.runs) {
      const auto profile = runProfile(plan, study, builtinCatalog(), run.id);
      if (!profile) continue;
      for (const ProfileCrossing& crossing : profile->crossings) {
        if (!crossing.service) continue;
        const auto other = runProfile(plan, study, builtinCatalog(), crossing.id);
        ASSERT_TRUE(other);
        const auto back = std::ranges::find_if(other->crossings, [&](const ProfileCrossing& c) {
          return c.id == run.id && distance(c.at, crossing.at) < 1e-6;
        });
        ASSERT_NE(back, other->crossings.end()) << run.id << " and " << crossing.id;
        ASSERT_EQ(back->clearance.has_value(), crossing.clearance.has_value());
        if (!crossing.clearance) continue;
        EXPECT_NEAR(inMetres(*back->clearance), inMetres(*crossing.clearance), 1e-9);
      }
    }
  }
}

TEST(ProfileProperty, TrainIsTheStudysOwn) {
  for (const Plan& plan : plans()) {
    const Study study = studyOf(plan);
    const auto train = trainProfile(plan, study, builtinCatalog());
    ASSERT_TRUE(train);
    ASSERT_EQ(train->vaults.size(), plan.vaults.size());
    expectVaultsHold(train->vaults);
    for (std::size_t i = 0; i < train->vaults.size(); ++i) {
      EXPECT_EQ(train->vaults[i].id, plan.vaults[i].id);
      EXPECT_NEAR(train->vaults[i].to - train->vaults[i].from, inMetres(plan.vaults[i].length),
                  1e-9);
      if (i > 0) {
        EXPECT_GE(train->vaults[i].from, train->vaults[i - 1].to);
      }
    }
    for (const TrainRun& run : train->runs) {
      const RunStudy& studied = *study.run(run.id);
      int last = kNoVertex;
      for (const TrainPoint& point : run.points) {
        if (point.vertex == kNoVertex) continue;
        EXPECT_GT(point.vertex, last);
        last = point.vertex;
        const RunPoint& own = studied.points[static_cast<std::size_t>(point.vertex + 1)];
        EXPECT_EQ(inMetres(point.invert), own.at.z);
      }
      EXPECT_NE(last, kNoVertex) << run.id << " shows neither of its ends";
    }
  }
}

// The depot's drain has no sump; the quay's basin reaches 450 mm under its outlet.
TEST(RunProfile, ABasinIsCutWithItsSump) {
  const auto basin = [](const RunProfile& profile) {
    const auto found =
        std::ranges::find(profile.structures, StructureKind::Basin, &ProfileStructure::kind);
    EXPECT_NE(found, profile.structures.end());
    return found == profile.structures.end() ? ProfileStructure{} : *found;
  };
  const Worked quay(readPlanFile(sampleFile("ferry-quay")));
  for (const char* run : {"WW-1", "UF-1"}) {
    const ProfileStructure cut = basin(quay.run(run));
    ASSERT_TRUE(cut.bottom && cut.outlet) << run;
    EXPECT_NEAR(inMetres(*cut.outlet), 2.13, 1e-9);
    EXPECT_NEAR(inMetres(*cut.bottom), 1.68, 1e-9);
  }
  const Worked depot(readPlanFile(sampleFile("transit-depot")));
  const ProfileStructure drain = basin(depot.run("WW-1"));
  EXPECT_FALSE(drain.outlet);
  EXPECT_EQ(drain.bottom, depot.plan.basins[0].outletInvert);
}

} // namespace sump
