// The nominal system behind a supply's equipment volts.

#include "core/study/nominal_volts.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

Supply supply(SupplyKind kind, int volts, std::optional<int> toGround = {}) {
  Supply s;
  s.kind = kind;
  s.volts = volts;
  s.voltsToGround = toGround;
  return s;
}

struct Row {
  SupplyKind kind;
  int volts;
  const char* name;
  int toGround;
};

// NFPA 70 220.5(A), ANSI C84.1.
TEST(NominalVolts, OfTheSystemsInUse) {
  const auto one = SupplyKind::Control1Phase, three = SupplyKind::Motor3Phase;
  for (const Row& row : {Row{one, 110, "120 V", 120}, Row{one, 115, "120 V", 120},
                         Row{one, 120, "120 V", 120}, Row{one, 220, "120/240 V", 120},
                         Row{one, 240, "120/240 V", 120}, Row{three, 200, "208Y/120 V", 120},
                         Row{three, 208, "208Y/120 V", 120}, Row{three, 460, "480Y/277 V", 277},
                         Row{three, 480, "480Y/277 V", 277}, Row{three, 575, "600Y/347 V", 347}}) {
    const auto system = nominalSystem(supply(row.kind, row.volts));
    ASSERT_TRUE(system) << row.volts;
    EXPECT_EQ(system->name, row.name);
    EXPECT_EQ(system->toGround, row.toGround);
  }
}

// IEC 60038: line to neutral and line to line.
TEST(NominalVolts, Of230VoltsFollowTheVoltsToGround) {
  const auto one = SupplyKind::Control1Phase, three = SupplyKind::Motor3Phase;
  EXPECT_EQ(nominalSystem(supply(one, 230, 230))->name, "230/400 V");
  EXPECT_EQ(nominalSystem(supply(one, 230, 120))->name, "120/240 V");
  EXPECT_EQ(nominalSystem(supply(one, 230))->name, "120/240 V");
  EXPECT_FALSE(nominalSystem(supply(one, 230, 133)));
  for (int volts : {380, 400, 415})
    EXPECT_EQ(nominalSystem(supply(three, volts))->name, "230/400 V") << volts;
}

TEST(NominalVolts, AreNotGuessedWhereSystemsDiffer) {
  EXPECT_FALSE(nominalSystem(supply(SupplyKind::Motor3Phase, 230)));
  EXPECT_FALSE(nominalSystem(supply(SupplyKind::Motor3Phase, 4160)));
  EXPECT_FALSE(nominalSystem(supply(SupplyKind::Motor3Phase, 460, 480))) << "no neutral";
  EXPECT_TRUE(nominalSystem(supply(SupplyKind::Motor3Phase, 460, 277)));
}

} // namespace
} // namespace sump
