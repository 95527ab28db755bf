// The levels that are told beside a figure.

#include "core/sheet/level_ladder.h"

#include <gtest/gtest.h>

#include <map>

namespace sump {
namespace {

// The second name of the upper level must not read as the lower one's.
TEST(LevelLadder, ALevelWithSeveralNamesStandsApartFromTheNext) {
  const std::vector<LevelTag> levels{{1.78, 0, "1.780", "water at rest, Vault 1"},
                                     {1.78, 0, "1.780", "water at rest, Vault 2"},
                                     {1.66, 0, "1.660", "end invert"},
                                     {1.60, 0, "1.600", "low water"}};
  const SheetView view{"", "", {{0, 0}, {150, 100}}, {0, 1.5}, 50};
  Page page;
  LabelBoard board(view, {}, page);
  drawLadder(levels, view, ladderWidth(levels), board, page);
  std::map<std::string, double> down;
  for (const PageItem& item : page.items) {
    if (const auto* text = std::get_if<PageText>(&item)) down[text->text] = text->at.y;
  }
  ASSERT_EQ(down.size(), 4u);
  const double lines = down["water at rest, Vault 2"] - down["1.780  water at rest, Vault 1"];
  const double apart = down["1.660  end invert"] - down["water at rest, Vault 2"];
  EXPECT_GT(apart, lines + 1);
  // Levels with one name each need no more than a line.
  EXPECT_NEAR(down["1.600  low water"] - down["1.660  end invert"], lines, 1e-6);
}

// Three levels a millimetre apart on the paper: each has its mark before its own words.
TEST(LevelLadder, MarksOfCloseLevelsStandClearOfEachOther) {
  const std::vector<LevelTag> levels{{2.932, 0, "2.932", "grade at wall"},
                                     {2.880, 0, "2.880", "cover of access box"},
                                     {2.845, 0, "2.845", "cover of cleanout"},
                                     {1.780, 0, "1.780", "water at rest"}};
  const SheetView view{"", "", {{0, 0}, {150, 100}}, {0, 2.5}, 50};
  Page page;
  LabelBoard board(view, {}, page);
  drawLadder(levels, view, ladderWidth(levels), board, page);
  std::vector<PaperBox> marks;
  for (const PageItem& item : page.items) {
    const auto* shape = std::get_if<PageShape>(&item);
    if (shape != nullptr && shape->closed && shape->points.size() == 3)
      marks.push_back(around(shape->points));
  }
  ASSERT_EQ(marks.size(), levels.size());
  for (std::size_t i = 0; i < marks.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k)
      EXPECT_FALSE(marks[i].meets(marks[k])) << levels[i].level << " on " << levels[k].level;
  }
}

} // namespace
} // namespace sump
