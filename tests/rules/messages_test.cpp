// Every text that a rule asks for exists, is filled in, and every text in the table is asked for.

#include "core/catalog/embedded.h"
#include "tests/rules/cases.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <regex>
#include <set>

namespace sump::testing {
namespace {

std::map<std::string, std::string> table() {
  return nlohmann::json::parse(embeddedText("messages/en.json"))
      .get<std::map<std::string, std::string>>();
}

std::set<std::string> placeholders(const std::string& pattern) {
  static const std::regex hole("\\{([^}]*)\\}");
  std::set<std::string> names;
  for (std::sregex_iterator it(pattern.begin(), pattern.end(), hole), end; it != end; ++it) {
    names.insert((*it)[1]);
  }
  return names;
}

const std::vector<Finding>& everyFinding() {
  static const std::vector<Finding> findings = [] {
    std::vector<Finding> all;
    for (const auto& [c, review] : reviewedCases())
      all.insert(all.end(), review.findings.begin(), review.findings.end());
    const Review stale = reviewed(with([](Plan& p) {
      p.acceptances = {{"no-such/finding", "as agreed", "A. Reviewer", "2026-11-20"}};
    }));
    all.insert(all.end(), stale.findings.begin(), stale.findings.end());
    return all;
  }();
  return findings;
}

TEST(Messages, TellWhatIsWrongAndHowToMendIt) {
  const auto patterns = table();
  for (const auto& [id, pattern] : patterns) {
    EXPECT_FALSE(pattern.empty()) << id;
    if (id.ends_with(".mend")) {
      EXPECT_TRUE(patterns.contains(id.substr(0, id.size() - 5))) << id;
    } else {
      EXPECT_TRUE(patterns.contains(id + ".mend")) << id;
      const std::string rule = id.substr(0, id.find('.'));
      EXPECT_TRUE(rule == "acceptance" || ruleById(rule) != nullptr) << id;
    }
  }
}

TEST(Messages, AreFilledIn) {
  const auto patterns = table();
  for (const Finding& finding : everyFinding()) {
    for (const Message& message : {finding.what, finding.mend}) {
      ASSERT_TRUE(patterns.contains(message.id)) << message.id;
      for (const std::string& name : placeholders(patterns.at(message.id))) {
        EXPECT_TRUE(message.arguments.contains(name)) << message.id << " lacks " << name;
      }
      EXPECT_EQ(render(message).find_first_of("{}<>"), std::string::npos) << render(message);
    }
  }
}

TEST(Messages, HaveNoArgumentThatNeitherTextUses) {
  const auto patterns = table();
  for (const Finding& finding : everyFinding()) {
    std::set<std::string> used = placeholders(patterns.at(finding.what.id));
    used.merge(placeholders(patterns.at(finding.mend.id)));
    for (const auto& [name, value] : finding.what.arguments) {
      // A stated length is worded without the limits that a long one names.
      if (finding.what.id == "suction-rise.stated") continue;
      EXPECT_TRUE(used.contains(name)) << finding.what.id << " " << name;
    }
  }
}

TEST(Messages, AreAllUsed) {
  std::set<std::string> used;
  for (const Finding& finding : everyFinding()) {
    used.insert(finding.what.id);
    used.insert(finding.mend.id);
  }
  for (const auto& [id, pattern] : table()) {
    EXPECT_TRUE(used.contains(id)) << id << " is never shown";
  }
}

TEST(Messages, RenderAnUnknownIdInBracketsAndLeaveUnknownNames) {
  EXPECT_EQ(render({"no.such", {}}), "<no.such>");
  EXPECT_NE(render({"vault-clash.overlap", {}}).find("{other}"), std::string::npos);
}

TEST(FindingKey, TellsEveryFindingApart) {
  for (const auto& [c, review] : reviewedCases()) {
    std::set<std::string> keys;
    for (const Finding& finding : review.findings) {
      EXPECT_TRUE(keys.insert(finding.key()).second) << finding.key();
    }
  }
}

TEST(FindingKey, TellsMissingLinesChambersAndBendsApart) {
  const Review lines = reviewed(with([](Plan& p) {
    p.runs.erase("FC-1");
    p.runs.erase("SG-1");
  }));
  std::set<std::string> keys;
  for (const Finding& finding : lines.findings)
    keys.insert(finding.key());
  EXPECT_TRUE(keys.contains("lines-present/lines-present.missing/float-conduit"));
  EXPECT_TRUE(keys.contains("lines-present/lines-present.missing/signal"));
}

TEST(FindingKey, StaysWhenOnlyAFigureChanges) {
  const auto keyAt = [](double turn) {
    const Review review = reviewed(with(overflowTurns(turn)));
    const Finding* finding = find(review, "stock-bend.odd", {"OF-1"});
    return finding == nullptr ? "" : finding->key();
  };
  EXPECT_EQ(keyAt(52), "stock-bend/stock-bend.odd/OF-1/1");
  EXPECT_EQ(keyAt(52), keyAt(55));
}

} // namespace
} // namespace sump::testing
