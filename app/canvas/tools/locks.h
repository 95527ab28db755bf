#pragma once
// Locked objects are left alone by gestures.

#include "core/plan/plan.h"

#include <algorithm>
#include <set>

namespace sump {

inline bool isLocked(const Plan& plan, const Id& id) {
  return std::ranges::find(plan.locked, id) != plan.locked.end();
}

/// Those of the objects that may be moved or erased.
inline std::set<Id> unlocked(const Plan& plan, std::set<Id> ids) {
  for (const Id& id : plan.locked)
    ids.erase(id);
  return ids;
}

} // namespace sump
