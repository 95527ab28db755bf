// A project in feet and the same project in metres have one study: every number of it, both
// samples.

#include "core/exchange/plan_file.h"
#include "core/rules/review.h"
#include "tests/support/places.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

void expectSame(const Calculation& a, const Calculation& b) {
  SCOPED_TRACE(a.id + " " + a.object);
  EXPECT_EQ(a.id, b.id);
  EXPECT_EQ(a.object, b.object);
  EXPECT_EQ(a.result, b.result);
  EXPECT_EQ(a.decided, b.decided);
  EXPECT_EQ(a.needs, b.needs);
  EXPECT_EQ(a.steps, b.steps);
  ASSERT_EQ(a.inputs.size(), b.inputs.size());
  for (std::size_t i = 0; i < a.inputs.size(); ++i) {
    EXPECT_EQ(a.inputs[i].symbol, b.inputs[i].symbol);
    EXPECT_EQ(a.inputs[i].value, b.inputs[i].value);
  }
}

void expectSame(const QuantityLine& a, const QuantityLine& b) {
  EXPECT_EQ(a.item, b.item);
  // The sizes of vaults and their manways are written in the project's units.
  const bool inUnits = a.category == "vault" || a.category == "manway" || a.category == "riser";
  if (!inUnits) {
    EXPECT_EQ(a.size, b.size);
  }
  EXPECT_EQ(a.quantity, b.quantity) << a.item;
  EXPECT_EQ(a.net, b.net) << a.item;
  EXPECT_EQ(a.buy, b.buy) << a.item;
  EXPECT_EQ(a.runs, b.runs) << a.item;
}

void expectSame(const RunStudy& a, const RunStudy& b) {
  EXPECT_EQ(a.developed, b.developed) << a.id;
  EXPECT_EQ(a.slope, b.slope) << a.id;
  EXPECT_EQ(a.bends.size(), b.bends.size()) << a.id;
  EXPECT_EQ(a.buy, b.buy) << a.id;
  EXPECT_EQ(a.leastCover.has_value(), b.leastCover.has_value()) << a.id;
  if (a.leastCover && b.leastCover) {
    EXPECT_EQ(a.leastCover->cover, b.leastCover->cover) << a.id;
  }
}

void expectSame(const EarthStudy& a, const EarthStudy& b) {
  EXPECT_EQ(a.dug, b.dug);
  EXPECT_EQ(a.bedding, b.bedding);
  EXPECT_EQ(a.pipeZone, b.pipeZone);
  EXPECT_EQ(a.backfill, b.backfill);
  EXPECT_EQ(a.truckloads, b.truckloads);
  EXPECT_EQ(a.deepest, b.deepest);
  EXPECT_EQ(a.spoilClear, b.spoilClear);
  ASSERT_EQ(a.pits.size(), b.pits.size());
  for (std::size_t i = 0; i < a.pits.size(); ++i) {
    EXPECT_EQ(a.pits[i].top, b.pits[i].top);
    EXPECT_EQ(a.pits[i].clashes.size(), b.pits[i].clashes.size());
    EXPECT_EQ(a.pits[i].egress.laddersNeeded, b.pits[i].egress.laddersNeeded);
  }
  ASSERT_EQ(a.trenches.size(), b.trenches.size());
  for (std::size_t i = 0; i < a.trenches.size(); ++i) {
    EXPECT_EQ(a.trenches[i].dug, b.trenches[i].dug);
    EXPECT_EQ(a.trenches[i].depth, b.trenches[i].depth);
  }
}

void expectSame(const WiringStudy& a, const WiringStudy& b) {
  ASSERT_EQ(a.conduits.size(), b.conduits.size());
  for (std::size_t i = 0; i < a.conduits.size(); ++i) {
    EXPECT_EQ(a.conduits[i].fill, b.conduits[i].fill);
    EXPECT_EQ(a.conduits[i].mostDegrees, b.conduits[i].mostDegrees);
    EXPECT_EQ(a.conduits[i].mixed(), b.conduits[i].mixed());
  }
  ASSERT_EQ(a.spaces.size(), b.spaces.size());
  for (std::size_t i = 0; i < a.spaces.size(); ++i) {
    EXPECT_EQ(a.spaces[i].depthNeeded, b.spaces[i].depthNeeded);
    EXPECT_EQ(a.spaces[i].depthClear, b.spaces[i].depthClear);
    EXPECT_EQ(a.spaces[i].widthClear, b.spaces[i].widthClear);
  }
  ASSERT_EQ(a.supplies.size(), b.supplies.size());
  for (std::size_t i = 0; i < a.supplies.size(); ++i) {
    EXPECT_EQ(a.supplies[i].disconnectDistance, b.supplies[i].disconnectDistance);
    EXPECT_EQ(a.supplies[i].inSight, b.supplies[i].inSight);
  }
}

template <class Row> void expectSameRows(const std::vector<Row>& a, const std::vector<Row>& b) {
  ASSERT_EQ(a.size(), b.size());
  for (std::size_t i = 0; i < a.size(); ++i)
    expectSame(a[i], b[i]);
}

class InBothUnits : public ::testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Samples, InBothUnits,
                         ::testing::Values("transit-depot.sump", "boatyard-pad.sump"));

TEST_P(InBothUnits, EveryPartOfTheStudyIsTheSame) {
  Plan us = readPlanFile(sourceFolder() + "/samples/" + GetParam());
  Plan metric = us;
  us.project.units = UnitSystem::UsCustomary;
  metric.project.units = UnitSystem::Metric;
  const Review a = review(us, builtinCatalog()), b = review(metric, builtinCatalog());
  expectSameRows(calculations(us, a.study), calculations(metric, b.study));
  expectSameRows(a.study.takeOff, b.study.takeOff);
  expectSameRows(a.study.runs, b.study.runs);
  expectSame(a.study.earth, b.study.earth);
  expectSame(a.study.wiring, b.study.wiring);
  ASSERT_EQ(a.findings.size(), b.findings.size());
  for (std::size_t i = 0; i < a.findings.size(); ++i) {
    EXPECT_EQ(a.findings[i].key(), b.findings[i].key());
    EXPECT_EQ(a.findings[i].severity, b.findings[i].severity);
  }
}

} // namespace
} // namespace sump::test
