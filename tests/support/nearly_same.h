#pragma once
// Two plans alike but for rounding: their files word for word, numbers to a tolerance.

#include "core/exchange/plan_file.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <string>

namespace sump::test {

/// Success when the plan files differ in no more than `tolerance` (metres, degrees) anywhere.
inline ::testing::AssertionResult nearlySame(const Plan& a, const Plan& b,
                                             double tolerance = 1e-6) {
  const std::string left = writePlanText(a), right = writePlanText(b);
  const char* p = left.c_str();
  const char* q = right.c_str();
  const auto startsNumber = [](const char* c) { return (*c >= '0' && *c <= '9') || *c == '-'; };
  int line = 1;
  while (*p != '\0' || *q != '\0') {
    if (startsNumber(p) && startsNumber(q)) {
      char *pEnd = nullptr, *qEnd = nullptr;
      const double u = std::strtod(p, &pEnd), v = std::strtod(q, &qEnd);
      if (pEnd != p && qEnd != q) {
        if (std::abs(u - v) > tolerance) {
          return ::testing::AssertionFailure() << "line " << line << ": " << u << " and " << v;
        }
        p = pEnd;
        q = qEnd;
        continue;
      }
    }
    if (*p != *q) return ::testing::AssertionFailure() << "line " << line << " differs";
    if (*p == '\n') ++line;
    ++p;
    ++q;
  }
  return ::testing::AssertionSuccess();
}

} // namespace sump::test
