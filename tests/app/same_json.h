#pragma once
// Compares two JSON values for tests: numbers within a hundred-thousandth of their size (a figure
// that is typed round and one that a file keeps to nine decimals), everything else exactly.

#include <nlohmann/json.hpp>

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace sump::testing {

/// Below this, numbers are nought: a micrometre, a microlitre a second.
inline constexpr double kNought = 1e-6;
inline constexpr double kPart = 1e-5;

/// Says where each difference is.
inline void expectSame(const nlohmann::json& is, const nlohmann::json& should,
                       const std::string& where) {
  if (is.is_number() && should.is_number()) {
    const double a = is.get<double>(), b = should.get<double>();
    EXPECT_LE(std::abs(a - b),
              std::max(kNought * kPart, kPart * std::max(std::abs(a), std::abs(b))))
        << where << ": " << a << " for " << b;
    return;
  }
  if (is.type() != should.type() ||
      ((is.is_object() || is.is_array()) && is.size() != should.size())) {
    ADD_FAILURE() << where << ": " << is.dump() << "\nfor " << should.dump();
    return;
  }
  if (is.is_array()) {
    for (std::size_t i = 0; i < is.size(); ++i)
      expectSame(is[i], should[i], where + "/" + std::to_string(i));
  } else if (is.is_object()) {
    for (const auto& [key, value] : should.items()) {
      if (!is.contains(key)) {
        ADD_FAILURE() << where << ": lacks " << key;
        continue;
      }
      expectSame(is[key], value, where + "/" + key);
    }
  } else {
    EXPECT_EQ(is, should) << where;
  }
}

} // namespace sump::testing
