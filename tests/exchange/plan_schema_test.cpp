// The published schema says exactly what the reader knows. After a change of the format, running
// this test with SUMPWRIGHT_REWRITE=1 writes the schema anew; look at the difference before
// committing it. tests/exchange/schema_check.py validates the samples against it.

#include "core/exchange/plan_file_keys.h"
#include "tests/support/places.h"
#include "tests/support/plan_schema.h"

#include <nlohmann/json.hpp>

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <set>
#include <sstream>

namespace sump {
namespace {

const std::string kSchemaFile = sourceFolder() + "/resources/schema/plan.schema.json";

std::string schemaFile() {
  std::ifstream in(kSchemaFile, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

TEST(PlanSchema, IsWhatTheReaderKnows) {
  const std::string made = test::planSchemaText();
  if (std::getenv("SUMPWRIGHT_REWRITE") != nullptr) std::ofstream(kSchemaFile) << made;
  EXPECT_EQ(schemaFile(), made);
}

using Keys = std::set<std::string>;

template <class T> void expectKeys(const nlohmann::json& object) {
  Keys all, needed, properties;
  for (const KnownKey& known : knownKeys<T>()) {
    all.emplace(known.key);
    if (known.needed) needed.emplace(known.key);
  }
  for (const auto& [key, value] : object.at("properties").items()) {
    properties.insert(key);
    EXPECT_TRUE(value.contains("description")) << key;
  }
  EXPECT_EQ(properties, all);
  EXPECT_EQ(object.value("required", Keys{}), needed);
  EXPECT_EQ(object.at("additionalProperties"), false);
}

TEST(PlanSchema, HasEveryKeyOfEveryObject) {
  const auto schema = nlohmann::json::parse(schemaFile());
  const auto& defs = schema.at("$defs");
  expectKeys<Plan>(schema);
  expectKeys<Project>(defs.at("project"));
  expectKeys<Site>(defs.at("site"));
  expectKeys<Building>(defs.at("building"));
  expectKeys<Pavement>(defs.at("pavement"));
  expectKeys<Utility>(defs.at("utility"));
  expectKeys<SpotElevation>(defs.at("spotElevation"));
  expectKeys<Well>(defs.at("well"));
  expectKeys<Basin>(defs.at("basin"));
  expectKeys<SewerConnection>(defs.at("sewerConnection"));
  expectKeys<WashEquipment>(defs.at("washEquipment"));
  expectKeys<EquipmentRoom>(defs.at("equipmentRoom"));
  expectKeys<Vault>(defs.at("vault"));
  expectKeys<sump::Run>(defs.at("run"));
  expectKeys<RunEnd>(defs.at("runEnd"));
  expectKeys<InlinePart>(defs.at("inlinePart"));
  expectKeys<DimensionNote>(defs.at("dimensionNote"));
  expectKeys<Underlay>(defs.at("underlay"));
  expectKeys<Acceptance>(defs.at("acceptance"));
  expectKeys<RevisionEntry>(defs.at("revisionEntry"));
  expectKeys<WashDemand>(defs.at("washDemand"));
  expectKeys<WashDevice>(defs.at("washDevice"));
  expectKeys<Pump>(defs.at("pump"));
  expectKeys<WaterBasis>(defs.at("waterBasis"));
  expectKeys<EarthBasis>(defs.at("earthBasis"));
  expectKeys<WiringBasis>(defs.at("wiringBasis"));
  expectKeys<Conductor>(defs.at("conductor"));
  EXPECT_EQ(defs.size(), 41U) << "point and 40 structs";
}

template <class E> void expectWords(const nlohmann::json& field) {
  std::vector<std::string> words;
  for (const std::string_view word : wordsOf<E>())
    words.emplace_back(word);
  EXPECT_EQ(field.at("enum").get<std::vector<std::string>>(), words);
}

TEST(PlanSchema, HasEveryWordOfEveryEnumeration) {
  const auto defs = nlohmann::json::parse(schemaFile()).at("$defs");
  expectWords<UnitSystem>(defs.at("project").at("properties").at("units"));
  expectWords<UtilityKind>(defs.at("utility").at("properties").at("kind"));
  expectWords<BasinKind>(defs.at("basin").at("properties").at("kind"));
  expectWords<Side>(defs.at("door").at("properties").at("side"));
  expectWords<Service>(defs.at("run").at("properties").at("service"));
  expectWords<Service>(defs.at("port").at("properties").at("service"));
  expectWords<EndKind>(defs.at("runEnd").at("properties").at("kind"));
  expectWords<EndFitting>(defs.at("runEnd").at("properties").at("fitting"));
  expectWords<PartKind>(defs.at("inlinePart").at("properties").at("kind"));
  expectWords<SoilClass>(defs.at("earthBasis").at("properties").at("soil"));
  expectWords<ProtectiveSystem>(defs.at("earthBasis").at("properties").at("protection"));
  expectWords<SoilHold>(defs.at("earthBasis").at("properties").at("soilHold"));
  expectWords<CircuitKind>(defs.at("conductor").at("properties").at("kind"));
  expectWords<SupplyKind>(defs.at("supply").at("properties").at("kind"));
  expectWords<SignalKind>(defs.at("signalCircuit").at("properties").at("kind"));
  expectWords<FacingPanel>(defs.at("wiringBasis").at("properties").at("facingPanel"));
}

} // namespace
} // namespace sump
