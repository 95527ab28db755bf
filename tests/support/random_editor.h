#pragma once
// Edits at random on a random plan.

#include "core/plan/edits.h"
#include "core/plan/edits_objects.h"
#include "tests/support/random_plan.h"

#include <random>
#include <set>
#include <vector>

namespace sump::test {

class RandomEditor {
public:
  explicit RandomEditor(unsigned seed) : rng_(seed) {}

  Plan start() { return randomPlan(rng_); }

  Plan edit(const Plan& plan) {
    switch (whole(0, 9)) {
    case 0:
      return moveObjects(plan, some(plan), {real(-5, 5), real(-5, 5)});
    case 1:
      return rotateObject(plan, oneOf(plan), degrees(real(-400, 400)));
    case 2:
      return whole(0, 3) == 0 ? eraseObjects(plan, {oneOf(plan)}) : plan;
    case 3:
      return plan.runs.size() < 30 ? copyObjects(plan, some(plan), {real(-9, 9), 1}).plan : plan;
    case 4:
      return insertVertex(plan, oneOf(plan), static_cast<std::size_t>(whole(0, 5)),
                          {{real(-99, 99), real(-99, 99)}, {}});
    case 5:
      return moveVertex(plan, oneOf(plan), static_cast<std::size_t>(whole(0, 5)),
                        {real(-99, 99), real(-99, 99)});
    case 6:
      return eraseVertex(plan, oneOf(plan), static_cast<std::size_t>(whole(0, 5)));
    case 7:
      return placeVaultInFlow(plan, oneOf(plan), static_cast<std::size_t>(whole(0, 5)));
    case 8:
      return withObject(plan, Well{freshId(plan, "W"), "", {real(-9, 9), 0}});
    default:
      return addRun(plan);
    }
  }

private:
  int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(rng_); }
  double real(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(rng_);
  }
  Id oneOf(const Plan& plan) {
    const std::vector<Id> ids = allObjects(plan);
    if (ids.empty()) return "none";
    return ids[static_cast<std::size_t>(whole(0, static_cast<int>(ids.size()) - 1))];
  }
  std::set<Id> some(const Plan& plan) { return {oneOf(plan), oneOf(plan), oneOf(plan)}; }
  Plan addRun(const Plan& plan) {
    if (plan.runs.size() > 30) return plan;
    sump::Run run;
    run.id = freshId(plan, "R");
    run.from.at = {real(-9, 9), 0};
    run.to.at = {real(-9, 9), 20};
    return withObject(plan, run);
  }

  std::mt19937 rng_;
};

} // namespace sump::test
