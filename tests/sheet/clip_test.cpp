#include "core/sheet/clip.h"

#include "core/geometry/polygon.h"
#include "core/sheet/hatch.h"
#include "core/sheet/placer.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

const PaperBox kBox{{0, 0}, {10, 10}};

TEST(Clip, CutsALineIntoItsPartsInside) {
  const auto parts = clipLine({{-5, 5}, {5, 5}, {5, 15}, {8, 15}, {8, 5}}, kBox);
  ASSERT_EQ(parts.size(), 2u);
  EXPECT_EQ(parts[0], (Polyline{{0, 5}, {5, 5}, {5, 10}}));
  EXPECT_EQ(parts[1], (Polyline{{8, 10}, {8, 5}}));
  EXPECT_TRUE(clipLine({{11, 0}, {11, 10}}, kBox).empty());
}

TEST(Clip, CutsARing) {
  EXPECT_NEAR(area(clipRing({{5, 5}, {15, 5}, {15, 15}, {5, 15}}, kBox)), 25, 1e-12);
  EXPECT_TRUE(clipRing({{20, 20}, {30, 20}, {30, 30}}, kBox).empty());
}

TEST(Hatch, LinesStayInsideAndStandApart) {
  const Ring ring{{0, 0}, {10, 0}, {10, 10}, {0, 10}};
  const auto lines = hatchLines(ring, Hatch::Diagonal, 1);
  // The square's diagonal is 14.14 long: 14 lines 1 apart, one of them through a corner or not.
  EXPECT_NEAR(static_cast<double>(lines.size()), 14, 1);
  for (const auto& [a, b] : lines) {
    EXPECT_TRUE(kBox.grown(1e-9).holds(a));
    EXPECT_TRUE(kBox.grown(1e-9).holds(b));
  }
  EXPECT_TRUE(hatchLines(ring, Hatch::None, 1).empty());
}

TEST(Placer, TakesTheCheapestPlaceThatIsFree) {
  LabelPlacer placer({{0, 0}, {100, 100}});
  placer.forbid({{10, 10}, {20, 20}});
  placer.obstacles().addLine({30, 0}, {30, 100}, 50, 6);
  const LabelCandidate onText{{{12, 12}, {18, 18}}, {}, 0, false};
  const LabelCandidate onLine{{{28, 10}, {35, 20}}, {}, 1, false};
  const LabelCandidate outside{{{95, 10}, {105, 20}}, {}, 2, false};
  const LabelCandidate good{{{50, 10}, {60, 20}}, {}, 9, false};
  const auto chosen = placer.place({onText, onLine, outside, good});
  ASSERT_TRUE(chosen);
  EXPECT_EQ(chosen->box.low.x, 50);
  EXPECT_FALSE(placer.place({good})) << "the place is taken now";
}

TEST(Placer, KeepsLeadersOffTexts) {
  LabelPlacer placer({{0, 0}, {100, 100}});
  placer.forbid({{40, 0}, {50, 100}});
  EXPECT_FALSE(placer.place({{{{60, 40}, {80, 50}}, Point2{10, 45}, 0, false}}));
}

} // namespace
} // namespace sump
