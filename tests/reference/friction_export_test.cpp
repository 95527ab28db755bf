// Hands the samples' suction and product runs to friction_check.py, which works their losses out on
// its own and demands agreement within 0.5 %. Needs python3; its lack is a failure, no pass.

#include "tests/rules/depot.h"
#include "tests/support/own_folder.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cstdlib>
#include <fstream>

namespace sump {
namespace {

using Json = nlohmann::json;

bool compared(Service service) {
  return service == Service::Suction || service == Service::SpareSuction ||
         service == Service::Product;
}

Json runJson(const Run& drawn, const PressureRun& run) {
  const Catalog& catalog = builtinCatalog();
  Json pipe = Json::array(), fittings = Json::array();
  for (const PipeLoss& row : run.loss->pipe) {
    pipe.push_back({{"inside", row.inside.value()},
                    {"length", row.length.value()},
                    {"roughness", catalog.losses.surface(drawn.pipe)->roughness.value()}});
  }
  for (const FittingLoss& row : run.loss->fittings) {
    fittings.push_back({{"k", row.k},
                        {"count", row.count},
                        {"inside", catalog.pipeSize(drawn.pipe, row.size)->inside.value()}});
  }
  return {{"id", run.run},
          {"flow", run.flow->value()},
          {"pipe", std::move(pipe)},
          {"fittings", std::move(fittings)},
          {"loss", (run.loss->pipeSum + run.loss->fittingSum).value()}};
}

Json sampleJson(const std::string& name) {
  const Plan plan = readPlanFile(testing::samples() / (name + ".sump"));
  const Review review = testing::reviewed(plan);
  Json runs = Json::array();
  for (const PressureRun& run : review.study.hydraulics.runs) {
    if (compared(run.service)) runs.push_back(runJson(*plan.runs.find(run.run), run));
  }
  return {{"name", name},
          {"celsius", inCelsius(*plan.basis.water.temperature)},
          {"runs", std::move(runs)}};
}

TEST(SecondOpinion, FrictionOfTheSamplesAgreesWithAnIndependentSolution) {
  const testing::OwnFolder folder;
  const auto file = folder / "friction.json";
  std::ofstream(file) << Json{
      {"samples", {sampleJson("transit-depot"), sampleJson("boatyard-pad")}}};
  const std::string script = sourceFolder() + "/tests/reference/friction_check.py";
  const int result =
      std::system(("python3 '" + script + "' '" + file.string() + "'").c_str()); // NOLINT
  EXPECT_EQ(result, 0) << "see the lines above";
}

} // namespace
} // namespace sump
