// Prints how long a study takes: the transit depot sample and generated plans of 20, 200 and 2,000
// runs, with the growth from one to the next. Nothing here passes or fails; design aims are under
// 5 ms for the sample and under 100 ms for 2,000 runs, and at most 13 times the time for 10 times
// the plan.

#include "core/exchange/plan_file.h"
#include "tests/support/generated_plan.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

namespace {

using Clock = std::chrono::steady_clock;
using Milliseconds = std::chrono::duration<double, std::milli>;

/// The median of as many studies as fit in about a second, 11 at least.
double medianMilliseconds(const sump::Plan& plan) {
  const sump::Catalog& catalog = sump::builtinCatalog();
  const sump::Limits limits = catalog.limits.with(plan.limits);
  std::vector<double> times;
  const Clock::time_point start = Clock::now();
  while (times.size() < 11 ||
         (Clock::now() - start < std::chrono::seconds(1) && times.size() < 1001)) {
    const Clock::time_point before = Clock::now();
    const sump::Study study = sump::study(plan, catalog, limits);
    times.push_back(Milliseconds(Clock::now() - before).count());
    if (study.runs.size() != plan.runs.size()) std::puts("a run was lost");
  }
  const auto middle = times.begin() + static_cast<std::ptrdiff_t>(times.size() / 2);
  std::nth_element(times.begin(), middle, times.end());
  return *middle;
}

void printSample() {
  const std::filesystem::path sample = SUMPWRIGHT_SOURCE_DIR "/samples/transit-depot.sump";
  if (!std::filesystem::exists(sample)) return;
  const sump::Plan plan = sump::readPlanFile(sample);
  std::printf("%-24s %5zu runs %4zu vaults %9.3f ms\n", "samples/transit-depot", plan.runs.size(),
              plan.vaults.size(), medianMilliseconds(plan));
}

} // namespace

int main() {
  printSample();
  double last = 0;
  for (const int runs : {20, 200, 2000}) {
    const sump::Plan plan = sump::test::generatedPlan(runs);
    const double time = medianMilliseconds(plan);
    std::printf("%-24s %5zu runs %4zu vaults %9.3f ms", "generated", plan.runs.size(),
                plan.vaults.size(), time);
    if (last > 0) std::printf("  %.1f times the last", time / last);
    std::puts("");
    last = time;
  }
}
