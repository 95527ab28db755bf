#pragma once
// Every way to break a rule. tests/rules/cases_test.cpp tries each; messages_test.cpp demands that
// together they use every message.

#include "tests/rules/cases_boxes.h"
#include "tests/rules/cases_dig.h"
#include "tests/rules/cases_ground.h"
#include "tests/rules/cases_lines.h"
#include "tests/rules/cases_near.h"
#include "tests/rules/cases_openings.h"
#include "tests/rules/cases_peak.h"
#include "tests/rules/cases_pump.h"
#include "tests/rules/cases_tank.h"
#include "tests/rules/cases_unknown.h"
#include "tests/rules/cases_vaults.h"
#include "tests/rules/cases_walls.h"
#include "tests/rules/cases_wiring.h"

namespace sump::testing {

inline std::vector<Case> allCases() {
  std::vector<Case> all;
  for (const auto& family :
       {levelCases(),     storageCases(),     flowCases(),   passageCases(), siteCases(),
        waterLineCases(), roomCases(),        groundCases(), tankCases(),    accessCases(),
        openingCases(),   joiningCases(),     nearCases(),   peakCases(),    pumpCases(),
        buoyancyCases(),  digCases(),         wiringCases(), unknownCases(), shareCases(),
        boxCases(),       footingPassCases(), reachCases(),  sleeveCases()}) {
    all.insert(all.end(), family.begin(), family.end());
  }
  return all;
}

/// Every case with the review of its bad plan, made once for all tests.
struct ReviewedCase {
  Case of;
  Review bad;
};
inline const std::vector<ReviewedCase>& reviewedCases() {
  static const std::vector<ReviewedCase> cases = [] {
    std::vector<ReviewedCase> all;
    for (const Case& c : allCases())
      all.push_back({c, reviewed(with(c.bad))});
    return all;
  }();
  return cases;
}

} // namespace sump::testing
