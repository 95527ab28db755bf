// Findings that someone answers for, and the severity that a source allows.

#include "core/exchange/review_json.h"
#include "core/study/limits_for.h"
#include "tests/rules/cases.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace sump::testing {
namespace {

constexpr std::string_view kOpen = "make-up-protection.open";

void unprotect(Plan& p) {
  dropPart(p, "MU-1", PartKind::ReducedPressureAssembly);
}

Plan accepting(const std::string& key) {
  return with([&](Plan& p) {
    unprotect(p);
    p.acceptances = {{key, "air gap is part of the tank", "M. Lindqvist", "2026-11-20"}};
  });
}

std::string openKey() {
  return find(reviewed(with(unprotect)), kOpen, {"MU-1"})->key();
}

TEST(Acceptance, MarksItsFindingAndSettlesTheExit) {
  EXPECT_TRUE(reviewed(with(unprotect)).hasErrors());
  const Review review = reviewed(accepting(openKey()));
  const Finding* finding = find(review, kOpen, {"MU-1"});
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->severity, Severity::Error) << "accepted, not made lighter";
  ASSERT_TRUE(finding->accepted);
  EXPECT_EQ(finding->accepted->reason, "air gap is part of the tank");
  EXPECT_EQ(finding->accepted->by, "M. Lindqvist");
  EXPECT_FALSE(review.hasErrors());
}

TEST(Acceptance, OfWhatIsGoneIsANote) {
  const Review review = reviewed(accepting("stock-bend/stock-bend.odd/OF-1/1"));
  const Finding* finding = find(review, "acceptance.stale", {});
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->severity, Severity::Note);
  EXPECT_NE(render(finding->what).find("stock-bend/stock-bend.odd/OF-1/1"), std::string::npos);
  EXPECT_TRUE(review.hasErrors()) << "it accepts nothing else";
  EXPECT_EQ(find(reviewed(accepting(openKey())), "acceptance.stale", {}), nullptr);
}

TEST(Acceptance, ComesAfterWhatIsOpen) {
  const Review review = reviewed(accepting(openKey()));
  bool seen = false;
  for (const Finding& finding : review.findings) {
    EXPECT_FALSE(seen && !finding.accepted);
    seen |= finding.accepted.has_value();
  }
  EXPECT_TRUE(seen);
}

TEST(Acceptance, IsToldInJson) {
  const auto json = nlohmann::json::parse(findingsJson(reviewed(accepting(openKey()))));
  EXPECT_EQ(json["errors"], 0);
  EXPECT_EQ(json["accepted"], 1);
  EXPECT_EQ(json["findings"].back()["accepted"]["date"], "2026-11-20");
  EXPECT_EQ(json["findings"].back()["severity"], "error");
  EXPECT_TRUE(json["findings"].front()["accepted"].is_null());
}

/// Over every way to break a rule, with the limits of every profile.
template <class Check> void forEveryFinding(Check check) {
  for (const ReviewedCase& c : reviewedCases())
    std::ranges::for_each(c.bad.findings, check);
}

TEST(SeverityFollowsConfidence, OverTheWholeRegistry) {
  int errors = 0;
  forEveryFinding([&](const Finding& finding) {
    if (finding.severity != Severity::Error) return;
    ++errors;
    EXPECT_TRUE(finding.impossible || isFirm(finding.confidence)) << finding.key();
    EXPECT_TRUE(finding.decided) << finding.key();
  });
  EXPECT_GT(errors, 20);
}

TEST(SeverityFollowsConfidence, AnErrorBecomesAWarningWithItsLimitFromMemory) {
  std::vector<Limit> rows = builtinCatalog().limits.table();
  for (Limit& row : rows)
    row.confidence = Confidence::FromMemory;
  Catalog doubtful = builtinCatalog();
  doubtful.limits = Limits(rows);
  const Plan plan = with(sewerAt(97.25 - 0.73)); // flatter than 1/8 in/ft
  EXPECT_EQ(find(reviewed(plan), "gravity-slope.flat", {"OF-1"})->severity, Severity::Error);
  const Review review = sump::review(plan, doubtful);
  const Finding* finding = find(review, "gravity-slope.flat", {"OF-1"});
  EXPECT_EQ(finding->severity, Severity::Warning);
  EXPECT_EQ(finding->confidence, Confidence::FromMemory);
}

TEST(SeverityFollowsConfidence, AProjectsOwnFigureIsFirm) {
  const Finding* finding = nullptr;
  const Review review = reviewed(with(limit("storage.minimum", 100)));
  finding = find(review, "storage-volume.short", {"V1", "V2"});
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->severity, Severity::Error);
  EXPECT_EQ(finding->source, "this project's own value");
}

} // namespace
} // namespace sump::testing
