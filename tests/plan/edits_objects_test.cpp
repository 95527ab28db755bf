// Moving, erasing and copying whole objects, on the transit depot sample.

#include "core/plan/edits_objects.h"

#include "core/exchange/plan_file.h"
#include "core/plan/consistency.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

namespace sump {

namespace {

Plan objectsDepot() {
  return readPlanFile(sampleFile("transit-depot"));
}

std::set<Id> allIds(const Plan& plan) {
  const std::vector<Id> ids = allObjects(plan);
  return {ids.begin(), ids.end()};
}

Point2 startOf(const Plan& plan, const Id& run) {
  return *sitePosition(plan, plan.runs.find(run)->from);
}

} // namespace

TEST(MoveObjects, CarriesWhatHangsInAVault) {
  const Plan before = objectsDepot();
  const Plan after = moveObjects(before, {"V1"}, {1, -2});
  EXPECT_EQ(after.vaults.find("V1")->centre, before.vaults.find("V1")->centre + Point2(1, -2));
  EXPECT_NEAR(startOf(after, "IC-1").x, startOf(before, "IC-1").x + 1, 1e-9);
  // The link's drop stands in vault 1 and goes along; its far end stays in vault 2.
  EXPECT_EQ(after.runs.find("LK-1")->vertices[0].at,
            before.runs.find("LK-1")->vertices[0].at + Point2(1, -2));
  EXPECT_EQ(after.runs.find("LK-1")->to, before.runs.find("LK-1")->to);
  // Of the inlet only the end moves: its corners stand in the yard.
  EXPECT_EQ(after.runs.find("WW-1")->vertices, before.runs.find("WW-1")->vertices);
  EXPECT_EQ(after.runs.find("SU-1"), before.runs.find("SU-1")) << "shared, for it did not change";
  EXPECT_TRUE(inconsistencies(after).empty());
}

TEST(MoveObjects, CarriesARunBetweenMovedObjectsWhole) {
  const Plan before = objectsDepot();
  const Plan after = moveObjects(before, {"V2", "ER-1"}, {0.5, 0.5});
  for (std::size_t i = 0; i < before.runs.find("SU-1")->vertices.size(); ++i) {
    EXPECT_EQ(after.runs.find("SU-1")->vertices[i].at,
              before.runs.find("SU-1")->vertices[i].at + Point2(0.5, 0.5));
  }
}

TEST(MoveObjects, MovingAllAndBackGivesTheSamePlan) {
  const Plan before = objectsDepot();
  const Plan there = moveObjects(before, allIds(before), {4, 8});
  EXPECT_EQ(there.buildings[0].outline[0], before.buildings[0].outline[0] + Point2(4, 8));
  const Plan back = moveObjects(there, allIds(there), {-4, -8});
  EXPECT_EQ(writePlanText(back), writePlanText(before)); // to the nanometre
}

TEST(ReframeVault, TurnsInnerCornersWithIt) {
  const Plan before = objectsDepot();
  const Vault& v1 = *before.vaults.find("V1");
  const Frame turned{v1.centre, v1.angle + degrees(90)};
  const Plan after = reframeVault(before, "V1", turned);
  const Point2 was = before.runs.find("LK-1")->vertices[0].at;
  const Point2 is = after.runs.find("LK-1")->vertices[0].at;
  EXPECT_NEAR(distance(turned.toLocal(is), v1.frame().toLocal(was)), 0, 1e-9);
}

TEST(EraseObjects, ErasesRunsWithinAndFreesRunsThatLeave) {
  const Plan before = objectsDepot();
  const Plan after = eraseObjects(before, {"V1"});
  EXPECT_EQ(after.vaults.size(), 1u);
  EXPECT_EQ(after.runs.find("IC-1"), nullptr);
  const sump::Run* link = after.runs.find("LK-1");
  ASSERT_NE(link, nullptr);
  EXPECT_EQ(link->from.kind, EndKind::Free);
  EXPECT_NEAR(distance(link->from.at, startOf(before, "LK-1")), 0, 1e-9);
  EXPECT_FALSE(after.runs.find("RC-1")->eductor) << "its manway is gone";
  EXPECT_TRUE(inconsistencies(after).empty());
}

TEST(EraseObjects, AFreedEndKeepsTheLevelThatItsPortGave) {
  const Plan before = objectsDepot();
  const Plan after = eraseObjects(before, {"ER-1"});
  const RunEnd& end = after.runs.find("SU-1")->to;
  ASSERT_TRUE(end.invert);
  EXPECT_NEAR(inMetres(*end.invert), 31.0896 + 0.4572, 1e-9); // room floor and port height
  EXPECT_TRUE(inconsistencies(after).empty());
}

TEST(EraseObjects, ErasingAllLeavesAnEmptySite) {
  const Plan before = objectsDepot();
  const Plan after = eraseObjects(before, allIds(before));
  EXPECT_TRUE(allObjects(after).empty());
  EXPECT_EQ(after.project, before.project);
}

TEST(CopyObjects, CopiesHangOnTheCopies) {
  const Plan before = objectsDepot();
  const Copied copied = copyObjects(before, {"V1", "IC-1", "RC-1"}, {10, 0});
  const Id vault = copied.copies.at("V1"), inner = copied.copies.at("IC-1");
  EXPECT_EQ(copied.plan.runs.find(inner)->from.target, vault);
  EXPECT_NEAR(copied.plan.vaults.find(vault)->centre.x, before.vaults.find("V1")->centre.x + 10,
              1e-9);
  // The room was not copied: the copy of the recirculation starts at the same port.
  const sump::Run& recirculation = *copied.plan.runs.find(copied.copies.at("RC-1"));
  EXPECT_EQ(recirculation.from.target, "P-RC");
  EXPECT_EQ(recirculation.eductor->manway, copied.copies.at("V1-M2"));
  EXPECT_EQ(*copied.plan.runs.find("IC-1"), *before.runs.find("IC-1"));
  EXPECT_TRUE(inconsistencies(copied.plan).empty());
}

TEST(CopyObjects, EverythingCanBeCopied) {
  const Plan before = objectsDepot();
  const Copied copied = copyObjects(before, allIds(before), {100, 0});
  EXPECT_EQ(allObjects(copied.plan).size(), 2 * allObjects(before).size());
  EXPECT_TRUE(inconsistencies(copied.plan).empty());
}

TEST(FreshId, SkipsWhatIsTaken) {
  Plan plan;
  EXPECT_EQ(freshId(plan, "V"), "V-1");
  Well well;
  well.id = "V-1";
  plan.wells.append(well);
  EXPECT_EQ(freshId(plan, "V"), "V-2");
}

} // namespace sump
