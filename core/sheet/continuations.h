#pragma once
// Where runs leave a view of the plan, and what they go on to. Private to core/sheet.

#include "core/rules/review.h"
#include "core/sheet/label_board.h"

namespace sump {

/// A place at the edge of what a view shows where a run goes on beyond it.
struct Continuation {
  Point2 at;   ///< site
  Point2 seen; ///< of length 1; from there along what the view shows
  Id run;
  bool onward = true; ///< it leaves there as the run is drawn; else it comes in
  bool last = true;   ///< beyond it the run ends: the view shows no more of it
};

/// The parts of a line that the view shows.
std::vector<Polyline> shownParts(const Polyline& line, const SheetView& view);
/// The longest part of a line that lies beside the view; all of it where none does.
Polyline longestBeside(const Polyline& line, const SheetView& view);
/// Of all runs, but not at edges that a neighbour of the view goes on from.
std::vector<Continuation> continuations(const Plan& plan, const SheetView& view);
/// Says where each leads to, and `elsewhere` where that is drawn; may be empty. `onlyFree`: not
/// where that covers much.
void labelContinuations(const Review& review, const SheetView& view, const std::string& elsewhere,
                        bool onlyFree, LabelBoard& board);

/// Says what each run starts from or goes to that is a stub or a line that is there already, at
/// which level and with how much flow, where that is known. `enlarged`: shows its part; null: no
/// other view does.
void labelStarts(const Review& review, const SheetView& view, const SheetView* enlarged,
                 LabelBoard& board);
/// As labelStarts of conduits only, with the sheet that schedules what feeds them.
void labelConduitStarts(const Review& review, const SheetView& view, LabelBoard& board);

} // namespace sump
