#include "core/sheet/trench_pairs.h"

#include "core/study/trench_outline.h"

#include <algorithm>

namespace sump {

TrenchPairs trenchPairs(const std::vector<TrenchStudy>& trenches) {
  const std::vector<std::vector<std::size_t>> none(trenches.size());
  TrenchPairs pairs{none, none};
  for (std::size_t i = 0; i < trenches.size(); ++i) {
    for (std::size_t k = i + 1; k < trenches.size(); ++k) {
      const DugTogether how = dugTogether(trenches[i], trenches[k]);
      if (how == DugTogether::No) continue;
      auto& lists = how == DugTogether::AsOne ? pairs.asOne : pairs.inPart;
      lists[i].push_back(k);
      lists[k].push_back(i);
    }
  }
  return pairs;
}

std::vector<std::size_t> dugWith(const TrenchPairs& pairs, std::size_t first) {
  std::vector<std::size_t> found{first};
  for (std::size_t i = 0; i < found.size(); ++i) {
    for (const auto* lists : {&pairs.asOne, &pairs.inPart}) {
      for (const std::size_t other : (*lists)[found[i]]) {
        if (std::ranges::find(found, other) == found.end()) found.push_back(other);
      }
    }
  }
  return found;
}

} // namespace sump
