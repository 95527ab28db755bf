// Dimension notes: where their lines and texts lie, on the site and on the sheet.

#include "core/sheet/note_marks.h"

#include "core/plan/edits_objects.h"
#include "core/sheet/compose.h"
#include "core/sheet/marks.h"
#include "tests/sheet/small_plan.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace sump {
namespace {

DimensionNote note(NoteEnd from, NoteEnd to, double offset, const char* text = "") {
  return {"N1", std::move(from), std::move(to), metres(offset), text};
}

void expectNear(Point2 is, Point2 expected) {
  EXPECT_NEAR(is.x, expected.x, 1e-9);
  EXPECT_NEAR(is.y, expected.y, 1e-9);
}

// By hand: 3 m north from (1, 1), half a metre to the left, which is west.
TEST(NoteDrawing, StandsToTheLeftOfItsPlacesAndReadsFromTheRight) {
  const NoteDrawing d =
      noteDrawing(note({"", {1, 1}}, {"", {1, 4}}, 0.5), {1, 1}, {1, 4}, UnitSystem::Metric);
  expectNear(d.lineFrom, {0.5, 1});
  expectNear(d.lineTo, {0.5, 4});
  expectNear(d.textAt, {0.5, 2.5});
  expectNear(d.along, {0, 1});
  EXPECT_EQ(d.text, "3.000 m");
  const NoteDrawing back =
      noteDrawing(note({"", {1, 4}}, {"", {1, 1}}, 0.5), {1, 4}, {1, 1}, UnitSystem::Metric);
  expectNear(back.lineFrom, {1.5, 4}); // left of southward is east
  expectNear(back.along, {0, 1});
}

TEST(NoteDrawing, OwnTextStandsInPlaceOfTheLength) {
  const DimensionNote own = note({"", {0, 0}}, {"", {2, 0}}, 1, "keep clear");
  EXPECT_EQ(noteDrawing(own, {0, 0}, {2, 0}, UnitSystem::Metric).text, "keep clear");
}

TEST(NoteDrawing, WithBothEndsAtOnePlaceIsALetteredNote) {
  const NoteDrawing d = noteDrawing(note({"", {1, 1}}, {"", {1, 1}}, 2, "existing tree"), {1, 1},
                                    {1, 1}, UnitSystem::Metric);
  EXPECT_TRUE(d.lettered);
  expectNear(d.textAt, {1, 3});
}

TEST(NoteDrawing, FollowsTheVaultThatItMeasures) {
  Plan plan = testing::smallPlan();
  plan.notes.append(note({"V1", {0, 0}}, {"V2", {0, 0}}, 1));
  const NoteDrawing before = noteDrawings(plan).at(0);
  const NoteDrawing after = noteDrawings(moveObjects(plan, {"V2"}, {3, 0})).at(0);
  expectNear(after.from, before.from);
  expectNear(after.to, before.to + Point2{3, 0});
  EXPECT_NE(after.text, before.text);
}

TEST(NoteMarks, AreDrawnLastAndBelongToTheirNote) {
  Plan plan = testing::smallPlan();
  plan.notes.append(note({"", {1, 1}}, {"", {9, 1}}, 1));
  const std::vector<Mark> marks = planMarks(plan, Study{});
  const auto isNote = [](const Mark& m) { return m.object == "N1" && m.layer == Layer::Note; };
  // Two extension lines, the dimension line and two strokes.
  EXPECT_EQ(std::count_if(marks.begin(), marks.end(), isNote), 5);
  EXPECT_TRUE(isNote(marks.back()));
}

TEST(NoteMarks, TheSheetPrintsTheLength) {
  Plan plan = testing::smallPlan();
  const Point2 a = plan.vaults[0].centre;
  plan.notes.append(note({"", a}, {"", a + Point2{inMetres(feet(7.25)), 0}}, -4));
  const Catalog& catalog = builtinCatalog();
  const auto pages = composeSheets(review(plan, catalog), {"arch-d", 0, &catalog});
  const auto sheet = std::find_if(pages.begin(), pages.end(),
                                  [](const Page& page) { return page.number == "P-101"; });
  ASSERT_NE(sheet, pages.end());
  int seen = 0;
  for (const PageItem& item : sheet->items) {
    const auto* text = std::get_if<PageText>(&item);
    if (text != nullptr && text->text == "7'-3\"") {
      ++seen;
      EXPECT_NEAR(text->angle, 0, 1e-9);
    }
  }
  EXPECT_GE(seen, 1);
}

} // namespace
} // namespace sump
