// Lower bounds for bin packing.

#include "core/study/packing_kinds.h"

#include "core/study/packing.h"

#include <algorithm>
#include <functional>
#include <numeric>

namespace sump {

namespace {

std::int64_t ceilDivide(std::int64_t a, std::int64_t b) {
  return a <= 0 ? 0 : (a + b - 1) / b;
}

/// u(k) of Fekete and Schepers times k(k+1): a size x of capacity C counts as floor((k+1)x/C)/k, or
/// as x/C where (k+1)x/C is whole. Their sum over all sizes is no more than the bins.
std::int64_t dualValue(std::int64_t size, std::int64_t capacity, std::int64_t k) {
  const std::int64_t scaled = (k + 1) * size;
  const std::int64_t whole = scaled / capacity;
  return scaled % capacity == 0 ? whole * k : whole * (k + 1);
}

/// Sizes over capacity - threshold count as the whole capacity, those under the threshold as none.
std::int64_t thresholdValue(std::int64_t size, std::int64_t capacity, std::int64_t threshold) {
  if (size > capacity - threshold) return capacity;
  return size < threshold ? 0 : size;
}

constexpr std::int64_t kMostK = 20;
/// With more kinds the thresholds are left to L2, which does them all at once.
constexpr std::size_t kManyKinds = 300;

} // namespace

std::int64_t PackingKinds::total() const {
  return std::transform_reduce(size.begin(), size.end(), count.begin(), std::int64_t{0},
                               std::plus<>(),
                               [](std::int64_t s, int n) { return s * std::int64_t{n}; });
}

PackingKinds packingKinds(const std::vector<std::int64_t>& sizes) {
  std::vector<std::int64_t> sorted = sizes;
  std::ranges::sort(sorted, std::greater<>());
  PackingKinds kinds;
  for (std::int64_t size : sorted) {
    if (kinds.size.empty() || kinds.size.back() != size) {
      kinds.size.push_back(size);
      kinds.count.push_back(0);
    }
    ++kinds.count.back();
  }
  return kinds;
}

int boundL2(const PackingKinds& kinds, std::int64_t capacity) {
  const std::size_t n = kinds.size.size();
  std::size_t half = 0; // first kind that may share a bin with its like
  std::int64_t large = 0, roomBesideLarge = 0;
  for (; half < n && 2 * kinds.size[half] > capacity; ++half) {
    large += kinds.count[half];
    roomBesideLarge += (capacity - kinds.size[half]) * kinds.count[half];
  }
  std::int64_t best = large, small = 0;
  // The threshold falls through the small sizes; more of the large ones then have room to share.
  std::size_t alone = half; // large kinds from here on have room for the threshold
  std::int64_t room = 0;
  for (std::size_t i = half; i < n; ++i) {
    small += kinds.size[i] * kinds.count[i];
    for (; alone > 0 && kinds.size[alone - 1] <= capacity - kinds.size[i]; --alone) {
      room += (capacity - kinds.size[alone - 1]) * kinds.count[alone - 1];
    }
    best = std::max(best, large + ceilDivide(small - room, capacity));
  }
  best = std::max(best, large + ceilDivide(small - roomBesideLarge, capacity));
  return static_cast<int>(best);
}

int boundDualFeasible(const PackingKinds& kinds, std::int64_t capacity) {
  std::vector<std::int64_t> thresholds = {0};
  if (kinds.size.size() <= kManyKinds) {
    for (std::int64_t size : kinds.size) {
      if (2 * size <= capacity) thresholds.push_back(size);
    }
  }
  std::int64_t best = 0;
  for (std::int64_t threshold : thresholds) {
    for (std::int64_t k = 1; k <= kMostK; ++k) {
      std::int64_t sum = 0;
      for (std::size_t i = 0; i < kinds.size.size(); ++i) {
        const std::int64_t size = thresholdValue(kinds.size[i], capacity, threshold);
        sum += dualValue(size, capacity, k) * kinds.count[i];
      }
      best = std::max(best, ceilDivide(sum, k * (k + 1)));
    }
  }
  return static_cast<int>(best);
}

int packingLowerBound(const std::vector<std::int64_t>& sizes, std::int64_t capacity) {
  const PackingKinds kinds = packingKinds(sizes);
  return std::max(boundL2(kinds, capacity), boundDualFeasible(kinds, capacity));
}

} // namespace sump
