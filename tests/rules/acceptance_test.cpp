// Findings that someone answers for.

#include "core/exchange/review_json.h"
#include "tests/rules/cases.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

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
  EXPECT_EQ(json["findings"].back()["accepted"]["date"], "2026-11-20");
  EXPECT_EQ(json["findings"].back()["severity"], "error");
  EXPECT_TRUE(json["findings"].front()["accepted"].is_null());
}

} // namespace
} // namespace sump::testing
