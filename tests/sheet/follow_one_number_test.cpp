// One number, the overflow invert of the last vault, followed from the plan file to the sheet and
// the lists, through the steps that DEVELOPERS.md names.

#include "core/exchange/bill_of_materials.h"
#include "core/exchange/plan_file.h"
#include "core/exchange/review_json.h"
#include "core/rules/review.h"
#include "core/sheet/compose.h"
#include "core/units/print.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <fstream>
#include <sstream>

namespace sump {
namespace {

std::string sampleText() {
  std::ostringstream text;
  text << std::ifstream(sampleFile("transit-depot")).rdbuf();
  return text.str();
}

const nlohmann::json& byId(const nlohmann::json& list, const std::string& id) {
  for (const auto& item : list) {
    if (item.at("id") == id) return item;
  }
  throw std::out_of_range(id);
}

bool anyPageSays(const std::vector<Page>& pages, const std::string& words) {
  for (const Page& page : pages) {
    for (const PageItem& item : page.items) {
      const auto* text = std::get_if<PageText>(&item);
      if (text != nullptr && text->text.find(words) != std::string::npos) return true;
    }
  }
  return false;
}

/// The sample with its overflow invert moved by `feet`, read through the plan file.
Plan withOverflowMoved(double feetUp) {
  nlohmann::ordered_json json = nlohmann::ordered_json::parse(sampleText());
  for (auto& run : json.at("runs")) {
    if (run.at("id") != "OF-1") continue;
    run.at("from").at("invert") = run.at("from").at("invert").get<double>() + feetUp * 0.3048;
  }
  return readPlanText(json.dump(), "moved.sump");
}

void follow(const Plan& plan, double invertFeet) {
  // 1. plan file -> Plan
  const Run* overflow = plan.runs.find("OF-1");
  ASSERT_NE(overflow, nullptr);
  ASSERT_NEAR(inFeet(overflow->from.invert.value()), invertFeet, 1e-6);
  // 2. and 3. Plan -> Study: run path, then water levels
  const Review reviewed = review(plan, builtinCatalog());
  ASSERT_NEAR(inFeet(reviewed.study.run("OF-1")->startInvert), invertFeet, 1e-6);
  const VaultStudy* last = reviewed.study.vault("V2");
  ASSERT_NEAR(inFeet(last->overflowInvert.value()), invertFeet, 1e-6);
  ASSERT_NEAR(inFeet(reviewed.study.vault("V1")->waterLevel.value()), invertFeet, 1e-6);
  // 5. Study -> levels list
  const auto levels = nlohmann::json::parse(levelsJson(reviewed));
  EXPECT_NEAR(byId(levels.at("vaults"), "V2").at("overflowInvert").get<double>(),
              invertFeet * 0.3048, 1e-8);
  // 5. Study -> sheet: vault tag and schedules print the same figure
  const std::string printed = printElevation(*last->overflowInvert, UnitSystem::UsCustomary);
  EXPECT_EQ(printed, fixed(invertFeet, 2));
  const std::vector<Page> pages = composeSheets(reviewed, {});
  EXPECT_TRUE(anyPageSays(pages, "Overflow inv. " + printed));
  EXPECT_TRUE(anyPageSays(pages, "Water level " + printed));
}

TEST(FollowOneNumber, FromPlanFileToSheetAndLists) {
  follow(withOverflowMoved(0), 97.25);
}

TEST(FollowOneNumber, AChangeInTheFileReachesThemAll) {
  follow(withOverflowMoved(-0.11), 97.14);
}

/// The list: raising the overflow shortens nothing in plan but makes its pipe fall more, so the
/// pipe in place grows by the slope's share, which the bill of materials shows.
TEST(FollowOneNumber, TheBillOfMaterialsFollowsTheFall) {
  const auto lineOf = [](const Plan& plan) {
    const Review reviewed = review(plan, builtinCatalog());
    for (const QuantityLine& line : reviewed.study.takeOff) {
      if (line.category == "pipe" && line.service == "overflow") return line.net;
    }
    return metres(0);
  };
  const Length before = lineOf(withOverflowMoved(0)), after = lineOf(withOverflowMoved(0.11));
  // Pythagoras: both ends 32.5 ft + 38.184 ft in plan, 1.47 ft of fall, then 1.58 ft. The tee's
  // down leg ends at its stated level, so it grows by as much as the tee rises.
  const double flatLength = 32.5 + 27 * std::sqrt(2.0);
  const double grows = std::hypot(flatLength, 1.58) - std::hypot(flatLength, 1.47) + 0.11;
  EXPECT_NEAR(inFeet(after - before), grows, 1e-6);
}

} // namespace
} // namespace sump
