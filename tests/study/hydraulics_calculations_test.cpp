// Each result can be followed from its inputs, and what is undecided says what it needs.

#include "tests/rules/depot.h"

#include "core/study/context.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>
#include <stdexcept>

namespace sump {
namespace {

std::vector<Calculation> calculationsOf(const Plan& plan) {
  const Catalog& catalog = builtinCatalog();
  return hydraulicsCalculations(plan, study(plan, catalog, catalog.limits.with(plan.limits)));
}

const Calculation& named(const std::vector<Calculation>& all, const char* id,
                         const char* object = "") {
  for (const Calculation& c : all)
    if (c.id == id && c.object == object) return c;
  throw std::runtime_error(std::string("no calculation ") + id);
}

double input(const Calculation& c, const char* symbol) {
  for (const CalculationInput& in : c.inputs)
    if (in.symbol == symbol) return in.value;
  throw std::runtime_error(std::string("no input ") + symbol + " of " + c.id);
}

TEST(HydraulicsCalculations, AreCompleteAndUnique) {
  std::set<std::pair<std::string, Id>> seen;
  for (const Calculation& c : calculationsOf(testing::depot())) {
    EXPECT_TRUE(seen.emplace(c.id, c.object).second) << c.id << " " << c.object;
    EXPECT_FALSE(c.section.empty() || c.title.empty() || c.formula.empty() || c.source.empty())
        << c.id;
    EXPECT_EQ(c.decided, c.needs.empty()) << c.id;
    EXPECT_TRUE(std::isfinite(c.result)) << c.id;
  }
  EXPECT_GT(seen.size(), 30u);
}

// The pocket calculator: the formulas printed, on the inputs printed, give the result printed.
TEST(HydraulicsCalculations, CanBeFollowed) {
  const auto all = calculationsOf(testing::depot());
  const Calculation& npsh = named(all, "suction.npsh-available", "SU-1");
  EXPECT_NEAR(input(npsh, "h_a") - input(npsh, "z") - input(npsh, "h_v") - input(npsh, "h_f"),
              npsh.result, 1e-9);
  const Calculation& vaults = named(all, "demand.peak-to-vaults");
  EXPECT_NEAR((input(vaults, "Q_p") + input(vaults, "Q_f")) * (1 - input(vaults, "l")) +
                  input(vaults, "Q_o"),
              vaults.result, 1e-12);
  const Calculation& start = named(all, "run.needed-at-start", "PW-1");
  EXPECT_NEAR(input(start, "p") +
                  input(start, "rho") * 9.80665 * (input(start, "dz") + input(start, "h")),
              start.result, 1e-6);
  const Calculation& prime = named(all, "suction.priming-time", "SU-1");
  EXPECT_NEAR(input(prime, "V") / input(prime, "Q"), prime.result, 1e-9);
  EXPECT_GE(named(all, "run.loss", "SU-1").steps.size(), 5u);
}

// The small table: as drawn, straight, one size up, one more elbow, one more foot.
TEST(HydraulicsCalculations, TellWhatWouldChangeTheSuction) {
  const auto all = calculationsOf(testing::depot());
  const Calculation& npsh = named(all, "suction.npsh-available", "SU-1");
  ASSERT_EQ(npsh.steps.size(), 5u);
  EXPECT_TRUE(npsh.steps[0].starts_with("as drawn: h_f = "));
  EXPECT_TRUE(npsh.steps[1].starts_with("straight: h_f = "));
  EXPECT_TRUE(npsh.steps[2].starts_with("one size up: h_f = "));
  const Calculation& margin = named(all, "suction.npsh-margin", "SU-1");
  EXPECT_NEAR(margin.result, input(margin, "NPSHa") - input(margin, "NPSHr"), 1e-12);
  EXPECT_EQ(named(all, "suction.pocket", "SU-1").result, 0) << "it rises all the way";
  const Calculation& size = named(all, "run.size", "SU-1");
  EXPECT_EQ(size.steps.size(), 3u);
  EXPECT_GT(input(size, "v_max"), size.result);
  Plan plan = testing::depot();
  const Calculation device = named(all, "wash.pressure", plan.basis.demand.devices[0].id.c_str());
  EXPECT_GT(device.result, 0);
  EXPECT_EQ(input(device, "p"), plan.basis.demand.devices[0].pressure->value());
}

TEST(HydraulicsCalculations, SayWhatTheyNeed) {
  Plan plan = testing::depot();
  plan.basis = {};
  for (const Calculation& c : calculationsOf(plan)) {
    EXPECT_EQ(c.decided, c.needs.empty()) << c.id;
    if (c.id == "water.density") {
      EXPECT_EQ(c.needs, "water temperature");
    }
    if (c.id == "demand.peak-product") {
      EXPECT_EQ(c.needs, "wash devices, simultaneity of the wash devices");
    }
    if (c.id == "suction.npsh-available") {
      EXPECT_FALSE(c.decided);
    }
  }
}

} // namespace
} // namespace sump
