// Whose work a finding is, and which lines it concerns.

#include "core/exchange/review_json.h"
#include "tests/rules/cases.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <set>

namespace sump::testing {
namespace {

const Finding& only(const Review& review, std::string_view message,
                    const std::vector<Id>& objects) {
  const Finding* finding = find(review, message, objects);
  if (finding == nullptr) throw std::runtime_error(std::string(message));
  return *finding;
}

TEST(Concerns, TakeTheTradeOfTheRule) {
  const Review review = reviewed(with([](Plan& p) {
    squareOverflow(0.31)(p);
    oneMoreWire(CircuitKind::Class2)(p);
    unprotected(0.999)(p);
  }));
  const Finding& turn = only(review, "cleanout-turn.far", {"OF-1"});
  EXPECT_EQ(turn.trade, Trade::Plumbing);
  EXPECT_EQ(turn.services, std::vector{Service::Overflow});
  const Finding& mixed = only(review, "mixed-raceway.mixed", {"PC-1"});
  EXPECT_EQ(mixed.trade, Trade::Electrical);
  EXPECT_EQ(mixed.services, std::vector{Service::Power});
  const Finding& dig = only(review, "dig-protection.none", {});
  EXPECT_EQ(dig.trade, Trade::SiteWork);
  EXPECT_TRUE(dig.services.empty());
}

TEST(Concerns, FollowTheLineWhereTheRuleIsGeneral) {
  const Review review = reviewed(with([](Plan& p) {
    drop("FC-1")(p);
    drop("RC-1")(p);
    changeRun(p, "VT-1", [](sump::Run& r) { r.to.invert.reset(); });
  }));
  std::set<std::pair<std::string, Trade>> missing;
  for (const Finding& finding : review.findings) {
    if (finding.what.id != "lines-present.missing") continue;
    ASSERT_EQ(finding.services.size(), 1U);
    EXPECT_EQ(facts(finding.services[0]).key, finding.which);
    missing.insert({finding.which, finding.trade});
  }
  EXPECT_EQ(missing, (std::set<std::pair<std::string, Trade>>{{"float-conduit", Trade::Electrical},
                                                              {"recirculation", Trade::Plumbing}}));
  EXPECT_EQ(only(review, "level-known.run", {"VT-1"}).trade, Trade::Plumbing);
  EXPECT_EQ(only(review, "stock-bend.undecided", {"VT-1"}).services, std::vector{Service::Vent});
}

TEST(Concerns, NameTheServiceOfAPort) {
  const Review review = reviewed(with(recirculationPortAt(4.01)));
  EXPECT_EQ(only(review, "room-clearance.port-outside", {"P-RC", "ER-1"}).services,
            std::vector{Service::Recirculation});
}

TEST(Concerns, StayGeneralWhereLinesOfTwoTradesAreMeant) {
  const Review review = reviewed(with([](Plan& p) {
    changeRun(p, "VT-1", [](sump::Run& r) { r.to.invert.reset(); });
    startsUnknown("FC-1")(p);
  }));
  const auto both = std::ranges::find(review.findings, std::string("stock-bend.undecided"),
                                      [](const Finding& f) { return f.what.id; });
  ASSERT_NE(both, review.findings.end());
  EXPECT_EQ(both->services.size(), 2U);
  EXPECT_EQ(both->trade, Trade::General);
}

TEST(Concerns, EveryTradeHasRulesAndAName) {
  std::set<std::string_view> names;
  for (Trade trade : kAllTrades) {
    EXPECT_TRUE(names.insert(name(trade)).second);
    EXPECT_TRUE(std::ranges::any_of(allRules(), [&](const Rule& r) { return r.trade == trade; }))
        << name(trade);
  }
}

TEST(Concerns, AreToldInJson) {
  const Review review = reviewed(with(oneMoreWire(CircuitKind::Class2)));
  const auto json = nlohmann::json::parse(findingsJson(review));
  const auto found = std::ranges::find_if(
      json["findings"], [](const auto& f) { return f["rule"] == "mixed-raceway"; });
  ASSERT_NE(found, json["findings"].end());
  EXPECT_EQ((*found)["trade"], "electrical");
  EXPECT_EQ((*found)["services"], nlohmann::json::array({"power"}));
}

} // namespace
} // namespace sump::testing
