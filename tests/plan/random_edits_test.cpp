// Edits at random: whatever is done, the plan stays a plan, and going back gives the same bytes.

#include "core/exchange/plan_file.h"
#include "core/plan/consistency.h"
#include "tests/support/random_editor.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

using test::RandomEditor;

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
