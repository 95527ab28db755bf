#include "core/exchange/calculation_json.h"

#include <nlohmann/json.hpp>

namespace sump {

namespace {

using Json = nlohmann::ordered_json;

Json one(const Calculation& c) {
  Json inputs = Json::array();
  for (const CalculationInput& in : c.inputs) {
    inputs.push_back(
        {{"symbol", in.symbol}, {"name", in.name}, {"value", in.value}, {"from", in.from}});
  }
  Json json = {{"id", c.id},       {"object", c.object},   {"section", c.section},
               {"title", c.title}, {"formula", c.formula}, {"inputs", std::move(inputs)},
               {"steps", c.steps}, {"source", c.source}};
  if (c.decided) {
    json["result"] = c.result;
  } else {
    json["needs"] = c.needs;
  }
  return json;
}

} // namespace

std::string calculationJson(const std::vector<Calculation>& calculations) {
  Json list = Json::array();
  for (const Calculation& c : calculations)
    list.push_back(one(c));
  const Json whole = {{"calculations", std::move(list)}};
  return whole.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace sump
