// Prints how long a study takes: the transit depot sample and generated plans of 20, 200 and 2,000
// runs, with the growth from one to the next; the drawing alone, and with everything given that the
// calculations ask for (water, demand, pump, earth), so that none of them is left out. Times are of
// the processor, since other programs share it. Nothing here passes or fails; design aims are under
// 5 ms for the sample and under 100 ms for 2,000 runs, and at most 13 times the time for 10 times
// the plan.

#include "core/exchange/plan_file.h"
#include "tests/support/generated_plan.h"
#include "tests/support/places.h"

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <vector>

namespace {

double processorMilliseconds() {
  return 1000.0 * static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

/// The median of as many studies as fit in about a second, 11 at least.
double medianMilliseconds(const sump::Plan& plan) {
  const sump::Catalog& catalog = sump::builtinCatalog();
  const sump::Limits limits = catalog.limits.with(plan.limits);
  std::vector<double> times;
  const double start = processorMilliseconds();
  while (times.size() < 11 || (processorMilliseconds() - start < 1000 && times.size() < 1001)) {
    const double before = processorMilliseconds();
    const sump::Study study = sump::study(plan, catalog, limits);
    times.push_back(processorMilliseconds() - before);
    if (study.runs.size() != plan.runs.size()) std::puts("a run was lost");
  }
  const auto middle = times.begin() + static_cast<std::ptrdiff_t>(times.size() / 2);
  std::nth_element(times.begin(), middle, times.end());
  return *middle;
}

sump::Plan samplePlan() {
  return sump::readPlanFile(sump::sampleFile("transit-depot"));
}

/// The sample's design inputs on a generated drawing; soil as it comes, so that all digs run into
/// each other.
sump::Plan withBasis(sump::Plan plan) {
  plan.basis = samplePlan().basis;
  for (sump::WashDevice& device : plan.basis.demand.devices)
    device.wash.clear();
  plan.basis.wiring = {};
  plan.basis.earth = {};
  plan.basis.earth.soilHold = sump::SoilHold::Column;
  plan.site.groundwater = sump::feet(92);
  return plan;
}

void printSample() {
  const sump::Plan plan = samplePlan();
  std::printf("%-24s %5zu runs %4zu vaults %9.3f ms\n", "samples/transit-depot", plan.runs.size(),
              plan.vaults.size(), medianMilliseconds(plan));
}

void printGrowth(const char* name, bool basis) {
  double last = 0;
  for (const int runs : {20, 200, 2000}) {
    sump::Plan plan = sump::test::generatedPlan(runs);
    if (basis) plan = withBasis(std::move(plan));
    const double time = medianMilliseconds(plan);
    std::printf("%-24s %5zu runs %4zu vaults %9.3f ms", name, plan.runs.size(), plan.vaults.size(),
                time);
    if (last > 0) std::printf("  %.1f times the last", time / last);
    std::puts("");
    last = time;
  }
}

} // namespace

int main() {
  printSample();
  printGrowth("drawing alone", false);
  printGrowth("all inputs given", true);
}
