// What the bill counts is what the sheets show: fittings, valves and parts of the schedule, the
// earth of the excavation sheet, and the corners that are staked out.

#include "core/exchange/buy_list.h"
#include "core/exchange/plan_file.h"
#include "core/exchange/stake_out.h"
#include "core/sheet/compose.h"
#include "core/study/wall_sleeves.h"
#include "core/units/print.h"
#include "tests/sheet/composed.h"
#include "tests/support/csv_reader.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

namespace sump::test {
namespace {

class BillOnSheets : public ::testing::TestWithParam<const char*> {
protected:
  const Review& review_ = testing::sampleReview(GetParam());
  const BuyList buy_ = buyList(review_);
  const UnitSystem units_ = review_.plan.project.units;
  /// ARCH E and A0 wrap no cell.
  static const std::vector<Page>& pages(const Review& review) {
    static std::map<std::string, std::vector<Page>> known;
    std::vector<Page>& found = known[GetParam()];
    if (found.empty())
      found = composeSheets(review,
                            {"arch-e",
                             0,
                             nullptr,
                             {"schedules", "excavation", "placement", "vault-sections", "room"}});
    return found;
  }
  const std::vector<Page>& pages_ = pages(review_);

  /// The texts of all rows: what stands at one height of a page, from left to right in the page.
  std::vector<std::vector<std::string>> rows() const {
    std::vector<std::vector<std::string>> all;
    for (const Page& page : pages_) {
      double y = -1, x = 0;
      for (const PageItem& item : page.items) {
        const auto* text = std::get_if<PageText>(&item);
        if (text == nullptr) continue;
        if (text->at.y != y || text->at.x < x) all.emplace_back();
        all.back().push_back(text->text);
        y = text->at.y;
        x = text->at.x;
      }
    }
    return all;
  }
  /// A row of the fittings' schedule: description, size, material, count, trade, runs.
  bool counted(const BillLine& line, double count) const {
    return std::ranges::any_of(rows_, [&](const std::vector<std::string>& row) {
      const auto trade = std::ranges::find(row, line.trade);
      return row.size() > 3 && row[0] == line.description &&
             row[1] == (line.size.empty() ? "-" : line.size + "\"") && trade != row.end() &&
             *(trade - 1) == fixed(count, 0) && (line.material.empty() || row[2] == line.material);
    });
  }
  bool anyRow(const std::vector<std::string>& cells) const {
    return std::ranges::any_of(rows_, [&](const std::vector<std::string>& row) {
      return std::ranges::all_of(cells, [&](const std::string& cell) {
        return std::ranges::find(row, cell) != row.end();
      });
    });
  }
  const std::vector<std::vector<std::string>> rows_ = rows();
};
INSTANTIATE_TEST_SUITE_P(Samples, BillOnSheets,
                         ::testing::Values("transit-depot", "boatyard-pad", "ferry-quay"));

TEST_P(BillOnSheets, FittingsValvesPartsAndConnectors) {
  int lines = 0;
  for (const BillLine& line : buy_.bill.lines) {
    const bool shown = line.category == "fitting" || line.category == "valve" ||
                       line.category == "part" || line.category == "connector";
    if (!shown) continue;
    ++lines;
    EXPECT_TRUE(counted(line, *line.net))
        << line.description << " " << line.size << " " << *line.net;
    EXPECT_FALSE(counted(line, *line.net + 1)) << line.description << " " << line.size;
  }
  EXPECT_GT(lines, 15);
}

/// One for each opening in a wall, baffle or riser, size for size.
TEST_P(BillOnSheets, ConnectorsAreAsManyAsOpenings) {
  std::map<std::pair<std::string, std::string>, double> openings, bought, taken;
  for (const auto& row : rows_) {
    // Vault, run, pipe, its outside, room, wall or baffle or riser, ...
    if (row.size() < 9) continue;
    const bool baffle = row[5].starts_with("baffle");
    const bool wall = row[5] == "1-2" || row[5] == "2-3" || row[5] == "4-3" || row[5] == "1-4";
    if (baffle || wall || row[5].starts_with("riser"))
      ++openings[{baffle ? "sleeve" : "connector", row[2]}];
  }
  const auto kindOf = [](const std::string& key) {
    return std::string(key == "baffle-sleeve" ? "sleeve" : "connector");
  };
  const std::set<std::string> elsewhere = {"wall-sleeve", "slab-sleeve", "basin-connector"};
  for (const BillLine& line : buy_.bill.lines) {
    if (line.category == "connector" && !elsewhere.contains(line.key))
      bought[{kindOf(line.key), line.size + "\""}] += *line.net;
  }
  for (const QuantityLine& line : review_.study.takeOff) {
    if (line.category == "connector" && !elsewhere.contains(line.item))
      taken[{kindOf(line.item), line.size + "\""}] += line.quantity;
  }
  EXPECT_GE(openings.size(), 3u);
  EXPECT_EQ(openings, bought);
  EXPECT_EQ(openings, taken);
}

/// One for each wall of a building that a line passes; none where it goes under the footing.
TEST_P(BillOnSheets, SleevesAreAsManyAsWallsPassed) {
  std::map<std::string, double> passed, bought, taken;
  for (const auto& row : rows_) {
    // Building (in a row of its own where it takes two lines), run, pipe, sleeve, north, east,
    // invert, over the footing, through what.
    static const std::set<std::string> kBuiltIn = {"wall", "wall (2)", "footing (1)",
                                                   "partly footing (1)"};
    const bool built = kBuiltIn.contains(row.back());
    if (row.size() >= 8 && built) ++passed[row[row.size() - 6]];
  }
  for (const BillLine& line : buy_.bill.lines) {
    if (line.key == "wall-sleeve") bought[line.size + "\""] += *line.net;
  }
  for (const QuantityLine& line : review_.study.takeOff) {
    if (line.item == "wall-sleeve") taken[line.size + "\""] += line.quantity;
  }
  EXPECT_GE(passed.size(), 2u);
  EXPECT_EQ(passed, bought);
  EXPECT_EQ(passed, taken);
}

/// One for each line that comes up through a floor, and none for the floor drains beside them.
TEST_P(BillOnSheets, SlabSleevesAreAsManyAsFloorsPassed) {
  std::map<std::string, double> passed, bought, taken;
  for (const SlabPass& pass : slabPasses(review_.plan, review_.study))
    ++passed[pass.sleeve.value_or(pass.size) + "\""];
  std::map<std::string, double> printed;
  for (const auto& row : rows_) {
    // Floor of (it may have a row of its own), run, pipe, sleeve, north, east, floor.
    const bool isRun = row.size() >= 6 && row.size() <= 7 && row[row.size() - 6].size() <= 5;
    const auto isPipe = [](const std::string& cell) { // sizes have no feet
      return cell.ends_with("\"") && cell.find('\'') == std::string::npos;
    };
    if (isRun && isPipe(row[row.size() - 4]) && isPipe(row[row.size() - 5]))
      ++printed[row[row.size() - 4]];
  }
  for (const BillLine& line : buy_.bill.lines) {
    if (line.key == "slab-sleeve") bought[line.size + "\""] += *line.net;
  }
  for (const QuantityLine& line : review_.study.takeOff) {
    if (line.item == "slab-sleeve") taken[line.size + "\""] += line.quantity;
  }
  EXPECT_GE(passed.size(), 2u);
  EXPECT_EQ(printed, passed);
  EXPECT_EQ(bought, passed);
  EXPECT_EQ(taken, passed);
}

/// As many supports in the bill as the table of open pipe tells.
TEST_P(BillOnSheets, SupportsAreAsManyAsTheTableTells) {
  double told = 0, bought = 0;
  for (const auto& row : rows_) {
    // Run, size, where, way, length, apart, supports; `none: wall` where that carries it.
    const bool open = row.size() == 7 && (row[3] == "upright" || row[3] == "level");
    if (open && !row[6].starts_with("none: ")) told += std::stod(row[6]);
  }
  for (const BillLine& line : buy_.bill.lines) {
    if (line.key == "pipe-support") bought += *line.net;
  }
  EXPECT_GT(told, 10);
  EXPECT_EQ(told, bought);
}

TEST_P(BillOnSheets, Earth) {
  const char* sheet[][2] = {{"excavation", "Dug, bank volume"},
                            {"bedding", "Bedding"},
                            {"pipe-zone", "Pipe zone"},
                            {"backfill", "Backfill; also bed and zone of pipe in the vaults' digs"},
                            {"spoil", "Spoil, loose"},
                            {"surplus", "Hauled off, loose"}};
  for (const auto& [key, title] : sheet) {
    const auto line = std::ranges::find(buy_.bill.lines, key, &BillLine::key);
    ASSERT_NE(line, buy_.bill.lines.end()) << key;
    const std::string printed =
        fixed(inUnit(*line->net, line->unit, units_), unitDecimals(0, line->unit, units_)) +
        (units_ == UnitSystem::Metric ? " m\u00b3" : " yd\u00b3");
    EXPECT_TRUE(anyRow({title, printed})) << title << " " << printed;
  }
}

/// Point for point: the corner that the placement sheet calls V1-1 is the stake-out's first of V1.
TEST_P(BillOnSheets, CornersAreStakedOutWhereTheSheetHasThem) {
  std::map<std::string, int> corner;
  int found = 0;
  for (const auto& row : readCsv(stakeOutCsv(review_.plan, review_.study))) {
    if (row.size() < 5 || row[4].find("outside corner") == std::string::npos) continue;
    const std::string vault = row[4].substr(0, row[4].find(' '));
    const std::string mark = vault + "-" + std::to_string(++corner[vault]);
    const auto shown = [&](const std::string& number) {
      return fixed(std::stod(number), units_ == UnitSystem::Metric ? 3 : 2);
    };
    EXPECT_TRUE(anyRow({mark, shown(row[2]), shown(row[1])})) << row[4];
    ++found;
  }
  EXPECT_EQ(found, static_cast<int>(4 * review_.plan.vaults.size()));
}

} // namespace
} // namespace sump::test
