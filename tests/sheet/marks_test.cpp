#include "core/sheet/marks.h"

#include "core/catalog/catalog.h"
#include "core/geometry/polygon.h"
#include "core/sheet/part_symbol.h"
#include "tests/sheet/small_plan.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace sump {
namespace {

std::vector<Mark> smallMarks() {
  const Plan plan = testing::smallPlan();
  return planMarks(plan, study(plan, builtinCatalog(), builtinCatalog().limits));
}

const Mark* first(const std::vector<Mark>& marks, const Id& object, Layer layer) {
  const auto it = std::find_if(marks.begin(), marks.end(), [&](const Mark& m) {
    return m.object == object && m.layer == layer;
  });
  return it == marks.end() ? nullptr : &*it;
}

TEST(Marks, EveryObjectIsDrawn) {
  const Plan plan = testing::smallPlan();
  std::set<Id> drawn;
  for (const Mark& mark : smallMarks())
    drawn.insert(mark.object);
  for (const char* id :
       {"B1", "PV1", "U1",  "S1",    "W1",   "CB1",  "SW1",  "WE1",  "R1",   "V1",
        "V2", "BF1", "M1A", "PT-SU", "P-U1", "P-BV", "P-BW", "P-CO", "P-RP", "P-PB"}) {
    EXPECT_TRUE(drawn.contains(id)) << id;
  }
  for (const auto& run : plan.runs)
    EXPECT_TRUE(drawn.contains(run.id)) << run.id;
}

TEST(Marks, StandInDrawingOrder) {
  const std::vector<Mark> marks = smallMarks();
  EXPECT_TRUE(std::is_sorted(marks.begin(), marks.end(),
                             [](const Mark& a, const Mark& b) { return a.layer < b.layer; }));
}

TEST(Marks, ARunFollowsItsCentreline) {
  const std::vector<Mark> marks = smallMarks();
  const Mark* inlet = first(marks, "R-WW", Layer::Run);
  ASSERT_NE(inlet, nullptr);
  ASSERT_EQ(inlet->points.size(), 3u);
  // Basin at (20, 35) ft, turned 90 degrees: local (0, -0.75) lies 0.75 ft east of its centre.
  EXPECT_NEAR(inlet->points[0].x, 20.75 * kMetresPerFoot, 1e-9);
  EXPECT_NEAR(inlet->points[0].y, 35 * kMetresPerFoot, 1e-9);
  // Vault 1 at (60, 38) ft, local (-5.5, 1.5).
  EXPECT_NEAR(inlet->points[2].x, 54.5 * kMetresPerFoot, 1e-9);
  EXPECT_EQ(inlet->line, serviceLine(Service::Inlet));
}

TEST(Marks, AVaultIsDrawnAtItsOutsideSize) {
  const std::vector<Mark> marks = smallMarks();
  const Mark* vault = first(marks, "V1", Layer::Vault);
  ASSERT_NE(vault, nullptr);
  EXPECT_NEAR(area(vault->points), 12 * 6 * kMetresPerFoot * kMetresPerFoot, 1e-9);
}

TEST(Marks, ChambersAreTintedOnlyWhereTheWaterLevelIsKnown) {
  Plan plan = testing::smallPlan();
  const auto wet = [](const std::vector<Mark>& marks) {
    return std::count_if(marks.begin(), marks.end(),
                         [](const Mark& m) { return m.fill && m.fill->ink == Ink::Water; });
  };
  EXPECT_EQ(wet(smallMarks()), 4);
  EXPECT_EQ(wet(planMarks(plan, Study{})), 0);
}

/// A run through these levels, each level leg one metre long.
RunStudy through(const std::vector<double>& levels) {
  RunStudy run;
  run.points.resize(levels.size());
  for (std::size_t i = 0; i < levels.size(); ++i)
    run.points[i].at.z = levels[i];
  run.legs.resize(levels.size() - 1);
  for (std::size_t i = 0; i < run.legs.size(); ++i)
    run.legs[i].vertical = levels[i] != levels[i + 1];
  return run;
}

// ISO 6412-1 tells where the pipe goes from the level one, not where the water does: a link that
// comes up from low in its chamber is turned down there, as is one that ends low.
TEST(Marks, UprightPipeTurnsAwayFromItsLevelLeg) {
  EXPECT_FALSE(turnsUp(through({1, 3, 3}), 0)) << "rises to its level leg";
  EXPECT_FALSE(turnsUp(through({3, 3, 1}), 1)) << "drops from it";
  EXPECT_TRUE(turnsUp(through({5, 2, 2}), 0)) << "comes down from a port";
  EXPECT_TRUE(turnsUp(through({2, 2, 5}), 1)) << "goes up to one";
  EXPECT_TRUE(turnsUp(through({2, 5}), 0)) << "no level leg: as it flows";
}

TEST(Marks, AnEmptyPlanHasNone) {
  EXPECT_TRUE(planMarks(Plan{}, Study{}).empty());
}

} // namespace
} // namespace sump
