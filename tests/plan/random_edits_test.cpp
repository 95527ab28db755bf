// Edits at random: whatever is done, the plan stays a plan, and going back gives the same bytes.

#include "core/exchange/plan_file.h"
#include "core/plan/consistency.h"
#include "core/plan/edits.h"
#include "core/plan/edits_objects.h"
#include "tests/support/random_plan.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

class RandomEditor {
public:
  explicit RandomEditor(unsigned seed) : rng_(seed) {}

  Plan start() { return test::randomPlan(rng_); }

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

TEST(RandomEdits, KeepThePlanConsistent) {
  int edits = 0;
  for (unsigned seed = 0; seed < 50; ++seed) {
    RandomEditor editor(seed);
    Plan plan = editor.start();
    for (int i = 0; i < 200; ++i, ++edits) {
      plan = editor.edit(plan);
      const std::vector<Problem> problems = inconsistencies(plan);
      ASSERT_TRUE(problems.empty()) << "seed " << seed << ", edit " << i << ": "
                                    << problems[0].pointer << " " << problems[0].what;
    }
  }
  EXPECT_EQ(edits, 10'000);
}

TEST(RandomEdits, EarlierPlansStayAsTheyWere) {
  for (unsigned seed = 100; seed < 105; ++seed) {
    RandomEditor editor(seed);
    std::vector<Plan> undo{editor.start()};
    std::vector<std::string> texts{writePlanText(undo[0])};
    for (int i = 0; i < 30; ++i) {
      undo.push_back(editor.edit(undo.back()));
      texts.push_back(writePlanText(undo.back()));
    }
    while (!undo.empty()) {
      ASSERT_EQ(writePlanText(undo.back()), texts.back());
      undo.pop_back();
      texts.pop_back();
    }
  }
}

} // namespace
} // namespace sump
