#pragma once
// A text held against the golden file that was looked at when it was last committed.

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>

#include "tests/support/places.h"

namespace sump::testing {

/// `name` is below tests/. With SUMPWRIGHT_UPDATE_GOLDEN set the file is written anew instead.
inline void expectGolden(const std::string& name, const std::string& now) {
  const std::string file = sourceFolder() + "/tests/" + name;
  if (std::getenv("SUMPWRIGHT_UPDATE_GOLDEN") != nullptr) {
    std::ofstream(file, std::ios::binary) << now;
    return;
  }
  std::ifstream in(file, std::ios::binary);
  ASSERT_TRUE(in) << file;
  std::ostringstream golden;
  golden << in.rdbuf();
  if (golden.str() == now) return;
  std::istringstream before(golden.str()), after(now);
  std::string was, is;
  for (int line = 1;; ++line) { // the first line that differs says more than two whole files
    const bool more = static_cast<bool>(std::getline(before, was));
    const bool still = static_cast<bool>(std::getline(after, is));
    if (!more && !still) break;
    ASSERT_TRUE(more) << file << " has no line " << line << ", which is now:\n" << is;
    ASSERT_TRUE(still) << file << " line " << line << " is missing now:\n" << was;
    ASSERT_EQ(was, is) << file << " line " << line;
  }
  FAIL() << file << " differs in its line ends";
}

} // namespace sump::testing
