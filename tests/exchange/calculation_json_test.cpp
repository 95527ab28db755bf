// The calculations for programs: numbered as in the report, values in SI with their unit.

#include "core/exchange/calculation_json.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace sump {
namespace {

TEST(CalculationJson, GivesNumbersValuesAndUnits) {
  Calculation flow;
  flow.id = "pump.flow";
  flow.section = "Pump";
  flow.title = "Flow";
  flow.formula = "Q_p + Q_r";
  flow.inputs = {{"Q_p", "product", 0.002, QuantityKind::Flow, "demand.peak-product"}};
  flow.steps = {"a step"};
  flow.result = 0.0025;
  flow.kind = QuantityKind::Flow;
  flow.source = "conservation of water";
  Calculation open = flow;
  open.id = "pump.head";
  open.object = "P1";
  open.decided = false;
  open.needs = "pump curve";
  const auto all = nlohmann::json::parse(calculationJson({flow, open})).at("calculations");
  ASSERT_EQ(all.size(), 2u);
  EXPECT_EQ(all[0].at("id"), "pump.flow");
  EXPECT_EQ(all[0].at("number"), "1.1");
  EXPECT_EQ(all[0].at("result"), 0.0025);
  EXPECT_EQ(all[0].at("unit"), "m3/s");
  EXPECT_EQ(all[0].at("inputs")[0].at("value"), 0.002);
  EXPECT_EQ(all[0].at("inputs")[0].at("unit"), "m3/s");
  EXPECT_EQ(all[0].at("steps")[0], "a step");
  EXPECT_FALSE(all[0].contains("needs"));
  EXPECT_EQ(all[1].at("number"), "1.2");
  EXPECT_EQ(all[1].at("object"), "P1");
  EXPECT_EQ(all[1].at("needs"), "pump curve");
  EXPECT_FALSE(all[1].contains("result"));
}

} // namespace
} // namespace sump
