// What the details say of the arms of tees in vaults.

#include "core/sheet/arm_notes.h"
#include "core/units/print_levels.h"
#include "tests/rules/depot.h"

#include <gtest/gtest.h>

namespace sump::testing {
namespace {

using Notes = std::vector<std::string> (*)(const SheetJob&, const RunStudy&);

std::string notesOf(Notes notes, const Plan& plan, const char* run) {
  const Review review = reviewed(plan);
  std::string all;
  for (const std::string& note :
       notes({review, builtinCatalog(), *paperSize("arch-d"), 0, {}, nullptr},
             *review.study.run(run)))
    all += note + " ";
  return all;
}

bool has(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

/// The overflow's axis stands half of 5.709 in over 97.25 ft, its tee's socket stops 3-7/8 in from
/// it: to 95.75 ft 18 + 2.8545 - 3.875 = 16.98 in. Asked are 25 to 40 % of 4 ft of water.
TEST(ArmNotes, TellTheLegsPieceLengthAndEnd) {
  const std::string text = notesOf(downLegNotes, depot(), "OF-1");
  const std::size_t last = reviewed(depot()).study.run("OF-1")->pieces.size();
  EXPECT_TRUE(has(text, "OF-1." + std::to_string(last) + " of the cutting list, 1'-5\" long"))
      << text;
  EXPECT_TRUE(has(text, "open end at " + printElevation(feet(95.75), UnitSystem::UsCustomary) +
                            ", 1'-6\" under the water at rest (asked: 1'-0\" to 1'-7 3/16\")"))
      << text;
  // Low water 33 in over 93.25 ft, less 2 in of oil.
  EXPECT_TRUE(has(text, "Not over 95.83, to where the oil reaches down at low water.")) << text;
}

TEST(ArmNotes, SayThatALevelIsWorkedOut) {
  const Plan plan =
      with([](Plan& p) { changeRun(p, "OF-1", [](sump::Run& r) { r.from.legEnd.reset(); }); });
  // 1'-0" to 1'-7.2": 1'-3.6" under 97.25 ft is 95.95 ft.
  const std::string text = notesOf(downLegNotes, plan, "OF-1");
  EXPECT_TRUE(has(text, printElevation(feet(95.95), UnitSystem::UsCustomary))) << text;
  EXPECT_TRUE(has(text, "(worked out, the middle of the 1'-0\" to 1'-7 3/16\" asked)")) << text;
}

TEST(ArmNotes, AreNoneForLinesThatEndPlain) {
  EXPECT_EQ(notesOf(downLegNotes, depot(), "SU-1"), "");
  EXPECT_EQ(notesOf(upperArmNotes, depot(), "SU-1"), "");
}

/// The inlet's tee: axis 5.915/2 in over 97.43 ft, arm 4-3/4 in and half of 6.275 in: its top
/// stands 10.845 in over it, 98.334 ft; the lid's underside lies at 98.25 ft: 1.005 in.
TEST(ArmNotes, TellHowFarTheUpperArmReachesIntoAnOpening) {
  const std::string text = notesOf(upperArmNotes, depot(), "WW-1");
  EXPECT_TRUE(has(text, "stands 0'-1\" over the lid's underside, within a manway's opening"))
      << text;
}

} // namespace
} // namespace sump::testing
