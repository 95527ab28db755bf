#include "core/sheet/lines_beside.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

TEST(LinesBeside, AreThoseThatGoTheSameWayNearby) {
  const std::vector<Polyline> lines = {{{0, 0}, {50, 0}},            // itself
                                       {{40, 5}, {10, 5}, {10, 30}}, // back, then away
                                       {{0, -9}, {50, -9}},          // too far
                                       {{20, -3}, {30, 3}}};         // across
  const std::vector<Beside> found = linesBeside(lines, {0, 0}, {50, 0}, 8);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_DOUBLE_EQ(found[0].from, 10);
  EXPECT_DOUBLE_EQ(found[0].to, 40);
  EXPECT_DOUBLE_EQ(found[0].off, 5);
}

} // namespace
} // namespace sump
