// The bill of materials of the samples against golden files, and against the Study.
// SUMPWRIGHT_UPDATE_GOLDEN=1 rewrites the golden files; read the difference before committing.

#include "core/exchange/bill_of_materials.h"

#include "core/exchange/plan_file.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace sump {
namespace {

const std::filesystem::path kRoot = SUMPWRIGHT_SOURCE_DIR;

std::string fileText(const std::filesystem::path& file) {
  std::ostringstream text;
  text << std::ifstream(file, std::ios::binary).rdbuf();
  return text.str();
}

class BillOfMaterials : public testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Samples, BillOfMaterials,
                         testing::Values("transit-depot", "boatyard-pad"));

TEST_P(BillOfMaterials, MatchesItsGoldenFile) {
  const Review reviewed = review(
      readPlanFile(kRoot / "samples" / (std::string(GetParam()) + ".sump")), builtinCatalog());
  const std::string csv = billOfMaterialsCsv(reviewed);
  const auto golden = kRoot / "tests/exchange/golden" / (std::string(GetParam()) + ".csv");
  if (std::getenv("SUMPWRIGHT_UPDATE_GOLDEN") != nullptr) {
    std::filesystem::create_directories(golden.parent_path());
    std::ofstream(golden, std::ios::binary) << csv;
  }
  EXPECT_EQ(csv, fileText(golden));
}

TEST_P(BillOfMaterials, HasOneLineForEachTakeOffLineAndBuysNoLessThanIsLaid) {
  const Review reviewed = review(
      readPlanFile(kRoot / "samples" / (std::string(GetParam()) + ".sump")), builtinCatalog());
  const std::string csv = billOfMaterialsCsv(reviewed);
  const auto lines = std::count(csv.begin(), csv.end(), '\n');
  EXPECT_EQ(lines, static_cast<long>(reviewed.study.takeOff.size()) + 1);
  for (const QuantityLine& line : reviewed.study.takeOff) {
    EXPECT_FALSE(line.runs.empty()) << line.description;
    if (line.category == "pipe") {
      EXPECT_GE(line.buy, line.net) << line.description;
    } else {
      EXPECT_GT(line.quantity, 0) << line.description;
    }
  }
}

TEST(BillOfMaterialsText, GuardsHostileNames) {
  Review reviewed;
  QuantityLine line;
  line.trade = "plumbing";
  line.category = "fitting";
  line.description = "=HYPERLINK(\"x\")";
  line.quantity = 2;
  line.runs = {"+R-1"};
  reviewed.study.takeOff = {line};
  const std::string csv = billOfMaterialsCsv(reviewed);
  EXPECT_NE(csv.find("\"'=HYPERLINK(\"\"x\"\")\",,,2,each,,'+R-1\r\n"), std::string::npos) << csv;
}

} // namespace
} // namespace sump
