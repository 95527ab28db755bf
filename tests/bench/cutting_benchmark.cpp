// Prints how long the least sticks take for 20, 200 and 2,000 random cuts of three mixtures, with
// the growth from one to the next and how many of the answers are proven. Nothing passes or fails.

#include "core/study/packing.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <random>

namespace {

using Clock = std::chrono::steady_clock;
using Milliseconds = std::chrono::duration<double, std::milli>;

struct Mixture {
  const char* name;
  double shortest, longest; ///< of a stick
};

/// Sixteenths of an inch of 20 ft sticks with a kerf of 1/8 in.
constexpr std::int64_t kStick = 240 * 16, kKerf = 2;

std::vector<std::int64_t> cuts(std::mt19937& random, int count, const Mixture& mixture) {
  std::uniform_int_distribution<std::int64_t> cut(
      static_cast<std::int64_t>(kStick * mixture.shortest),
      static_cast<std::int64_t>(kStick * mixture.longest));
  std::vector<std::int64_t> sizes(static_cast<std::size_t>(count));
  for (std::int64_t& size : sizes)
    size = cut(random) + kKerf;
  return sizes;
}

struct Tally {
  double medianMilliseconds = 0;
  int proven = 0;
  double gap = 0; ///< sticks over the bound, as a share of the bound, on average
};

constexpr int kRounds = 9;

Tally measure(int count, const Mixture& mixture) {
  std::mt19937 random(1);
  std::vector<double> times;
  Tally tally;
  for (int round = 0; round < kRounds; ++round) {
    const auto sizes = cuts(random, count, mixture);
    const Clock::time_point before = Clock::now();
    const sump::Packing packing = sump::packLeast(sizes, kStick + kKerf);
    times.push_back(Milliseconds(Clock::now() - before).count());
    tally.proven += packing.proven() ? 1 : 0;
    tally.gap += (static_cast<double>(packing.bins.size()) / packing.lowerBound - 1) / kRounds;
  }
  std::ranges::nth_element(times, times.begin() + kRounds / 2);
  tally.medianMilliseconds = times[kRounds / 2];
  return tally;
}

} // namespace

int main() {
  constexpr Mixture mixtures[] = {{"short and long", 0.02, 1.0},
                                  {"up to half a stick", 0.02, 0.5},
                                  {"a fifth to two thirds", 0.2, 0.7},
                                  {"a fifth to half a stick", 0.2, 0.5}};
  for (const Mixture& mixture : mixtures) {
    double last = 0;
    for (const int count : {20, 200, 2000}) {
      const Tally tally = measure(count, mixture);
      std::printf("%-24s %5d cuts %10.3f ms  %d of %d proven, %.2f %% over the bound", mixture.name,
                  count, tally.medianMilliseconds, tally.proven, kRounds, 100 * tally.gap);
      if (last > 0) std::printf("  %.1f times the last", tally.medianMilliseconds / last);
      std::puts("");
      last = tally.medianMilliseconds;
    }
  }
}
