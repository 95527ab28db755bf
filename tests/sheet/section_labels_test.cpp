// Where the notes of a long section stand.

#include "core/sheet/section_labels.h"

#include "core/sheet/clip.h"
#include "core/sheet/mark_pen.h"
#include "core/sheet/section_places.h"

#include <gtest/gtest.h>

#include <tuple>

namespace sump {
namespace {

// Three chambers at 1:50, the middle one 8 mm wide: no text has room in it.
TEST(SectionLabels, TheLevelOfANarrowChamberStandsInNoOther) {
  SectionView section;
  section.view = SheetView{"", "", {{0, 0}, {200, 100}}, {2.2, 0.5}, 50};
  const std::vector<std::pair<double, double>> chambers{{0, 2}, {2, 2.4}, {2.4, 4.4}};
  std::vector<SectionNote> notes;
  for (const auto& [from, to] : chambers) {
    SectionNote number{"V1", (from + to) / 2, metres(0), std::to_string(notes.size() + 1)};
    number.inside = SectionArea{from, to, metres(0), metres(1)};
    notes.push_back(number);
  }
  SectionNote peak{"V1", 2.2, metres(0.6), "PEAK 0.600"};
  peak.lines = {{2, 2.4, metres(0.6), metres(0.6)}};
  notes.push_back(peak);
  Page page;
  std::size_t keys = 0;
  EXPECT_TRUE(labelSection(notes, section, {}, keys, page).empty());
  int seen = 0;
  for (const PageItem& item : page.items) {
    const auto* text = std::get_if<PageText>(&item);
    if (text == nullptr || text->text != "PEAK 0.600") continue;
    ++seen;
    const PaperBox box = around(textBox(*text));
    for (const auto& [from, to] : {chambers.front(), chambers.back()}) {
      const PaperBox other =
          around({section.toPaper(from, metres(0)), section.toPaper(to, metres(1))});
      EXPECT_FALSE(other.meets(box)) << "at " << text->at.x << "," << text->at.y;
    }
  }
  EXPECT_EQ(seen, 1);
}

PaperBox boxOf(const SectionView& section, const SectionArea& area) {
  return around({section.toPaper(area.from, area.low), section.toPaper(area.to, area.high)});
}

// Two vaults at 1:50. The way to the left and to the middle is taken: the nearest room is in V2.
TEST(SectionLabels, WhatStandsInAVaultIsNotToldInTheNextOne) {
  SectionView section;
  section.view = SheetView{"", "", {{0, 0}, {200, 100}}, {2.2, 0.5}, 50};
  const SectionArea own{0, 1.9, metres(0), metres(1)}, next{2.1, 4.4, metres(0), metres(1)};
  std::vector<SectionNote> notes;
  for (const auto& [vault, area] : {std::pair{"V1", own}, std::pair{"V2", next}}) {
    SectionNote number{vault, (area.from + area.to) / 2, metres(0), "1"};
    number.inside = area;
    notes.push_back(number);
  }
  SectionNote rise{"LK-1", 1.75, metres(0.5), "RISE 572 mm"};
  rise.pointed = true;
  notes.push_back(rise);
  std::vector<Mark> marks;
  MarkPen walls(marks, "V1", Layer::Vault);
  for (double x = 0; x < 1.7; x += 0.1)
    walls.path({{x, -0.2}, {x, 1.2}}, LineStyle{Ink::Black, 0.35, {}});
  Page page;
  std::size_t keys = 0;
  EXPECT_TRUE(labelSection(notes, section, marks, keys, page).empty());
  int seen = 0;
  for (const PageItem& item : page.items) {
    const auto* text = std::get_if<PageText>(&item);
    if (text == nullptr || text->text != "RISE 572 mm") continue;
    ++seen;
    EXPECT_FALSE(boxOf(section, next).meets(around(textBox(*text)))) << text->at.x;
  }
  EXPECT_EQ(seen, 1);
}

// At 1:50 a baffle stands where a text about the point has the least way.
TEST(SectionLabels, NoTextTakesABaffleAwayThatHasRoomBesideIt) {
  SectionView section;
  section.view = SheetView{"", "", {{0, 0}, {200, 100}}, {2.2, 0.5}, 50};
  const SectionArea baffle{2.3, 2.4, metres(0), metres(1)};
  std::vector<Mark> marks;
  MarkPen(marks, "B1", Layer::Baffle)
      .ring({{baffle.from, 0}, {baffle.to, 0}, {baffle.to, 1}, {baffle.from, 1}},
            LineStyle{Ink::Black, 0.25, {}}, FillStyle{Ink::Grey});
  SectionNote rise{"LK-1", 2.2, metres(0.5), "RISE 572 mm"};
  rise.side = NoteSide::Right;
  Page page;
  std::size_t keys = 0;
  EXPECT_TRUE(labelSection({rise}, section, marks, keys, page).empty());
  int seen = 0;
  for (const PageItem& item : page.items) {
    const auto* text = std::get_if<PageText>(&item);
    if (text == nullptr || text->text != "RISE 572 mm") continue;
    ++seen;
    EXPECT_FALSE(boxOf(section, baffle).meets(around(textBox(*text)))) << text->at.x;
  }
  EXPECT_EQ(seen, 1);
}

// The middle of the water's line lies in a pipe, where a leader would tell of that.
TEST(SectionLabels, TheLeaderToALevelEndsInNoPipe) {
  SectionView section;
  section.view = SheetView{"", "", {{0, 0}, {200, 100}}, {2.2, 0.5}, 50};
  const SectionArea pipe{1.9, 2.5, metres(0.3), metres(0.7)};
  std::vector<Mark> marks;
  MarkPen(marks, "OF-1", Layer::Run)
      .ring({{1.9, 0.3}, {2.5, 0.3}, {2.5, 0.7}, {1.9, 0.7}}, LineStyle{Ink::Black, 0.25, {}},
            FillStyle{Ink::White});
  SectionNote peak{"V1", 2.2, metres(0.5), "PEAK 0.500"};
  peak.lines = {{1.8, 2.6, metres(0.5), metres(0.5)}}; // 16 mm: the text is longer
  Page page;
  std::size_t keys = 0;
  EXPECT_TRUE(labelSection({peak}, section, marks, keys, page).empty());
  int dots = 0;
  for (const PageItem& item : page.items) {
    const auto* shape = std::get_if<PageShape>(&item);
    if (shape == nullptr || !shape->round) continue;
    ++dots;
    EXPECT_FALSE(boxOf(section, pipe).holds(shape->points[0])) << shape->points[0].x;
  }
  EXPECT_EQ(dots, 1);
}

// Words about a pipe would point into what stands at its middle.
TEST(SectionLabels, APipeIsPointedAtWhereNothingStandsOnIt) {
  RunProfile profile;
  profile.points.resize(2);
  profile.points[1].station = 10;
  profile.points[0].invert = metres(2);
  profile.points[1].invert = metres(1);
  profile.legs.resize(1);
  profile.parts = {{"A", PartKind::BallValve, 0, 2, metres(1.8)}};
  auto [from, to] = plainStretch(profile, 0); // nothing at the middle: the whole leg
  EXPECT_EQ(from.station, 0);
  EXPECT_EQ(to.station, 10);
  profile.parts.push_back({"B", PartKind::Union, 0, 5.5, metres(1.45)});
  std::tie(from, to) = plainStretch(profile, 0); // of 2, 3.5 and 4.5 m the last
  EXPECT_DOUBLE_EQ(from.station, 5.5);
  EXPECT_DOUBLE_EQ(to.station, 10);
  EXPECT_NEAR(inMetres(from.invert), 1.45, 1e-9); // 2 - 5.5 / 10
  EXPECT_NEAR(inMetres(to.invert), 1, 1e-9);
}

} // namespace
} // namespace sump
