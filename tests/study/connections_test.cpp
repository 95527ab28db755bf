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

} // namespace
} // namespace sump
