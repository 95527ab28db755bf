#pragma once
// What a view of the plan tells of other views: where sections are cut, where details and
// elevations are. Private to core/sheet.

#include "core/sheet/label_board.h"
#include "core/sheet/sheet_set.h"

#include <string>
#include <vector>

namespace sump {

/// Where a section is cut, from its left to its right side: it looks to the left of this line.
struct SectionCut {
  Polyline line; ///< as the drawing's
  std::string anchor;
};
/// Of each vault, and the long section through all.
std::vector<SectionCut> vaultCuts(const SheetJob& job);

/// Adds the cutting lines, the dashes at their ends and the arrows that show where they look to.
void addCutMarks(const std::vector<SectionCut>& cuts, const SheetView& view,
                 std::vector<Mark>& marks);
/// Puts the bubbles at the ends of the cuts that the view shows.
void labelCuts(const std::vector<SectionCut>& cuts, const SheetView& view, LabelBoard& board);

/// Where a detail is.
struct DetailPlace {
  Point2 at; ///< site
  std::string anchor;
};
/// In the order of the runs; sheets/details.cpp draws them.
std::vector<DetailPlace> detailPlaces(const SheetJob& job);

/// Where each vault, room and run is shown in section, elevation or detail.
Block viewTable(const SheetJob& job, double width);

} // namespace sump
