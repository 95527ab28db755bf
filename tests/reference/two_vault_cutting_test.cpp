// Holds the cutting list to the figures of two_vault_plan.md, which were worked by hand.

#include "core/study/cutting.h"
#include "tests/reference/two_vault_plan.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>

namespace sump::test {
namespace {

class TwoVaultCutting : public ::testing::Test {
protected:
  const CuttingGroup& group(const std::string& pipe, const std::string& size) const {
    const CuttingGroup* found = list_.group(pipe, size);
    EXPECT_NE(found, nullptr) << pipe << " " << size;
    static const CuttingGroup none;
    return found == nullptr ? none : *found;
  }

  const Plan plan_ = twoVaultPlan();
  const CuttingList list_ = cuttingList(plan_, studyOf(plan_), builtinCatalog(),
                                        builtinCatalog().limits.length(kKerfLimit));
};

/// Inches by mark.
std::map<std::string, double> lengths(const CuttingGroup& group) {
  std::map<std::string, double> all;
  for (const StickCut& cut : group.cuts)
    all[cutMark(cut)] = inInches(cut.length);
  return all;
}

std::vector<double> offcuts(const CuttingGroup& group) {
  std::vector<double> all;
  for (const CutStick& stick : group.sticks)
    all.push_back(inInches(stick.offcut));
  return all;
}

std::vector<std::string> marks(const CuttingGroup& group, std::size_t stick) {
  std::vector<std::string> all;
  for (std::size_t cut : group.sticks[stick].cuts)
    all.push_back(cutMark(group.cuts[cut]));
  return all;
}

void expectLengths(const CuttingGroup& group, const std::map<std::string, double>& expected) {
  const auto found = lengths(group);
  ASSERT_EQ(found.size(), expected.size());
  for (const auto& [mark, inches] : expected) {
    ASSERT_TRUE(found.contains(mark)) << mark;
    EXPECT_NEAR(found.at(mark), inches, 1e-6) << mark;
  }
}

void expectOffcuts(const CuttingGroup& group, const std::vector<double>& expected) {
  const auto found = offcuts(group);
  ASSERT_EQ(found.size(), expected.size());
  for (std::size_t i = 0; i < found.size(); ++i)
    EXPECT_NEAR(found[i], expected[i], 1e-6) << "stick " << i + 1;
}

TEST_F(TwoVaultCutting, GroupsStandInTheCataloguesOrder) {
  EXPECT_NEAR(inInches(list_.kerf), 0.125, 1e-12);
  ASSERT_EQ(list_.groups.size(), 4u);
  EXPECT_EQ(list_.groups[0].name + " " + list_.groups[0].size, "PVC Sch 80 2");
  EXPECT_EQ(list_.groups[1].name + " " + list_.groups[1].size, "PVC Sch 80 6");
  EXPECT_EQ(list_.groups[2].name + " " + list_.groups[2].size, "PVC SDR 35 6");
  EXPECT_EQ(list_.groups[3].pipe + " " + list_.groups[3].size, "pvc-conduit-sch80 1");
  for (const CuttingGroup& group : list_.groups)
    EXPECT_TRUE(group.proven()) << group.name;
}

TEST_F(TwoVaultCutting, TwoInchSuction) {
  const CuttingGroup& pipe = group("pvc-sch80", "2");
  expectLengths(pipe, {{"SU.1", 35}, {"SU.2", 116.875}, {"SU.3", 18.5}, {"SU.4", 21}});
  expectOffcuts(pipe, {48.125});
}

TEST_F(TwoVaultCutting, SixInchSchedule80OfAllServicesTogether) {
  const CuttingGroup& pipe = group("pvc-sch80", "6");
  expectLengths(pipe, {{"IC-1.1", 22.25},
                       {"LK.1", 70.25},
                       {"LK.2", 25},
                       {"IC-2.1", 22.25},
                       {"OF.1", 220.25},
                       {"OF.2", 126.125},
                       {"OF.3/1", 240},
                       {"OF.3/2", 166},
                       {"OF.4", 14.5625}});
  EXPECT_NEAR(inInches(pipe.net), 906.6875, 1e-6);
  EXPECT_EQ(pipe.leastPossible, 4);
  expectOffcuts(pipe, {0, 3.5, 4.9375, 43.875});
  EXPECT_EQ(marks(pipe, 0), std::vector<std::string>{"OF.3/1"});
  EXPECT_EQ(marks(pipe, 1), (std::vector<std::string>{"OF.3/2", "LK.1"}));
  EXPECT_EQ(marks(pipe, 2), (std::vector<std::string>{"OF.1", "OF.4"}));
  EXPECT_EQ(marks(pipe, 3), (std::vector<std::string>{"OF.2", "LK.2", "IC-1.1", "IC-2.1"}));
}

TEST_F(TwoVaultCutting, SixInchSewerPipe) {
  const CuttingGroup& pipe = group("pvc-sdr35", "6");
  expectLengths(pipe, {{"IN.1/1", 168},
                       {"IN.1/2", 168},
                       {"IN.1/3", 34.0625},
                       {"IN.2", 63.875},
                       {"IN.3", 89.25},
                       {"IN.4", 15.625}});
  EXPECT_EQ(pipe.leastPossible, 4);
  expectOffcuts(pipe, {0, 0, 14.625, 118.0625});
}

TEST_F(TwoVaultCutting, Conduit) {
  const CuttingGroup& pipe = group("pvc-conduit-sch80", "1");
  expectLengths(pipe, {{"FC.1", 114.25}, {"FC.2", 43.8125}});
  expectOffcuts(pipe, {5.625, 76.0625});
}

/// Whatever the saw: stick = cuts + kerfs + offcut, and none is longer than the stick.
TEST_F(TwoVaultCutting, EverySticksLengthsAddUp) {
  for (const double kerf : {0.0, 0.125, 0.25, 1.0}) {
    const CuttingList list = cuttingList(plan_, studyOf(plan_), builtinCatalog(), inches(kerf));
    for (const CuttingGroup& group : list.groups) {
      std::vector<int> used(group.cuts.size());
      for (const CutStick& stick : group.sticks) {
        double sum = inInches(stick.offcut);
        for (std::size_t cut : stick.cuts) {
          ++used[cut];
          sum += inInches(group.cuts[cut].length) + kerf;
        }
        const double whole = inInches(group.stick);
        EXPECT_GE(sum, whole - 1e-6);
        EXPECT_LE(sum, whole + (inMetres(stick.offcut) > 0 ? 1e-6 : kerf + 1e-6));
      }
      EXPECT_TRUE(std::ranges::all_of(used, [](int n) { return n == 1; }));
    }
  }
}

TEST_F(TwoVaultCutting, AWiderSawMayTakeAnotherStick) {
  Plan plan;
  for (const Id id : {"A", "B"}) {
    plan.runs.put(makeRun(id, Service::Product, "pvc-sch80", "2", freeEnd(ft(0, 0), feet(5)),
                          freeEnd(ft(10, 0), feet(5))));
  }
  const auto sticks = [&](Length kerf) {
    return cuttingList(plan, studyOf(plan), builtinCatalog(), kerf).groups[0].sticks.size();
  };
  EXPECT_EQ(sticks(metres(0)), 1u) << "two halves of a stick";
  EXPECT_EQ(sticks(inches(0.125)), 2u) << "the saw takes what the second half lacks";
}

TEST_F(TwoVaultCutting, MetricPlansCutToTheMillimetre) {
  Plan plan = plan_;
  plan.project.units = UnitSystem::Metric;
  const CuttingList list = cuttingList(plan, studyOf(plan), builtinCatalog(), millimetres(3));
  for (const CuttingGroup& group : list.groups) {
    for (const StickCut& cut : group.cuts) {
      if (cut.length == group.stick) continue;
      const double mm = inMillimetres(cut.length);
      EXPECT_NEAR(mm, std::round(mm), 1e-6) << cutMark(cut);
    }
  }
}

} // namespace
} // namespace sump::test
