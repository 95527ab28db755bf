#pragma once
// Which interconnects one detail shows. Private to core/sheet.

#include "core/sheet/sheet_set.h"

#include <string>
#include <vector>

namespace sump {

/// The interconnects that go through their baffles at the same levels and places, with the same
/// pipe, as `run`, itself among them, in the plan's order: a detail of the first holds for all.
std::vector<Id> alikeInterconnects(const Plan& plan, const Study& study, const Id& run);
/// The plan points from there to the detail, in each vault once. False for other runs.
bool isFirstInItsVault(const SheetJob& job, const Id& run);
/// `IC-1 (IC-2 similar)`.
std::string interconnectTags(const SheetJob& job, const std::vector<Id>& alike);
/// How the first lies about its baffle, and in which other vaults its levels hold.
std::vector<std::string> interconnectNotes(const SheetJob& job, const std::vector<Id>& alike);

} // namespace sump
