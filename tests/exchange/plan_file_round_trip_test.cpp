#include "core/exchange/plan_file.h"
#include "core/plan/consistency.h"
#include "tests/support/random_plan.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

constexpr int kPlans = 100;

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

/// A field that was left out of the description of the format would come back as its default.
TEST(PlanFileRoundTrip, KeepsEveryField) {
  std::mt19937 rng(3);
  test::RandomPlanSize size;
  size.exact = true;
  for (int i = 0; i < kPlans; ++i) {
    const Plan random = test::randomPlan(rng, size);
    ASSERT_TRUE(readPlanText(writePlanText(random), "random.sump") == random) << i;
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
    "units": "us-customary",
    "profile": ""
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
  "notes": [],
  "underlays": [],
  "basis": {
    "water": {},
    "demand": {"devices": [], "vehicles": []},
    "pump": {"name": "", "curve": []},
    "makeUp": {},
    "earth": {"previouslyDisturbed": false, "ladders": [], "spoil": []},
    "wiring": {"supplies": [], "signalCircuits": []}
  },
  "locked": [],
  "acceptances": [],
  "revisions": [],
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
