#pragma once
// The samples, reviewed and composed once for all tests of a process: a set of sheets takes a
// second or more, and dozens of tests look at the same ones.

#include "core/exchange/plan_file.h"
#include "core/sheet/compose.h"
#include "tests/sheet/small_plan.h"
#include "tests/support/places.h"

#include <map>
#include <string>
#include <tuple>
#include <vector>

namespace sump::testing {

/// A sample by its file's name, or the small plan, `small`.
inline Plan samplePlan(const std::string& name) {
  return name == "small" ? smallPlan() : readPlanFile(sampleFile(name));
}

inline const Review& sampleReview(const std::string& name) {
  static std::map<std::string, Review> known;
  const auto found = known.find(name);
  if (found != known.end()) return found->second;
  return known.emplace(name, review(samplePlan(name), builtinCatalog())).first->second;
}

/// Its whole set on a paper, at standard scales that fit or at one that is given.
inline const std::vector<Page>& sampleSheets(const std::string& name, const std::string& paper,
                                             double scale = 0) {
  static std::map<std::tuple<std::string, std::string, double>, std::vector<Page>> known;
  const std::tuple key(name, paper, scale);
  const auto found = known.find(key);
  if (found != known.end()) return found->second;
  return known.emplace(key, composeSheets(sampleReview(name), {paper, scale})).first->second;
}

} // namespace sump::testing
