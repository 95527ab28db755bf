#include "core/catalog/catalog.h"

#include "core/plan/keys.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

double k(std::string_view fitting, std::string_view nominal) {
  const LossTable& table = builtinCatalog().losses;
  const LossRow* row = table.fitting(fitting);
  if (row == nullptr) return -1;
  return table.k(*row, nominal).value_or(-1);
}

// "Friction Losses in Pipe Fittings, Resistance Coefficient K" (Crane TP-410), 2 in column, FIT-1.
TEST(Losses, Fit1TwoInch) {
  EXPECT_NEAR(k("elbow-90", "2"), 0.57, 0.005);
  EXPECT_NEAR(k("elbow-45", "2"), 0.30, 0.005);
  EXPECT_NEAR(k("tee", "2"), 0.38, 0.005);
  EXPECT_NEAR(k("tee-branch", "2"), 1.14, 0.005);
  EXPECT_NEAR(k("gate-valve", "2"), 0.15, 0.005);
  EXPECT_NEAR(k("ball-valve", "2"), 0.06, 0.005);
}

// The same table, its rows for the other sizes.
TEST(Losses, RowsOfTheTable) {
  struct Row {
    const char* nominal;
    double elbow, branch, gate;
  };
  for (const Row& row : {Row{"1/2", 0.81, 1.62, 0.22},
                         {"3/4", 0.75, 1.50, 0.20},
                         {"1", 0.69, 1.38, 0.18},
                         {"1-1/4", 0.66, 1.32, 0.18},
                         {"3", 0.54, 1.08, 0.14},
                         {"4", 0.51, 1.02, 0.14},
                         {"6", 0.45, 0.90, 0.12},
                         {"8", 0.42, 0.84, 0.11}}) {
    EXPECT_NEAR(k("elbow-90", row.nominal), row.elbow, 0.005) << row.nominal;
    EXPECT_NEAR(k("tee-branch", row.nominal), row.branch, 0.005) << row.nominal;
    EXPECT_NEAR(k("gate-valve", row.nominal), row.gate, 0.0051) << row.nominal;
  }
}

// ASTM D1785, PVC pipe data (PIPE-1).
TEST(Losses, Pipe1Schedule80) {
  struct Row {
    const char* nominal;
    double outside, wall, inside, rating;
  };
  for (const Row& row : {Row{"1/2", 0.840, 0.147, 0.528, 850},
                         {"1", 1.315, 0.179, 0.935, 630},
                         {"2", 2.375, 0.218, 1.913, 400},
                         {"4", 4.500, 0.337, 3.786, 320},
                         {"8", 8.625, 0.500, 7.565, 250}}) {
    const PipeSize* size = builtinCatalog().pipeSize("pvc-sch80", row.nominal);
    ASSERT_NE(size, nullptr);
    EXPECT_NEAR(inInches(size->outside), row.outside, 1e-9);
    EXPECT_NEAR(inInches(size->wall), row.wall, 1e-9);
    EXPECT_NEAR(inInches(size->inside), row.inside, 1e-9);
    EXPECT_NEAR(inPsi(*size->rating), row.rating, 1e-9);
  }
}

TEST(Losses, EveryPartThatWaterFlowsThroughHasARow) {
  const LossTable& table = builtinCatalog().losses;
  for (const auto& [kind, word] : kPartKeys) {
    // A reducer's loss follows from its two bores, a strainer's from the plan; the others part the
    // line or carry no water.
    if (kind == PartKind::Reducer || kind == PartKind::Strainer || kind == PartKind::AirGap ||
        kind == PartKind::PullBox) {
      continue;
    }
    EXPECT_NE(table.fitting(word), nullptr) << word;
  }
  for (const LossRow& row : table.fittings)
    EXPECT_FALSE(row.source.citation.empty()) << row.key;
}

TEST(Losses, EveryWaterPipeHasItsRoughness) {
  for (const char* pipe : {"pvc-sch40", "pvc-sch80", "pvc-sdr35"}) {
    const PipeSurface* surface = builtinCatalog().losses.surface(pipe);
    ASSERT_NE(surface, nullptr) << pipe;
    EXPECT_NEAR(inMillimetres(surface->roughness), 0.0015, 1e-12);
    EXPECT_EQ(surface->hazenWilliams, 150);
  }
}

TEST(Losses, NothingForASizeThatIsNotTabulated) {
  const LossTable& table = builtinCatalog().losses;
  EXPECT_FALSE(table.k(*table.fitting("elbow-90"), "10"));
  EXPECT_TRUE(table.k(*table.fitting("exit"), "10"));
  EXPECT_FALSE(table.k(*table.fitting("reduced-pressure-assembly"), "1"));
  EXPECT_EQ(table.fitting("no-such-fitting"), nullptr);
  EXPECT_EQ(table.surface("no-such-pipe"), nullptr);
}

} // namespace
} // namespace sump
