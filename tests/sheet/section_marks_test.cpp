// Long sections on paper: golden dumps (SUMPWRIGHT_UPDATE_GOLDEN=1 writes them anew), texts that
// keep off each other, and levels that are the profile's own.

#include "core/sheet/section_block.h"
#include "core/sheet/section_frames.h"
#include "core/sheet/section_marks.h"

#include "core/exchange/plan_file.h"
#include "core/geometry/polygon.h"
#include "core/units/print.h"
#include "tests/reference/two_vault_plan.h"
#include "tests/support/golden.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

namespace sump {
namespace {

const SectionTitle kRunTitle{"A run", {"6\" pipe"}};

const std::string kSectionSource = sourceFolder();

struct Sections {
  Plan plan;
  Study study;
  explicit Sections(Plan p) : plan(std::move(p)), study(test::studyOf(plan)) {}
  UnitSystem units() const { return plan.project.units; }
  TrainProfile train() const { return *trainProfile(plan, study, builtinCatalog()); }
  RunProfile run(const Id& id) const { return *runProfile(plan, study, builtinCatalog(), id); }
};

Sections sectionsOf(const std::string& name) {
  return Sections(readPlanFile(kSectionSource + "/samples/" + name + ".sump"));
}

Page sectionPage(SectionSheet sheet, double width) {
  Page page{"S", "Long section", width, 2000, {}};
  place(sheet.block, {0, 0}, 2000, page);
  EXPECT_TRUE(sheet.block.body.empty());
  return page;
}

/// The train's section with its tables under it.
Page trainPage(const Sections& sections) {
  constexpr double kWidth = 380;
  SectionSheet sheet = longSectionBlock(sections.train(), sections.units(), kWidth, 130);
  for (const Block& table : trainTables(sections.train(), sections.units(), kWidth)) {
    sheet.block.body.insert(sheet.block.body.end(), table.head.begin(), table.head.end());
    sheet.block.body.insert(sheet.block.body.end(), table.body.begin(), table.body.end());
    sheet.block.body.push_back({4, {}});
  }
  return sectionPage(std::move(sheet), kWidth);
}

std::vector<PageText> sectionTexts(const Page& page) {
  std::vector<PageText> found;
  for (const PageItem& item : page.items) {
    const auto* text = std::get_if<PageText>(&item);
    // What stands for the view's number is told only when the set is numbered.
    if (text != nullptr && text->text.front() >= ' ') found.push_back(*text);
  }
  return found;
}

void expectApart(const Page& page, const std::string& what) {
  const auto all = sectionTexts(page);
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (Point2 p : textBox(all[i])) {
      EXPECT_GE(p.x, -0.01) << what << ": " << all[i].text;
      EXPECT_LE(p.x, page.width + 0.01) << what << ": " << all[i].text;
    }
    for (std::size_t k = i + 1; k < all.size(); ++k) {
      EXPECT_FALSE(overlaps(textBox(all[i]), textBox(all[k])))
          << what << ": '" << all[i].text << "' and '" << all[k].text << "'";
    }
  }
}

bool sectionSays(const Page& page, const std::string& text) {
  for (const PageText& t : sectionTexts(page)) {
    if (t.text.find(text) != std::string::npos) return true;
  }
  return false;
}

TEST(LongSection, TextsKeepOffEachOther) {
  for (const char* name : {"transit-depot", "boatyard-pad"}) {
    const Sections sections = sectionsOf(name);
    expectApart(trainPage(sections), std::string(name) + " train");
    for (const RunStudy& run : sections.study.runs) {
      ASSERT_TRUE(run.resolved) << run.id;
      for (double width : {180.0, 380.0}) {
        expectApart(sectionPage(longSectionBlock(sections.run(run.id), kRunTitle, sections.units(),
                                                 width, 110),
                                width),
                    run.id);
      }
    }
  }
}

TEST(LongSection, TheTableHoldsEveryLevel) {
  const Sections sections = sectionsOf("transit-depot");
  for (const RunStudy& run : sections.study.runs) {
    const Page page = sectionPage(
        longSectionBlock(sections.run(run.id), kRunTitle, sections.units(), 380, 110), 380);
    std::multiset<std::string> cells, levels;
    for (const PageText& t : sectionTexts(page)) {
      if (t.angle == 90) cells.insert(t.text);
    }
    for (std::size_t i = 0; i < run.points.size(); ++i) {
      // A leg of no length is told once.
      if (i > 0 && distance(run.points[i].at, run.points[i - 1].at) < 1e-6) continue;
      levels.insert(printElevation(metres(run.points[i].at.z), sections.units()));
    }
    for (const std::string& level : levels)
      EXPECT_GE(cells.count(level), levels.count(level)) << run.id << " " << level;
  }
  const Page train = trainPage(sections);
  for (const VaultStudy& vault : sections.study.vaults) {
    for (Length level : {vault.floor, vault.lidTop, vault.underside, *vault.waterLevel})
      EXPECT_TRUE(sectionSays(train, printElevation(level, sections.units()))) << vault.id;
  }
}

// A dimension on a wall's line cannot be told from it: 1.2 % of 100 m beside it, out of the
// building.
TEST(LongSection, ADimensionStandsClearOfWalls) {
  RunProfile profile;
  profile.from = 0;
  profile.to = 100;
  ProfileStructure building;
  building.from = 20;
  building.to = 40;
  profile.structures = {building};
  EXPECT_NEAR(clearOfWalls(profile, 60), 60, 1e-12);
  EXPECT_NEAR(clearOfWalls(profile, 40), 41.2, 1e-12);
  EXPECT_NEAR(clearOfWalls(profile, 20.1), 18.8, 1e-12);
  EXPECT_NEAR(clearOfWalls(profile, 30), 30, 1e-12); // far from both walls
  // Another building begins 2 m farther: no room between them, so it stays.
  ProfileStructure next;
  next.from = 42;
  next.to = 50;
  profile.structures.push_back(next);
  EXPECT_NEAR(clearOfWalls(profile, 40), 40, 1e-12);
}

// Whoever lays the run reads them with the flow: the foot of a riser before its top.
TEST(LongSection, TheTableGoesWithTheFlow) {
  for (const char* name : {"transit-depot", "boatyard-pad", "ferry-quay"}) {
    const Sections sections = sectionsOf(name);
    for (const RunStudy& run : sections.study.runs) {
      const RunProfile profile = sections.run(run.id);
      const std::vector<LevelRow> rows = levelRows(profile, sections.units());
      ASSERT_FALSE(rows.empty());
      EXPECT_TRUE(std::ranges::is_sorted(rows, {}, &LevelRow::station)) << run.id;
      std::size_t next = 0; // of the points, in their order; the least cover stands among them
      for (const LevelRow& row : rows) {
        if (next < profile.points.size() && repeats(profile.points, next + 1)) ++next;
        if (next < profile.points.size() &&
            row.cells[2] == printElevation(profile.points[next].invert, sections.units()))
          ++next;
      }
      EXPECT_EQ(next, profile.points.size()) << name << " " << run.id;
    }
  }
}

// Two columns that print alike would read as a drop that is not there.
TEST(SectionMarks, PointsThatPrintAlikeShareARow) {
  Sections sections = sectionsOf("transit-depot");
  RunProfile profile = sections.run("WW-1");
  ASSERT_GE(profile.points.size(), 2u);
  ProfilePoint close = profile.points.front();
  close.station += 2e-4;
  profile.points.insert(profile.points.begin() + 1, close);
  profile.legs.insert(profile.legs.begin(), profile.legs.front());
  const std::vector<LevelRow> rows = levelRows(profile, sections.units());
  for (std::size_t i = 1; i < rows.size(); ++i) {
    EXPECT_FALSE(
        std::equal(rows[i].cells.begin(), rows[i].cells.begin() + 3, rows[i - 1].cells.begin()))
        << rows[i].cells[0] << " " << rows[i].cells[2];
  }
}

std::vector<std::string> floorsOf(const Sections& sections, const RunProfile& profile) {
  std::vector<std::string> told;
  for (const SectionNote& note : sectionNotes(profile, sections.units())) {
    if (note.text.find("FLOOR") != std::string::npos && note.text.find(", ") != std::string::npos)
      told.push_back(note.text);
  }
  return told;
}

TEST(SectionMarks, ARoomAndItsBuildingOnOneFloorShareAText) {
  const Sections sections = sectionsOf("ferry-quay");
  RunProfile profile = sections.run("SU-1");
  EXPECT_EQ(floorsOf(sections, profile),
            std::vector<std::string>{"Equipment room and building, FLOOR 3.150"});
  // One step up from the building's floor, each is told.
  for (ProfileStructure& s : profile.structures) {
    if (s.kind == StructureKind::Room) s.level = metres(3.25);
  }
  EXPECT_EQ(floorsOf(sections, profile).size(), 2u);
}

// `RIM` alone does not say what is to be set to that level.
TEST(SectionMarks, RimsSayOfWhat) {
  const Sections sections = sectionsOf("ferry-quay");
  std::set<std::string> told;
  for (const SectionNote& note : sectionNotes(sections.run("OF-1"), sections.units())) {
    const auto at = note.text.find("RIM");
    if (at != std::string::npos) told.insert(note.text.substr(0, at));
  }
  EXPECT_EQ(told, (std::set<std::string>{"manway ", "box ", "cleanout "}));
}

// An eductor's outlet is the end of its pipe: nothing of it hangs lower.
TEST(SectionMarks, TheEductorEndsAtItsOutlet) {
  for (const char* name : {"transit-depot", "boatyard-pad", "ferry-quay"}) {
    const Sections sections = sectionsOf(name);
    const RunProfile profile = sections.run("RC-1");
    ASSERT_EQ(profile.endFitting, EndFitting::Eductor);
    double low = 1e9;
    for (const Mark& mark : sectionMarks(profile, {1})) {
      if (mark.object != "RC-1" || mark.layer != Layer::Part) continue;
      for (Point2 p : mark.points)
        low = std::min(low, p.y);
    }
    EXPECT_NEAR(low, inMetres(profile.points.back().invert), 1e-6) << name;
  }
}

// A cleanout stands under a cover at grade, the float on its cable at its level.
TEST(SectionMarks, WhatHangsAndWhatIsReachedIsDrawn) {
  const Sections sections = sectionsOf("ferry-quay");
  const RunProfile inlet = sections.run("WW-1");
  ASSERT_TRUE(inlet.parts.at(0).cover);
  bool covered = false;
  for (const Mark& mark : sectionMarks(inlet, {1})) {
    covered = covered || (mark.layer == Layer::Manway && mark.object == inlet.parts[0].id &&
                          !mark.closed && mark.points[0].y == inMetres(*inlet.parts[0].cover));
  }
  EXPECT_TRUE(covered);
  const RunProfile conduit = sections.run("FC-1");
  bool hangs = false;
  for (const Mark& mark : sectionMarks(conduit, {5}))
    hangs = hangs || (mark.round && mark.points[0].y == 5 * inMetres(*conduit.floatLevel));
  EXPECT_TRUE(hangs);
}

// In the wash bay one walks on its floor: the ground's line ends at its walls.
TEST(SectionMarks, IndoorsTheFloorIsDrawnInsteadOfTheGround) {
  const Sections sections = sectionsOf("transit-depot");
  for (const char* id : {"WW-1", "PW-1", "SU-1"}) {
    const RunProfile profile = sections.run(id);
    double open = 0, floors = 0;
    for (const std::vector<ProfileGround>& piece : openGround(profile))
      open += piece.back().station - piece.front().station;
    for (double at = profile.from; at < profile.to; at += 0.01)
      floors += isIndoors(profile, at) ? 0.01 : 0;
    EXPECT_GT(floors, 0.5) << id;
    EXPECT_NEAR(open + floors, profile.to - profile.from, 0.1) << id;
    for (const Mark& mark : sectionMarks(profile, {1})) {
      if (mark.layer != Layer::Ground || mark.closed || mark.points.size() < 2) continue;
      if (mark.line->ink != Ink::Black) continue; // groundwater
      EXPECT_FALSE(isIndoors(profile, (mark.points.front().x + mark.points[1].x) / 2)) << id;
    }
  }
}

// Whoever digs beside a building has to know how deep its footing goes.
TEST(SectionMarks, FootingsAreDrawnAndToldWhereTheirWallsAreCut) {
  const Sections sections = sectionsOf("transit-depot");
  const RunProfile inlet = sections.run("WW-1");
  const auto bay =
      std::ranges::find(inlet.structures, StructureKind::Building, &ProfileStructure::kind);
  ASSERT_NE(bay, inlet.structures.end());
  const Length footing = *sections.plan.buildings.find(bay->id)->footing;
  double low = 1e9;
  for (const Mark& mark : sectionMarks(inlet, {1})) {
    if (mark.object != bay->id) continue;
    for (Point2 p : mark.points)
      low = std::min(low, p.y);
  }
  EXPECT_NEAR(low, inMetres(footing), 1e-9);
  const std::string told = "FOOTING " + printElevation(footing, sections.units());
  EXPECT_EQ(std::ranges::count(sectionNotes(inlet, sections.units()), told, &SectionNote::text), 1);
}

// Where the equipment building leans on the wash bay, its room reaches the bay's wall.
TEST(SectionMarks, ACommonWallIsDrawnOnce) {
  const Sections sections = sectionsOf("transit-depot");
  std::size_t common = 0;
  for (const RunStudy& run : sections.study.runs) {
    const auto profile = runProfile(sections.plan, sections.study, builtinCatalog(), run.id);
    if (!profile) continue;
    std::vector<double> walls;
    for (const ProfileStructure& s : profile->structures) {
      if (s.kind != StructureKind::Building) continue;
      for (double at : cutWalls(*profile, s)) {
        EXPECT_TRUE(std::ranges::none_of(walls, [&](double w) { return std::abs(w - at) < 1e-6; }))
            << run.id << " at " << at;
        walls.push_back(at);
      }
    }
    for (const ProfileStructure& s : profile->structures) {
      for (const ProfileStructure& other : profile->structures) {
        const bool touch = s.kind == StructureKind::Building && s.id != other.id &&
                           other.kind == s.kind && std::abs(s.to - other.from) < 1e-6;
        common += touch && std::ranges::count(walls, s.to) + std::ranges::count(walls, other.from)
                      ? 1
                      : 0;
      }
    }
  }
  EXPECT_GT(common, 0u);
}

// The name of a line stands with a leader to the middle of its pipe.
// Lines that run over the floors, too, come through walls.
TEST(SectionMarks, WallsAreDrawnWhereARunPassesThemOverAFloor) {
  const Sections sections = sectionsOf("transit-depot");
  for (const char* id : {"MU-1", "PW-1", "SG-1"}) {
    const RunProfile profile = sections.run(id);
    const std::vector<CutWall> walls = passedWalls(profile);
    ASSERT_FALSE(walls.empty()) << id;
    const SectionExtent extent = sectionExtent(profile);
    for (const CutWall& wall : walls) {
      EXPECT_GT(wall.from, 0) << id;
      EXPECT_LT(wall.to, profile.length + 0.6) << id;
      bool through = false;
      for (std::size_t i = 0; i + 1 < profile.points.size(); ++i) {
        const ProfilePoint &a = profile.points[i], &b = profile.points[i + 1];
        const bool meets = a.station <= wall.to && b.station >= wall.from;
        through = through || (meets && a.invert > wall.low && a.invert < wall.high);
      }
      EXPECT_TRUE(through) << id;
      EXPECT_LE(wall.high, extent.high) << id;
      const std::vector<Mark> marks = sectionMarks(profile, {1});
      EXPECT_TRUE(std::ranges::any_of(marks, [&](const Mark& mark) {
        return mark.object == wall.structure && mark.closed && mark.points.size() == 4 &&
               mark.points[0] == Point2{wall.from, inMetres(wall.low)} &&
               mark.points[2] == Point2{wall.to, inMetres(wall.high)};
      })) << id;
    }
  }
  EXPECT_TRUE(passedWalls(sections.run("OF-1")).empty()) << "in the ground";
}

TEST(SectionMarks, ManwaysOffTheCutAreDashed) {
  const Sections sections = sectionsOf("boatyard-pad");
  const TrainProfile train = sections.train();
  const std::vector<Mark> marks = sectionMarks(train, {1});
  int off = 0, cut = 0;
  for (const ProfileVault& vault : train.vaults) {
    const Vault& given = *sections.plan.vaults.find(vault.id);
    for (const ProfileManway& manway : vault.manways) {
      const Point2 at = std::ranges::find(given.manways, manway.id, &Manway::id)->at;
      EXPECT_EQ(manway.beyond, std::abs(at.y) > inMetres(manway.diameter) / 2) << manway.id;
      ++(manway.beyond ? off : cut);
      for (const Mark& mark : marks) {
        if (mark.object != manway.id || !mark.closed) continue;
        EXPECT_EQ(!mark.line->dash.empty(), manway.beyond) << manway.id;
      }
    }
  }
  EXPECT_GE(off, 1);
  EXPECT_GE(cut, 1);
}

// Groundwater at a slab would mean that the vault is about to float.
TEST(SectionMarks, TheGroundwatersSignTouchesNoStructure) {
  int seen = 0;
  for (const char* name : {"transit-depot", "boatyard-pad", "ferry-quay"}) {
    const Sections sections = sectionsOf(name);
    for (const RunStudy& run : sections.study.runs) {
      const RunProfile profile = sections.run(run.id);
      const std::vector<Mark> marks = sectionMarks(profile, {1});
      for (const Mark& sign : marks) {
        if (sign.layer != Layer::Symbol || !sign.closed || sign.fill || sign.points.size() != 3)
          continue;
        if (sign.points[0].y != inMetres(*profile.groundwater)) continue;
        ++seen;
        for (const Mark& mark : marks) {
          if (mark.layer != Layer::Vault || !mark.closed) continue;
          EXPECT_GT(distance(sign.points, mark.points), 0) << name << " " << run.id;
        }
      }
    }
  }
  EXPECT_GE(seen, 10);
}

TEST(SectionMarks, LinesOfTheTrainAreNamedOnTheirPipes) {
  const Sections sections = sectionsOf("transit-depot");
  const TrainProfile train = sections.train();
  const std::vector<SectionNote> notes = sectionNotes(train, sections.units());
  for (const TrainRun& run : train.runs) {
    const auto name = std::ranges::find(notes, run.id + " " + run.size + "\"", &SectionNote::text);
    ASSERT_NE(name, notes.end()) << run.id;
    EXPECT_TRUE(name->pointed) << run.id;
    const auto [first, last] = std::ranges::minmax(run.points, {}, &TrainPoint::station);
    EXPECT_GE(name->station, first.station) << run.id;
    EXPECT_LE(name->station, last.station) << run.id;
  }
}

// The plan worked by hand: stations by plan length, inverts, and grade 97 - x/100.
TEST(LongSection, InletTableByHand) {
  const Sections sections(test::twoVaultPlan());
  const Page page =
      sectionPage(longSectionBlock(sections.run("IN"), kRunTitle, sections.units(), 300, 100), 300);
  for (const char* cell : {"0.0 ft", "31.0 ft", "36.7 ft", "44.7 ft", "95.00", "94.48", "94.38",
                           "94.25", "97.19", "96.88", "96.84"}) {
    EXPECT_TRUE(sectionSays(page, cell)) << cell;
  }
}

TEST(LongSection, GroundwaterIsLabelledWhereItIsDrawn) {
  const Sections sections(test::twoVaultPlan());
  RunProfile inlet = sections.run("IN");
  inlet.groundwater = inlet.points.back().invert - metres(0.1);
  const std::string label = "GW " + printElevation(*inlet.groundwater, sections.units());
  const auto drawn = [&] {
    return sectionPage(longSectionBlock(inlet, kRunTitle, sections.units(), 300, 100), 300);
  };
  EXPECT_TRUE(sectionSays(drawn(), label));
  inlet.groundwater = sectionExtent(inlet).low - metres(1); // below what is shown
  EXPECT_FALSE(sectionSays(drawn(), "GW "));
}

// The vent leaves its vault at 97.70 and is at 97.81 five feet on.
TEST(LongSection, CloseInvertsKeepTheirOrder) {
  const Sections sections = sectionsOf("transit-depot");
  const Page page = sectionPage(
      longSectionBlock(sections.run("VT-1"), kRunTitle, sections.units(), 180, 110), 180);
  std::map<std::string, double> across;
  for (const PageText& t : sectionTexts(page))
    across[t.text] = t.at.x;
  ASSERT_TRUE(across.contains("INV 97.70") && across.contains("INV 97.83"));
  EXPECT_LT(across["INV 97.70"], across["INV 97.83"]);
  EXPECT_LT(across["INV 97.83"], across["INV 98.40"]);
}

// The suctions stand side by side: an invert there must say whose it is.
TEST(LongSection, InvertsOfTheTrainNameTheirRun) {
  std::size_t named = 0;
  for (const char* plan : {"transit-depot", "boatyard-pad", "ferry-quay"}) {
    const Sections sections = sectionsOf(plan);
    const TrainProfile train = sections.train();
    for (const SectionNote& note : sectionNotes(train, sections.units())) {
      if (!note.inOrder) continue;
      const auto run = std::ranges::find(train.runs, note.object, &TrainRun::id);
      ASSERT_NE(run, train.runs.end());
      if (run->service == Service::Interconnect || run->service == Service::Link) continue;
      ++named;
      EXPECT_TRUE(note.text.starts_with(run->id + " INV ")) << note.text;
    }
  }
  EXPECT_GT(named, 20u);
}

// A leader to the lid ends on concrete, not in a shaft.
TEST(LongSection, TheLidIsToldBesideItsOpenings) {
  std::size_t openings = 0;
  for (const char* plan : {"transit-depot", "boatyard-pad", "ferry-quay"}) {
    const Sections sections = sectionsOf(plan);
    const TrainProfile train = sections.train();
    for (const SectionNote& note : sectionNotes(train, sections.units())) {
      const auto vault = std::ranges::find(train.vaults, note.object, &ProfileVault::id);
      if (vault == train.vaults.end() || !note.text.starts_with("LID ")) continue;
      for (const ProfileManway& m : vault->manways) {
        const double half = inMetres(m.diameter) / 2;
        if (m.beyond) continue;
        ++openings;
        for (const SectionArea& piece : note.lines)
          EXPECT_TRUE(piece.to < m.station - half || piece.from > m.station + half) << plan;
      }
    }
  }
  EXPECT_GT(openings, 5u);
}

TEST(LongSection, ALegOfNoLengthIsToldOnce) {
  const Sections sections(test::twoVaultPlan());
  RunProfile inlet = sections.run("IN");
  const auto columns = [&] {
    std::size_t turned = 0;
    for (const PageText& t : sectionTexts(
             sectionPage(longSectionBlock(inlet, kRunTitle, sections.units(), 300, 100), 300)))
      turned += t.angle == 90 ? 1 : 0;
    return turned;
  };
  const std::size_t before = columns();
  inlet.points.insert(inlet.points.begin() + 1, inlet.points[1]);
  ProfileLeg none = inlet.legs[1];
  none.vertical = true;
  inlet.legs.insert(inlet.legs.begin() + 1, none);
  EXPECT_EQ(columns(), before);
}

// A level stands where its plane puts it: heights are stretched, lengths are not.
TEST(SectionMarks, StretchesHeightsOnly) {
  const Sections sections(test::twoVaultPlan());
  const auto once = sectionMarks(sections.train(), {1}), five = sectionMarks(sections.train(), {5});
  ASSERT_EQ(once.size(), five.size());
  std::size_t compared = 0;
  for (std::size_t i = 0; i < once.size(); ++i) {
    if (once[i].layer != Layer::Vault && once[i].layer != Layer::Baffle) continue;
    for (std::size_t k = 0; k < once[i].points.size(); ++k) {
      EXPECT_NEAR(once[i].points[k].x, five[i].points[k].x, 1e-9);
      EXPECT_NEAR(once[i].points[k].y * 5, five[i].points[k].y, 1e-9);
      ++compared;
    }
  }
  EXPECT_GT(compared, 40u);
}

TEST(SectionMarks, EveryVaultRunAndBaffleIsDrawn) {
  const Sections sections(test::twoVaultPlan());
  std::set<Id> drawn;
  for (const Mark& mark : sectionMarks(sections.train(), {2}))
    drawn.insert(mark.object);
  for (const char* id : {"V1", "V2", "V1-B1", "V2-B1", "V1-M1", "V1-M2", "IN", "IC-1", "LK", "IC-2",
                         "OF", "SU", "FC"}) {
    EXPECT_TRUE(drawn.contains(id)) << id;
  }
}

TEST(LongSection, MatchesTheGoldenDumps) {
  const Sections sections(test::twoVaultPlan());
  testing::expectGolden("sheet/golden/section-train.txt", dump(trainPage(sections)));
  testing::expectGolden(
      "sheet/golden/section-inlet.txt",
      dump(sectionPage(longSectionBlock(sections.run("IN"), kRunTitle, sections.units(), 300, 100),
                       300)));
}

} // namespace
} // namespace sump
