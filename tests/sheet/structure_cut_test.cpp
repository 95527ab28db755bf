// The openings of manways where a run's detail cuts them.

#include "core/sheet/structure_cut.h"
#include "core/study/part_place.h"
#include "tests/rules/depot.h"

#include <gtest/gtest.h>

namespace sump::testing {
namespace {

CutOpening openingFor(const Plan& plan, const Id& run, const Id& manway) {
  const Review review = reviewed(plan);
  const SheetJob job{review, builtinCatalog(), *paperSize("arch-d"), 0, {}, nullptr};
  for (const CutOpening& opening : cutOpenings(job, *review.study.run(run)))
    if (opening.manway == manway) return opening;
  ADD_FAILURE() << run << " cuts no " << manway;
  return {};
}

double lengthOf(const Plan& plan, const Id& run) {
  const Review review = reviewed(plan);
  return planStations(*review.study.run(run)).back();
}

/// The eductor hangs 5.4 in off the middle of its manway of 24 in, toward where its line comes from.
TEST(StructureCut, AManwaysMiddleMayLieBeyondTheEndOfTheLine) {
  const CutOpening opening = openingFor(depot(), "RC-1", "V1-M2");
  const double end = lengthOf(depot(), "RC-1");
  EXPECT_NEAR((opening.from + opening.to) / 2 - end, 5.4 * 0.0254, 1e-6);
  EXPECT_NEAR(opening.to - opening.from, 24 * 0.0254, 1e-9);
}

/// The suction starts 6 in beyond the middle of its manway and goes on away from it.
TEST(StructureCut, AManwaysMiddleMayLieBeforeTheStartOfTheLine) {
  const CutOpening opening = openingFor(depot(), "SU-1", "V2-M2");
  EXPECT_NEAR((opening.from + opening.to) / 2, -6 * 0.0254, 1e-6);
}

} // namespace
} // namespace sump::testing
