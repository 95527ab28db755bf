// Catalogue files that cannot be used: one clear message each, and what is wrong is named.

#include "core/catalog/catalog.h"
#include "core/catalog/embedded.h"
#include "tests/support/own_folder.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <functional>

namespace sump {
namespace {

using Json = nlohmann::ordered_json;

struct Spoiled {
  const char* file; ///< `catalog/pipes.json`
  std::function<void(Json&)> spoil;
  const char* pointer;
  const char* phrase;
};

const std::vector<Spoiled>& spoiled() {
  static const std::vector<Spoiled> all = {
      {"catalog/losses.json", [](Json& j) { j["fittings"][0].erase("ratio"); }, "/fittings/0",
       "one of ratio, k and head"},
      {"catalog/losses.json", [](Json& j) { j["fittings"][0]["k"] = 1; }, "/fittings/0",
       "one of ratio, k and head"},
      {"catalog/losses.json", [](Json& j) { j["fittings"][1]["ratio"] = "16"; },
       "/fittings/1/ratio", "is not a number"},
      {"catalog/losses.json", [](Json& j) { j["fittings"][1]["ratio"] = -16; }, "/fittings/1/ratio",
       "is negative"},
      {"catalog/losses.json", [](Json& j) { j["fittings"][1]["key"] = "elbow-90"; },
       "/fittings/1/key", "repeats 'elbow-90'"},
      {"catalog/losses.json", [](Json& j) { j["surfaces"][0]["hazenWilliams"] = 0; },
       "/surfaces/0/hazenWilliams", "is not more than 0"},
      {"catalog/losses.json",
       [](Json& j) { j["turbulentFactors"]["sizes"][0]["nominal"] = "tiny"; },
       "/turbulentFactors/sizes/0/nominal", "is no size"},
      {"catalog/pipes.json", [](Json& j) { j["pipes"][0].erase("source"); }, "/pipes/0",
       "lacks 'source'"},
      {"catalog/pipes.json", [](Json& j) { j["pipes"][0]["colour"] = "grey"; }, "/pipes/0",
       "unknown key 'colour'"},
      {"catalog/pipes.json", [](Json& j) { j["pipes"][0]["sizes"][0]["outside"] = "0 in"; },
       "/pipes/0/sizes/0/outside", "not more than 0"},
      {"catalog/pipes.json", [](Json& j) { j["pipes"][0]["sizes"][0]["outside"] = "wide"; },
       "/pipes/0/sizes/0/outside", "wide"},
      {"catalog/pipes.json", [](Json& j) { j["pipes"][0]["sizes"][0]["inside"] = "0.9 in"; },
       "/pipes/0/sizes/0", "inside"},
      {"catalog/pipes.json", [](Json& j) { j["pipes"][0]["sizes"][1]["nominal"] = "1/2"; },
       "/pipes/0/sizes/1/nominal", "repeats"},
      {"catalog/pipes.json",
       [](Json& j) { std::swap(j["pipes"][0]["sizes"][0], j["pipes"][0]["sizes"][1]); },
       "/pipes/0/sizes/1/nominal", "out of order"},
      {"catalog/pipes.json", [](Json& j) { j["pipes"][1]["key"] = j["pipes"][0]["key"]; },
       "/pipes/1/key", "repeats"},
      {"catalog/pipes.json", [](Json& j) { j["pipes"][0]["joining"] = "tape"; }, "/pipes/0/joining",
       "solvent-socket"},
      {"catalog/pipes.json", [](Json& j) { j["pipes"][0]["sizes"] = Json::array(); },
       "/pipes/0/sizes", "empty"},
      {"catalog/pipes.json", [](Json& j) { j["pipes"][0]["fittings"] = "none"; }, "pvc-sch40",
       "unknown fitting family"},
      {"catalog/fittings.json", [](Json& j) { j["fittings"][0]["sizes"][0]["elbow-90"] = "-1 in"; },
       "/fittings/0/sizes/0/elbow-90", "negative"},
      {"catalog/fittings.json", [](Json& j) { j["fittings"][0]["sizes"][0]["nominal"] = "big"; },
       "/fittings/0/sizes/0/nominal", "no size"},
      {"catalog/parts.json", [](Json& j) { j["parts"][0]["sizes"] = "all"; }, "/parts/0/sizes",
       "not a list"},
      {"catalog/vaults.json", [](Json& j) { j["vaults"][0]["wall"] = "4'"; }, "/vaults/0",
       "no inside"},
      {"catalog/vaults.json", [](Json& j) { j["vaults"][0]["baffleOffsets"][0] = "40'"; },
       "/vaults/0/baffleOffsets/0", "end wall"},
      {"limits/generic.json", [](Json& j) { j["limits"][0]["confidence"] = "sure"; },
       "/limits/0/confidence", "from-memory"},
      {"limits/generic.json", [](Json& j) { j["limits"][0]["value"] = 3; }, "/limits/0/value",
       "not a text"},
  };
  return all;
}

TEST(ValidationOfTables, EachSpoiledFileGivesOneClearMessage) {
  for (const Spoiled& bad : spoiled()) {
    const testing::OwnFolder folder;
    Json json = Json::parse(embeddedText(bad.file));
    bad.spoil(json);
    const std::string name = std::filesystem::path(bad.file).filename().string();
    std::ofstream(folder / name) << json.dump();
    try {
      loadCatalog(folder.path());
      ADD_FAILURE() << "accepted: " << bad.phrase;
    } catch (const CatalogError& error) {
      const std::string text = error.what();
      EXPECT_NE(text.find(name), std::string::npos) << text;
      EXPECT_NE(text.find(bad.pointer), std::string::npos) << text;
      EXPECT_NE(text.find(bad.phrase), std::string::npos) << text;
      EXPECT_NE(text.find("; "), std::string::npos) << "says how to mend it: " << text;
    }
  }
}

TEST(ValidationOfTables, AFolderReplacesFileByFile) {
  const testing::OwnFolder folder;
  Json json = Json::parse(embeddedText("limits/generic.json"));
  for (Json& row : json["limits"]) {
    if (row["id"] == "storage.minimum") row["value"] = "4000 gal";
  }
  std::ofstream(folder / "generic.json") << json.dump();
  const Catalog own = loadCatalog(folder.path());
  EXPECT_NEAR(inGallons(own.limits.volume("storage.minimum")), 4000, 1e-6);
  EXPECT_EQ(own.pipes.size(), builtinCatalog().pipes.size());
}

TEST(ValidationOfTables, TextThatIsNoJsonAndFoldersThatAreNoneAreNamed) {
  const testing::OwnFolder folder;
  EXPECT_THROW(loadCatalog(folder / "missing"), CatalogError);
  std::ofstream(folder / "pipes.json") << "{\"pipes\": [";
  EXPECT_THROW(loadCatalog(folder.path()), CatalogError);
}

} // namespace
} // namespace sump
