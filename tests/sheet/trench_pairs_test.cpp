#include "core/sheet/trench_pairs.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

TrenchStudy levelTrench(double from, double to, double y) {
  TrenchStudy trench;
  trench.length = metres(to - from);
  trench.stretches = {{{{from, y}, 0, 1, 0.5}, {{to, y}, 0, 1, 0.5}}};
  return trench;
}

TEST(TrenchPairs, TellWhatIsDugTogetherAlsoByWayOfOthers) {
  const std::vector<TrenchStudy> trenches = {levelTrench(0, 12, 0), levelTrench(0, 12, 0.6),
                                             levelTrench(9, 18, 1.2), levelTrench(0, 12, 5)};
  const TrenchPairs pairs = trenchPairs(trenches);
  EXPECT_EQ(pairs[0], (std::vector<std::size_t>{1}));
  EXPECT_EQ(pairs[1], (std::vector<std::size_t>{0, 2}));
  EXPECT_EQ(dugWith(pairs, 2), (std::vector<std::size_t>{2, 1, 0}));
  EXPECT_EQ(dugWith(pairs, 3), (std::vector<std::size_t>{3}));
}

} // namespace
} // namespace sump
