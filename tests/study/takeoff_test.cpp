#include "core/study/line_ends.h"
#include "tests/support/generated_plan.h"

#include <gtest/gtest.h>

#include <set>

namespace sump::test {
namespace {

sump::Run levelRun(const Id& id, double length, Service service = Service::Product) {
  const char* pipe = isConduit(service) ? "pvc-conduit-sch80" : "pvc-sch80";
  return makeRun(id, service, pipe, "2", freeEnd(ft(0, 0), feet(5)),
                 freeEnd(ft(length, 0), feet(5)));
}

const QuantityLine* findLine(const Study& study, const std::string& item,
                             const std::string& service = {}) {
  for (const QuantityLine& line : study.takeOff) {
    if (line.item == item && line.service == service) return &line;
  }
  return nullptr;
}

TEST(TakeOff, PipeIsSplitByServiceAndPackedWithin) {
  Plan plan;
  plan.runs.put(levelRun("A", 8));
  plan.runs.put(levelRun("B", 8));
  plan.runs.put(levelRun("C", 8, Service::MakeUp));
  const Study study = studyOf(plan);
  const QuantityLine* product = findLine(study, "pvc-sch80", "product");
  ASSERT_NE(product, nullptr);
  EXPECT_NEAR(inFeet(product->net), 16, 1e-9);
  EXPECT_NEAR(inFeet(product->buy), 20, 1e-9) << "both out of one stick";
  EXPECT_EQ(product->runs, (std::vector<Id>{"A", "B"}));
  EXPECT_NEAR(inFeet(findLine(study, "pvc-sch80", "make-up")->buy), 20, 1e-9);
}

TEST(TakeOff, ReducedRunsAreTwoLinesOfPipe) {
  Plan plan;
  sump::Run run = levelRun("A", 8);
  run.parts = {part("X", PartKind::Reducer, 0, 0.5, "1")};
  plan.runs.put(run);
  std::set<std::string> sizes;
  for (const QuantityLine& line : studyOf(plan).takeOff) {
    if (line.category == "pipe") sizes.insert(line.size);
  }
  EXPECT_EQ(sizes, (std::set<std::string>{"1", "2"}));
}

TEST(TakeOff, ConduitIsForTheElectrician) {
  Plan plan;
  plan.runs.put(levelRun("A", 8, Service::Power));
  const Study study = studyOf(plan);
  EXPECT_EQ(findLine(study, "pvc-conduit-sch80", "power")->trade, "electrical");
}

TEST(TakeOff, UnresolvedRunsAndUnknownPipeAreLeftOut) {
  Plan plan;
  sump::Run lost = levelRun("A", 8);
  lost.to.invert.reset();
  sump::Run glass = levelRun("B", 8);
  glass.pipe = "glass";
  plan.runs.put(lost);
  plan.runs.put(glass);
  EXPECT_TRUE(studyOf(plan).takeOff.empty());
}

TEST(TakeOff, VaultsBaffleManwaysAndRisersAreSiteWork) {
  Plan plan;
  plan.site.groundDefault = feet(98);
  Vault vault = twoChamberVault("V", ft(0, 0), feet(90));
  vault.manways = {{"M1", ft(-2, 0), inches(24), std::nullopt, true},
                   {"M2", ft(2, 0), inches(24), feet(95), false}};
  plan.vaults.put(vault);
  const Study study = studyOf(plan);
  EXPECT_EQ(findLine(study, "own-size")->quantity, 1);
  EXPECT_EQ(findLine(study, "baffle")->quantity, 1);
  EXPECT_NEAR(inFeet(findLine(study, "riser")->net), 2.5, 1e-9)
      << "98 - 95.5; a low rim needs none";
  int covers = 0;
  for (const QuantityLine& line : study.takeOff) {
    EXPECT_EQ(line.trade, "site work");
    if (line.item == "manway") ++covers;
  }
  EXPECT_EQ(covers, 2) << "traffic rated and light are two lines";
}

/// 600 mm is a metric product, 0.6096 m one of 24 in.
TEST(TakeOff, TellsManwaysInTheUnitsOfThePlan) {
  const auto sizeOf = [](Length diameter, UnitSystem units) {
    Plan plan;
    plan.project.units = units;
    Vault vault = twoChamberVault("V", {0, 0}, feet(90));
    vault.manways = {{"M", {0, 0}, diameter, feet(97), false}};
    plan.vaults.append(vault);
    for (const QuantityLine& line : studyOf(plan).takeOff) {
      if (line.item == "manway") return line.size;
    }
    return std::string();
  };
  EXPECT_EQ(sizeOf(metres(0.6), UnitSystem::Metric), "600 mm");
  EXPECT_EQ(sizeOf(metres(0.6096), UnitSystem::Metric), "610 mm (24 in)");
  EXPECT_EQ(sizeOf(metres(0.6096), UnitSystem::UsCustomary), "24");
}

TEST(TakeOff, EveryItemOfEveryRunIsInOneLine) {
  const Plan plan = generatedPlan(100);
  const Study study = studyOf(plan);
  double items = 0, lines = 0, cuts = 0, net = 0;
  for (const RunStudy& run : study.runs) {
    for (const RunItem& item : run.items)
      items += item.count;
    items += static_cast<double>(lineItems(plan, study, *plan.runs.find(run.id), run).size());
    for (const PipePiece& piece : run.pieces)
      cuts += inMetres(piece.cut);
  }
  for (const QuantityLine& line : study.takeOff) {
    if (line.category == "pipe") {
      net += inMetres(line.net);
      EXPECT_GE(line.buy, line.net * (1 - 1e-9));
    }
    if (line.category == "fitting" || line.category == "valve" || line.category == "part") {
      lines += line.quantity;
    }
    EXPECT_EQ(std::set<Id>(line.runs.begin(), line.runs.end()).size(), line.runs.size());
  }
  EXPECT_EQ(lines, items);
  EXPECT_NEAR(net, cuts, 1e-6);
}

} // namespace
} // namespace sump::test
