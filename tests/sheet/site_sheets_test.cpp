// What the site's sheets say and draw of trenches, ports and parallel lines.

#include "core/sheet/label_board.h"
#include "tests/sheet/composed.h"
#include "tests/sheet/page_texts.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

std::string textsOnSheet(const char* sheet) {
  std::string all;
  for (const Page& page : testing::sampleSheets("transit-depot", "arch-d")) {
    if (page.number != sheet) continue;
    for (const PageText& text : testing::textsOf(page))
      all += text.text + " ";
  }
  return all;
}

TEST(ExcavationSheet, TellsWhichTrenchesOpenAPavement) {
  const std::string texts = textsOnSheet("C-102");
  const std::size_t at = texts.find("Trenches open pavement: Bus yard by ");
  ASSERT_NE(at, std::string::npos);
  EXPECT_NE(texts.find("OF-1", at), std::string::npos);
  EXPECT_EQ(texts.substr(at, texts.find('.', at) - at).find("UF-1"), std::string::npos)
      << "it lies under floors only";
}

TEST(ExcavationSheet, TellsWhichTrenchesOpenAFloor) {
  const std::string texts = textsOnSheet("C-102");
  const std::size_t at = texts.find("Trenches open the floor of: ");
  ASSERT_NE(at, std::string::npos);
  const std::string floors = texts.substr(at, texts.find('.', at) - at);
  EXPECT_NE(floors.find("Existing bus wash bay by WW-1, "), std::string::npos) << floors;
  EXPECT_NE(floors.find("UF-1"), std::string::npos) << floors;
  EXPECT_EQ(floors.find("OF-1"), std::string::npos) << "it lies in the open only";
}

/// The float's conduit turns along the wall before it goes in: its line 1'-6" off, its trench half
/// of 1.315 in + 16 in less.
TEST(ExcavationSheet, TellsTheFootingBesideATrenchThatGoesIn) {
  EXPECT_NE(
      textsOnSheet("C-102").find("The trench of FC-1 passes the footing of Existing equipment "
                                 "building, 0'-9 5/16\" off at the nearest"),
      std::string::npos);
}

/// The ground at the wash bay's corner, 101.95; its floor is at 102.00.
TEST(PlanSheet, TellsWhichLevelsAtABuildingAreTheGround) {
  const std::string texts = textsOnSheet("P-101");
  EXPECT_NE(texts.find("101.95 ground"), std::string::npos);
  EXPECT_EQ(texts.find("102.00 ground"), std::string::npos);
}

TEST(PlanSheet, NamesTheSignOfAPort) {
  EXPECT_NE(textsOnSheet("P-101").find("Port of the equipment"), std::string::npos);
}

/// Two lines 7 mm apart on the paper, of which the upper one is named; without the other, one only.
double textHeightOver(bool both) {
  const SheetView view{"1", "", {{0, 0}, {200, 100}}, {10, 5}, 100};
  std::vector<Mark> marks;
  for (const double y : {5.0, 5.7}) {
    if (y > 5 && !both) continue;
    Mark mark;
    mark.layer = Layer::Run;
    mark.points = {{2, y}, {18, y}};
    mark.line = LineStyle{Ink::Black, 0.5, {}};
    marks.push_back(mark);
  }
  Page page;
  LabelBoard board(view, marks, page);
  board.alongLine({{"UF-1"}}, {{2, 5}, {18, 5}}, 60);
  board.finish();
  return view.toPaper({0, 5}).y - testing::textsOf(page).at(0).at.y;
}

TEST(AlongLine, ANameStandsNotBetweenTwoLines) {
  EXPECT_GT(textHeightOver(false), 0) << "over its line where that is free";
  EXPECT_LT(textHeightOver(true), 0) << "under it where another line is above";
}

} // namespace
} // namespace sump
