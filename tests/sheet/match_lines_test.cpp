// Where a plan over several sheets is cut: no part is too long for the paper, and structures stay
// whole where the paper allows.

#include "core/exchange/plan_file.h"
#include "core/plan/ends.h"
#include "core/sheet/match_lines.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

TEST(MatchLines, GoWhereTheyCostLeast) {
  // 10 to 14 had better not be cut; three parts of at most 9 over 24.
  const auto cost = [](double at) { return at > 10 && at < 14 ? 5.0 : 0.0; };
  const auto cuts = cheapestCuts(0, 24, 9, 3, cost);
  ASSERT_EQ(cuts.size(), 2u);
  EXPECT_EQ(cost(cuts[0]) + cost(cuts[1]), 0) << cuts[0] << " and " << cuts[1];
  EXPECT_LE(cuts[0], 9.0 + 1e-9);
  EXPECT_LE(cuts[1] - cuts[0], 9.0 + 1e-9);
  EXPECT_GE(cuts[1], 15.0 - 1e-9);
}

TEST(MatchLines, PartsAreAlikeWhereNothingElseMatters) {
  const auto cuts = cheapestCuts(0, 30, 20, 2, [](double) { return 0.0; });
  ASSERT_EQ(cuts.size(), 1u);
  EXPECT_NEAR(cuts[0], 15, 0.5);
}

TEST(MatchLines, OnePartIsNotCut) {
  EXPECT_TRUE(cheapestCuts(0, 8, 9, 1, [](double) { return 1.0; }).empty());
}

/// The parts of a site that paper of this size takes at 1:100.
void expectWhole(const char* name, double wide, double high) {
  const Plan plan = readPlanFile(sampleFile(name));
  const Review reviewed = review(plan, builtinCatalog());
  const SheetJob job{reviewed, builtinCatalog(), *paperSize("a3"), 0,
                     planMarks(reviewed.plan, reviewed.study)};
  const PaperBox site = extents(reviewed.plan, job.marks).site;
  const Tiling parts = gentleTiling(site, {{0, 0}, {wide, high}}, 100, job);
  ASSERT_GT(parts.tiles.size(), 1u);
  std::vector<PaperBox> whole;
  for (const Vault& vault : plan.vaults)
    whole.push_back(around(outline(vault)));
  for (const EquipmentRoom& room : plan.rooms)
    whole.push_back(around(outline(room)));
  for (const PaperBox& box : whole) {
    std::size_t holding = 0;
    for (const Tile& tile : parts.tiles) {
      holding += tile.site.holds(box) ? 1 : 0;
      EXPECT_LE(tile.site.width(), wide / 10 + 1e-6);
      EXPECT_LE(tile.site.height(), high / 10 + 1e-6);
    }
    EXPECT_EQ(holding, 1u) << name << " at " << box.centre().x << "," << box.centre().y;
  }
}

TEST(MatchLines, SpareVaultsAndRooms) {
  expectWhole("transit-depot", 380, 200);
  expectWhole("boatyard-pad", 300, 200);
  expectWhole("ferry-quay", 480, 240);
}

} // namespace
} // namespace sump
