// Sections, numbers and where an input comes from.

#include "core/study/calculation_outline.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

Calculation made(const char* id, const char* object, const char* section) {
  Calculation c;
  c.id = id;
  c.object = object;
  c.section = section;
  return c;
}

TEST(CalculationOutline, NumbersSectionsInTheOrderInWhichTheyFirstCome) {
  std::vector<Calculation> all = {made("a", "", "Water"), made("b", "R1", "Suction"),
                                  made("c", "", "Water")};
  all[1].decided = false;
  const CalculationOutline outline(all);
  ASSERT_EQ(outline.sections().size(), 2u);
  EXPECT_EQ(outline.sections()[0].title, "Water");
  EXPECT_EQ(outline.sections()[0].entries[1].number, "1.2");
  EXPECT_EQ(outline.sections()[0].entries[1].calculation.id, "c");
  EXPECT_EQ(outline.sections()[1].entries[0].number, "2.1");
  EXPECT_EQ(outline.size(), 3u);
  EXPECT_EQ(outline.undecided(), 1u);
}

TEST(CalculationOutline, AnInputComesFromItsOwnObjectFirst) {
  const std::vector<Calculation> all = {
      made("loss", "R1", "Runs"), made("loss", "R2", "Runs"), made("flow", "", "Runs"),
      made("end", "R2", "Runs"),  made("only", "R1", "Runs"),
  };
  const CalculationOutline outline(all);
  const auto from = [&](const char* id) {
    return originText(outline, all[3], {"x", "", 0, QuantityKind::Number, id});
  };
  EXPECT_EQ(from("loss"), "1.2") << "of R2, which the calculation is about";
  EXPECT_EQ(from("flow"), "1.3") << "of no object";
  EXPECT_EQ(from("only"), "1.5") << "of another object, but there is no other";
  EXPECT_EQ(from("plan"), "plan");
  EXPECT_EQ(originText(outline, all[2], {"x", "", 0, QuantityKind::Number, "loss"}), "loss")
      << "two runs have one: it cannot be told which";
}

} // namespace
} // namespace sump
