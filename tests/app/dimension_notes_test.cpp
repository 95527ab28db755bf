// Texts of dimension notes keep off each other, off other notes' lines and names keep off both.

#include "app/canvas/notes.h"
#include "core/plan/edits.h"
#include "tests/app/window_fixture.h"

namespace sump {
namespace {

class DimensionNotes : public testing::WindowTest {
protected:
  /// Chains of short dimensions, side by side and crossing, and lettered notes at one place.
  Plan crowded() {
    Plan next = plan();
    const auto add = [&next](Point2 from, Point2 to, double offset, const char* text = "") {
      DimensionNote note;
      note.id = "DN-" + std::to_string(next.notes.size() + 100);
      note.from.at = from;
      note.to.at = to;
      note.offset = metres(offset);
      note.text = text;
      next = withObject(next, note);
    };
    for (int i = 0; i < 5; ++i)
      add({40 + 0.6 * i, 12}, {40.6 + 0.6 * i, 12}, 0.5);
    add({40, 11}, {43, 11}, 1.5); // on the chain's own line
    add({45, 8}, {45, 16}, 0);
    add({42, 13}, {48, 13}, 0);
    add({50, 12}, {50, 12}, 1, "Keep this hydrant in use");
    add({50.4, 12}, {50.4, 12}, 1, "Break out by hand");
    return next;
  }
};

TEST_F(DimensionNotes, StandApart) {
  open(testing::samplePath("transit-depot.sump"));
  ASSERT_FALSE(document().commit("Measure", crowded()));
  settle();
  for (const double zoom : {1.0, 1.6, 2.5}) {
    canvas().lookAt({"DN-101", "DN-106", "DN-109"}, std::nullopt);
    canvas().zoomBy(zoom);
    settle();
    canvas().repaint();
    const std::vector<Label>& names = canvas().drawn().names;
    int notes = 0;
    for (const Label& label : names) {
      for (const Label& other : names) {
        if (&label == &other) continue;
        EXPECT_FALSE(convexOverlap(label.box, other.box))
            << zoom << ": " << label.text.toStdString() << " on " << other.text.toStdString();
      }
      notes += plan().notes.find(label.object) != nullptr ? 1 : 0;
    }
    EXPECT_GE(notes, 3);
    for (const NoteDrawing& note : notesInSight(*canvas().scene(), canvas().view())) {
      for (const QLineF& line : noteLines(note, canvas().view())) {
        if (line.length() == 0) continue;
        for (const Label& label : names) {
          if (label.object == note.id) continue;
          EXPECT_FALSE(convexOverlap(label.box, QPolygonF({line.p1(), line.p2()})))
              << zoom << ": " << label.text.toStdString() << " on the line of " << note.id;
        }
      }
    }
  }
}

// Alone it stands where it always stood: at the middle, just above its line.
TEST_F(DimensionNotes, FirstPlaceIsAboveTheMiddle) {
  open(testing::samplePath("transit-depot.sump"));
  DimensionNote note;
  note.id = "DN-7";
  note.from.at = {40, 12};
  note.to.at = {52, 12};
  ASSERT_FALSE(document().commit("Measure", withObject(plan(), note)));
  settle();
  canvas().lookAt({"DN-7"}, std::nullopt);
  settle();
  canvas().repaint();
  const std::vector<Label>& names = canvas().drawn().names;
  const auto found = std::ranges::find(names, Id("DN-7"), &Label::object);
  ASSERT_NE(found, names.end());
  const QPointF middle = canvas().view().toScreen({46, 12});
  EXPECT_NEAR(found->centre.x(), middle.x(), 0.5);
  EXPECT_NEAR(middle.y() - found->centre.y(), 9, 0.5);
}

} // namespace
} // namespace sump
