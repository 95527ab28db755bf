// The report of the earth study repeats the study's own numbers and says what is missing.

#include "core/study/calculation_print.h"
#include "core/study/context.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace sump::test {
namespace {

const Calculation* findEarth(const std::vector<Calculation>& all, const std::string& id) {
  const auto found = std::ranges::find(all, id, &Calculation::id);
  return found == all.end() ? nullptr : &*found;
}

TEST(EarthReport, GivesTheStudysNumbersOrItsNeeds) {
  Plan plan;
  plan.vaults.append(twoChamberVault("V1", {}, feet(90)));
  const Study unknown = studyOf(plan);
  const std::vector<Calculation> open = earthCalculations(plan, unknown);
  ASSERT_NE(findEarth(open, "buoyancy.factor"), nullptr);
  EXPECT_FALSE(findEarth(open, "buoyancy.factor")->decided);
  EXPECT_NE(findEarth(open, "buoyancy.factor")->needs.find("groundwater"), std::string::npos);
  plan.site.groundDefault = feet(98.5);
  plan.site.groundwater = feet(96);
  plan.basis.earth.soilHold = SoilHold::Column;
  const Study known = studyOf(plan);
  const std::vector<Calculation> all = earthCalculations(plan, known);
  const Calculation* factor = findEarth(all, "buoyancy.factor");
  ASSERT_NE(factor, nullptr);
  ASSERT_TRUE(factor->decided);
  EXPECT_EQ(factor->result, *known.earth.buoyancy[0].factor);
  ASSERT_EQ(factor->inputs.size(), 3u); // weight, soil, uplift: the formula by hand
  EXPECT_NEAR((factor->inputs[0].value + factor->inputs[1].value) / factor->inputs[2].value,
              factor->result, 1e-12);
  // With the figures that are printed, pounds from cubic feet at 62.4 lb/ft3.
  const Calculation* uplift = findEarth(all, "buoyancy.uplift");
  ASSERT_NE(uplift, nullptr);
  const auto number = [](std::string printed) {
    std::erase(printed, ',');
    return std::stod(printed);
  };
  const std::string volume = printInput(uplift->inputs[0], UnitSystem::UsCustomary);
  EXPECT_NE(volume.find(" ft\u00B3"), std::string::npos) << volume;
  EXPECT_NEAR(number(volume) * 62.4, number(printResult(*uplift, UnitSystem::UsCustomary)),
              1e-3 * number(volume) * 62.4);
  ASSERT_NE(findEarth(all, "dig.truckloads"), nullptr);
  EXPECT_EQ(findEarth(all, "dig.truckloads")->result, *known.earth.truckloads);
}

} // namespace
} // namespace sump::test
