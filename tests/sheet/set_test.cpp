// The whole set: its index and numbers, its texts on every paper, and that what its schedules print
// reads back as the Study's numbers.

#include "core/exchange/plan_file.h"
#include "core/geometry/polygon.h"
#include "core/plan/ends.h"
#include "core/sheet/border.h"
#include "core/sheet/compose.h"
#include "core/units/parse.h"
#include "core/units/print.h"
#include "tests/sheet/composed.h"
#include "tests/sheet/page_texts.h"
#include "tests/sheet/small_plan.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

namespace sump {
namespace {

/// The cells of the row that begins with `first` under this table's title, left to right; empty
/// when there is none. For paper on which no cell of the row is wrapped.
std::vector<std::string> rowOf(const std::vector<Page>& pages, const std::string& title,
                               const std::string& first) {
  for (const Page& page : pages) {
    const auto all = testing::textsOf(page);
    const auto heading = std::find_if(all.begin(), all.end(), [&](const PageText& t) {
      return t.text == title || t.text == title + " (continued)";
    });
    if (heading == all.end()) continue;
    // A table's items stand in a row in the page: its cells come strip by strip after its title.
    for (auto cell = heading + 1; cell != all.end(); ++cell) {
      if (cell->height >= heading->height) break; // the next block's title
      if (cell->text != first || cell->bold) continue;
      std::vector<std::string> row;
      for (auto next = cell; next != all.end() && next->at.y == cell->at.y; ++next)
        row.push_back(next->text);
      return row;
    }
  }
  return {};
}

struct SetCase {
  std::string plan, paper;
};
void PrintTo(const SetCase& c, std::ostream* out) {
  *out << c.plan << " on " << c.paper;
}

class SheetSet : public ::testing::TestWithParam<SetCase> {
protected:
  const std::vector<Page>& pages_ = testing::sampleSheets(GetParam().plan, GetParam().paper);
};

TEST_P(SheetSet, NoTextTouchesAnotherOrLeavesTheFrame) {
  ASSERT_GE(pages_.size(), 10u);
  for (const Page& page : pages_) {
    const PaperBox frame = drawingSpace(page), border = frame.grown(5.1);
    std::vector<std::pair<PageText, PaperBox>> all;
    for (PageText& text : testing::textsOf(page)) {
      const PaperBox box = around(textBox(text));
      // Grid references stand between the frame and the border.
      EXPECT_TRUE(border.holds(box)) << page.number << ": " << text.text;
      if (text.text.size() > 2) {
        EXPECT_TRUE(frame.holds(box)) << page.number << ": " << text.text;
      }
      all.emplace_back(std::move(text), box);
    }
    for (std::size_t i = 0; i < all.size(); ++i) {
      for (std::size_t k = i + 1; k < all.size(); ++k) {
        if (!all[i].second.meets(all[k].second)) continue;
        EXPECT_FALSE(overlaps(textBox(all[i].first), textBox(all[k].first)))
            << page.number << ": '" << all[i].first.text << "' and '" << all[k].first.text << "'";
      }
    }
  }
}

TEST_P(SheetSet, NumbersItsPagesAndListsThem) {
  std::set<std::string> numbers;
  std::set<std::string> onCover;
  for (const Page& page : pages_) {
    EXPECT_EQ(page.number.size(), 5u) << page.number;
    EXPECT_TRUE(numbers.insert(page.number).second) << page.number;
    if (page.number.starts_with("G-0")) {
      for (const PageText& text : testing::textsOf(page))
        onCover.insert(text.text);
    }
  }
  EXPECT_EQ(pages_.front().number, "G-001");
  for (const std::string& number : numbers)
    EXPECT_TRUE(onCover.contains(number)) << number << " is not in the index";
  for (const char* number :
       {"C-101", "C-102", "C-301", "P-101", "P-301", "P-401", "P-501", "P-601", "E-101", "G-601"})
    EXPECT_TRUE(numbers.contains(number)) << number;
}

INSTANTIATE_TEST_SUITE_P(
    Papers, SheetSet,
    ::testing::Values(SetCase{"transit-depot", "arch-d"}, SetCase{"transit-depot", "ansi-b"},
                      SetCase{"transit-depot", "a3"}, SetCase{"boatyard-pad", "arch-d"},
                      SetCase{"boatyard-pad", "ansi-b"}, SetCase{"boatyard-pad", "a3"},
                      SetCase{"ferry-quay", "arch-d"}, SetCase{"ferry-quay", "ansi-b"},
                      SetCase{"ferry-quay", "a3"}, SetCase{"small", "a4"},
                      SetCase{"small", "arch-e"}));

bool saysOn(const std::string& plan, const std::string& series, const std::string& words) {
  for (const Page& page : testing::sampleSheets(plan, "arch-d")) {
    if (!page.number.starts_with(series)) continue;
    for (const PageText& text : testing::textsOf(page)) {
      if (text.text.find(words) != std::string::npos) return true;
    }
  }
  return false;
}

/// As saysOn, over the breaks of lines.
bool saysAcross(const std::vector<Page>& pages, const std::string& series,
                const std::string& words) {
  for (const Page& page : pages) {
    if (!page.number.starts_with(series)) continue;
    std::string all;
    for (const PageText& text : testing::textsOf(page))
      all += text.text + " ";
    if (all.find(words) != std::string::npos) return true;
  }
  return false;
}
bool saysAcross(const std::string& plan, const std::string& series, const std::string& words) {
  return saysAcross(testing::sampleSheets(plan, "arch-d"), series, words);
}

// The make-up comes up through the floor at the boatyard's far wall, away from the marked square.
TEST(SheetSetWords, NameWhatRisesOutsideTheArea) {
  EXPECT_TRUE(saysOn("boatyard-pad", "P-4", "Pipes rise in here, but MU-1"));
  EXPECT_FALSE(saysOn("boatyard-pad", "P-4", "All pipes rise in here"));
}

// Nobody can lay a run whose beginning is somewhere on a line of unknown level.
TEST(SheetSetWords, TellHowRunsJoinWhatIsThere) {
  EXPECT_TRUE(saysOn("ferry-quay", "P-6", "MU-1 starts at Quay water pipe (existing)"));
  EXPECT_TRUE(saysOn("ferry-quay", "E-1", "PC-1 starts at Quay supply (existing)"));
  EXPECT_TRUE(saysOn("transit-depot", "P-6", "MU-1 starts at a stub"));
}

// A plumber asks where the make-up comes from, how high and how much it gives.
TEST(SheetSetWords, ThePlanTellsWhatRunsStartFrom) {
  EXPECT_TRUE(saysOn("transit-depot", "P-1", "MU-1 from stub"));
  EXPECT_TRUE(saysOn("transit-depot", "P-1", "PC-1 from stub"));
  EXPECT_TRUE(saysOn("ferry-quay", "P-1", "MU-1 from Quay water pipe (existing)"));
  const Length invert = testing::sampleReview("transit-depot").study.run("MU-1")->startInvert;
  EXPECT_TRUE(saysOn("transit-depot", "P-1",
                     "Inv. " + printElevation(invert, UnitSystem::UsCustomary) + ", "));
}

// An electrician asks where the power comes from, what the signal comes from, and for no line that
// the view does not show.
TEST(SheetSetWords, TheElectricalPlanNamesTheEndsOfItsConduits) {
  EXPECT_TRUE(saysOn("ferry-quay", "E-1", "PC-1 from Quay supply (existing)"));
  EXPECT_TRUE(saysOn("transit-depot", "E-1", "PC-1 from stub"));
  EXPECT_TRUE(saysOn("transit-depot", "E-1", "see sheet E-102"));
  EXPECT_TRUE(saysOn("ferry-quay", "E-1", "Existing electric"));
  EXPECT_FALSE(saysOn("transit-depot", "E-1", "Existing electric"));
}

TEST(SheetSetWords, SectionsTellWhatTheirWordsAndDashesMean) {
  EXPECT_TRUE(saysOn("boatyard-pad", "P-3", "Over by, under by: clear between the outsides"));
  EXPECT_TRUE(saysOn("boatyard-pad", "P-3", "Dashed riser: stands off the cut"));
}

// Legend, schedule, sections and details call a line alike.
TEST(SheetSetWords, ARunHasOneName) {
  for (const char* series : {"P-1", "P-3", "P-6"}) {
    EXPECT_TRUE(saysAcross("transit-depot", series, "Overflow to sewer")) << series;
    EXPECT_FALSE(saysAcross("transit-depot", series, "Sewer overflow")) << series;
  }
}

TEST(SheetSetWords, NothingInATitleBlockIsCut) {
  for (const char* plan : {"transit-depot", "boatyard-pad", "ferry-quay"}) {
    for (const Page& page : testing::sampleSheets(plan, "a1")) {
      for (const PageText& text : testing::textsOf(page))
        EXPECT_FALSE(text.text.ends_with("...")) << plan << " " << page.number << " " << text.text;
    }
  }
}

// A section that stands before its turn, where it finds room, is named in its sheet's title.
TEST(SheetSetWords, TitlesOfSectionSheetsNameTheirRuns) {
  for (const char* plan : {"transit-depot", "boatyard-pad", "ferry-quay"}) {
    for (const Page& page : testing::sampleSheets(plan, "a1")) {
      if (!page.number.starts_with("P-3") || page.title.find(" to ") != std::string::npos) continue;
      for (const sump::Run& run : testing::sampleReview(plan).plan.runs) {
        const auto isTitle = [&](const PageText& text) {
          return text.height > 3 && text.text.starts_with(run.id + "  ");
        };
        if (std::ranges::any_of(testing::textsOf(page), isTitle)) {
          EXPECT_NE(page.title.find(run.id), std::string::npos) << page.title;
        }
      }
    }
  }
}

// Codes of objects and rules stand on no drawing.
TEST(SheetSetWords, FindingsCallThingsByTheirNames) {
  EXPECT_TRUE(saysAcross("ferry-quay", "G-6", "under the footing of Existing equipment"));
  EXPECT_TRUE(saysAcross("ferry-quay", "G-6", "The drain Existing pad catch basin"));
  for (const char* code : {"B-EQ", "B-SHED", "CB-1", "footing-plane", "overflow-backflow"})
    EXPECT_FALSE(saysOn("ferry-quay", "G-6", code)) << code;
}

TEST(SheetSetWords, TheExcavationTellsWhatItsTrenchesMeet) {
  EXPECT_TRUE(
      saysAcross("ferry-quay", "C-1", "The trench of MU-1 takes in or cuts: utility Quay water"));
  EXPECT_TRUE(saysAcross("ferry-quay", "C-1", "Accepted by H. Brattli, 2026-11-16"));
  EXPECT_TRUE(saysOn("ferry-quay", "C-1", "SPOIL HEAP: "));
  EXPECT_TRUE(saysOn("ferry-quay", "C-1", "to 1.166 m below the floor inside"));
  EXPECT_TRUE(saysOn("ferry-quay", "C-1", "dig as one with VT-1, VT-2, VT-4"));
  EXPECT_FALSE(saysAcross("ferry-quay", "C-1", "beside wash equipment")) << "where they end";
}

TEST(SheetSetWords, TheExcavationTellsOfWashEquipmentOverATrench) {
  EXPECT_FALSE(saysAcross("transit-depot", "C-1", "beside wash equipment")) << "0.3 m off";
  Plan plan = testing::samplePlan("transit-depot");
  WashEquipment arch = *plan.washes.find("WA-1");
  arch.at.x += 0.5;
  plan.washes.put(arch);
  EXPECT_TRUE(
      saysAcross(composeSheets(review(plan, builtinCatalog()), {"arch-d", 0}), "C-1",
                 "The trench of UF-1 passes under or beside wash equipment: Existing wash arch."));
}

/// Who forms and casts a baffle looks where the walls are.
TEST(SheetSetWords, VaultSectionsTellHowThickWallsAre) {
  EXPECT_TRUE(saysAcross("transit-depot", "C-3",
                         "Walls of the vaults: 0'-6\" thick; baffles, the walls between chambers: "
                         "0'-6\" thick, other sizes on sheet C-103."));
  Plan plan = testing::samplePlan("transit-depot");
  Vault second = *plan.vaults.find("V2");
  second.baffles[0].thickness = inches(4);
  plan.vaults.put(second);
  EXPECT_TRUE(saysAcross(composeSheets(review(plan, builtinCatalog()), {"arch-d", 0}), "C-3",
                         "chambers: V1-B1 0'-6\", V2-B1 0'-4\" thick"));
}

/// The inlet ends 1.2 in west and 10.8 in south of the centre, 10.87 in off it; with 15 in, less
/// half of its 6.275 in (ASTM D3034), 22.73 in.
TEST(SheetSetWords, TheManwayScheduleTellsTheWayBesideAPipe) {
  EXPECT_TRUE(saysOn("transit-depot", "P-6", "Clear way"));
  EXPECT_TRUE(saysOn("transit-depot", "P-6", "1'-9 1/2\""));
}

TEST(SheetSetWords, PlumbingSchedulesTellWhatJoins) {
  EXPECT_TRUE(
      saysOn("boatyard-pad", "P-6", "Tee or tapping saddle with shut-off valve, kind ______"));
  EXPECT_TRUE(saysOn("boatyard-pad", "P-6", "SU-1 start"));
  EXPECT_TRUE(saysOn("boatyard-pad", "E-1", "Float, ch. 2"));
}

TEST(SheetSetWords, ElectricalSchedulesTellSignalsFromPower) {
  EXPECT_TRUE(saysAcross("transit-depot", "E-1", "signal, 110 V AC"));
  EXPECT_TRUE(saysOn("transit-depot", "E-1", "Pull box"));
  EXPECT_TRUE(saysOn("ferry-quay", "E-1", "180\u00B0"));
  EXPECT_FALSE(saysOn("ferry-quay", "E-1", "179\u00B0"));
}

TEST(SheetSetWords, TheElectriciansRoomAndTheCircuitsHaveTheirSheet) {
  for (const char* plan : {"transit-depot", "ferry-quay"}) {
    EXPECT_TRUE(saysOn(plan, "E-1", "CIRCUIT SCHEDULE")) << plan;
    EXPECT_TRUE(saysOn(plan, "E-1", "ELECTRICAL PLAN OF ")) << plan;
    EXPECT_TRUE(saysAcross(plan, "E-1", "computed power given to the water")) << plan;
  }
}

TEST(SheetSetWords, TellWhatKeepsReclaimedWaterOutOfTheMakeUpAsDrawn) {
  EXPECT_TRUE(saysAcross("transit-depot", "P-5", "reduced-pressure assembly MU-1-2 drawn"));
  EXPECT_FALSE(saysAcross("transit-depot", "P-5", "air gap MU-1"));
}

TEST(SheetSetWords, TellWhereTheReliefOfTheAssemblyGoes) {
  EXPECT_TRUE(saysAcross("transit-depot", "P-5", "RELIEF OPENING of MU-1-2"));
  EXPECT_TRUE(saysAcross("transit-depot", "P-5", "floor drain of"));
}

// Whoever goes down takes the suctions out of the way.
TEST(SheetSetWords, TellWhatPipeStandsInAnOpening) {
  EXPECT_TRUE(saysAcross("boatyard-pad", "P-5",
                         "It stands in the clear opening of the manway of Vault 3, suction, ch. 2: "
                         "lift it out at its union, from above with a long tool or under an entry "
                         "permit with the water pumped below it, before anyone goes in by that."));
  std::set<std::string> told;
  for (const Page& page : testing::sampleSheets("boatyard-pad", "a1")) {
    for (const PageText& text : testing::textsOf(page))
      told.insert(text.text);
  }
  EXPECT_TRUE(told.contains("SU-1, SS-1"));
}

// A hand and a tool reach into the box; how large it is in plan is its maker's.
TEST(SheetSetWords, LeaveTheSizeOfAnAccessBoxToItsMaker) {
  EXPECT_TRUE(saysAcross("transit-depot", "P-5", "plan size by the valve's maker: ______"));
}

TEST(SheetSetWords, TellTheSumpOfACatchBasin) {
  EXPECT_TRUE(saysOn("boatyard-pad", "P-1", "Bottom 1.680, sump "));
  EXPECT_FALSE(saysOn("transit-depot", "P-1", "Sump depth")) << "a trench drain";
}

// The make-up is laid level at 2.090 and rises to its port 1.200 m over the floor of 3.150:
// 4.350 - 2.090 = 2.260 m.
TEST(SheetSetWords, TellWhatUprightLegsMakeOfALevelLine) {
  const auto row = rowOf(testing::sampleSheets("boatyard-pad", "a1"), "RUN SCHEDULE", "MU-1");
  EXPECT_NE(std::ranges::find(row, "level, rises 2.260 m"), row.end());
}

TEST(SheetSetWords, TellWhatIsBuiltIntoTheWallsOfBuildings) {
  EXPECT_TRUE(saysOn("transit-depot", "C-3", "SLEEVES AND CORED HOLES IN WALLS OF BUILDINGS"));
  EXPECT_TRUE(saysOn("transit-depot", "C-3", "SLEEVES AND CORED HOLES IN FLOOR SLABS"));
  EXPECT_TRUE(saysOn("transit-depot", "C-3", "Common wall of Existing bus"));
}

TEST(SheetSetWords, TheRoomTellsItsValvesAndSupports) {
  EXPECT_TRUE(saysOn("transit-depot", "P-4", "MU-1-2  Reduced-pressure backflow assembly"));
  EXPECT_TRUE(saysOn("transit-depot", "P-4", "PIPE AND CONDUIT IN THE OPEN"));
  EXPECT_TRUE(saysOn("transit-depot", "P-4", "into pump suction"));
}

TEST(SheetSetWords, ThousandsAreGroupedAlike) {
  EXPECT_TRUE(saysOn("transit-depot", "G-6", "18,615 lbf"));
  EXPECT_TRUE(saysOn("transit-depot", "G-6", "7,960 gal"));
}

// A slab cored under the port would have its hole in the wrong place.
TEST(SheetSetWords, TellWhereAPipeRisesThatIsNotUnderItsPort) {
  EXPECT_TRUE(saysOn("ferry-quay", "P-4", "Make-up: rises here, not under its port"));
  EXPECT_FALSE(saysOn("ferry-quay", "P-4", "Pump suction: rises here"));
}

// The recirculation's union is down in the manway's riser, the make-up has none.
TEST(SheetSetWords, TellWhichPipesHaveUnionsAboveTheFloor) {
  EXPECT_TRUE(saysOn("ferry-quay", "P-4", "as drawn: SU-1, SS-1, RC-1, UF-1, PW-1, MU-1."));
  EXPECT_FALSE(saysOn("ferry-quay", "P-4", "None drawn above it"));
}

TEST(SheetSetWords, DetailsTellGradeAndWhatIsTypical) {
  EXPECT_TRUE(saysOn("boatyard-pad", "P-5", "  grade"));
  EXPECT_TRUE(saysOn("boatyard-pad", "P-5", "INTERCONNECT, IC-1 (IC-2, IC-3 similar)"));
}

// A spot level under a vault would read as the vault's.
TEST(SheetSetWords, NoSpotLevelIsToldWithoutItsCross) {
  std::size_t covered = 0;
  for (const char* name : {"transit-depot", "boatyard-pad", "ferry-quay"}) {
    const Review& reviewed = testing::sampleReview(name);
    std::map<std::string, bool> seen; // level, and whether its cross can be seen anywhere
    for (const SpotElevation& spot : reviewed.plan.spots) {
      bool under = false;
      for (const VaultStudy& vault : reviewed.study.vaults)
        under = under || contains(vault.outline, spot.at);
      for (const EquipmentRoom& room : reviewed.plan.rooms)
        under = under || contains(outline(room), spot.at);
      bool& free = seen[printElevation(spot.elevation, reviewed.plan.project.units)];
      free = free || !under;
    }
    for (const Page& page : testing::sampleSheets(name, "arch-d")) {
      if (page.number != "P-101") continue;
      for (const PageText& text : testing::textsOf(page)) {
        const auto level = seen.find(text.text);
        if (level != seen.end()) {
          EXPECT_TRUE(level->second) << name << " " << text.text;
        }
      }
    }
    covered += static_cast<std::size_t>(
        std::ranges::count_if(seen, [](const auto& level) { return !level.second; }));
  }
  EXPECT_GT(covered, 0u);
}

TEST(SheetSetPapers, EverySizeTakesTheSet) {
  for (const PaperSize& paper : paperSizes()) {
    const auto& pages = testing::sampleSheets("small", std::string(paper.key));
    EXPECT_GE(pages.size(), 10u) << paper.key;
    for (const Page& page : pages) {
      EXPECT_EQ(page.width, paper.width);
      EXPECT_EQ(page.height, paper.height);
    }
  }
}

TEST(SheetSetChoice, TakesKeysLettersSeriesAndNumbers) {
  const Review& reviewed = testing::sampleReview("small");
  const auto numbers = [&](const std::vector<std::string>& sheets) {
    std::vector<std::string> found;
    for (const Page& page : composeSheets(reviewed, {"arch-d", 0, nullptr, sheets}))
      found.push_back(page.number);
    return found;
  };
  using Numbers = std::vector<std::string>;
  EXPECT_EQ(numbers({"plan"}), Numbers{"P-101"});
  EXPECT_EQ(numbers({"excavation"}), Numbers{"C-102"}) << "numbers are those of the whole set";
  EXPECT_EQ(numbers({"p-1", "g-001"}), (Numbers{"G-001", "P-101"}));
  for (const std::string& number : numbers({"E"}))
    EXPECT_TRUE(number.starts_with("E-")) << number;
  EXPECT_THROW(numbers({"roof"}), std::invalid_argument);
}

/// Half of the last printed digit.
void expectLength(const std::string& printed, Length expected, UnitSystem units, double half) {
  const auto parsed = parseLength(printed, units);
  ASSERT_TRUE(parsed) << printed;
  EXPECT_NEAR(parsed.value->value(), expected.value(), half) << printed;
}

/// Of a place on the run, in plan.
Length lengthTo(const RunStudy& run, Point2 at) {
  double before = 0, station = 0, nearest = 1e9;
  for (std::size_t i = 0; i + 1 < run.points.size(); ++i) {
    const Point2 a = flat(run.points[i].at), b = flat(run.points[i + 1].at);
    const double length = distance(a, b);
    const double off = distance(a, at) + distance(at, b) - length;
    if (off < nearest - 1e-9) {
      nearest = off;
      station = before + distance(a, at);
    }
    before += length;
  }
  return metres(station);
}

TEST(SheetSetNumbers, TheRunScheduleReadsBackAsTheStudy) {
  for (const char* name : {"transit-depot", "ferry-quay"}) {
    const Review& reviewed = testing::sampleReview(name);
    const UnitSystem units = reviewed.plan.project.units;
    const bool metric = units == UnitSystem::Metric;
    const double tenth = metric ? 0.0051 : 0.051 * kMetresPerFoot;
    const double level = metric ? 0.00051 : 0.0051 * kMetresPerFoot;
    const auto& pages = testing::sampleSheets(name, "arch-e");
    std::map<Service, int> count;
    for (const RunStudy& run : reviewed.study.runs) {
      ASSERT_TRUE(run.resolved) << run.id;
      const std::string tag =
          std::string(facts(run.service).code) + "-" + std::to_string(++count[run.service]);
      const auto row = rowOf(pages, "RUN SCHEDULE", tag);
      ASSERT_EQ(row.size(), 13u) << tag;
      expectLength(row[4], run.developed, units, tenth);
      expectLength(row[6], run.startInvert, units, level);
      expectLength(row[7], run.endInvert, units, level);
      if (run.leastCover) {
        expectLength(row[8], run.leastCover->cover, units,
                     metric ? 0.00051 : 0.51 / 8 * kMetresPerInch);
        expectLength(row[9], lengthTo(run, run.leastCover->at), units, tenth);
      }
    }
  }
}

TEST(SheetSetNumbers, TheVaultTablesReadBackAsTheStudy) {
  for (const char* name : {"transit-depot", "ferry-quay"}) {
    const Review& reviewed = testing::sampleReview(name);
    const UnitSystem units = reviewed.plan.project.units;
    const double level = units == UnitSystem::Metric ? 0.00051 : 0.0051 * kMetresPerFoot;
    const auto& pages = testing::sampleSheets(name, "arch-e");
    for (const VaultStudy& vault : reviewed.study.vaults) {
      const std::string& called = reviewed.plan.vaults.find(vault.id)->name;
      const auto setting = rowOf(pages, "VAULT SETTING", called);
      ASSERT_EQ(setting.size(), 7u) << called;
      expectLength(setting[2], vault.lidTop, units, level);
      expectLength(setting[3], vault.floor, units, level);
      expectLength(setting[4], vault.underside, units, level);
      const auto levels = rowOf(pages, "LEVELS", called);
      ASSERT_EQ(levels.size(), 9u) << called;
      expectLength(levels[2], vault.lidUnderside, units, level);
      expectLength(levels[4], *vault.waterLevel, units, level);
    }
    const auto total = rowOf(pages, "VAULT SCHEDULE", "Total");
    ASSERT_FALSE(total.empty());
    const auto volume = parseVolume(total.back(), units);
    ASSERT_TRUE(volume) << total.back();
    EXPECT_NEAR(volume.value->value(), reviewed.study.workingVolume.value(), 0.0051);
  }
}

// What a fitter looks for in a pit or under a cover is found by its place.
TEST(SheetSetNumbers, PartsAtTheEndsOfRunsAreTabledWithTheirPlaces) {
  const Review& reviewed = testing::sampleReview("ferry-quay");
  const auto& pages = testing::sampleSheets("ferry-quay", "a1");
  const Length half = metres(0.00051);
  const auto expectAt = [&](const std::vector<std::string>& row, Point3 at) {
    ASSERT_EQ(row.size(), 8u);
    for (const auto& [cell, value] : {std::pair(4, at.y), std::pair(5, at.x), std::pair(6, at.z)})
      expectLength(row[static_cast<std::size_t>(cell)], metres(value), UnitSystem::Metric,
                   half.value());
  };
  std::map<std::string, std::vector<std::string>> rows; // by what and run
  for (const Page& page : pages) {
    const auto all = testing::textsOf(page);
    for (std::size_t i = 7; i < all.size(); ++i) {
      if (page.number != "P-601" || all[i - 7].at.y != all[i].at.y) continue;
      for (std::size_t k = i - 7; k <= i; ++k)
        rows[all[i].text + " " + all[i - 6].text].push_back(all[k].text);
    }
  }
  const auto& study = reviewed.study;
  expectAt(rows["Foot valve with strainer SU-1"], study.run("SU-1")->points.front().at);
  expectAt(rows["Air-drawing eductor (sparger) RC-1"], study.run("RC-1")->points.back().at);
  expectAt(rows["Screened vent outlet VT-1"], study.run("VT-1")->points.back().at);
  const Length low = *study.hydraulics.suctions.front().lowWater;
  expectAt(
      rows["Low-level float, switches at " + printElevation(low, UnitSystem::Metric) + " FC-1"],
      study.run("FC-1")->points.front().at);
}

// What is printed for the chambers is what is printed for all of them.
TEST(SheetSetNumbers, ChamberVolumesAddUpAsPrinted) {
  for (const char* name : {"transit-depot", "ferry-quay", "boatyard-pad"}) {
    const UnitSystem units = testing::sampleReview(name).plan.project.units;
    double sum = 0;
    std::size_t chambers = 0;
    for (const Page& page : testing::sampleSheets(name, "arch-e")) {
      const auto all = testing::textsOf(page);
      const auto title = std::ranges::find(all, "VAULT SCHEDULE", &PageText::text);
      if (title == all.end()) continue;
      const auto end =
          std::find_if(title, all.end(), [](const PageText& t) { return t.text == "Total"; });
      for (auto cell = title; cell != end; ++cell) {
        const auto volume = parseVolume(cell->text, units);
        const bool is = cell->text.ends_with(" gal") || cell->text.ends_with(" m\u00B3");
        if (!is || !volume) continue;
        sum += volume.value->value();
        ++chambers;
      }
    }
    const double total =
        parseVolume(rowOf(testing::sampleSheets(name, "arch-e"), "VAULT SCHEDULE", "Total").back(),
                    units)
            .value->value();
    EXPECT_GE(chambers, 4u);
    EXPECT_EQ(printVolume(cubicMetres(sum), units), printVolume(cubicMetres(total), units)) << name;
  }
}

bool anySays(const std::vector<Page>& pages, const std::string& part) {
  for (const Page& page : pages) {
    for (const PageText& text : testing::textsOf(page)) {
      if (text.text.find(part) != std::string::npos) return true;
    }
  }
  return false;
}

TEST(SheetSetWords, SaysWhatIsUndecidedAndWhichLaddersAreDrawn) {
  Plan plan = readPlanFile(sampleFile("transit-depot"));
  plan.basis.wiring.supplies.back().disconnect.reset();
  plan.basis.earth.ladders.resize(2);
  const std::vector<Page> pages = composeSheets(review(plan, builtinCatalog()), {"arch-e", 0});
  EXPECT_TRUE(anySays(pages, "undecided (a)"));
  EXPECT_TRUE(anySays(pages, "1 or more: nos. 1, 2"));
}

TEST(SheetSetWords, TellWhichPipesHaveNoUnionAboveTheFloor) {
  Plan plan = readPlanFile(sampleFile("ferry-quay"));
  for (const char* id : {"RC-1", "MU-1"}) {
    sump::Run bare = *plan.runs.find(id);
    std::erase_if(bare.parts, [](const InlinePart& part) { return part.kind == PartKind::Union; });
    plan.runs.put(std::move(bare));
  }
  const Review reviewed = review(plan, builtinCatalog());
  const auto pages = composeSheets(reviewed, {"arch-d", 0, nullptr, {"P-401"}});
  EXPECT_TRUE(anySays(pages, "None drawn above it: RC-1, MU-1."));
}

TEST(SheetSetWords, NamesThingsAsTheTradeDoes) {
  const auto& pages = testing::sampleSheets("transit-depot", "arch-e");
  // Vault 1 has a link and no overflow.
  EXPECT_TRUE(anySays(pages, "Outlet inv. (LK-1) 97.00"));
  EXPECT_FALSE(anySays(pages, "Overflow inv. 97.00"));
  // The recirculation comes in through the riser of the second chamber.
  EXPECT_TRUE(anySays(pages, "riser ch. 2, side "));
  EXPECT_FALSE(anySays(pages, "SP-C"));
  EXPECT_TRUE(anySays(pages, "Next vault in"));
  EXPECT_TRUE(anySays(pages, "RUN POINTS"));
  EXPECT_TRUE(anySays(pages, "MANWAYS"));
  EXPECT_TRUE(anySays(pages, "BAFFLES, OVER THE WHOLE INSIDE WIDTH"));
  // It leaves the enlarged view and comes back.
  EXPECT_TRUE(anySays(testing::sampleSheets("transit-depot", "arch-d"), "WW-1 goes on"));
  EXPECT_TRUE(anySays(pages, "NOT DECIDED FOR WANT OF AN INPUT"));
  for (const char* name : {"transit-depot", "boatyard-pad", "ferry-quay"}) {
    const Plan& plan = testing::sampleReview(name).plan;
    for (const Building& building : plan.buildings)
      EXPECT_FALSE(anySays(testing::sampleSheets(name, "arch-e"), "building " + building.id))
          << building.id;
    for (const Utility& utility : plan.utilities)
      EXPECT_FALSE(anySays(testing::sampleSheets(name, "arch-e"), "utility " + utility.id))
          << utility.id;
  }
}

/// Of all sheets.
std::set<std::string> numbersOf(const std::vector<Page>& pages) {
  std::set<std::string> numbers;
  for (const Page& page : pages)
    numbers.insert(page.number);
  return numbers;
}

std::string titleOf(const std::vector<Page>& pages, const std::string& number) {
  for (const Page& page : pages) {
    if (page.number == number) return page.title;
  }
  return {};
}

// On small paper a plan goes over several sheets, and the site is a sheet of its own.
TEST(SheetSetReferences, MatchLinesAndEnlargedPlansNameTheirSheet) {
  const auto& pages = testing::sampleSheets("ferry-quay", "a3");
  std::size_t lines = 0, enlarged = 0;
  for (const Page& page : pages) {
    for (const PageText& text : testing::textsOf(page)) {
      const std::string line = "MATCH LINE, SEE PART ", view = "See view 1, sheet ";
      if (text.text.starts_with(line)) {
        ++lines;
        const std::string part = text.text.substr(line.size(), 2);
        const std::string number = text.text.substr(text.text.size() - 5);
        EXPECT_NE(number, page.number);
        EXPECT_EQ(number.substr(0, 3), page.number.substr(0, 3)) << text.text;
        EXPECT_TRUE(titleOf(pages, number).ends_with(", part " + part)) << text.text;
      } else if (text.text.starts_with(view)) {
        ++enlarged;
        const std::string title = titleOf(pages, text.text.substr(view.size()));
        EXPECT_TRUE(title.starts_with("Reclaim tankage plan")) << title;
        EXPECT_NE(text.text.substr(view.size()), page.number);
      }
    }
  }
  EXPECT_GT(lines, 3u);
  EXPECT_EQ(enlarged, 1u);
}

TEST(SheetSetReferences, TheRunScheduleNamesSectionAndDetail) {
  const auto& pages = testing::sampleSheets("transit-depot", "arch-e");
  for (const char* tag : {"WW-1", "LK-1", "SU-1", "IC-1", "VT-1"}) {
    const auto row = rowOf(pages, "RUN SCHEDULE", tag);
    ASSERT_EQ(row.size(), 13u);
    // Interconnects are drawn in the details only, vents in their sections only.
    const bool section = std::string_view(tag) != "IC-1", detail = std::string_view(tag) != "VT-1";
    EXPECT_EQ(row[10].find("/P-30") != std::string::npos, section) << row[10];
    EXPECT_EQ(row[11].find("/P-50") != std::string::npos, detail) << row[11];
    for (const std::string& number : {row[10], row[11]})
      EXPECT_TRUE(number == "-" || numbersOf(pages).contains(number.substr(number.find('/') + 1)))
          << number;
  }
}

// The title block's document type and scale, and the index, go by what the sheet shows.
TEST(SheetSetReferences, ASheetOfTablesAloneIsASchedule) {
  std::size_t schedules = 0;
  for (const Page& page : testing::sampleSheets("ferry-quay", "a3")) {
    bool drawn = false, schedule = false, scaled = false;
    for (const PageText& text : testing::textsOf(page)) {
      drawn = drawn || (text.text.starts_with("1:") && text.text.size() > 3);
      schedule = schedule || (text.text == "Schedule" && page.number.substr(2, 1) == "1");
      scaled = scaled || text.text == "As shown";
    }
    if (!schedule) continue;
    ++schedules;
    EXPECT_FALSE(scaled) << page.number;
    EXPECT_FALSE(drawn) << page.number;
  }
  EXPECT_GT(schedules, 1u); // the setting-out sheet, and what the plans' tables take more
}

// Columns are read from the left, each from its top: none that goes on stands over or under one
// before it.
TEST(SheetSetReferences, RunPointsGoOnInTheNextColumn) {
  for (const char* name : {"transit-depot", "ferry-quay", "boatyard-pad"}) {
    for (const char* paper : {"a3", "arch-d", "ansi-b", "a4"}) {
      int columns = 0;
      for (const Page& page : testing::sampleSheets(name, paper)) {
        double right = 0; // of the column before
        const auto all = testing::textsOf(page);
        for (auto t = all.begin(); t != all.end(); ++t) {
          if (!t->text.starts_with("RUN POINTS")) continue;
          ++columns;
          EXPECT_GT(t->at.x, right) << name << " on " << paper << " " << page.number;
          const auto last = std::find_if(t, all.end(), [](const PageText& c) {
            return c.text == "Invert" && c.align == Align::Right;
          });
          ASSERT_NE(last, all.end());
          right = last->at.x;
        }
      }
      EXPECT_GE(columns, std::string_view(paper) == "arch-d" ? 1 : 2) << name << " on " << paper;
    }
  }
}

TEST(SheetSetWords, SettingOutTellsOfNumbersThatAreNotTabled) {
  EXPECT_TRUE(saysAcross("transit-depot", "C-1", "1 to 14 are of the vaults"));
  EXPECT_TRUE(saysAcross("transit-depot", "C-1", "(IC-1, IC-2)"));
}

TEST(SheetSetReferences, AContinuedTableSaysSo) {
  bool first = false, more = false;
  for (const Page& page : testing::sampleSheets("ferry-quay", "a3")) {
    for (const PageText& text : testing::textsOf(page)) {
      first = first || text.text == "RUN POINTS";
      more = more || text.text == "RUN POINTS (continued)";
    }
  }
  EXPECT_TRUE(first);
  EXPECT_TRUE(more);
}

} // namespace
} // namespace sump
