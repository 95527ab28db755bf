// The report of the train: each number is the study's own, each gap says what it needs.

#include "core/exchange/plan_file.h"
#include "core/study/context.h"
#include "tests/support/places.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace sump::test {
namespace {

Plan calculatedDepot() {
  return readPlanFile(sampleFile("transit-depot"));
}

const Calculation& foundCalculation(const std::vector<Calculation>& list, const std::string& id,
                                    const Id& object) {
  const auto found = std::ranges::find_if(
      list, [&](const Calculation& c) { return c.id == id && c.object == object; });
  if (found == list.end()) throw std::runtime_error("no calculation " + id);
  return *found;
}

double inputNamed(const Calculation& c, const std::string& symbol) {
  return std::ranges::find(c.inputs, symbol, &CalculationInput::symbol)->value;
}

TEST(TrainCalculations, AreTheStudysOwnNumbers) {
  const Plan plan = calculatedDepot();
  const Study study = studyOf(plan);
  const auto list = trainCalculations(plan, study);
  const TrainStudy& train = study.train;
  EXPECT_EQ(foundCalculation(list, "gravity.full-flow", "OF-1").result,
            train.gravityOf("OF-1")->fullFlow->value());
  EXPECT_EQ(foundCalculation(list, "train.level.stopped.2", "V2").result,
            train.pumpStopped->chamber("V2", 2)->level.value());
  EXPECT_EQ(foundCalculation(list, "duty.droplet.1", "V1").result,
            train.duty("V1", 1)->droplet->value());
  EXPECT_EQ(foundCalculation(list, "train.usable", "").result, train.usable->value());
}

TEST(TrainCalculations, CanBeFollowedByHand) {
  const Plan plan = calculatedDepot();
  const auto list = trainCalculations(plan, studyOf(plan));
  const Calculation& time = foundCalculation(list, "duty.detention.1", "V1");
  EXPECT_NEAR(time.result, inputNamed(time, "A") * inputNamed(time, "d") / inputNamed(time, "Q"),
              1e-9);
  const Calculation& over = foundCalculation(list, "train.overflow.running", "");
  EXPECT_NEAR(over.result,
              inputNamed(over, "Q_in") + inputNamed(over, "Q_store") - inputNamed(over, "Q_draw"),
              1e-12);
  const Calculation& share = foundCalculation(list, "gravity.share", "WW-1");
  EXPECT_NEAR(share.result, inputNamed(share, "Q") / inputNamed(share, "Q_full"), 1e-12);
  EXPECT_EQ(foundCalculation(list, "train.level.stopped.1", "V1").steps.size(), 4u)
      << "interconnect, link, interconnect, overflow";
}

TEST(TrainCalculations, DrainsAndSludgeByHand) {
  const Plan plan = calculatedDepot();
  const Study study = studyOf(plan);
  const auto list = trainCalculations(plan, study);
  const Calculation& free = foundCalculation(list, "train.freeboard.stopped", "WW-1");
  EXPECT_NEAR(free.result, inputNamed(free, "z_rim") - inputNamed(free, "z_w"), 1e-12);
  EXPECT_EQ(inputNamed(free, "z_rim"), inMetres(plan.basins[0].rim));
  const Calculation& over = foundCalculation(list, "train.surcharge.running", "WW-1");
  const RunStudy& run = *study.run("WW-1");
  EXPECT_NEAR(over.result, inputNamed(over, "z_w") - inMetres(run.startInvert + run.insideDiameter),
              1e-12);
  const Calculation& volume = foundCalculation(list, "duty.active-volume.1", "V1");
  EXPECT_NEAR(volume.result, inputNamed(volume, "A") * inputNamed(volume, "d"), 1e-12);
  EXPECT_EQ(foundCalculation(list, "duty.sludge-full.1", "V1").result,
            study.train.pumpOutFirst->value());
  EXPECT_EQ(foundCalculation(list, "duty.turnover", "").result, study.train.turnover->value());
}

TEST(TrainCalculations, AreEachToldApartAndComplete) {
  Plan bare = calculatedDepot();
  bare.basis = {};
  for (const Plan& plan : {calculatedDepot(), bare, Plan{}}) {
    std::set<std::pair<std::string, Id>> seen;
    for (const Calculation& c : trainCalculations(plan, studyOf(plan))) {
      EXPECT_TRUE(seen.insert({c.id, c.object}).second) << c.id;
      EXPECT_EQ(c.decided, c.needs.empty()) << c.id;
      EXPECT_FALSE(c.title.empty() || c.formula.empty() || c.source.empty() || c.section.empty());
    }
    EXPECT_FALSE(seen.empty());
  }
  const auto list = trainCalculations(bare, studyOf(bare));
  EXPECT_FALSE(foundCalculation(list, "train.peak-inflow", "").decided);
  EXPECT_NE(
      foundCalculation(list, "train.peak-inflow", "").needs.find("other inflow to the drains"),
      std::string::npos);
}

} // namespace
} // namespace sump::test
