// A run's section as it is set on a sheet: as large as its levels leave room, cut into frames where
// it is long, with the least cover, the ends' fittings and the crossings that can be told apart.

#include "core/sheet/run_block.h"

#include "core/exchange/plan_file.h"
#include "core/rules/review.h"
#include "core/sheet/compose.h"
#include "core/sheet/section_frames.h"
#include "core/sheet/section_marks.h"
#include "core/units/print.h"
#include "core/units/print_levels.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace sump {
namespace {

const SectionTitle kTitle{"A run", {"6\" pipe", "From here to there"}};
constexpr Point2 kSmallSheet{260, 148};

const Review& blockSample(const std::string& name) {
  static std::map<std::string, Review> known;
  const auto found = known.find(name);
  if (found != known.end()) return found->second;
  const std::string file = sampleFile(name);
  return known.emplace(name, review(readPlanFile(file), builtinCatalog())).first->second;
}

RunProfile profileOf(const std::string& plan, const Id& run) {
  return *runProfile(blockSample(plan).plan, blockSample(plan).study, builtinCatalog(), run);
}

std::vector<std::string> blockTexts(const Block& block) {
  std::vector<std::string> texts;
  for (const auto* strips : {&block.head, &block.body}) {
    for (const PaperStrip& strip : *strips) {
      for (const PageItem& item : strip.items) {
        if (const auto* text = std::get_if<PageText>(&item)) texts.push_back(text->text);
      }
    }
  }
  return texts;
}

bool blockSays(const std::vector<std::string>& texts, const std::string& what) {
  return std::ranges::any_of(
      texts, [&](const std::string& t) { return t.find(what) != std::string::npos; });
}

double scaleOf(const std::vector<std::string>& texts) {
  for (const std::string& text : texts) {
    const std::size_t at = text.find("1:");
    if (text.starts_with("Scale ") && at != std::string::npos)
      return std::stod(text.substr(at + 2));
  }
  return 0;
}

TEST(RunBlock, SmallPaperShowsEveryRunLarge) {
  for (const char* plan : {"transit-depot", "boatyard-pad", "ferry-quay"}) {
    const Review& of = blockSample(plan);
    for (const RunStudy& run : of.study.runs) {
      const Block block = runSectionBlock(profileOf(plan, run.id), kTitle, of.plan.project.units,
                                          kSmallSheet, true);
      EXPECT_LE(scaleOf(blockTexts(block)), 128) << plan << " " << run.id;
      EXPECT_LE(block.width, kSmallSheet.x) << plan << " " << run.id;
      double most = 0;
      for (const PaperStrip& strip : block.body)
        most = std::max(most, strip.height);
      for (const PaperStrip& strip : block.head)
        most += strip.height;
      EXPECT_LE(most, kSmallSheet.y) << plan << " " << run.id;
    }
  }
}

/// Each level that the run has at its points is in the band or the list, the least cover too.
TEST(RunBlock, TellsEveryLevelHoweverItIsSet) {
  const Review& of = blockSample("ferry-quay");
  const UnitSystem units = of.plan.project.units;
  for (const Point2 most : {kSmallSheet, Point2{400, 188}, Point2{500, 320}}) {
    for (const RunStudy& run : of.study.runs) {
      const RunProfile profile = profileOf("ferry-quay", run.id);
      const auto texts = blockTexts(runSectionBlock(profile, kTitle, units, most, true));
      for (const ProfilePoint& p : profile.points) {
        EXPECT_GT(std::ranges::count(texts, printElevation(p.invert, units)), 0)
            << run.id << " " << printElevation(p.invert, units);
      }
      if (!profile.leastCover) continue;
      const std::string least = printShort(profile.leastCover->cover, units);
      EXPECT_GT(std::ranges::count(texts, least + " least"), 0) << run.id;
      EXPECT_TRUE(blockSays(texts, "least cover " + least)) << run.id;
    }
  }
}

TEST(RunBlock, FramesGoOnWhereTheOneBeforeEnds) {
  const RunProfile whole = profileOf("ferry-quay", "PW-1");
  const UnitSystem units = UnitSystem::Metric;
  const std::vector<double> cuts = sectionCuts(whole, 2);
  ASSERT_EQ(cuts.size(), 1u);
  const RunProfile first = sectionPart(whole, whole.from, cuts[0]);
  const RunProfile second = sectionPart(whole, cuts[0], whole.to);
  EXPECT_TRUE(isCutRight(first) && isCutLeft(second));
  EXPECT_FALSE(isCutLeft(first) || isCutRight(second) || isCutLeft(whole) || isCutRight(whole));
  EXPECT_NEAR(inMetres(first.points.back().invert - second.points.front().invert), 0, 1e-9);
  EXPECT_EQ(first.crossings.size() + second.crossings.size(), whole.crossings.size());
  EXPECT_EQ(first.parts.size() + second.parts.size(), whole.parts.size());
  EXPECT_EQ(first.drops.size() + second.drops.size(), whole.drops.size());
  EXPECT_EQ(first.points.size() + second.points.size(), whole.points.size() + 2);
  for (const ProfileCrossing& c : whole.crossings)
    EXPECT_GT(std::abs(c.station - cuts[0]), 0.05);
  const Block block = runSectionBlock(whole, kTitle, units, kSmallSheet, true);
  const auto texts = blockTexts(block);
  const std::string at = "station " + printRunLength(metres(cuts[0]), units);
  EXPECT_TRUE(blockSays(texts, "Continued at " + at + " in frame 2"));
  EXPECT_TRUE(blockSays(texts, "From frame 1 at " + at));
  ASSERT_GE(block.body.size(), 2u);
  // One vertical datum: the same levels stand beside both frames.
  const auto ticks = [](const PaperStrip& strip) {
    std::vector<std::string> found;
    for (const PageItem& item : strip.items) {
      const auto* text = std::get_if<PageText>(&item);
      if (text != nullptr && text->align == Align::Right && text->at.x < 22)
        found.push_back(text->text);
    }
    return found;
  };
  EXPECT_EQ(ticks(block.body[0]), ticks(block.body[1]));
  EXPECT_GT(ticks(block.body[0]).size(), 3u);
}

// The inlet ends in a tee at the vault's wall, the link begins and ends in them.
TEST(RunBlock, EndsAreDrawnWithTheirFittings) {
  for (const Id& id : {Id("WW-1"), Id("LK-1"), Id("OF-1")}) {
    RunProfile profile = profileOf("transit-depot", id);
    const auto parts = [&] {
      return std::ranges::count(sectionMarks(profile, {1}), Layer::Part, &Mark::layer);
    };
    const auto all = parts();
    EXPECT_TRUE(profile.startFitting != EndFitting::Plain ||
                profile.endFitting != EndFitting::Plain)
        << id;
    profile.startFitting = profile.endFitting = EndFitting::Plain;
    EXPECT_GT(all, parts()) << id;
  }
}

// 1.850 - 1.278 is told as 572 mm, though the levels behind them are 573 mm apart.
TEST(RunBlock, ARiseIsTheDifferenceOfThePrintedInverts) {
  EXPECT_EQ(printHeight(metres(1.2776), metres(1.8504), UnitSystem::Metric), "572 mm");
  // 96.91 ft and 101.45 ft, of levels that are 4.532 ft apart.
  EXPECT_EQ(printHeight(feet(96.914), feet(101.446), UnitSystem::UsCustomary), "4'-6 1/2\"");
  std::size_t seen = 0;
  for (const char* plan : {"boatyard-pad", "ferry-quay"}) {
    for (const RunStudy& run : blockSample(plan).study.runs) {
      const RunProfile profile = profileOf(plan, run.id);
      const auto notes = sectionNotes(profile, UnitSystem::Metric);
      for (const ProfileDrop& drop : profile.drops) {
        const auto printed = [](Length z) {
          return std::lround(std::stod(printElevation(z, UnitSystem::Metric)) * 1000);
        };
        const long height = std::abs(printed(drop.end) - printed(drop.start));
        if (height == 0) continue;
        ++seen;
        const std::string text =
            (drop.end > drop.start ? "RISE " : "DROP ") + std::to_string(height) + " mm";
        EXPECT_TRUE(std::ranges::any_of(notes, [&](const auto& n) { return n.text == text; }))
            << run.id << " " << text;
      }
    }
  }
  EXPECT_GT(seen, 10u);
}

TEST(RunBlock, ACrossingThatComesTwiceIsToldWithItsStation) {
  // Led round by the suctions' south, the underflow crosses them coming and going.
  Plan plan = blockSample("ferry-quay").plan;
  sump::Run underflow = *plan.runs.find("UF-1");
  for (std::size_t i : {1, 2})
    underflow.vertices[i].at = underflow.vertices[i].at + Point2{0.122, -0.274};
  plan.runs.put(underflow);
  const Review changed = review(plan, builtinCatalog());
  const RunProfile profile = *runProfile(plan, changed.study, builtinCatalog(), "UF-1");
  std::map<std::string, int> told;
  std::size_t repeated = 0;
  for (const SectionNote& note : sectionNotes(profile, UnitSystem::Metric)) {
    const auto isIts = [&](const ProfileCrossing& c) { return c.id == note.object; };
    if (std::ranges::any_of(profile.crossings, isIts)) ++told[note.text];
  }
  for (const ProfileCrossing& c : profile.crossings) {
    if (!c.repeated) continue;
    ++repeated;
    const std::string name = c.id + " at " + printRunLength(metres(c.station), UnitSystem::Metric);
    EXPECT_TRUE(std::ranges::any_of(told, [&](const auto& t) { return t.first.starts_with(name); }))
        << name;
  }
  EXPECT_GE(repeated, 2u);
  for (const auto& [text, times] : told)
    EXPECT_EQ(times, 1) << text;
}

} // namespace
} // namespace sump
