#pragma once
// Which figures a plan is judged by.

#include "core/catalog/catalog.h"
#include "core/plan/plan.h"

namespace sump {

/// The generic limits, over them those of the plan's code profile, over them the plan's own values.
/// An unknown profile counts as none here; rule `code-profile` reports it.
Limits limitsFor(const Plan& plan, const Catalog& catalog);

} // namespace sump
