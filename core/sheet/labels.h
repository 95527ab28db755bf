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
  bool levels = true;      ///< vaults and drains with theirs
  bool references = false; ///< a room's name says where it is drawn large
  /// Puts a sheet's own labels on the view before all but the notes; null: none.
  std::function<void(LabelBoard&)> first{};
};

/// Draws every label that finds room on the view. Returns the tags of the runs that found none.
std::vector<std::string> drawLabels(const SheetView& view, const LabelRequest& request, Page& page);

} // namespace sump
