// Risers to cleanouts and backwater valves in the ground.

#include "core/exchange/plan_file.h"
#include "core/study/access_risers.h"
#include "core/study/profile.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <functional>

namespace sump {
namespace {

class AccessRisers : public ::testing::Test {
protected:
  Plan plan_ = readPlanFile(sampleFile("ferry-quay"));
  Study studied() const {
    return study(plan_, builtinCatalog(), builtinCatalog().limits.with(plan_.limits));
  }
  std::vector<AccessRiser> all() const { return accessRisers(plan_, studied()); }
  void edit(const Id& id, const std::function<void(sump::Run&)>& change) {
    sump::Run run = *plan_.runs.find(id);
    change(run);
    plan_.runs.put(run);
  }
};

TEST_F(AccessRisers, AreAsHighAsTheGroundIsOverTheInvert) {
  const Study studied = this->studied();
  const auto risers = accessRisers(plan_, studied);
  ASSERT_EQ(risers.size(), 3u);
  for (const AccessRiser& riser : risers) {
    const auto ground = studied.ground.elevation(flat(riser.at));
    ASSERT_TRUE(ground && riser.height && riser.grade) << riser.part;
    EXPECT_NEAR(riser.grade->value(), *ground, 1e-9) << riser.part;
    EXPECT_NEAR(riser.height->value(), *ground - riser.at.z, 1e-9) << riser.part;
    EXPECT_EQ(riser.size, "6") << riser.part;
  }
}

TEST_F(AccessRisers, OfAPartInAVaultAreNotNeeded) {
  edit("OF-1", [](sump::Run& run) {
    for (InlinePart& part : run.parts) {
      part.leg = 0;
      part.along = 0.05; // beside the tee in the last chamber
    }
  });
  const auto risers = all();
  ASSERT_EQ(risers.size(), 1u);
  EXPECT_EQ(risers[0].run, "WW-1");
}

TEST_F(AccessRisers, EndAtAFloorOverThem) {
  Building shed = *plan_.buildings.find("B-SHED");
  const AccessRiser before = all().front();
  const Point2 at = flat(before.at);
  shed.outline = {at + Point2{-1, -1}, at + Point2{1, -1}, at + Point2{1, 1}, at + Point2{-1, 1}};
  plan_.buildings.put(shed);
  const AccessRiser after = all().front();
  EXPECT_EQ(after.part, before.part);
  EXPECT_NEAR(after.grade->value(), 3.55, 1e-9);
  EXPECT_NEAR((*after.height - *before.height).value(), (*after.grade - *before.grade).value(),
              1e-9);
}

TEST_F(AccessRisers, UnderATrafficPavementAreRatedForIt) {
  edit("WW-1", [](sump::Run& run) { run.parts.front().trafficCover.reset(); });
  const Point2 at = flat(all().front().at);
  EXPECT_FALSE(all().front().traffic);
  Pavement road = *plan_.pavements.find("PV-LANE");
  road.outline = {at + Point2{-1, -1}, at + Point2{1, -1}, at + Point2{1, 1}, at + Point2{-1, 1}};
  plan_.pavements.put(road);
  EXPECT_TRUE(all().front().traffic);
}

TEST_F(AccessRisers, AreRatedAsTheirPartSays) {
  for (bool traffic : {false, true}) {
    edit("WW-1", [=](sump::Run& run) { run.parts.front().trafficCover = traffic; });
    EXPECT_EQ(all().front().traffic, traffic);
  }
}

TEST_F(AccessRisers, WithoutGroundHaveNoHeight) {
  plan_.spots = {};
  plan_.site.groundDefault.reset();
  for (const AccessRiser& riser : all()) {
    EXPECT_FALSE(riser.grade);
    EXPECT_FALSE(riser.height);
  }
  EXPECT_EQ(all().size(), 3u);
}

TEST_F(AccessRisers, StandInTheSectionOfTheirRun) {
  const Study studied = this->studied();
  const auto profile = runProfile(plan_, studied, builtinCatalog(), "OF-1");
  ASSERT_TRUE(profile);
  std::size_t covers = 0;
  for (const AccessRiser& riser : accessRisers(plan_, studied, *studied.run("OF-1"))) {
    for (const ProfilePart& part : profile->parts) {
      if (part.id != riser.part) continue;
      ++covers;
      ASSERT_TRUE(part.cover);
      EXPECT_NEAR(part.cover->value(), riser.grade->value(), 1e-9);
      EXPECT_NEAR(part.station, riser.station, 1e-6);
    }
  }
  EXPECT_EQ(covers, 2u);
}

// The vents of vaults 2 to 4 end on that of vault 1; the float hangs on its conduit.
TEST_F(AccessRisers, AndBranchesAndTheFloatStandInTheSections) {
  const Study studied = this->studied();
  const auto vent = runProfile(plan_, studied, builtinCatalog(), "VT-1");
  ASSERT_TRUE(vent);
  ASSERT_EQ(vent->branches.size(), 3u);
  for (const ProfileBranch& branch : vent->branches) {
    EXPECT_NEAR(branch.invert.value(), studied.run(branch.id)->endInvert.value(), 1e-9);
    EXPECT_GT(branch.station, 0);
    EXPECT_LT(branch.station, vent->length);
  }
  EXPECT_FALSE(vent->floatLevel);
  const auto conduit = runProfile(plan_, studied, builtinCatalog(), "FC-1");
  ASSERT_TRUE(conduit && conduit->floatLevel);
  EXPECT_NEAR(conduit->floatLevel->value(), studied.hydraulics.suctions.front().lowWater->value(),
              1e-9);
}

} // namespace
} // namespace sump
