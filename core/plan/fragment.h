#pragma once
// Part of a plan as a plan of its own, and the way back: cutting out and pasting, also between two
// plans.

#include "core/plan/plan.h"

#include <map>
#include <set>

namespace sump {

/// A plan with these objects alone. Run ends and note ends on other objects are free, at the place
/// and level they had. The title block, the site, the basis and the rest stay behind; the units
/// come along.
Plan fragmentOf(const Plan& plan, const std::set<Id>& ids);

struct Pasted {
  Plan plan;
  std::set<Id> added; ///< objects that can be selected
};
/// Adds the fragment's objects, moved by `by`. Ids that the plan has already are replaced by fresh
/// ones; all others stay.
Pasted pasted(const Plan& plan, const Plan& fragment, Point2 by);

} // namespace sump
