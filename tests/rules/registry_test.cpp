// Every rule is whole, fires on its own faulty sample and is silent on the good ones.

#include "tests/rules/depot.h"
#include "tests/support/golden.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <set>
#include <sstream>

namespace sump::testing {
namespace {

const std::vector<std::string> kGood = {"transit-depot.sump", "boatyard-pad.sump",
                                        "ferry-quay.sump"};

std::string contents(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

std::vector<std::filesystem::path> everySample() {
  std::vector<std::filesystem::path> files;
  for (const std::string& good : kGood)
    files.push_back(samples() / good);
  for (const Rule& rule : allRules())
    files.push_back(samples() / "faulty" / (std::string(rule.id) + ".sump"));
  return files;
}

/// One line for each finding: what golden/findings.txt holds.
std::string told(const Review& review, bool withNotes = true) {
  std::string text;
  for (const Finding& f : review.findings) {
    // That the depot's suctions are stated is told once, with the good samples.
    if (f.severity == Severity::Note && !withNotes) continue;
    text += std::string(name(f.severity)) + " " + f.key() + "\n  " + render(f.what) + "\n";
    if (f.measured || f.required) {
      text += "  measured " + f.measured.value_or("-") + ", required " + f.required.value_or("-");
      text += "\n";
    }
    text += "  mend: " + render(f.mend) + "\n";
  }
  return text;
}

TEST(Registry, ListsWholeRulesOfDifferentNames) {
  std::set<std::string_view> ids;
  for (const Rule& rule : allRules()) {
    EXPECT_TRUE(ids.insert(rule.id).second) << rule.id;
    EXPECT_FALSE(rule.title.empty()) << rule.id;
    EXPECT_FALSE(rule.citation.empty()) << rule.id;
    EXPECT_NE(rule.check, nullptr) << rule.id;
    EXPECT_NE(rule.severity, Severity::Note) << rule.id;
    EXPECT_EQ(ruleById(rule.id), &rule);
    EXPECT_EQ(rule.id.find_first_not_of("abcdefghijklmnopqrstuvwxyz-"), std::string_view::npos);
  }
  EXPECT_EQ(ruleById("no-such-rule"), nullptr);
  EXPECT_GE(allRules().size(), 60U);
}

TEST(Registry, NamesASourceUnlessItIsCommonPractice) {
  for (const Rule& rule : allRules()) {
    if (rule.confidence == Confidence::CommonPractice) continue;
    EXPECT_EQ(rule.citation.find("no source"), std::string_view::npos) << rule.id;
  }
}

TEST(Registry, EachRuleFiresOnItsFaultySampleAndNoOtherDoes) {
  for (const Rule& rule : allRules()) {
    SCOPED_TRACE(rule.id);
    const auto file = samples() / "faulty" / (std::string(rule.id) + ".sump");
    const Review review = reviewed(readPlanFile(file));
    int fired = 0;
    for (const Finding& finding : review.findings) {
      if (finding.severity == Severity::Note || finding.accepted) continue;
      // What levels are missing for, other rules say too.
      const bool follows = rule.id == "level-known" && !finding.decided;
      EXPECT_TRUE(finding.rule == rule.id || follows) << told(review);
      fired += finding.rule == rule.id;
    }
    EXPECT_GT(fired, 0);
  }
}

TEST(Registry, NoRuleFindsAFaultInTheGoodSamples) {
  for (const std::string& good : kGood) {
    const Review review = reviewed(readPlanFile(samples() / good));
    for (const Finding& finding : review.findings) {
      if (finding.accepted) continue; // someone answers for it, with a reason
      EXPECT_EQ(finding.severity, Severity::Note) << good << "\n" << told(review);
    }
    EXPECT_FALSE(review.hasErrors());
  }
}

TEST(Registry, NoFaultySampleIsLeftOver) {
  for (const auto& entry : std::filesystem::directory_iterator(samples() / "faulty")) {
    EXPECT_NE(ruleById(entry.path().stem().string()), nullptr) << entry.path();
  }
}

TEST(Review, PutsErrorsFirst) {
  const Review review = reviewed(Plan{});
  EXPECT_TRUE(std::ranges::is_sorted(review.findings, std::greater<>(), &Finding::severity));
}

TEST(Review, IsTheSameEachTime) {
  EXPECT_EQ(told(reviewed(depot())), told(reviewed(depot())));
}

/// True when this run is to write the golden files anew.
bool updating() {
  return std::getenv("SUMPWRIGHT_UPDATE_GOLDEN") != nullptr;
}

TEST(Samples, AreWrittenAsTheProgramWritesThem) {
  for (const auto& file : everySample()) {
    if (updating()) {
      const std::string text = writePlanText(readPlanFile(file)); // before the file is opened anew
      std::ofstream(file, std::ios::binary) << text;
    }
    EXPECT_EQ(writePlanText(readPlanFile(file)), contents(file)) << file;
  }
}

/// When a text changes on purpose: run with SUMPWRIGHT_UPDATE_GOLDEN=1 and look at the difference.
TEST(Samples, TellTheirFindingsWordForWord) {
  std::string text;
  for (const auto& file : everySample()) {
    const bool good = file.parent_path() == samples();
    text += "== " + file.filename().string() + "\n" + told(reviewed(readPlanFile(file)), good);
  }
  expectGolden("rules/golden/findings.txt", text);
}

} // namespace
} // namespace sump::testing
