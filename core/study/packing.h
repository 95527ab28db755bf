#pragma once
// One-dimensional bin packing: sizes into the least bins of one capacity, with a lower bound beside
// the answer, so that it is known whether fewer could do.
//
// The bound is the best of the length itself, Martello and Toth's L2 and Fekete and Schepers' dual
// feasible functions; the search fills one bin after another with the largest size left and every
// completion that no other one dominates (bin completion). All of it from memory: S. Martello, P.
// Toth, Knapsack Problems (1990), ch. 8; S. Fekete, J. Schepers, Math. Programming 91 (2001) 11; R.
// Korf, IJCAI 2003, 1252.

#include <cstddef>
#include <cstdint>
#include <vector>

namespace sump {

struct Packing {
  std::vector<std::vector<std::size_t>> bins; ///< indices into the sizes that were given
  int lowerBound = 0;                         ///< no packing has fewer bins
  bool proven() const { return static_cast<int>(bins.size()) == lowerBound; }
};

/// Elementary steps of the search, a second or less; counted, so that every machine gives the same
/// answer.
inline constexpr std::int64_t kPackingEffort = 20'000'000;

/// Each size is more than 0 and at most `capacity`, which is below 2^56. Same input, same answer.
Packing packLeast(const std::vector<std::int64_t>& sizes, std::int64_t capacity,
                  std::int64_t effort = kPackingEffort);

/// No packing has fewer bins than this; found without a search.
int packingLowerBound(const std::vector<std::int64_t>& sizes, std::int64_t capacity);

} // namespace sump
