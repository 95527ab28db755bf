#pragma once
// The names of objects for reports, sheets and the window.

#include "core/plan/plan.h"

#include <string>
#include <vector>

namespace sump {

/// An object's own name, or its id.
template <class T> std::string called(const T& item) {
  return item.name.empty() ? item.id : item.name;
}

/// The name that people gave an object other than a run, which is called by its tag; its id where
/// it has none.
std::string spokenName(const Plan& plan, const Id& id);
/// Of several, `Vault 1, Vault 2`.
std::string spokenNames(const Plan& plan, const std::vector<Id>& ids);

} // namespace sump
