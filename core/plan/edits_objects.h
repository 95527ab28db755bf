#pragma once
// Edits of whole objects: a Plan in, a Plan out. None of them judges the result; the caller asks
// plan/consistency.h.

#include "core/plan/ends.h"
#include "core/plan/plan.h"

#include <map>
#include <set>
#include <string_view>

namespace sump {

/// `V-3` for the stem `V` when `V-1` and `V-2` are taken.
Id freshId(const Plan& plan, std::string_view stem);
/// The letters before the last number, without a trailing dash: `V` of `V-2` and of `V2`, `X` of
/// `12`.
std::string stemOf(const Id& id);

/// Moves objects in plan by a vector in metres. What hangs on them goes along: run ends attached to
/// a moved object, run corners that stand inside a moved vault or room, the whole of a run whose
/// two ends are both carried, and note ends. A dimension note moved alone is set off further.
Plan moveObjects(const Plan& plan, const std::set<Id>& ids, Point2 by);

/// Puts a vault's frame elsewhere; run corners inside the vault keep their local places.
Plan reframeVault(const Plan& plan, const Id& vault, const Frame& frame);

/// Takes objects out. Runs that hang on them by both ends go too; a run that hangs by one keeps its
/// place there with a free end, at the level that the lost object gave it.
Plan eraseObjects(const Plan& plan, const std::set<Id>& ids);

struct Copied {
  Plan plan;
  std::map<Id, Id> copies; ///< from original to copy, parts included
};
/// Adds copies of vaults, rooms, basins, washes, sewers, runs and site objects, moved by `by`. A
/// copied run hangs on the copies of what it hung on, or on the same object if that was not copied.
Copied copyObjects(const Plan& plan, const std::set<Id>& ids, Point2 by);

/// Every object that can be selected on its own, in the plan's order.
std::vector<Id> allObjects(const Plan& plan);

} // namespace sump
