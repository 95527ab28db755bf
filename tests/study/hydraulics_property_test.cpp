// What must hold of losses whatever the run, the flow and the pipe.

#include "core/study/hydraulics_parts.h"
#include "tests/support/generated_plan.h"

#include <gtest/gtest.h>

#include <random>

namespace sump::test {
namespace {

/// A plan, what is studied of it, and water to reckon with.
class LossBench {
public:
  explicit LossBench(Plan plan)
      : plan_(std::move(plan)), context_(plan_, builtinCatalog(), builtinCatalog().limits),
        study_(studyOf(plan_)) {
    WaterBasis basis;
    basis.temperature = celsius(20);
    basis.altitude = metres(0);
    water_ = waterStudy(basis);
  }
  const Plan& plan() const { return plan_; }
  RunLoss loss(std::size_t run, Flow flow, const LossTrial& trial = {}) const {
    const auto found = runLoss(context_, water_, plan_.runs[run], study_.runs[run], flow, trial);
    if (!found) throw std::runtime_error(needsText(found.needs));
    return *found;
  }

private:
  Plan plan_;
  StudyContext context_;
  Study study_;
  WaterStudy water_;
};

/// Every pressure run of a generated plan, with all its bends, valves and reducers.
class Losses {
public:
  Losses() : bench_(withStrainer(generatedPlan(60))) {
    for (std::size_t i = 0; i < bench_.plan().runs.size(); ++i) {
      const Drive drive = facts(bench_.plan().runs[i].service).drive;
      if (drive == Drive::Pressure || drive == Drive::Suction) runs_.push_back(i);
    }
  }
  const LossBench& bench() const { return bench_; }
  const std::vector<std::size_t>& runs() const { return runs_; }

private:
  static Plan withStrainer(Plan plan) {
    plan.basis.pump.strainerLoss = feet(1);
    return plan;
  }
  LossBench bench_;
  std::vector<std::size_t> runs_;
};

Flow anyFlow(std::mt19937& random) {
  return gallonsPerMinute(std::pow(10, std::uniform_real_distribution<double>(-1, 2.5)(random)));
}

TEST(LossProperty, MoreElbowsNeverLoseLess) {
  const Losses losses;
  std::mt19937 random(21);
  ASSERT_GE(losses.runs().size(), 25u);
  for (std::size_t run : losses.runs()) {
    for (int round = 0; round < 5; ++round) {
      const Flow flow = anyFlow(random);
      Length last = losses.bench().loss(run, flow).total;
      for (int elbows = 1; elbows <= 6; ++elbows) {
        const Length more = losses.bench().loss(run, flow, {0, false, elbows, metres(0)}).total;
        EXPECT_GT(more, last) << losses.bench().plan().runs[run].id;
        last = more;
      }
    }
  }
}

TEST(LossProperty, LargerPipeNeverLosesMoreAtTheSameFlow) {
  const Losses losses;
  std::mt19937 random(22);
  int steps = 0;
  for (std::size_t run : losses.runs()) {
    const Flow flow = anyFlow(random);
    RunLoss last = losses.bench().loss(run, flow);
    for (int up = 1; up <= 4; ++up) {
      const RunLoss larger = losses.bench().loss(run, flow, {up, false, 0, metres(0)});
      EXPECT_LT(larger.pipeSum, last.pipeSum);
      EXPECT_LE(larger.fittingSum, last.fittingSum);
      EXPECT_LE(larger.total, last.total) << losses.bench().plan().runs[run].id;
      EXPECT_LT(larger.fastest, last.fastest);
      last = larger;
      ++steps;
    }
  }
  EXPECT_GE(steps, 100);
}

TEST(LossProperty, MoreFlowNeverLosesLess) {
  const Losses losses;
  std::mt19937 random(23);
  for (std::size_t run : losses.runs()) {
    const Flow flow = anyFlow(random);
    EXPECT_LT(losses.bench().loss(run, flow).total, losses.bench().loss(run, flow * 1.01).total);
  }
}

TEST(LossProperty, SumsAreTheRowsSums) {
  const Losses losses;
  std::mt19937 random(24);
  for (std::size_t run : losses.runs()) {
    const Flow flow = anyFlow(random);
    const RunLoss all = losses.bench().loss(run, flow);
    Length pipe, fittings;
    for (const PipeLoss& row : all.pipe)
      pipe += row.loss;
    for (const FittingLoss& row : all.fittings)
      fittings += row.loss;
    EXPECT_NEAR(inMetres(pipe), inMetres(all.pipeSum), 1e-12);
    EXPECT_NEAR(inMetres(fittings), inMetres(all.fittingSum), 1e-12);
    const RunLoss sums = losses.bench().loss(run, flow, {0, false, 0, metres(0), true});
    EXPECT_EQ(sums.total, all.total);
    EXPECT_EQ(sums.dirty, all.dirty);
    EXPECT_EQ(sums.fastest, all.fastest);
    EXPECT_TRUE(sums.pipe.empty() && sums.fittings.empty());
  }
}

/// Underground from one free end to another, through any corners.
sump::Run throughCorners(std::mt19937& random, int corners) {
  std::uniform_real_distribution<double> place(-40, 40);
  sump::Run run = makeRun("R", Service::Product, "pvc-sch80", "2", freeEnd({-50, 0}, metres(1)),
                          freeEnd({50, 0}, metres(1)));
  for (int i = 0; i < corners; ++i)
    run.vertices.push_back({{place(random), place(random)}, metres(place(random) / 20 + 3)});
  return run;
}

TEST(LossProperty, AStraightRunNeverLosesMoreThanOneThroughCorners) {
  std::mt19937 random(25);
  Plan straight;
  straight.runs.append(throughCorners(random, 0));
  const LossBench bench(straight);
  for (int round = 0; round < 100; ++round) {
    const Flow flow = anyFlow(random);
    Plan bent;
    bent.runs.append(throughCorners(random, 1 + round % 5));
    const LossBench other(bent);
    EXPECT_GT(other.loss(0, flow).total, bench.loss(0, flow).total);
    // And no more than the bent one's own straight variant, its ends being the same.
    EXPECT_NEAR(inMetres(other.loss(0, flow, {0, true, 0, metres(0)}).total),
                inMetres(bench.loss(0, flow).total), 1e-9);
  }
}

} // namespace
} // namespace sump::test
