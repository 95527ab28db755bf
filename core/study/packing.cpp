#include "core/study/packing.h"

#include "core/study/packing_fill.h"
#include "core/study/packing_kinds.h"
#include "core/study/packing_search.h"

#include <algorithm>
#include <map>
#include <numeric>

namespace sump {

namespace {

using Bins = std::vector<std::vector<std::size_t>>;

/// Best-fit decreasing: each size into the fullest bin that still takes it.
Bins bestFit(const std::vector<std::int64_t>& sizes, std::int64_t capacity) {
  std::vector<std::size_t> order(sizes.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::stable_sort(order,
                           [&](std::size_t a, std::size_t b) { return sizes[a] > sizes[b]; });
  Bins bins;
  std::multimap<std::int64_t, std::size_t> byRoom;
  for (std::size_t item : order) {
    const auto tightest = byRoom.lower_bound(sizes[item]);
    std::size_t bin = bins.size();
    std::int64_t room = capacity;
    if (tightest == byRoom.end()) {
      bins.emplace_back();
    } else {
      std::tie(room, bin) = *tightest;
      byRoom.erase(tightest);
    }
    bins[bin].push_back(item);
    byRoom.emplace(room - sizes[item], bin);
  }
  return bins;
}

/// Which of the sizes given stand for the kinds in each bin: the first of a size first.
Bins itemsOf(const Bins& kindsInBins, const PackingKinds& kinds,
             const std::vector<std::int64_t>& sizes) {
  std::vector<std::vector<std::size_t>> items(kinds.size.size());
  for (std::size_t i = sizes.size(); i-- > 0;) {
    const auto at = std::ranges::lower_bound(kinds.size, sizes[i], std::greater<>());
    items[static_cast<std::size_t>(at - kinds.size.begin())].push_back(i);
  }
  Bins bins;
  for (const auto& filled : kindsInBins) {
    std::vector<std::size_t> bin;
    for (std::size_t kind : filled) {
      bin.push_back(items[kind].back());
      items[kind].pop_back();
    }
    bins.push_back(std::move(bin));
  }
  return bins;
}

/// Quick packings with rising slack that is good enough, in shares of what each bin may waste on
/// average; the last bins of one that wastes nothing at first waste the more.
void improve(Packing& packing, const PackingKinds& kinds, const std::vector<std::int64_t>& sizes,
             std::int64_t capacity, std::int64_t& effort) {
  constexpr double kShares[] = {0, 0.1, 0.2, 0.35, 0.5, 0.75, 1,  1.25, 1.5,
                                2, 2.5, 3,   4,    6,   8,    12, 16};
  for (double share : kShares) {
    if (packing.proven()) return;
    const auto wanted = static_cast<std::int64_t>(packing.bins.size()) - 1;
    const std::int64_t slack = std::max<std::int64_t>(0, wanted * capacity - kinds.total());
    const auto enough =
        static_cast<std::int64_t>(share * static_cast<double>(slack) /
                                  static_cast<double>(std::max<std::int64_t>(1, wanted)));
    std::int64_t part = effort / 4;
    effort -= part;
    const Bins bins = fillBins(kinds, capacity, enough, part);
    effort += std::max<std::int64_t>(part, 0);
    if (bins.size() < packing.bins.size()) packing.bins = itemsOf(bins, kinds, sizes);
  }
}

} // namespace

Packing packLeast(const std::vector<std::int64_t>& sizes, std::int64_t capacity,
                  std::int64_t effort) {
  Packing packing{bestFit(sizes, capacity), packingLowerBound(sizes, capacity)};
  const PackingKinds kinds = packingKinds(sizes);
  improve(packing, kinds, sizes, capacity, effort);
  // Fewer bins than that took: from the bound up, until they do.
  bool every = true; // all smaller numbers are known not to do
  for (int bins = packing.lowerBound; bins < static_cast<int>(packing.bins.size()); ++bins) {
    PackingSearch search(kinds, capacity);
    std::int64_t share = effort / 2;
    effort -= share;
    const PackingAnswer answer = search.fit(bins, share);
    effort += share;
    if (answer == PackingAnswer::Fits) {
      packing.bins = itemsOf(search.filled(), kinds, sizes);
      break;
    }
    every = every && answer == PackingAnswer::DoesNotFit;
    if (every) packing.lowerBound = bins + 1;
  }
  return packing;
}

} // namespace sump
