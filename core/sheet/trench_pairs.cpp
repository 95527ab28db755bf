#include "core/sheet/trench_pairs.h"

#include "core/sheet/tags.h"
#include "core/study/trench_outline.h"

#include <algorithm>

namespace sump {

TrenchPairs trenchPairs(const std::vector<TrenchStudy>& trenches) {
  TrenchPairs pairs(trenches.size());
  for (std::size_t i = 0; i < trenches.size(); ++i) {
    for (std::size_t k = i + 1; k < trenches.size(); ++k) {
      if (!dugTogether(trenches[i], trenches[k])) continue;
      pairs[i].push_back(k);
      pairs[k].push_back(i);
    }
  }
  return pairs;
}

std::vector<std::size_t> dugWith(const TrenchPairs& pairs, std::size_t first) {
  std::vector<std::size_t> found{first};
  for (std::size_t i = 0; i < found.size(); ++i) {
    for (const std::size_t other : pairs[found[i]]) {
      if (std::ranges::find(found, other) == found.end()) found.push_back(other);
    }
  }
  return found;
}

std::string trenchNames(const SheetJob& job, const std::vector<std::size_t>& places) {
  const auto tags = runTags(job.plan());
  std::string names;
  for (const std::size_t place : places)
    names += (names.empty() ? "" : ", ") + tags.at(job.study().earth.trenches[place].run);
  return names;
}

} // namespace sump
