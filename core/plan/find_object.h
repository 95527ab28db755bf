#pragma once
// What a single id names, without an index of the whole plan: for the window, which asks about one
// object at every step of a drag. A Locator (ends.h) is better where many are asked.

#include "core/plan/ends.h"

namespace sump {

/// The kind of the object with this id; nothing when there is none.
std::optional<ObjectKind> kindOfObject(const Plan& plan, std::string_view id);

} // namespace sump
