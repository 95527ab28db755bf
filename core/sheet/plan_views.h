#pragma once
// Views of the plan with their labels, over several pages with match lines where one page does not
// show them at a legible scale. Private to core/sheet.

#include "core/sheet/arrange.h"
#include "core/sheet/flow.h"
#include "core/sheet/labels.h"
#include "core/sheet/view_references.h"

#include <functional>

namespace sump {

/// The largest standard scale at which `site` with `margin` mm of paper about it fits the frame.
double fittedScale(const PaperBox& site, const PaperBox& frame, double margin, UnitSystem units);
/// The smallest drawing in which the tankage is legible: 1:128 or 1:100.
double leastLegibleScale(UnitSystem units);

/// A view of part of the site on each page, side by side: as many as the box takes at that scale.
/// Throws std::invalid_argument for more than 60.
struct Tile {
  PaperBox site; ///< metres
  int column = 0, row = 0;
};
struct Tiling {
  std::vector<Tile> tiles; ///< from the upper left, row by row
  int columns = 1, rows = 1;
};
Tiling tiling(const PaperBox& site, const PaperBox& frame, double scale);

/// What of the marks a view shows: symbols at the size that its scale asks for and whole; words in
/// the plan have leaders of their own.
std::vector<Mark> viewMarks(const SheetJob& job, const SheetView& view,
                            const std::vector<Mark>& marks);

/// Draws one view: marks with those of the sections cut in it, then what `label` puts on what it
/// shows of them, then its title, `below` mm under the frame.
using DrawLabels = std::function<void(const SheetView&, const std::vector<Mark>& shown, Page&)>;
void drawSiteView(const SheetJob& job, const SheetView& view, const std::vector<Mark>& marks,
                  const DrawLabels& label, Page& page, double below = 0,
                  const std::vector<SectionCut>& cuts = {});

/// The box at the scale that fits a page's drawing region, or at the least legible one over several
/// pages. Afterwards `flow` stands on the last of these pages. Returns the views drawn.
std::vector<SheetView> drawTiledView(const SheetJob& job, const std::string& title,
                                     const PaperBox& site, const std::vector<Mark>& marks,
                                     const DrawLabels& label, PageFlow& flow,
                                     const std::vector<SectionCut>& cuts = {});

/// The marks without those of some objects' layers: `keep` says which stay.
std::vector<Mark> marksOf(const std::vector<Mark>& marks,
                          const std::function<bool(const Mark&)>& keep);

} // namespace sump
