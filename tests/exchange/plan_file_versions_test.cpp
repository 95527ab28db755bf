#include "core/exchange/plan_file_versions.h"

#include "core/exchange/input_error.h"
#include "core/exchange/json_text.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

/// Made-up older formats: version 2 called `wells` what 1 called `bores`; version 3 added `site`.
constexpr VersionStep kSteps[] = {
    {1,
     [](JsonNode& plan) {
       for (std::string& key : plan.keys) {
         if (key == "bores") key = "wells";
       }
     }},
    {2, [](JsonNode& plan) { plan.add("site", JsonNode::object()); }},
};

JsonNode plan(const std::string& rest) {
  return parseJson(R"({"format": "sumpwright-plan", )" + rest + "}", "old.sump");
}

TEST(PlanFileVersions, StepsAreTakenOneAfterAnother) {
  JsonNode old = plan(R"("version": 1, "bores": [])");
  migrate(old, kSteps, 3, "old.sump");
  EXPECT_EQ(jsonText(old), R"({"format": "sumpwright-plan", "version": 3, "wells": [], "site": {}})"
                           "\n");
}

TEST(PlanFileVersions, StartAtTheFilesOwnVersion) {
  JsonNode old = plan(R"("version": 2, "bores": [])");
  migrate(old, kSteps, 3, "old.sump");
  EXPECT_NE(old.member("bores"), nullptr);
  EXPECT_NE(old.member("site"), nullptr);
  JsonNode newest = plan(R"("version": 3)");
  migrate(newest, kSteps, 3, "new.sump");
  EXPECT_EQ(newest.member("site"), nullptr);
}

TEST(PlanFileVersions, RefuseWhatTheyDoNotKnow) {
  JsonNode newer = plan(R"("version": 4)");
  EXPECT_THROW(migrate(newer, kSteps, 3, "newer.sump"), InputError);
  JsonNode older = plan(R"("version": 0)");
  EXPECT_THROW(migrate(older, kSteps, 3, "older.sump"), InputError);
}

} // namespace
} // namespace sump
