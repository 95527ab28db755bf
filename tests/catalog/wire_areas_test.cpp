// Areas of conductors and conduits.

#include "core/catalog/embedded.h"
#include "core/catalog/table_reader.h"
#include "tests/support/own_folder.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>

namespace sump {
namespace {

double squareInches(std::optional<Area> area) {
  return area ? area->value() / (kMetresPerInch * kMetresPerInch) : -1;
}

// NEC chapter 9 table 5: 6 AWG seen quoted, the rest from memory.
TEST(WireAreas, ConductorsOfTheTable) {
  const WireAreas& areas = builtinCatalog().wiring;
  for (const auto& [size, area] : {std::pair("14", 0.0097),
                                   {"12", 0.0133},
                                   {"10", 0.0211},
                                   {"8", 0.0366},
                                   {"6", 0.0507},
                                   {"4", 0.0824},
                                   {"3", 0.0973},
                                   {"2", 0.1158}}) {
    EXPECT_NEAR(squareInches(areas.conductorArea(size)), area, 1e-12) << size;
  }
  EXPECT_EQ(areas.conductor("6")->source.confidence, Confidence::SeenSecondHand);
  EXPECT_EQ(areas.conductor("8")->source.confidence, Confidence::FromMemory);
  EXPECT_FALSE(areas.conductorArea("250"));
  EXPECT_FALSE(areas.conductorArea(""));
}

// NEC chapter 9 table 4, from memory: 1 in Sch 40 0.832 (40 % 0.333), Sch 80 0.688 (0.275).
TEST(WireAreas, OneInchConduit) {
  const WireAreas& areas = builtinCatalog().wiring;
  EXPECT_NEAR(0.4 * squareInches(areas.conduitArea("pvc-conduit-sch40", "1")), 0.333, 5e-4);
  EXPECT_NEAR(0.4 * squareInches(areas.conduitArea("pvc-conduit-sch80", "1")), 0.275, 5e-4);
  EXPECT_FALSE(areas.conduitArea("pvc-sch80", "1")) << "no conduit";
  EXPECT_FALSE(areas.conduitArea("pvc-conduit-sch80", "9"));
}

// The pipe table gives the inside diameters of the same conduit to 0.001 in.
TEST(WireAreas, EveryConduitThatCanBeBoughtHasTheAreaOfItsBore) {
  const Catalog& catalog = builtinCatalog();
  int sizes = 0;
  for (const ConduitAreas& conduit : builtinCatalog().wiring.conduits) {
    for (const PipeSize& size : catalog.pipe(conduit.pipe)->sizes) {
      const auto area = builtinCatalog().wiring.conduitArea(conduit.pipe, size.nominal);
      ASSERT_TRUE(area) << conduit.pipe << " " << size.nominal;
      const double bore = kPi / 4 * inMetres(size.inside) * inMetres(size.inside);
      EXPECT_NEAR(area->value() / bore, 1, 0.005) << conduit.pipe << " " << size.nominal;
      ++sizes;
    }
  }
  EXPECT_EQ(sizes, 14);
}

TEST(WireAreas, EveryRowNamesItsSource) {
  for (const ConductorArea& row : builtinCatalog().wiring.conductors)
    EXPECT_GT(row.source.citation.size(), 10u) << row.size;
  for (const ConduitAreas& row : builtinCatalog().wiring.conduits) {
    EXPECT_GT(row.source.citation.size(), 10u) << row.pipe;
    EXPECT_NE(builtinCatalog().pipe(row.pipe), nullptr) << row.pipe;
  }
}

TEST(WireAreas, ASpoiledTableIsRefusedAtItsPlace) {
  using Json = nlohmann::json;
  struct Spoiled {
    void (*spoil)(Json&);
    const char* pointer;
    const char* phrase;
  };
  for (const Spoiled& bad :
       {Spoiled{[](Json& j) { j["conductors"][0].erase("source"); }, "/conductors/0",
                "lacks 'source'"},
        {[](Json& j) { j["conductors"][1]["size"] = "14"; }, "/conductors/1/size", "repeats '14'"},
        {[](Json& j) { j["conductors"][0]["squareInches"] = 0; }, "/conductors/0/squareInches",
         "not more than 0"},
        {[](Json& j) { j["conduits"][0]["sizes"][0]["nominal"] = "tiny"; },
         "/conduits/0/sizes/0/nominal", "is no size"},
        {[](Json& j) { j["wires"] = 1; }, "/", "unknown key 'wires'"}}) {
    Json json = Json::parse(embeddedText("catalog/wiring.json"));
    bad.spoil(json);
    try {
      readWireAreas(TableNode(json, "wiring.json", ""));
      ADD_FAILURE() << "accepted: " << bad.phrase;
    } catch (const CatalogError& error) {
      const std::string text = error.what();
      EXPECT_NE(text.find(bad.pointer), std::string::npos) << text;
      EXPECT_NE(text.find(bad.phrase), std::string::npos) << text;
    }
  }
}

nlohmann::json ownTable() {
  nlohmann::json own = nlohmann::json::parse(embeddedText("catalog/wiring.json"));
  for (auto& row : own["conductors"]) {
    if (row["size"] == "8") row["squareInches"] = 0.05;
  }
  return own;
}

// Nine conductors of 8 AWG at 0.05 in2 in 0.832 in2.
TEST(WireAreas, AUsersFolderReplacesThem) {
  const testing::OwnFolder folder;
  std::ofstream(folder / "wiring.json") << ownTable();
  const Catalog catalog = loadCatalog(folder.path());
  EXPECT_NEAR(squareInches(catalog.wiring.conductorArea("8")), 0.05, 1e-12);
  EXPECT_NEAR(squareInches(builtinCatalog().wiring.conductorArea("8")), 0.0366, 1e-12);
  Plan plan;
  sump::Run run = test::makeRun("C", Service::Power, "pvc-conduit-sch40", "1",
                                test::freeEnd(test::ft(0, 0), feet(90)),
                                test::freeEnd(test::ft(40, 0), feet(90)));
  run.conductors = {{"8", 9, CircuitKind::Power}};
  plan.runs.append(run);
  const Study own = study(plan, catalog, catalog.limits);
  EXPECT_NEAR(*own.wiring.conduits.at(0).fill, 9 * 0.05 / 0.832, 1e-9);
}

TEST(WireAreas, AnOwnTableThatIsSpoiledIsRefused) {
  const testing::OwnFolder folder;
  std::ofstream(folder / "wiring.json") << "{}";
  EXPECT_THROW(loadCatalog(folder.path()), CatalogError);
}

} // namespace
} // namespace sump
