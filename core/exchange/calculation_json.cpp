#include "core/exchange/calculation_json.h"

#include "core/study/calculation_outline.h"
#include "core/study/calculation_print.h"

#include <nlohmann/json.hpp>

namespace sump {

namespace {

using Json = nlohmann::ordered_json;

Json one(const NumberedCalculation& entry) {
  const Calculation& c = entry.calculation;
  Json inputs = Json::array();
  for (const CalculationInput& in : c.inputs) {
    inputs.push_back({{"symbol", in.symbol},
                      {"name", in.name},
                      {"value", in.value},
                      {"unit", siUnit(in.kind)},
                      {"from", in.from}});
  }
  Json json = {{"id", c.id},
               {"number", entry.number},
               {"object", c.object},
               {"section", c.section},
               {"title", c.title},
               {"formula", c.formula},
               {"inputs", std::move(inputs)},
               {"steps", c.steps},
               {"source", c.source}};
  if (c.decided) {
    json["result"] = c.result;
    json["unit"] = siUnit(c.kind);
  } else {
    json["needs"] = c.needs;
  }
  return json;
}

} // namespace

std::string calculationJson(const std::vector<Calculation>& calculations) {
  Json list = Json::array();
  const CalculationOutline outline(calculations);
  for (const CalculationSection& section : outline.sections()) {
    for (const NumberedCalculation& entry : section.entries)
      list.push_back(one(entry));
  }
  const Json whole = {{"calculations", std::move(list)}};
  return whole.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace sump
