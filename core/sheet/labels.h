#pragma once
// The texts on a view of the plan. Private to core/sheet.

#include "core/rules/review.h"
#include "core/sheet/view.h"

#include <functional>
#include <string>
#include <vector>

namespace sump {

class LabelBoard;

/// How much of a run's label a view shows.
enum class RunLabel { None, Tag, Full };

struct LabelRequest {
  const Review& review;
  const Catalog& catalog;
  const std::vector<Mark>& marks;
  std::function<RunLabel(const Run&)> runs;
  /// The enlarged view, whose objects are named there and not here; null: none.
  const SheetView* enlarged = nullptr;
  bool notes = true;       ///< the plan's own dimensions and words are told
  bool levels = true;      ///< vaults, drains and buildings with theirs
  bool references = false; ///< a room's name says where it is drawn large
  /// Puts a sheet's own labels on the view before all but the notes; null: none.
  std::function<void(LabelBoard&)> first{};
  /// Puts what may be left out on what room the others leave; null: none.
  std::function<void(LabelBoard&)> last{};
};

/// For a view that names no runs.
RunLabel noRuns(const Run& run);
/// So little of the line shows that it is the end of one that another view shows and names.
bool isStub(const SheetView& view, const Polyline& line);

/// Names what there is besides the tankage: drains, rooms, buildings, paving, existing lines.
void labelSurroundings(const SheetView& view, const LabelRequest& request, LabelBoard& board);
/// Numbers in the chambers, as the tables have them, where they cover little; else beside the vault
/// with a leader.
void labelChambers(const Plan& plan, const SheetView& view, LabelBoard& board);

/// Draws every label that finds room on the view. Returns the tags of the runs that found none.
std::vector<std::string> drawLabels(const SheetView& view, const LabelRequest& request, Page& page);

} // namespace sump
