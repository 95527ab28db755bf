#pragma once
// What a finding concerns: services of lines, and whose work it is. Private to core/rules.

#include "core/plan/ends.h"
#include "core/rules/rule.h"

namespace sump {

/// Fills `services` from the lines and ports among the finding's objects and from a service named
/// by `which`, and `trade` from the rule; a general rule's finding about lines of one trade only is
/// that trade's.
void addConcerns(const Locator& locator, Trade ofRule, Finding& finding);

} // namespace sump
