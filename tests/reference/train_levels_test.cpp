// The sample's part-full depth and peak levels against train_levels.py, which works them out from
// the plan file by itself with other methods. 0.5 % of the depth, and of each rise above rest.

#include "core/exchange/plan_file.h"
#include "tests/support/places.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <sstream>

namespace sump::test {
namespace {

/// What the script prints; empty when there is no Python.
std::vector<double> secondOpinion(const std::string& plan) {
  const std::string command =
      "python3 \"" + sourceFolder() + "/tests/reference/train_levels.py\" \"" + plan + '"';
  FILE* pipe = popen(command.c_str(), "r");
  if (pipe == nullptr) return {};
  std::string text;
  for (int c = std::fgetc(pipe); c != EOF; c = std::fgetc(pipe))
    text += static_cast<char>(c);
  if (pclose(pipe) != 0) return {};
  std::istringstream words(text);
  std::vector<double> numbers;
  for (double v = 0; words >> v;)
    numbers.push_back(v);
  return numbers;
}

TEST(TrainLevelsReference, TheSampleAgreesWithinHalfAPercent) {
  const std::string plan = sampleFile("transit-depot");
  const std::vector<double> other = secondOpinion(plan);
  ASSERT_EQ(other.size(), 6u) << "needs python3";
  const TrainStudy train = studyOf(readPlanFile(plan)).train;
  EXPECT_NEAR(inMetres(*train.gravityOf("OF-1")->depth) / other[1], 1, 0.005);
  const auto& chambers = train.pumpStopped->chambers;
  ASSERT_EQ(chambers.size(), 4u);
  for (std::size_t i = 0; i < 4; ++i) {
    const double rise = other[5 - i] - other[0];
    EXPECT_NEAR((inMetres(chambers[i].level) - other[0]) / rise, 1, 0.005) << i;
  }
}

} // namespace
} // namespace sump::test
