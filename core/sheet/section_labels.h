#pragma once
// Sets the notes of a long section on paper: levels on their lines, chamber numbers in their
// chambers, inverts by their points. Private to core/sheet.

#include "core/sheet/section_marks.h"
#include "core/sheet/view.h"

#include <string>
#include <vector>

namespace sump {

/// Where a section is drawn, and how its heights are stretched.
struct SectionView {
  SheetView view;
  SectionPlane plane;
  Point2 toPaper(double station, Length level) const {
    return view.toPaper(plane.at(station, level));
  }
};

/// Draws the notes onto the page. Returns the texts that found no room, each with the key that
/// stands at its place instead, or with its place where not even that does. `keys`: how many
/// the section has taken so far.
std::vector<std::string> labelSection(const std::vector<SectionNote>& notes,
                                      const SectionView& section, const std::vector<Mark>& marks,
                                      std::size_t& keys, Page& page);

} // namespace sump
