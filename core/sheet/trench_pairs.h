#pragma once
// Which trenches of a plan are dug together. Private to core/sheet.

#include "core/sheet/sheet_set.h"
#include "core/study/earth.h"

#include <cstddef>
#include <string>
#include <vector>

namespace sump {

/// Of each trench those that are dug together with it where they meet, by their place in the list.
using TrenchPairs = std::vector<std::vector<std::size_t>>;
TrenchPairs trenchPairs(const std::vector<TrenchStudy>& trenches);
/// The trench with all that are dug together with it, directly or by way of others.
std::vector<std::size_t> dugWith(const TrenchPairs& pairs, std::size_t first);
/// `SU-1, RC-1`
std::string trenchNames(const SheetJob& job, const std::vector<std::size_t>& places);

} // namespace sump
