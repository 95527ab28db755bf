// Start-up and upkeep say the Study's own figures, leave blanks where something is not known, and
// take their texts from a table that is refused where nothing could fill it.

#include "core/study/upkeep.h"

#include "core/exchange/plan_file.h"
#include "core/rules/review.h"
#include "core/units/print.h"
#include "tests/support/own_folder.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>

namespace sump::test {
namespace {

Review reviewOf(const std::string& name) {
  return review(readPlanFile(sampleFile(name)), builtinCatalog());
}

UpkeepPlan upkeepOf(const Review& r) {
  return upkeep(r.plan, r.study, builtinUpkeep());
}

const UpkeepStep& step(const UpkeepPlan& upkeep, const std::string& key) {
  const auto found = std::ranges::find(upkeep.startUp, key, &UpkeepStep::key);
  if (found == upkeep.startUp.end()) throw std::out_of_range(key);
  return *found;
}

const UpkeepTask& task(const UpkeepPlan& upkeep, const std::string& key) {
  for (const UpkeepTask& task : upkeep.tasks) {
    if (task.step.key == key) return task;
  }
  throw std::out_of_range(key);
}

bool holds(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

TEST(Upkeep, FillsEveryFigureOfTheTable) {
  const UpkeepPlan filled = upkeepOf(reviewOf("transit-depot"));
  ASSERT_EQ(filled.figures.size(), kUpkeepFigures.size());
  for (std::size_t i = 0; i < kUpkeepFigures.size(); ++i) {
    const UpkeepFigure& figure = filled.figures[i];
    EXPECT_EQ(figure.key, kUpkeepFigures[i]);
    EXPECT_TRUE(figure.text) << figure.key << " needs " << needsText(figure.text.needs);
  }
  for (const UpkeepStep& s : filled.startUp)
    EXPECT_EQ(s.text.find_first_of("{}"), std::string::npos) << s.text;
}

TEST(Upkeep, SaysTheStudysOwnNumbers) {
  const Review r = reviewOf("transit-depot");
  const UpkeepPlan filled = upkeepOf(r);
  const SuctionStudy* suction = r.study.hydraulics.suction("SU-1");
  ASSERT_TRUE(suction && suction->primingVolume && suction->lowWater);
  const double filling = suction->primingVolume->value() / kCubicMetresPerGallon;
  EXPECT_TRUE(holds(step(filled, "prime").text, fixed(filling, 1) + " gal for Suction"))
      << step(filled, "prime").text;
  // The strainer of the sample holds 1.5 gal: 0.005678118 m3 / 0.003785411784 m3.
  EXPECT_TRUE(holds(step(filled, "prime").text, "the strainer takes 1.5 gal"));
  EXPECT_TRUE(
      holds(step(filled, "float").text,
            printElevation(*suction->lowWater, UnitSystem::UsCustomary) + " on the site datum"));
  EXPECT_TRUE(holds(step(filled, "float").text, "24 V AC (Low-level float)"));
  EXPECT_TRUE(holds(step(filled, "signal").text, "110 V AC (Wash demand)"));
  EXPECT_TRUE(holds(step(filled, "supply").text, "460 V AC three-phase (Pump and compressor)"));
  EXPECT_TRUE(holds(step(filled, "water").text,
                    printVolume(r.study.workingVolume, UnitSystem::UsCustomary)));
  EXPECT_TRUE(holds(step(filled, "pressure").text, "40 to 60 psi"));
  // rho g h by hand, to within rounding to a tenth.
  const double curve = r.study.hydraulics.pumpHead->value() * 9.80665 *
                       r.study.hydraulics.water.density->value() / 6894.757;
  EXPECT_TRUE(holds(step(filled, "pressure").text, "adds " + fixed(curve, 1) + " psi"));
}

TEST(Upkeep, NamesTheObjectsOfEachStep) {
  const UpkeepPlan filled = upkeepOf(reviewOf("transit-depot"));
  std::vector<std::string> unions;
  for (const UpkeepObject& object : step(filled, "unions").objects) {
    unions.push_back(object.id);
    EXPECT_EQ(object.what, "union");
  }
  EXPECT_EQ(unions, (std::vector<std::string>{"SU-1-2", "SU-1-3", "SS-1-2", "SS-1-3", "RC-1-2",
                                              "RC-1-3", "UF-1-1", "MU-1-4", "PW-1-1"}));
  ASSERT_EQ(step(filled, "float").objects.size(), 2u);
  EXPECT_EQ(step(filled, "float").objects[0].id, "V2");
  EXPECT_EQ(step(filled, "float").objects[1].id, "FC-1");
  ASSERT_EQ(step(filled, "sparger").objects.size(), 2u);
  EXPECT_EQ(step(filled, "sparger").objects[1].what, "eductor");
}

bool upkeepHasTask(const UpkeepPlan& upkeep, const std::string& key) {
  for (const UpkeepTask& task : upkeep.tasks) {
    if (task.step.key == key) return true;
  }
  return false;
}
bool upkeepHasStep(const UpkeepPlan& upkeep, const std::string& key) {
  for (const UpkeepStep& step : upkeep.startUp) {
    if (step.key == key) return true;
  }
  return false;
}
bool hasPart(const Plan& plan, PartKind kind) {
  for (const Run& run : plan.runs) {
    for (const InlinePart& part : run.parts) {
      if (part.kind == kind) return true;
    }
  }
  return false;
}
/// A quarter above what is wanted.
bool farOver(const Study& study) {
  for (const PressureRun& run : study.hydraulics.runs) {
    if (run.service != Service::Recirculation || !run.atEnd || !run.wanted) continue;
    if (*run.atEnd > 1.25 * *run.wanted) return true;
  }
  return false;
}

TEST(Upkeep, NamesOnlyWhatThePlanHas) {
  for (const char* name : {"transit-depot", "boatyard-pad", "ferry-quay"}) {
    const Review r = reviewOf(name);
    const UpkeepPlan filled = upkeepOf(r);
    EXPECT_EQ(upkeepHasTask(filled, "air-gap"), hasPart(r.plan, PartKind::AirGap)) << name;
    EXPECT_FALSE(holds(task(filled, "backflow-test").step.text, "air gap")) << name;
    EXPECT_EQ(task(filled, "basin-sump").step.objects.size(), r.plan.basins.size()) << name;
    EXPECT_EQ(upkeepHasStep(filled, "throttle"), farOver(r.study)) << name;
    for (const UpkeepObject& object : step(filled, "signal").objects)
      EXPECT_FALSE(holds(object.what, "float")) << name << ": " << object.what;
  }
  EXPECT_FALSE(upkeepHasTask(upkeepOf(review(Plan{}, builtinCatalog())), "basin-sump"));
}

TEST(Upkeep, AnEmptyPlanLeavesBlanksAndSaysWhatTheyNeed) {
  const UpkeepPlan filled = upkeepOf(review(Plan{}, builtinCatalog()));
  for (const UpkeepFigure& figure : filled.figures) {
    if (figure.key == "pumpPressureUsual") continue; // of the table
    EXPECT_FALSE(figure.text) << figure.key << ": " << *figure.text;
    EXPECT_FALSE(figure.text.needs.empty()) << figure.key;
  }
  EXPECT_TRUE(holds(step(filled, "prime").text,
                    "clean water: ________ (cannot be decided: needs a suction run)"));
  EXPECT_EQ(step(filled, "prime").needs, (Needs{"a suction run", "volume of the strainer"}));
  EXPECT_TRUE(step(filled, "unions").noneDrawn);
}

Study withPumpOut(Decided<Duration> time) {
  Study study;
  study.train.pumpOutTrain = std::move(time);
  return study;
}

TEST(Upkeep, PumpsOutByTheComputedIntervalButNoLaterThanPractice) {
  const auto every = [](double days) {
    const Study study = withPumpOut(seconds(days * 86400));
    return task(upkeep(Plan{}, study, builtinUpkeep()), "pump-out").every;
  };
  EXPECT_EQ(every(400), (UpkeepInterval{6, UpkeepUnit::Month}));
  EXPECT_EQ(every(183), (UpkeepInterval{6, UpkeepUnit::Month}));
  EXPECT_EQ(every(150), (UpkeepInterval{4, UpkeepUnit::Month})); // 4.93 months
  EXPECT_EQ(every(91.4), (UpkeepInterval{3, UpkeepUnit::Month}));
  EXPECT_EQ(every(91.2), (UpkeepInterval{13, UpkeepUnit::Week}));
  EXPECT_EQ(every(30), (UpkeepInterval{4, UpkeepUnit::Week}));
  EXPECT_EQ(every(13.9), (UpkeepInterval{1, UpkeepUnit::Week}));
  EXPECT_EQ(every(6.5), (UpkeepInterval{6, UpkeepUnit::Day}));
  EXPECT_EQ(every(0.3), (UpkeepInterval{1, UpkeepUnit::Day}));
}

TEST(Upkeep, PumpsOutAtTheSoonerOfPracticeWhenItCannotBeDecided) {
  const Study study = withPumpOut(undecided<Duration>({"vehicles a day"}));
  const UpkeepPlan filled = upkeep(Plan{}, study, builtinUpkeep());
  const UpkeepTask& out = task(filled, "pump-out");
  EXPECT_EQ(out.every, (UpkeepInterval{3, UpkeepUnit::Month}));
  EXPECT_TRUE(holds(out.basis, "cannot be decided: needs vehicles a day")) << out.basis;
}

class UpkeepFolder : public ::testing::Test {
protected:
  std::string complaint(const std::string& at, const std::string& text, const std::string& more) {
    std::ofstream(folder_ / "upkeep.json")
        << R"({"source": {"citation": "own", "confidence": "common-practice"},
        "pumpPressure": {"low": "3 bar", "high": "4 bar"}, "cautions": ["care"],
        "startUp": [{"key": "a", "title": "A", "at": [")"
        << at << R"("], "text": ")" << text << R"("}],
        "tasks": [{"key": "b", "title": "B", "at": [], "text": "t", )"
        << more << "}]}";
    try {
      loadUpkeep(folder_.path());
    } catch (const CatalogError& error) {
      return error.what();
    }
    return "";
  }
  const testing::OwnFolder folder_;
};

TEST_F(UpkeepFolder, ReplacesTheTable) {
  EXPECT_EQ(complaint("part:union", "{pumpFlow}", R"("every": "2 weeks")"), "");
  const UpkeepTable own = loadUpkeep(folder_.path());
  EXPECT_EQ(own.source.citation, "own");
  EXPECT_EQ(own.tasks.at(0).every, (UpkeepInterval{2, UpkeepUnit::Week}));
}

TEST_F(UpkeepFolder, IsRefusedWithItsPlace) {
  const std::string good = R"("every": "1 day")";
  EXPECT_TRUE(holds(complaint("part:onion", "t", good), "/startUp/0/at/0: 'part:onion'"));
  EXPECT_TRUE(holds(complaint("vaults", "{pumpflow}", good), "/startUp/0/text: has the unknown"));
  EXPECT_TRUE(holds(complaint("vaults", "left {pumpFlow", good), "/startUp/0/text"));
  EXPECT_TRUE(holds(complaint("vaults", "t", R"("every": "0 days")"), "/tasks/0/every"));
  EXPECT_TRUE(holds(complaint("vaults", "t", R"("every": "2 moons")"), "/tasks/0/every"));
  EXPECT_TRUE(holds(complaint("vaults", "t", good + R"(, "computed": "pumpOutTrain")"),
                    "/tasks/0: has only one"));
}

} // namespace
} // namespace sump::test
