// Where the notes of a long section stand.

#include "core/sheet/section_labels.h"

#include "core/sheet/clip.h"

#include <gtest/gtest.h>

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

} // namespace
} // namespace sump
