#pragma once
// What changed since an earlier plan, on the sheets: clouds round it on the plan, with the
// revision's index in a triangle, and the lists of changes. Private to core/sheet.

#include "core/geometry/box_index.h"
#include "core/sheet/label_board.h"
#include "core/sheet/sheet_set.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

/// What one cloud goes round, on the site: along lines, and round the rest as a whole.
struct Cloud {
  Box extent; ///< of all
  std::vector<Polyline> lines;
  std::optional<Box> rest;
};

/// Clouds are numbered from 1; the list of changes tells which change is in which.
struct CloudSet {
  std::string revision; ///< the plan's revision index; `?` when it has none
  std::vector<Cloud> clouds;
  std::vector<int> ofChange; ///< a cloud's number for each change; 0: none is drawn
};

/// Changes of one object whose places meet share a cloud. The property line, site pictures and
/// what has no place get none. Empty without a comparison.
CloudSet revisionClouds(const SheetJob& job);

/// Draws those that the view shows and that the `enlarged` view does not show whole (null: there is
/// no such view). Returns what found no room for its triangle: `cloud 3`.
std::vector<std::string> drawClouds(const CloudSet& set, const SheetView& view,
                                    const SheetView* enlarged, LabelBoard& board, Page& page);

/// The job must have a comparison.
Block planChangeBlock(const SheetJob& job, double width);
Block billChangeBlock(const SheetJob& job, double width);

} // namespace sump
