#pragma once
// A text held against the golden file that was looked at when it was last committed.

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>

namespace sump::testing {

/// `name` is below tests/. With SUMPWRIGHT_UPDATE_GOLDEN set the file is written anew instead.
inline void expectGolden(const std::string& name, const std::string& now) {
  const std::string file = std::string(SUMPWRIGHT_SOURCE_DIR) + "/tests/" + name;
  if (std::getenv("SUMPWRIGHT_UPDATE_GOLDEN") != nullptr) {
    std::ofstream(file, std::ios::binary) << now;
    return;
  }
  std::ifstream in(file, std::ios::binary);
  ASSERT_TRUE(in) << file;
  std::ostringstream golden;
  golden << in.rdbuf();
  EXPECT_EQ(golden.str(), now) << file;
}

} // namespace sump::testing
