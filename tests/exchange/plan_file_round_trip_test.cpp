#include "core/exchange/plan_file.h"
#include "core/plan/consistency.h"
#include "tests/support/random_plan.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

constexpr int kPlans = 300;

TEST(PlanFileRoundTrip, RandomPlansAreConsistent) {
  std::mt19937 rng(1);
  for (int i = 0; i < kPlans; ++i) {
    const std::vector<Problem> problems = inconsistencies(test::randomPlan(rng));
    ASSERT_TRUE(problems.empty()) << i << ": " << problems[0].pointer << " " << problems[0].what;
  }
}

TEST(PlanFileRoundTrip, WritingWhatWasReadGivesTheSameBytes) {
  std::mt19937 rng(2);
  for (int i = 0; i < kPlans; ++i) {
    const std::string text = writePlanText(test::randomPlan(rng));
    const Plan read = readPlanText(text, "random.sump");
    ASSERT_EQ(writePlanText(read), text);
    // Once rounded to the file's nanometre, nothing is lost any more.
    ASSERT_EQ(readPlanText(text, "random.sump"), read);
  }
}

/// Every field of a plan on whole nanometres survives; a field that was left out of the
/// description of the format would come back as its default.
TEST(PlanFileRoundTrip, KeepsEveryField) {
  std::mt19937 rng(3);
  for (int i = 0; i < kPlans; ++i) {
    const Plan random = test::randomPlan(rng);
    const Plan read = readPlanText(writePlanText(random), "random.sump");
    ASSERT_EQ(read.project, random.project);
    ASSERT_EQ(read.vaults.size(), random.vaults.size());
    ASSERT_EQ(read.runs.size(), random.runs.size());
    for (std::size_t k = 0; k < read.runs.size(); ++k) {
      const Run &a = read.runs[k], &b = random.runs[k];
      ASSERT_EQ(a.from.target, b.from.target);
      ASSERT_EQ(a.from.fitting, b.from.fitting);
      ASSERT_EQ(a.parts.size(), b.parts.size());
      ASSERT_NEAR(a.vertices[0].at.x, b.vertices[0].at.x, 1e-9);
      ASSERT_EQ(a.vertices[0].invert.has_value(), b.vertices[0].invert.has_value());
    }
  }
}

TEST(PlanFileRoundTrip, AnEmptyPlanIsWrittenInFull) {
  EXPECT_EQ(writePlanText(Plan{}), R"({
  "format": "sumpwright-plan",
  "version": 1,
  "project": {
    "title": "",
    "supplementaryTitle": "",
    "legalOwner": "",
    "siteAddress": "",
    "identificationNumber": "",
    "revision": "",
    "issueDate": "",
    "createdBy": "",
    "approvedBy": "",
    "documentStatus": "",
    "units": "us-customary"
  },
  "site": {"boundary": [], "datum": "", "north": 0},
  "buildings": [],
  "pavements": [],
  "utilities": [],
  "spots": [],
  "wells": [],
  "basins": [],
  "sewers": [],
  "washes": [],
  "rooms": [],
  "vaults": [],
  "runs": [],
  "limits": {}
}
)");
  EXPECT_EQ(readPlanText(writePlanText(Plan{}), "empty.sump"), Plan{});
}

TEST(PlanFileRoundTrip, OptionalKeysMayBeLeftOut) {
  EXPECT_EQ(readPlanText(R"({"format":"sumpwright-plan","version":1})", "short.sump"), Plan{});
}

} // namespace
} // namespace sump
