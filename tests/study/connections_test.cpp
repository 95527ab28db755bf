// What runs join that is there already.

#include "core/exchange/plan_file.h"
#include "core/study/connections.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <functional>

namespace sump {
namespace {

const Connection* of(const std::vector<Connection>& all, const Id& run) {
  for (const Connection& joint : all) {
    if (joint.run == run) return &joint;
  }
  return nullptr;
}

class Connections : public ::testing::Test {
protected:
  Plan plan_ = readPlanFile(sampleFile("ferry-quay"));
  std::vector<Connection> all() const {
    return connections(plan_,
                       study(plan_, builtinCatalog(), builtinCatalog().limits.with(plan_.limits)));
  }
  void edit(const Id& id, const std::function<void(Utility&)>& change) {
    Utility utility = *plan_.utilities.find(id);
    change(utility);
    plan_.utilities.put(utility);
  }
};

TEST_F(Connections, FindTheLineThatCarriesTheSame) {
  const auto joints = all();
  const Connection* water = of(joints, "MU-1");
  ASSERT_NE(water, nullptr);
  EXPECT_EQ(water->kind, ConnectionKind::Utility);
  EXPECT_EQ(water->other, "U-WATER");
  EXPECT_TRUE(water->atStart);
  ASSERT_TRUE(water->level);
  EXPECT_NEAR(water->level->value(), 2.1, 1e-9);
  EXPECT_NEAR(water->invert.value(), 2.09, 1e-9);
  const Connection* power = of(joints, "PC-1");
  ASSERT_NE(power, nullptr);
  EXPECT_EQ(power->other, "U-POWER");
  const Connection* sewer = of(joints, "OF-1");
  ASSERT_NE(sewer, nullptr);
  EXPECT_EQ(sewer->kind, ConnectionKind::Sewer);
  EXPECT_FALSE(sewer->atStart);
  EXPECT_EQ(joints.size(), 3u) << "vents, ports and chambers are not there already";
}

TEST_F(Connections, ALineOfAnotherKindIsNotJoined) {
  edit("U-WATER", [](Utility& u) { u.kind = UtilityKind::Gas; });
  EXPECT_EQ(of(all(), "MU-1")->kind, ConnectionKind::Stub);
}

TEST_F(Connections, ALineFartherOffIsNotJoined) {
  edit("U-WATER", [](Utility& u) {
    for (Point2& p : u.path)
      p = p + Point2{1, 1};
  });
  EXPECT_EQ(of(all(), "MU-1")->kind, ConnectionKind::Stub);
}

TEST_F(Connections, AnUnknownLevelStaysUnknown) {
  edit("U-WATER", [](Utility& u) { u.elevation.reset(); });
  const auto joints = all();
  EXPECT_EQ(of(joints, "MU-1")->kind, ConnectionKind::Utility);
  EXPECT_FALSE(of(joints, "MU-1")->level);
}

/// The basin's own figures, so that the walls it is passed at are known: 2 by 1 m, rim at 3 m.
class BasinEntries : public ::testing::Test {
protected:
  BasinEntries() {
    plan_.site.groundDefault = metres(3);
    Basin basin;
    basin.id = "B";
    basin.at = {10, 10};
    basin.length = metres(2);
    basin.width = metres(1);
    basin.rim = metres(3);
    basin.outletInvert = metres(2);
    plan_.basins.append(basin);
  }
  sump::Run run(RunEnd from, RunEnd to) {
    sump::Run made;
    made.id = "A";
    made.service = Service::Underflow;
    made.pipe = "pvc-sch80";
    made.size = "2";
    made.from = std::move(from);
    made.to = std::move(to);
    return made;
  }
  RunEnd freeAt(Point2 at, double invert) {
    RunEnd end;
    end.at = at;
    end.invert = metres(invert);
    return end;
  }
  RunEnd inBasin(Point2 local, double invert) {
    RunEnd end = freeAt(local, invert);
    end.kind = EndKind::Basin;
    end.target = "B";
    return end;
  }
  std::vector<BasinEntry> entries(sump::Run made) {
    plan_.runs = {};
    plan_.runs.append(std::move(made));
    studied_ = study(plan_, builtinCatalog(), builtinCatalog().limits);
    return basinEntries(plan_, plan_.runs[0], studied_.runs[0]);
  }
  double connectors(const std::string& size) const {
    double sum = 0;
    for (const QuantityLine& line : studied_.takeOff)
      sum += line.item == "basin-connector" && line.size == size ? line.quantity : 0;
    return sum;
  }
  Plan plan_;
  Study studied_;
};

/// From x 0 m at 2.6 m to the basin's middle at x 10 m and 2.5 m: its wall stands at x 9 m, where
/// nine tenths of the fall are done.
TEST_F(BasinEntries, StandInTheWallThatTheRunPasses) {
  const auto found = entries(run(freeAt({0, 10}, 2.6), inBasin({0, 0}, 2.5)));
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].basin, "B");
  EXPECT_FALSE(found[0].atStart);
  EXPECT_NEAR(found[0].at.x, 9, 1e-9);
  EXPECT_NEAR(found[0].at.y, 10, 1e-9);
  EXPECT_NEAR(found[0].at.z, 2.51, 1e-9);
  EXPECT_EQ(connectors("2"), 1);
}

TEST_F(BasinEntries, HaveTheSizeOfTheRunInTheWall) {
  sump::Run made = run(freeAt({0, 10}, 2.6), inBasin({0, 0}, 2.5));
  made.parts.push_back({"R", PartKind::Reducer, 0, 0.5, "3", {}});
  EXPECT_EQ(entries(made).at(0).size, "3");
  EXPECT_EQ(connectors("3"), 1);
  made.parts[0].along = 0.95; // behind the wall
  EXPECT_EQ(entries(made).at(0).size, "2");
}

TEST_F(BasinEntries, OverTheRimPassNoWall) {
  EXPECT_TRUE(entries(run(freeAt({0, 10}, 3.4), inBasin({0, 0}, 3.2))).empty());
  EXPECT_EQ(connectors("2"), 0);
}

TEST_F(BasinEntries, AreTheWayOutOfADrain) {
  const auto found = entries(run(inBasin({1, 0}, 2), freeAt({20, 10}, 1.9)));
  ASSERT_EQ(found.size(), 1u);
  EXPECT_TRUE(found[0].atStart);
  EXPECT_NEAR(found[0].at.x, 11, 1e-9);
  EXPECT_NEAR(found[0].at.z, 2, 1e-9);
}

} // namespace
} // namespace sump
