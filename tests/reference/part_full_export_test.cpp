// Hands the samples' drains, and drains of every bore, fall and fill, to part_full_check.py, which
// works depths, velocities and capacities out on its own and demands agreement within 0.5 %. Needs
// python3; its lack is a failure, no pass.

#include "core/study/circular_flow.h"
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

Json drainJson(const std::string& id, const GravityStudy& drain, double n) {
  return {{"id", id},
          {"bore", inMetres(drain.diameter)},
          {"slope", *drain.slope},
          {"n", n},
          {"flow", drain.peak->value()},
          {"program",
           {{"full", drain.fullFlow->value()},
            {"fullVelocity", drain.fullVelocity->value()},
            {"depth", inMetres(*drain.depth)},
            {"velocity", drain.velocity->value()},
            {"critical", inMetres(*drain.criticalDepth)}}}};
}

void addSample(const std::string& name, Json& drains) {
  const Plan plan = readPlanFile(testing::samples() / (name + ".sump"));
  const Review review = testing::reviewed(plan);
  const double n = review.limits.number("gravity.roughness");
  for (const GravityStudy& drain : review.study.train.gravity) {
    if (drain.depth) drains.push_back(drainJson(name + " " + drain.run, drain, n));
  }
}

/// A drain of this bore that carries this share of its full flow.
Json tableRow(double bore, double slope, double share) {
  const double n = 0.013;
  const Length d = inches(bore);
  const Flow full = manningFlow(d, 1, slope, n), flow = share * full;
  const double fill = *normalFill(flow, d, slope, n);
  return {{"id", std::to_string(bore) + " in at " + std::to_string(slope)},
          {"bore", inMetres(d)},
          {"slope", slope},
          {"n", n},
          {"flow", flow.value()},
          {"program",
           {{"full", full.value()},
            {"fullVelocity", manningVelocity(d / 4.0, slope, n).value()},
            {"depth", fill * inMetres(d)},
            {"velocity", (flow / circularSection(d, fill).area).value()},
            {"critical", criticalFill(flow, d) * inMetres(d)}}}};
}

TEST(SecondOpinion, PartFullFlowAgreesWithAnIndependentSolution) {
  Json drains = Json::array();
  addSample("transit-depot", drains);
  addSample("boatyard-pad", drains);
  EXPECT_GE(drains.size(), 3u) << "drains of the samples";
  for (const double bore : {3.786, 5.915, 7.565}) {
    for (const double slope : {0.0052, 0.0104, 0.0208}) {
      for (const double share : {0.02, 0.2, 0.5, 0.8, 1.0})
        drains.push_back(tableRow(bore, slope, share));
    }
  }
  const testing::OwnFolder folder;
  const auto file = folder / "part-full.json";
  std::ofstream(file) << Json{{"drains", std::move(drains)}};
  const std::string script = sourceFolder() + "/tests/reference/part_full_check.py";
  const int result =
      std::system(("python3 '" + script + "' '" + file.string() + "'").c_str()); // NOLINT
  EXPECT_EQ(result, 0) << "see the lines above";
}

} // namespace
} // namespace sump
