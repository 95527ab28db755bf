// Every rule of the registry passes somewhere, fails somewhere, and where it needs an input that
// can be unknown, says that it cannot be decided.

#include "tests/rules/cases.h"

#include <gtest/gtest.h>

#include <map>

namespace sump::testing {
namespace {

/// Rules that can always be decided, and why.
const std::map<std::string_view, std::string_view> kNothingUnknown = {
    {"code-profile", "the key of the profile is there or is not"},
    {"lines-present", "a line is drawn or is not, and its ends say where it goes"},
    {"basin-sump", "a sump that is not given is asked for by a note"},
    {"baffle-full-height", "a baffle's gaps are always given"},
    {"vent-air-space", "vents and the baffles' gaps are always given"},
    {"make-up-protection", "what protects it is drawn on the line or is not"},
    {"traffic-lid", "lids, covers and pavement say themselves whether they are for traffic"},
    {"manway-per-chamber", "a manway's place and diameter are always given"},
};

struct Tried {
  int failing = 0, passing = 0, undecided = 0;
};

std::string_view ruleOf(const Case& c) {
  return c.message.substr(0, c.message.find('.'));
}

const std::map<std::string_view, Tried>& tried() {
  static const std::map<std::string_view, Tried> all = [] {
    std::map<std::string_view, Tried> counts;
    for (const auto& [c, review] : reviewedCases()) {
      Tried& count = counts[ruleOf(c)];
      const Finding* finding = find(review, c.message, c.objects);
      if (finding == nullptr || finding->severity == Severity::Note) continue;
      ++(finding->decided ? count.failing : count.undecided);
      if (c.good && finding->decided) ++count.passing;
    }
    return counts;
  }();
  return all;
}

/// That a rule finds nothing wrong in the whole depot is a pass too.
bool passesTheDepot(std::string_view rule) {
  static const Review review = reviewed(depot());
  return std::ranges::none_of(review.findings, [&](const Finding& f) {
    return f.rule == rule && f.severity != Severity::Note;
  });
}

TEST(RuleCoverage, EveryRuleFailsSomewhere) {
  for (const Rule& rule : allRules()) {
    const auto found = tried().find(rule.id);
    ASSERT_NE(found, tried().end()) << rule.id;
    EXPECT_GT(found->second.failing, 0) << rule.id;
  }
}

TEST(RuleCoverage, EveryRulePassesSomewhere) {
  for (const Rule& rule : allRules())
    EXPECT_TRUE(passesTheDepot(rule.id) || tried().at(rule.id).passing > 0) << rule.id;
}

TEST(RuleCoverage, EveryRuleSaysWhenItCannotBeDecided) {
  for (const Rule& rule : allRules()) {
    const auto exempt = kNothingUnknown.find(rule.id);
    const auto found = tried().find(rule.id);
    ASSERT_NE(found, tried().end()) << rule.id;
    if (exempt == kNothingUnknown.end()) {
      EXPECT_GT(found->second.undecided, 0) << rule.id;
    } else {
      EXPECT_EQ(found->second.undecided, 0) << rule.id << " is not exempt: " << exempt->second;
    }
  }
  for (const auto& [rule, why] : kNothingUnknown) {
    EXPECT_NE(ruleById(rule), nullptr) << rule;
    EXPECT_FALSE(why.empty()) << rule;
  }
}

TEST(RuleCoverage, WhatCannotBeDecidedNamesWhatItNeeds) {
  int seen = 0;
  for (const auto& [c, review] : reviewedCases()) {
    for (const Finding& finding : review.findings) {
      if (finding.decided) continue;
      ++seen;
      const std::string text = render(finding.what);
      const auto at = text.find(" cannot be decided: needs ");
      ASSERT_NE(at, std::string::npos) << text;
      EXPECT_GT(text.size(), at + 30) << text;
      EXPECT_EQ(finding.severity, Severity::Warning) << text;
    }
  }
  EXPECT_GT(seen, 60);
}

/// Reference section 9, in its order, with the rules that carry each, and the runners-up.
TEST(RuleCoverage, TheThirtyMostCheckableRulesAreThere) {
  const std::vector<std::pair<std::string_view, std::vector<std::string_view>>> wanted = {
      {"R01-INOUT-DROP", {"inlet-above-outlet.low"}},
      {"R02-OUTLET-DIP", {"outlet-dip.depth", "outlet-dip.none"}},
      {"R03-INLET-DIP", {"inlet-dip.shallow", "inlet-dip.depth", "inlet-dip.none"}},
      {"R04-AIRSPACE", {"lid-airspace.low"}},
      {"R05-COMP-RATIO", {"first-chamber-share.small", "first-chamber-share.large"}},
      {"R06-MANWAY", {"manway-per-chamber.missing"}},
      {"R07-LIQ-DEPTH", {"liquid-depth.shallow", "liquid-depth.deep"}},
      {"R08-TRAFFIC-LID", {"traffic-lid.lid", "traffic-lid.cover", "traffic-lid.engineer"}},
      {"R09-DEEP-BURIAL", {"deep-burial.deep"}},
      {"R10-BUOYANCY", {"buoyancy.floats", "buoyancy.light"}},
      {"R11-WATER-SEWER-H", {"water-sewer-apart.near"}},
      {"R12-CROSS-V", {"crossing-clearance.tight"}},
      {"R13-MAIN-10FT", {"main-distance.near"}},
      {"R14-WATER-OVER-TANK", {"water-over-tank.crosses"}},
      {"R15-SETBACK", {"vault-clash.near", "vault-clash.boundary", "vault-clash.well"}},
      {"R16-FOOTING-45", {"footing-plane.below"}},
      {"R17-DIG-OVERLAP", {"dig-overlap.building", "dig-overlap.road", "dig-overlap.boundary"}},
      {"R18-DIG-5FT", {"dig-protection.none"}},
      {"R19-EGRESS",
       {"dig-egress.none", "dig-egress.far", "dig-egress.trench-none", "dig-egress.trench-far"}},
      {"R20-SPOIL-2FT", {"spoil-edge.near"}},
      {"R21-CLEANOUT-100", {"cleanout-spacing.far"}},
      {"R22-CLEANOUT-45", {"cleanout-turn.far"}},
      {"R23-SLOPE", {"gravity-slope.flat", "flow-order.uphill"}},
      {"R24-FROST", {"pipe-cover.shallow", "pipe-cover.frost"}},
      {"R25-CONDUIT-COVER", {"conduit-cover.shallow", "conduit-cover.traffic"}},
      {"R26-CONDUIT-BENDS", {"conduit-bends.many"}},
      {"R27-CONDUIT-FILL", {"conduit-fill.full"}},
      {"R28-WORKSPACE",
       {"working-space.shallow", "working-space.narrow", "working-space.intrusion",
        "working-space.piping"}},
      {"R29-MAKEUP-BACKFLOW", {"make-up-protection.open", "make-up-protection.double-check"}},
      {"R30-BACKWATER", {"overflow-backflow.low", "overflow-backflow.higher"}},
      {"mixed power and Class 2", {"mixed-raceway.mixed"}},
      {"disconnect out of sight", {"disconnect-in-sight.far", "disconnect-in-sight.behind"}},
      {"reclaim fraction", {"reclaim-share.low"}},
      {"sludge and oil", {"sludge-share.much"}},
      {"UPC 1016.3 inlet area", {"sand-area.small"}},
      {"purple tape and labels", {"reclaimed-marking.unmarked"}},
  };
  EXPECT_EQ(wanted.size(), 36U);
  for (const auto& [number, messages] : wanted) {
    for (std::string_view message : messages) {
      EXPECT_TRUE(
          std::ranges::any_of(allCases(), [&](const Case& c) { return c.message == message; }))
          << number << " " << message;
    }
  }
}

} // namespace
} // namespace sump::testing
