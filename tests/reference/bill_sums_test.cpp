// The bills of all samples, added up again by a script that uses nothing of the program.

#include "core/exchange/buy_list.h"
#include "core/exchange/cutting_lists.h"
#include "core/exchange/plan_file.h"
#include "core/exchange/review_json.h"
#include "tests/support/own_folder.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <map>
#include <nlohmann/json.hpp>
#include <string>

#include <cstdio>
#include <sys/wait.h>

namespace sump::test {
namespace {

const std::string kSource = sourceFolder();

class BillSums : public ::testing::TestWithParam<const char*> {
protected:
  /// The script's exit status and what it said.
  std::pair<int, std::string> check(const std::string& bill) {
    writeFileAtomically(folder_ / "bill.json", bill);
    writeFileAtomically(folder_ / "levels.json", levelsJson(review_));
    writeFileAtomically(folder_ / "cuts.csv", cuttingCsv(review_, buy_.cutting));
    const std::string command =
        "python3 " + kSource + "/tests/reference/bill_sums.py " + plan_ + " " +
        (folder_ / "bill.json").string() + " " + (folder_ / "levels.json").string() + " " +
        (folder_ / "cuts.csv").string() + " " + kSource + "/resources/catalog/supplies.json " +
        kSource + "/resources/catalog 2>&1";
    FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) return {-1, "no shell"};
    std::string said;
    for (int c = std::fgetc(pipe); c != EOF; c = std::fgetc(pipe))
      said += static_cast<char>(c);
    return {WEXITSTATUS(pclose(pipe)), said};
  }

  const std::string plan_ = kSource + "/samples/" + GetParam() + ".sump";
  const Review review_ = review(readPlanFile(plan_), builtinCatalog());
  const BuyList buy_ = buyList(review_);
  testing::OwnFolder folder_;
};
INSTANTIATE_TEST_SUITE_P(Samples, BillSums,
                         ::testing::Values("transit-depot", "boatyard-pad", "ferry-quay"));

TEST_P(BillSums, AgreeWithPlanFileAndCuts) {
  const auto [status, said] = check(takeOffJson(buy_));
  EXPECT_EQ(status, 0) << said;
  EXPECT_NE(said.find("figures agree"), std::string::npos) << said;
}

TEST_P(BillSums, AWrongFigureIsFound) {
  const auto bill = nlohmann::json::parse(takeOffJson(buy_));
  int tried = 0;
  for (const char* category : {"joint", "valve", "cement", "baffle", "manway", "haulage"}) {
    nlohmann::json wrong = bill;
    for (auto& line : wrong.at("lines")) {
      if (line.at("category") != category) continue;
      line.at("inPlace") = line.at("inPlace").get<double>() + 1;
      for (auto& share : line.at("from")) {
        share.at("amount") = share.at("amount").get<double>() + 1;
        break; // the shares still add up
      }
      ++tried;
      break;
    }
    EXPECT_NE(check(wrong.dump()).first, 0) << category;
  }
  EXPECT_EQ(tried, 6);
}

TEST_P(BillSums, UnitsAreSi) {
  const auto bill = nlohmann::json::parse(takeOffJson(buy_));
  std::map<std::string, std::string> units;
  for (const auto& line : bill.at("lines"))
    units[line.at("item").get<std::string>()] = line.at("unit").get<std::string>();
  EXPECT_EQ(units.at("pvc-sch80"), "m");
  EXPECT_EQ(units.at("pavement-patch"), "m2");
  EXPECT_EQ(units.at("excavation"), "m3");
  EXPECT_EQ(units.at("pvc-cement"), "m3");
  EXPECT_EQ(units.at("union"), "each");
}

} // namespace
} // namespace sump::test
