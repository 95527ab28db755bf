// Every sample is a plan, and stands in the form in which the program writes it. Running this test
// with SUMPWRIGHT_REWRITE=1 brings samples edited by hand into that form.

#include "core/exchange/plan_file.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

namespace sump {
namespace {

TEST(SampleFiles, AreWrittenAsTheProgramWritesThem) {
  const std::filesystem::path folder = std::filesystem::path(sourceFolder()) / "samples";
  int count = 0;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
    if (entry.path().extension() != ".sump") continue;
    ++count;
    std::ifstream in(entry.path(), std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    if (std::getenv("SUMPWRIGHT_REWRITE") != nullptr)
      savePlanFile(readPlanFile(entry.path()), entry.path());
    EXPECT_EQ(writePlanText(readPlanFile(entry.path())), text.str()) << entry.path();
  }
  EXPECT_GE(count, 2);
}

} // namespace
} // namespace sump
