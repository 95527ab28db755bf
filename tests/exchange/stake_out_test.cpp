#include "core/exchange/stake_out.h"

#include "tests/reference/two_vault_plan.h"
#include "tests/support/csv_reader.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace sump::test {
namespace {

class StakeOut : public ::testing::Test {
protected:
  using Rows = std::vector<std::vector<std::string>>;
  static Rows rowsOf(const Plan& plan) { return readCsv(stakeOutCsv(plan, studyOf(plan))); }
  /// The row whose description starts so.
  static std::vector<std::string> row(const Rows& rows, const std::string& what) {
    const auto found = std::ranges::find_if(
        rows, [&](const auto& r) { return r.size() == 5 && r[4].rfind(what, 0) == 0; });
    EXPECT_NE(found, rows.end()) << what;
    return found == rows.end() ? std::vector<std::string>(5) : *found;
  }
  static void expectPoint(const std::vector<std::string>& row, const std::string& north,
                          const std::string& east, const std::string& elevation) {
    EXPECT_EQ(row[1], north) << row[4];
    EXPECT_EQ(row[2], east) << row[4];
    EXPECT_EQ(row[3], elevation) << row[4];
  }
};

TEST_F(StakeOut, TheHeadingSaysTheOrder) {
  const Rows rows = rowsOf(twoVaultPlan());
  EXPECT_EQ(rows[0], (std::vector<std::string>{"P (point)", "N (north, ft)", "E (east, ft)",
                                               "Z (elevation, ft)", "D (description)"}));
  for (std::size_t i = 1; i < rows.size(); ++i) {
    ASSERT_EQ(rows[i].size(), 5u);
    EXPECT_EQ(rows[i][0], std::to_string(i));
    EXPECT_EQ(rows[i][4].find(','), std::string::npos) << rows[i][4];
  }
}

/// V1 stands at x = 20, y = 10: a list with north and east changed round would say 20, 10.
TEST_F(StakeOut, NorthIsYAndEastIsX) {
  const Rows rows = rowsOf(twoVaultPlan());
  expectPoint(row(rows, "V1 centre"), "10.000", "20.000", "90.000");
  // The outside corner at the low x and low y, under the 6 in slab.
  expectPoint(row(rows, "V1 outside corner 1 of 4"), "7.000", "14.250", "89.500");
  expectPoint(row(rows, "V1-M2 centre"), "10.000", "22.750", "97.000");
  expectPoint(row(rows, "IN Wash-water inlet start"), "22.000", "-19.000", "95.000");
  expectPoint(row(rows, "OF Overflow to sewer end"), "-10.000", "84.500", "93.073");
  expectPoint(row(rows, "ER inside corner 1 of 4"), "20.000", "36.000", "97.000");
  expectPoint(row(rows, "SW connection"), "-10.000", "84.500", "93.073");
}

// The room's low corner is 36 ft east, 20 ft north.
TEST_F(StakeOut, AFloorDrainStandsInItsRoom) {
  Plan plan = twoVaultPlan();
  EquipmentRoom room = plan.rooms[0];
  room.floorDrain = ft(2, 5);
  plan.rooms.put(room);
  expectPoint(row(rowsOf(plan), "ER floor drain"), "25.000", "38.000", "97.000");
}

TEST_F(StakeOut, PavementLiesOnTheGroundAndMetricPlansAreInMetres) {
  Plan plan = twoVaultPlan();
  plan.project.units = UnitSystem::Metric;
  plan.pavements.put({"PV", "", {ft(0, 0), ft(50, 0), ft(50, 40)}, true});
  const Rows rows = rowsOf(plan);
  EXPECT_EQ(rows[0][1], "N (north, m)");
  // 97 - 50/100 = 96.5 ft = 29.4132 m; 50 ft = 15.24 m
  expectPoint(row(rows, "PV edge 2 of 3"), "0.000", "15.240", "29.413");
  plan.spots = {};
  plan.site.groundDefault.reset();
  EXPECT_EQ(row(rowsOf(plan), "PV edge 2 of 3")[3], "") << "no level is made up";
}

TEST_F(StakeOut, EveryVaultRunAndRoomIsThere) {
  const Plan plan = twoVaultPlan();
  const Study study = studyOf(plan);
  std::size_t points =
      plan.vaults.size() * 5 + plan.rooms.size() * 4 + plan.basins.size() + plan.sewers.size();
  for (const VaultStudy& vault : study.vaults)
    points += vault.manways.size();
  for (const RunStudy& run : study.runs)
    points += run.points.size();
  EXPECT_EQ(stakePoints(plan, study).size(), points);
}

TEST_F(StakeOut, APointGivenTwiceIsListedOnce) {
  Plan plan = twoVaultPlan();
  const std::size_t before = stakePoints(plan, studyOf(plan)).size();
  sump::Run run = plan.runs[0];
  const RunStudy drawn = studyOf(plan).runs[0];
  const RunPoint& last = drawn.points.back();
  run.vertices.push_back({flat(last.at), metres(last.at.z)});
  plan.runs.put(run);
  EXPECT_EQ(stakePoints(plan, studyOf(plan)).size(), before);
}

} // namespace
} // namespace sump::test
