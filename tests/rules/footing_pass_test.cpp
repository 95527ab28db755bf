// What the finding about lines through and under footings says, worked by hand.

#include "tests/rules/depot.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump::testing {
namespace {

using test::freeEnd;
using test::ft;
using test::makeRun;

/// A shop whose footing stands from 95 ft to 96 ft. 2 in lines come in at these inverts.
Review shopWith(const std::vector<std::pair<Id, Length>>& lines) {
  Plan plan;
  plan.buildings.append(
      {"B", "Shop", {ft(10, 0), ft(30, 0), ft(30, 20), ft(10, 20)}, feet(100), feet(95)});
  for (const auto& [id, invert] : lines) {
    plan.runs.append(makeRun(id, Service::Product, "pvc-sch80", "2", freeEnd(ft(0, 10), invert),
                             freeEnd(ft(20, 10), invert)));
  }
  return reviewed(plan);
}

/// The sleeve's underside is 0.7935 in under the invert: 6 - 0.7935 = 5.2065 in and
/// 12 - 0.7935 = 11.2065 in over the footing's underside.
TEST(FootingPass, NamesTheLinesThatPassThroughAFooting) {
  const Review review = shopWith({{"A", feet(95.5)}, {"C", feet(97.5)}, {"D", feet(96)}});
  const Finding* found = find(review, "footing-pass.through", {"A", "D", "B"});
  ASSERT_NE(found, nullptr);
  EXPECT_EQ(found->severity, Severity::Warning);
  EXPECT_EQ(render(found->what),
            "These lines pass through the footing of Shop, taken as 1'-0\" thick, or partly "
            "through it: A (0'-5 1/4\"), D (0'-11 1/4\"). In brackets: the underside of the sleeve "
            "over that of the footing.");
  EXPECT_EQ(found->measured, "0'-5 1/4\"");
  EXPECT_EQ(found->required, "1'-0\"");
}

/// The pipe's underside is 0.231 in under the invert, the bed under it 4 in: 12 + 4.231 = 16.231 in
/// and 6 + 4.231 = 10.231 in under the footing.
TEST(FootingPass, TellsHowFarIsDugUnderAFooting) {
  const Review review = shopWith({{"A", feet(94.5)}, {"C", feet(94)}});
  const Finding* found = find(review, "footing-pass.under", {"A", "C", "B"});
  ASSERT_NE(found, nullptr);
  EXPECT_EQ(render(found->what),
            "These lines pass under the footing of Shop: A (0'-10 1/4\"), C (1'-4 1/4\"). In "
            "brackets: the bottom of the trench under the footing's underside.");
  EXPECT_EQ(found->measured, "1'-4 1/4\"");
}

/// A footing of 4 in reaches to 95 ft 4 in, under the sleeve's 95 ft 5.2065 in.
TEST(FootingPass, TakesTheThicknessThatTheProjectGives) {
  Plan plan = shopWith({{"A", feet(95.5)}}).plan;
  plan.limits["footing.thickness"] = inMetres(inches(4));
  EXPECT_EQ(find(reviewed(plan), "footing-pass.through", {"A", "B"}), nullptr);
}

TEST(FootingPass, IsSilentWhereNothingHasAFooting) {
  Plan plan = shopWith({{"A", feet(94)}}).plan;
  plan.buildings = {};
  for (const Finding& finding : reviewed(plan).findings)
    EXPECT_NE(finding.rule, "footing-pass");
}

TEST(FootingPlane, NamesTheTrenchThatReachesBelowIt) {
  Plan plan = readPlanFile(samples() / "ferry-quay.sump");
  EXPECT_EQ(find(reviewed(plan), "footing-plane.below", {"VT-1", "B-SHED"}), nullptr);
  sump::Run vent = *plan.runs.find("VT-1");
  const Point2 nearer{30.1118786, 35.2110656}; // by 0.4 m
  vent.vertices.back().at = vent.to.at = nearer;
  plan.runs.put(std::move(vent));
  const Review review = reviewed(plan);
  const Finding* found = find(review, "footing-plane.below", {"VT-1", "B-SHED"});
  ASSERT_NE(found, nullptr);
  EXPECT_NE(render(found->what).find("The dig for VT-1 reaches below"), std::string::npos);
}

} // namespace
} // namespace sump::testing
