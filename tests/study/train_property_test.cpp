// What must hold of the train at any load: water is neither made nor lost in any chamber, and it
// stands and runs lower the farther it goes.

#include "core/exchange/plan_file.h"
#include "tests/support/places.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <map>
#include <random>

namespace sump::test {
namespace {

using ChamberKey = std::pair<Id, int>;

WashDevice deviceOf(const Id& id, double gpm, bool fresh) {
  WashDevice device;
  device.id = device.name = id;
  device.flow = gallonsPerMinute(gpm);
  device.freshWater = fresh;
  return device;
}

/// Any wash, pump and losses.
void load(std::mt19937& random, Plan& plan) {
  std::uniform_real_distribution<double> gpm(0, 120), share(0, 1);
  WashDemand& demand = plan.basis.demand;
  demand.devices = {deviceOf("D1", gpm(random), false), deviceOf("D2", gpm(random) / 3, true)};
  demand.simultaneity = share(random);
  demand.lostFraction = share(random) / 2;
  demand.otherInflow = gallonsPerMinute(gpm(random) / 4);
  plan.basis.pump.recirculation = gallonsPerMinute(gpm(random) / 4);
}

/// One to six vaults in a row with an inlet, interconnects, links, an overflow, suction and
/// recirculation; levels fall with the flow, now and then by nothing at all.
Plan anyTrain(std::mt19937& random) {
  std::uniform_real_distribution<double> fall(0, 0.3);
  Plan plan;
  const int count = 1 + static_cast<int>(random() % 6);
  const auto name = [](const char* what, int i) { return what + std::to_string(i); };
  const auto add = [&](const Id& id, Service service, const char* size, RunEnd from, RunEnd to) {
    plan.runs.append(makeRun(id, service, "pvc-sch80", size, std::move(from), std::move(to)));
  };
  double level = 94;
  add("IN", Service::Inlet, "6", freeEnd(ft(-30, 0), feet(level + 1)),
      inChamber("V0", 1, ft(-4, 0), feet(level + 0.2), EndFitting::Tee));
  for (int i = 0; i < count; ++i) {
    plan.vaults.append(twoChamberVault(name("V", i), ft(20 * i, 0), feet(90)));
    add(name("IC", i), Service::Interconnect, "6",
        inChamber(name("V", i), 1, ft(-1, 0), feet(92), EndFitting::Tee),
        inChamber(name("V", i), 2, ft(1, 0), feet(92), EndFitting::ElbowDown));
    const RunEnd out = inChamber(name("V", i), 2, ft(4, 0), feet(level), EndFitting::Tee);
    level -= fall(random);
    if (i + 1 == count) {
      add("OF", Service::Overflow, "6", out, freeEnd(ft(20 * i + 60, 0), feet(level - 0.5)));
    } else {
      add(name("LK", i), Service::Link, "6", out,
          inChamber(name("V", i + 1), 1, ft(-4, 0), feet(level)));
    }
  }
  add("SU", Service::Suction, "2", inChamber(name("V", count - 1), 2, ft(3, 1), feet(91)),
      freeEnd(ft(0, 40), feet(99)));
  add("RC", Service::Recirculation, "1", freeEnd(ft(1, 40), feet(99)),
      inChamber("V0", 2, ft(3, 1), feet(91)));
  load(random, plan);
  return plan;
}

/// The chamber that this baffle ends.
ChamberKey chamberBefore(const Plan& plan, const Id& baffle) {
  for (const Vault& vault : plan.vaults) {
    for (std::size_t i = 0; i < vault.baffles.size(); ++i) {
      if (vault.baffles[i].id == baffle) return {vault.id, static_cast<int>(i) + 1};
    }
  }
  return {};
}

/// What flows into each chamber less what flows out; of the pump too.
std::map<ChamberKey, double> balances(const Plan& plan, const TrainLevels& levels) {
  std::map<ChamberKey, double> sums;
  const auto add = [&](const RunEnd& end, double flow) {
    if (end.kind == EndKind::Chamber) sums[{end.target, end.chamber}] += flow;
  };
  for (const PassageLevels& passage : levels.passages) {
    if (passage.run.empty()) {
      const ChamberKey before = chamberBefore(plan, passage.baffle);
      sums[before] -= passage.flow.value();
      sums[{before.first, before.second + 1}] += passage.flow.value();
      continue;
    }
    const sump::Run& run = *plan.runs.find(passage.run);
    add(run.from, -passage.flow.value());
    add(run.to, passage.flow.value());
  }
  for (const sump::Run& run : plan.runs) {
    if (run.service == Service::Suction)
      add(run.from, -(levels.drawn + levels.recirculated).value());
    if (run.service == Service::Recirculation) add(run.to, levels.recirculated.value());
  }
  return sums;
}

/// Chambers only ever lack what storage gives, and together just that.
void expectBalance(const Plan& plan, const TrainLevels& levels) {
  EXPECT_NEAR((levels.inflow + levels.fromStorage).value(),
              (levels.drawn + levels.overflow).value(), 1e-12);
  double lacking = 0;
  for (const auto& [chamber, sum] : balances(plan, levels)) {
    EXPECT_LE(sum, 1e-12) << chamber.first << " " << chamber.second << " fills up";
    lacking -= sum;
  }
  EXPECT_NEAR(lacking, levels.fromStorage.value(), 1e-12);
}

/// Downward from chamber to chamber and along every run.
void expectFall(const TrainLevels& levels) {
  for (std::size_t i = 1; i < levels.chambers.size(); ++i)
    EXPECT_LE(levels.chambers[i].level, levels.chambers[i - 1].level);
  for (const PassageLevels& passage : levels.passages) {
    EXPECT_GE(passage.upstream, passage.downstream) << passage.run;
    for (std::size_t i = 0; i < passage.points.size(); ++i) {
      const RunLevel& point = passage.points[i];
      EXPECT_LE(point.energy, passage.upstream + metres(1e-9)) << passage.run;
      EXPECT_GE(point.energy, point.water) << passage.run;
      if (i > 0) {
        EXPECT_LE(point.energy, passage.points[i - 1].energy + metres(1e-9)) << passage.run;
      }
    }
  }
}

void expectSound(const Plan& plan) {
  const TrainStudy train = studyOf(plan).train;
  ASSERT_TRUE(train.pumpStopped) << needsText(train.pumpStopped.needs);
  ASSERT_TRUE(train.pumpRunning) << needsText(train.pumpRunning.needs);
  for (const TrainLevels* levels : {&*train.pumpStopped, &*train.pumpRunning}) {
    expectBalance(plan, *levels);
    expectFall(*levels);
  }
}

TEST(TrainProperty, AnyTrainBalancesAndFalls) {
  std::mt19937 random(41);
  int fromStorage = 0;
  for (int round = 0; round < 150; ++round) {
    const Plan plan = anyTrain(random);
    expectSound(plan);
    if (::testing::Test::HasFatalFailure()) return;
    fromStorage += studyOf(plan).train.pumpRunning->fromStorage.value() > 0 ? 1 : 0;
  }
  EXPECT_GE(fromStorage, 15); // what equal flows leave by rounding is not counted
  EXPECT_LE(fromStorage, 130);
}

TEST(TrainProperty, TheSamplesBalanceAndFallAtAnyLoad) {
  std::mt19937 random(42);
  for (const char* name : {"transit-depot.sump", "boatyard-pad.sump"}) {
    Plan plan = readPlanFile(sourceFolder() + "/samples/" + name);
    for (int round = 0; round < 60; ++round) {
      load(random, plan);
      plan.basis.demand.devices[0].wash = plan.washes.front().id;
      expectSound(plan);
      if (::testing::Test::HasFatalFailure()) return;
    }
  }
}

} // namespace
} // namespace sump::test
