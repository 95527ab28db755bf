// Whoever follows an input to the calculation that it names finds the same number there, on every
// sample; and what people read holds no key of the program's own.

#include "core/catalog/catalog.h"
#include "core/exchange/plan_file.h"
#include "core/study/calculation_outline.h"
#include "core/study/calculation_print.h"
#include "tests/support/places.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sump::test {
namespace {

class CalculationReferences : public ::testing::TestWithParam<const char*> {
protected:
  const Plan plan_ = readPlanFile(sampleFile(GetParam()));
  const std::vector<Calculation> all_ = calculations(plan_, studyOf(plan_));
};

TEST_P(CalculationReferences, AnInputShowsTheValueOfTheCalculationThatItNames) {
  const CalculationOutline outline(all_);
  int followed = 0;
  for (const Calculation& c : all_) {
    for (const CalculationInput& in : c.inputs) {
      const NumberedCalculation* origin = outline.origin(c, in);
      if (origin == nullptr) {
        EXPECT_EQ(in.from.find('.'), std::string::npos) << c.id << ": " << in.from;
        continue;
      }
      const Calculation& named = origin->calculation;
      EXPECT_TRUE(named.decided) << c.id << " " << in.symbol << " of " << named.id;
      for (UnitSystem units : {UnitSystem::UsCustomary, UnitSystem::Metric}) {
        EXPECT_EQ(printQuantity(in.value, in.kind, units, 5),
                  printQuantity(named.result, named.kind, units, 5))
            << c.id << " " << c.object << " " << in.symbol << " of " << named.id;
      }
      ++followed;
    }
  }
  EXPECT_GT(followed, 100);
}

TEST_P(CalculationReferences, NothingIsLeftOverOfFlowsThatAreEqual) {
  for (const Calculation& c : all_) {
    for (const CalculationInput& in : c.inputs)
      EXPECT_TRUE(in.value == 0 || std::abs(in.value) > 1e-12) << c.id << " " << in.symbol;
  }
}

TEST_P(CalculationReferences, NoKeyOfALimitIsPrinted) {
  for (const Calculation& c : all_) {
    for (const Limit& limit : builtinCatalog().limits.table()) {
      for (const std::string* text : {&c.title, &c.formula, &c.source})
        EXPECT_EQ(text->find(limit.id), std::string::npos) << c.id << ": " << limit.id;
    }
  }
}

TEST_P(CalculationReferences, ALevelThatDoesNotFallIsNoOpenQuestion) {
  for (const Calculation& c : all_) {
    EXPECT_EQ(c.needs.find("does not fall"), std::string::npos) << c.id;
    if (c.id == "lid.live") {
      EXPECT_TRUE(c.decided ||
                  std::ranges::find(c.steps, "under a traffic pavement") != c.steps.end())
          << c.object;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Samples, CalculationReferences,
                         ::testing::Values("transit-depot", "boatyard-pad", "ferry-quay"));

} // namespace
} // namespace sump::test
