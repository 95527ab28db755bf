// Leaders end at the edge of the symbol that they point at.

#include "core/sheet/leader_end.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

const PaperBox kValveBox{{-2, -1}, {2, 1}};

TEST(LeaderEnd, IsAtTheEdgeOfTheSymbol) {
  const Point2 level = leaderEnd({10, 0}, {0, 0}, {kValveBox});
  EXPECT_NEAR(level.x, 2, 1e-12);
  EXPECT_NEAR(level.y, 0, 1e-12);
  // 45 degrees: out by the top, which is nearer.
  const Point2 slanting = leaderEnd({10, 10}, {0, 0}, {kValveBox});
  EXPECT_NEAR(slanting.x, 1, 1e-12);
  EXPECT_NEAR(slanting.y, 1, 1e-12);
}

TEST(LeaderEnd, StaysWhereNoSymbolIsPointedAt) {
  // Beside the symbol's middle it points at something else.
  EXPECT_NEAR(leaderEnd({10, 0}, {1.5, 0}, {kValveBox}).x, 1.5, 1e-12);
  // 0.5 mm would be left of it.
  EXPECT_NEAR(leaderEnd({2.5, 0}, {0, 0}, {kValveBox}).x, 0, 1e-12);
  // What is as large as a manway is pointed into.
  EXPECT_NEAR(leaderEnd({20, 0}, {0, 0}, {PaperBox{{-6, -6}, {6, 6}}}).x, 0, 1e-12);
  EXPECT_NEAR(leaderEnd({10, 0}, {0, 0}, {}).x, 0, 1e-12);
}

TEST(LeaderEnd, PassesTheLargerOfTwoAtOnePlace) {
  const PaperBox port{{-3, -3}, {3, 3}};
  EXPECT_NEAR(leaderEnd({10, 0}, {0, 0}, {kValveBox, port}).x, 3, 1e-12);
}

} // namespace
} // namespace sump
