#pragma once
// Looking things up in a calculation report.

#include "core/study/calculation.h"

#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

namespace sump::test {

inline const Calculation* findCalculation(const std::vector<Calculation>& all,
                                          const std::string& id, const Id& object) {
  const auto found = std::ranges::find_if(
      all, [&](const Calculation& c) { return c.id == id && c.object == object; });
  return found == all.end() ? nullptr : &*found;
}

/// Throws when there is none.
inline const Calculation& calculation(const std::vector<Calculation>& all, const std::string& id,
                                      const Id& object = {}) {
  const Calculation* found = findCalculation(all, id, object);
  if (found == nullptr) throw std::runtime_error("no calculation " + id + " of " + object);
  return *found;
}

inline double inputOf(const Calculation& c, const std::string& symbol) {
  const auto found = std::ranges::find(c.inputs, symbol, &CalculationInput::symbol);
  if (found == c.inputs.end()) throw std::runtime_error("no input " + symbol + " of " + c.id);
  return found->value;
}

inline bool hasStep(const Calculation& c, const std::string& text) {
  return std::ranges::any_of(
      c.steps, [&](const std::string& step) { return step.find(text) != std::string::npos; });
}

} // namespace sump::test
