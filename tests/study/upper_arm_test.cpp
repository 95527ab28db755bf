// Tees and upturned elbows under the lid, and half under a manway's opening.

#include "core/study/hole_gaps.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

/// A vault of 4.5 x 2 m whose lid's underside lies at 2.20 m, with a manway of 0.6 m at x -1.45 m,
/// and a 6 in Sch 80 inlet that ends with a tee at this x.
UpperArm teeAt(double x, double invert) {
  Vault vault = openVault(metres(0.65), metres(1.55));
  Manway manway;
  manway.id = "M1";
  manway.at = {-1.45, 0};
  manway.diameter = metres(0.6);
  vault.manways.push_back(manway);
  Plan plan;
  plan.vaults.append(vault);
  Run inlet;
  inlet.id = "WW";
  inlet.pipe = "pvc-sch80";
  inlet.size = "6";
  inlet.from.at = {-6, 0};
  inlet.from.invert = metres(2.1);
  inlet.to = {EndKind::Chamber, "V1", 1, {x, 0}, metres(invert), EndFitting::Tee};
  plan.runs.append(inlet);
  return upperArms(plan, builtinCatalog(), studyOf(plan)).at(0);
}

TEST(UpperArm, ReachesHalfABoreTheTakeOutAndTheSocketOverTheInvert) {
  const PipeSize& pipe = *builtinCatalog().pipeSize("pvc-sch80", "6");
  // Centre to socket stop of a 6 in tee: 3-7/8 in.
  const double top = 1.92 + inMetres(pipe.inside) / 2 + 3.875 * 0.0254 + inMetres(pipe.outside) / 2;
  EXPECT_NEAR(inMetres(teeAt(-1.75, 1.92).underLid), 2.2 - top, 1e-9);
  EXPECT_LT(inMetres(teeAt(-1.75, 1.92).underLid), 0.0254);
}

TEST(UpperArm, StandsInAManwayAtItsEdgeOrApart) {
  // The pipe is 6.625 in wide outside: 84 mm about its middle.
  struct {
    double off;
    bool whole, edge;
  } const cases[] = {{0, true, false},   {0.215, true, false}, {0.217, false, true},
                     {0.3, false, true}, {0.383, false, true}, {0.385, false, false},
                     {-0.3, false, true}};
  for (const auto& c : cases) {
    const UpperArm arm = teeAt(-1.45 - c.off, 1.92);
    EXPECT_EQ(arm.inManway, c.whole) << c.off;
    EXPECT_EQ(arm.atEdge, c.edge) << c.off;
  }
  // 300 mm of opening about its middle, less 0.1 m and half the pipe.
  EXPECT_NEAR(inMetres(teeAt(-1.55, 1.92).toEdge), 0.3 - 0.1 - 6.625 / 2 * 0.0254, 1e-9);
}

} // namespace
} // namespace sump::test
