// The openings' table where lines pass walls and risers off square.

#include "core/sheet/set_tables.h"
#include "tests/rules/depot.h"

#include <gtest/gtest.h>

#include <cmath>
#include <variant>

namespace sump::testing {
namespace {

/// All that stands in the table and under it, in order, lines joined by spaces.
std::string tableText(const Plan& plan) {
  const Review review = reviewed(plan);
  const Block block =
      openingTable({review, builtinCatalog(), *paperSize("arch-d"), 0, {}, nullptr}, 600);
  std::string text;
  for (const auto* strips : {&block.head, &block.body}) {
    for (const PaperStrip& strip : *strips) {
      for (const PageItem& item : strip.items) {
        if (const auto* words = std::get_if<PageText>(&item)) text += words->text + " ";
      }
    }
  }
  return text;
}

bool says(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

TEST(OpeningTable, SaysNothingOfSlantsWhereAllIsSquare) {
  EXPECT_FALSE(says(tableText(depot()), "square"));
}

/// The 3 in vent is 3.5 in outside and 2.864 in inside. Level at 97.7 ft its top lies 3.182 in over
/// its invert, 3.418 in under the lid at 98.25 ft: 3.5 in and twice that are 10.336 in. A
/// connector's room ends half way to another pipe.
TEST(OpeningTable, TellsThePipesOutsideAndTheRoomRoundIt) {
  const auto level = [](Plan& p) {
    changeRun(p, "VT-1", [](sump::Run& r) { r.vertices.back().invert = feet(97.7); });
  };
  const Edit beside = [&](Plan& p) {
    level(p);
    sump::Run other = *p.runs.find("VT-1");
    other.id = "VT-9";
    other.from.at.y -= 6 * 0.0254;
    for (Vertex& vertex : other.vertices)
      vertex.at.y -= 6 * 0.0254;
    other.parts.clear();
    p.runs.put(other);
  };
  EXPECT_TRUE(says(tableText(with(level)), "VT-1 3\" 0'-3 1/2\" 0'-10 5/16\""))
      << tableText(with(level));
  // 2.5 in between the two: 1.25 in for each.
  EXPECT_TRUE(says(tableText(with(beside)), "0'-3 1/2\" 0'-6\"")) << tableText(with(beside));
}

/// The 3 in vent, 3.5 in outside, through a wall of 6 in at 30 degrees: 3.5 / cos 30 = 4.0415 in
/// and 6 x tan 30 = 3.4641 in, 7.5056 in together.
TEST(OpeningTable, TellsSlantAndWidthInAWall) {
  const std::string text = tableText(with([](Plan& p) {
    changeRun(p, "VT-1", [&](sump::Run& r) {
      const Point2 start = p.vaults.find("V1")->frame().toSite(r.from.at);
      r.vertices[0].at = start + Point2{2, 2 * std::tan(kPi / 6)};
    });
  }));
  EXPECT_TRUE(says(text, "Off square"));
  EXPECT_TRUE(says(text, " 30\u00B0 ")) << text;
  EXPECT_TRUE(says(text, "VT-1 in Vault 1, settling, 30\u00B0: 0'-7 1/2\"")) << text;
}

/// 6 in off the centre of a riser of 24 in: the sine is 6 / 12.
TEST(OpeningTable, TellsTheSlantInARiser) {
  const std::string text = tableText(with([](Plan& p) {
    changeRun(p, "RC-1", [](sump::Run& r) {
      r.to.at.y = 6 * 0.0254;
      for (std::size_t i : {3, 4})
        r.vertices[i].at.y = 50 * kMetresPerFoot + r.to.at.y;
    });
  }));
  EXPECT_TRUE(says(text, " 30\u00B0 ")) << text;
  EXPECT_TRUE(says(text, "off the radius")) << text;
  EXPECT_FALSE(says(text, "Width across")) << "the plan has no thickness of a riser";
}

} // namespace
} // namespace sump::testing
