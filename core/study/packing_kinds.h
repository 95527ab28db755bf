#pragma once
// Sizes to pack, gathered by equal size. Private to core/study.

#include <cstddef>
#include <cstdint>
#include <vector>

namespace sump {

struct PackingKinds {
  std::vector<std::int64_t> size; ///< falling
  std::vector<int> count;
  std::int64_t total() const;
};

PackingKinds packingKinds(const std::vector<std::int64_t>& sizes);

/// Martello and Toth's L2 of what is left: for each threshold the larger sizes that cannot share a
/// bin, and the room that the middle ones must find beside them. O(kinds).
int boundL2(const PackingKinds& kinds, std::int64_t capacity);
/// The best over Fekete and Schepers' dual feasible functions, alone and after a threshold.
int boundDualFeasible(const PackingKinds& kinds, std::int64_t capacity);

} // namespace sump
