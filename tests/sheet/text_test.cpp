#include "core/sheet/block.h"
#include "core/sheet/page.h"

#include "core/geometry/polygon.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

TEST(Text, WidthGrowsWithHeightAndIsTheSumOfItsCharacters) {
  EXPECT_DOUBLE_EQ(textWidth("", 2.5, false), 0);
  EXPECT_NEAR(textWidth("AB", 2.5, false), textWidth("A", 2.5, false) + textWidth("B", 2.5, false),
              1e-12);
  EXPECT_NEAR(textWidth("Vault", 5, true), 2 * textWidth("Vault", 2.5, true), 1e-12);
  // DejaVu Sans Condensed: digits are 1172 units wide, H is 1493 high.
  EXPECT_NEAR(textWidth("0", 1493, false), 1172, 1e-9);
}

TEST(Text, ReadsUtf8AsCharacters) {
  for (const char* one : {"°", "½", "³", "–", "′", "Ø", "≥"}) {
    // One character, none of them wider than W; two or three bytes taken singly would be.
    EXPECT_LE(textWidth(one, 2.5, false), textWidth("W", 2.5, false)) << one;
    EXPECT_GT(textWidth(one, 2.5, false), 0.5) << one;
  }
}

TEST(Text, BoxTurnsWithTheText) {
  const PageText level{{10, 20}, "Vault 1", 2.5, Align::Left, 0, false, Ink::Black};
  PageText turned = level;
  turned.angle = 90; // reads upward: the box stands left of the baseline and above the start
  const double width = textWidth("Vault 1", 2.5, false);
  const PaperBox flat = around(textBox(level)), up = around(textBox(turned));
  EXPECT_NEAR(flat.width(), width, 1e-9);
  EXPECT_NEAR(up.height(), width, 1e-9);
  EXPECT_NEAR(up.high.y, 20, 1e-9);
  EXPECT_LT(up.low.x, 10);
  EXPECT_NEAR(area(textBox(level)), area(textBox(turned)), 1e-9);
}

TEST(Text, WrapsAtSpacesAndBreaksWordsThatAreTooLong) {
  for (const std::string& line :
       wrapped("a rather long note about nothing at all", 20, 2.5, false)) {
    EXPECT_LE(textWidth(line, 2.5, false), 20);
  }
  const auto broken = wrapped(std::string(60, 'x'), 20, 2.5, false);
  EXPECT_GT(broken.size(), 3u);
  std::string joined;
  for (const std::string& line : broken)
    joined += line;
  EXPECT_EQ(joined, std::string(60, 'x'));
}

} // namespace
} // namespace sump
