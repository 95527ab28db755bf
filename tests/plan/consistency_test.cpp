// Each check of consistency, by one change to a plan that is sound. tests/exchange/bad holds the
// same as files.

#include "core/plan/consistency.h"

#include "core/plan/edits.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>

namespace sump {
namespace {

using PlanRun = sump::Run; // ::testing::Test has a member of the same name
using ::testing::HasSubstr;

Plan soundPlan() {
  Plan plan;
  Vault vault;
  vault.id = "V1";
  vault.length = metres(4);
  vault.width = metres(2);
  vault.wall = metres(0.2);
  vault.lidThickness = metres(0.2);
  vault.floorThickness = metres(0.2);
  vault.insideHeight = metres(1.5);
  vault.baffles.push_back({"B1", metres(1.7), metres(0.2), metres(0), metres(0)});
  vault.manways.push_back({"M1", {-1, 0}, metres(0.6), {}, false});
  plan = withObject(plan, vault);
  EquipmentRoom room;
  room.id = "E1";
  room.length = metres(3);
  room.width = metres(2);
  room.door = Door{Side::East, metres(0.5), metres(1)};
  room.skid = RoomBox{{0, 0}, metres(1), metres(0.6), metres(1.3)};
  room.ports.push_back({"P1", "", Service::Suction, {1, 1}, metres(0.5), "2"});
  plan = withObject(plan, room);
  PlanRun run;
  run.id = "R1";
  run.from.kind = EndKind::Chamber;
  run.from.target = "V1";
  run.from.chamber = 2;
  run.from.at = {1, 0};
  run.to.kind = EndKind::Port;
  run.to.target = "P1";
  run.vertices.push_back({{5, 5}, {}});
  run.parts.push_back({"X1", PartKind::Union, 1, 0.5, ""});
  run.eductor = EductorMount{"M1", metres(1), metres(1), "1"};
  return withObject(plan, run);
}

template <class T> Plan changed(const std::function<void(T&)>& change) {
  Plan plan = soundPlan();
  T object = listOf<T>(plan).front();
  change(object);
  Plan fresh = plan;
  listOf<T>(fresh) = Items<T>();
  return withObject(fresh, object);
}

PlanRun bareRun() {
  PlanRun run;
  run.id = "R1";
  return run;
}

Utility bareUtility() {
  Utility utility;
  utility.id = "U1";
  return utility;
}

struct Fault {
  Plan plan;
  std::string pointer;
  std::string phrase;
};

void expectFaults(const std::vector<Fault>& faults) {
  for (const Fault& fault : faults) {
    const std::vector<Problem> problems = inconsistencies(fault.plan);
    ASSERT_FALSE(problems.empty()) << fault.pointer << " " << fault.phrase;
    EXPECT_EQ(problems.front().pointer, fault.pointer);
    EXPECT_THAT(problems.front().what, HasSubstr(fault.phrase));
    EXPECT_FALSE(problems.front().mend.empty());
  }
}

TEST(Consistency, ASoundPlanHasNoProblems) {
  EXPECT_TRUE(inconsistencies(soundPlan()).empty());
  EXPECT_TRUE(inconsistencies(Plan{}).empty());
}

TEST(Consistency, VaultSizes) {
  using Change = std::function<void(Vault&)>;
  const auto with = [](const Change& change) { return changed<Vault>(change); };
  expectFaults({
      {with([](Vault& v) { v.length = metres(0); }), "/vaults/0/length", "is 0"},
      {with([](Vault& v) { v.width = metres(NAN); }), "/vaults/0/width", "not a number"},
      {with([](Vault& v) { v.wall = metres(-0.1); }), "/vaults/0/wall", "is -0.1"},
      {with([](Vault& v) { v.wall = metres(1); }), "/vaults/0/wall", "leaves no inside"},
      {with([](Vault& v) { v.lidThickness = metres(0); }), "/vaults/0/lidThickness", "is 0"},
      {with([](Vault& v) { v.floorThickness = metres(0); }), "/vaults/0/floorThickness", "is 0"},
      {with([](Vault& v) { v.insideHeight = metres(0); }), "/vaults/0/insideHeight", "is 0"},
      {with([](Vault& v) { v.centre.x = INFINITY; }), "/vaults/0/centre", "finite"},
  });
}

TEST(Consistency, BafflesAndManways) {
  using Change = std::function<void(Vault&)>;
  const auto with = [](const Change& change) { return changed<Vault>(change); };
  expectFaults({
      {with([](Vault& v) { v.baffles[0].offset = metres(0); }), "/vaults/0/baffles/0/offset",
       "no chamber before"},
      {with([](Vault& v) { v.baffles[0].offset = metres(3.5); }), "/vaults/0/baffles/0/offset",
       "no chamber after"},
      {with([](Vault& v) {
         v.baffles.push_back({"B2", metres(1.8), metres(0.1), metres(0), metres(0)});
       }),
       "/vaults/0/baffles/1/offset", "no chamber before"},
      {with([](Vault& v) { v.baffles[0].thickness = metres(0); }), "/vaults/0/baffles/0/thickness",
       "is 0"},
      {with([](Vault& v) { v.baffles[0].bottomGap = metres(-1); }), "/vaults/0/baffles/0/bottomGap",
       "is -1"},
      {with([](Vault& v) { v.baffles[0].topGap = metres(1.5); }), "/vaults/0/baffles/0/topGap",
       "nothing of the baffle"},
      {with([](Vault& v) {
         v.manways[0].at = {0, 0.9};
       }),
       "/vaults/0/manways/0/at", "outside"},
      {with([](Vault& v) { v.manways[0].diameter = metres(0); }), "/vaults/0/manways/0/diameter",
       "is 0"},
      {with([](Vault& v) { v.manways[0].id = "B1"; }), "/vaults/0/manways/0/id", "another object"},
  });
}

TEST(Consistency, Rooms) {
  using Change = std::function<void(EquipmentRoom&)>;
  const auto with = [](const Change& change) { return changed<EquipmentRoom>(change); };
  expectFaults({
      {with([](EquipmentRoom& r) { r.length = metres(0); }), "/rooms/0/length", "is 0"},
      {with([](EquipmentRoom& r) { r.door->offset = metres(1.5); }), "/rooms/0/door/width",
       "wall of 2 m"},
      {with([](EquipmentRoom& r) { r.door->offset = metres(-1); }), "/rooms/0/door/offset", "-1"},
      {with([](EquipmentRoom& r) { r.door->width = metres(0); }), "/rooms/0/door/width", "is 0"},
      {with([](EquipmentRoom& r) { r.skid->depth = metres(0); }), "/rooms/0/skid/depth", "is 0"},
      {with([](EquipmentRoom& r) { r.ports[0].id = "V1"; }), "/vaults/0/id", "another object"},
      {with([](EquipmentRoom& r) { r.ports[0].id = ""; }), "/rooms/0/ports/0/id", "is empty"},
  });
}

TEST(Consistency, RunEnds) {
  using Change = std::function<void(PlanRun&)>;
  const auto with = [](const Change& change) { return changed<PlanRun>(change); };
  expectFaults({
      {with([](PlanRun& r) { r.from.target = "V2"; }), "/runs/0/from/target", "no object has"},
      {with([](PlanRun& r) { r.from.target = ""; }), "/runs/0/from/target", "is missing"},
      {with([](PlanRun& r) { r.from.target = "E1"; }), "/runs/0/from/target", "not a vault"},
      {with([](PlanRun& r) { r.to.kind = EndKind::Wash; }), "/runs/0/to/target", "not wash"},
      {with([](PlanRun& r) { r.to.kind = EndKind::Free; }), "/runs/0/to/target", "is free"},
      {with([](PlanRun& r) { r.from.chamber = 0; }), "/runs/0/from/chamber", "has 2 chambers"},
      {with([](PlanRun& r) { r.from.chamber = 1; }), "/runs/0/from/at", "outside chamber 1"},
      {with([](PlanRun& r) { r.from.at.y = 0.9; }), "/runs/0/from/at", "outside chamber 2"},
      {with([](PlanRun& r) { r.from.legEnd = metres(0.5); }), "/runs/0/from/legEnd", "no tee"},
      {with([](PlanRun& r) {
         r.from.fitting = EndFitting::Tee;
         r.from.invert = metres(1);
         r.from.legEnd = metres(1);
       }),
       "/runs/0/from/legEnd", "not under the pipe's invert"},
      {with([](PlanRun& r) {
         r.from.fitting = EndFitting::ElbowDown;
         r.from.legEnd = metres(0);
       }),
       "/runs/0/from/legEnd", "not over the vault's floor"},
      {with([](PlanRun& r) {
         r.to.kind = EndKind::Run;
         r.to.target = "R1";
       }),
       "/runs/0/to/target", "the run itself"},
  });
}

TEST(Consistency, RunPartsAndLength) {
  using Change = std::function<void(PlanRun&)>;
  const auto with = [](const Change& change) { return changed<PlanRun>(change); };
  expectFaults({
      {with([](PlanRun& r) { r.vertices.clear(); }), "/runs/0/parts/0/leg", "has 1 leg"},
      {with([](PlanRun& r) { r.parts[0].leg = -1; }), "/runs/0/parts/0/leg", "is -1"},
      {with([](PlanRun& r) { r.parts[0].along = NAN; }), "/runs/0/parts/0/along", "0 to 1"},
      {with([](PlanRun& r) { r.parts[0].kind = PartKind::Reducer; }), "/runs/0/parts/0/toSize",
       "missing"},
      {with([](PlanRun& r) { r.parts[0].id = "R1"; }), "/runs/0/parts/0/id", "another object"},
      {with([](PlanRun& r) { r.eductor->manway = "V1"; }), "/runs/0/eductor/manway", "no manway"},
      {with([](PlanRun& r) { r.vertices[0].at.x = NAN; }), "/runs/0/vertices/0/at", "finite"},
      {with([](PlanRun& r) { r = bareRun(); }), "/runs/0", "shorter than 1 mm"},
  });
}

TEST(Consistency, AVerticalRunHasALength) {
  const Plan plan = changed<PlanRun>([](PlanRun& r) {
    r = bareRun();
    r.from.invert = metres(1);
    r.to.invert = metres(2);
  });
  EXPECT_TRUE(inconsistencies(plan).empty());
}

TEST(Consistency, SiteObjects) {
  const auto with = [](auto object) { return withObject(soundPlan(), object); };
  Plan frost = soundPlan();
  frost.site.frostDepth = metres(-1);
  Plan crossed = soundPlan();
  crossed.site.boundary = {{0, 0}, {1, 1}, {1, 0}, {0, 1}};
  Basin basin{"C1", "", BasinKind::CatchBasin, {0, 0}, {}, metres(0), metres(1), {}, {}};
  const Building low{"H1", "", {{0, 0}, {1, 0}, {1, 1}}, metres(3), {}, metres(3)};
  expectFaults({
      {frost, "/site/frostDepth", "is -1"},
      {with(low), "/buildings/0/roof", "not over the floor"},
      {crossed, "/site/boundary", "crosses"},
      {with(Building{"H1", "", {{0, 0}, {1, 0}}, {}, {}}), "/buildings/0/outline", "has 2 points"},
      {with(Pavement{"H1", "", {{0, 0}, {1, 0}, {NAN, 0}}, false}), "/pavements/0/outline",
       "not finite"},
      {with(bareUtility()), "/utilities/0/path", "shorter"},
      {with(basin), "/basins/0/length", "is 0"},
      {with(Well{"V1", "", {0, 0}}), "/vaults/0/id", "another object"},
      {with(Well{"V 1", "", {0, 0}}), "/wells/0/id", "space"},
  });
}

TEST(Consistency, ProblemsComeInTheOrderOfTheFile) {
  Plan plan = changed<PlanRun>([](PlanRun& r) { r.from.target = "V2"; });
  plan = withObject(plan, Well{"W1", "", {NAN, 0}});
  plan.site.frostDepth = metres(-1);
  const std::vector<Problem> problems = inconsistencies(plan);
  ASSERT_EQ(problems.size(), 3U);
  EXPECT_EQ(problems[0].pointer, "/site/frostDepth");
  EXPECT_EQ(problems[1].pointer, "/wells/0/at");
  EXPECT_EQ(problems[2].pointer, "/runs/0/from/target");
}

} // namespace
} // namespace sump
