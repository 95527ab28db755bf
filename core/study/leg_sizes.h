#pragma once
// The sizes of pipe within one leg. Private to core/study.

#include "core/catalog/catalog.h"
#include "core/plan/plan.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

/// A stretch of a leg in one nominal size.
struct SizedStretch {
  std::string size;
  double share = 1; ///< of the leg's length
};
/// From the leg's start: one stretch more than reducers stand within it. Leg::size is the first's.
std::vector<SizedStretch> legSizes(const Run& run, std::size_t leg);

/// The smallest bore of a leg; nothing when a size of it is not in the catalogue.
std::optional<Length> smallestBore(const Catalog& catalog, const Run& run, std::size_t leg);

} // namespace sump
