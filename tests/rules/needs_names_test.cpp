// What a result needs is told by the names that people gave, never by the id of a named object.

#include "core/study/calculation.h"
#include "core/study/study.h"
#include "tests/rules/depot.h"

#include <gtest/gtest.h>

#include <cctype>
#include <map>
#include <set>

namespace sump::testing {
namespace {

bool holdsWord(const std::string& text, const std::string& word) {
  const auto inWord = [&](std::size_t i) {
    return i < text.size() && (std::isalnum(static_cast<unsigned char>(text[i])) || text[i] == '-');
  };
  for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
    if (!inWord(at - 1) && !inWord(at + word.size())) return true;
  }
  return false;
}

/// Ids whose objects have another name; runs are called by their tags.
std::map<Id, std::string> namedObjects(const Plan& plan) {
  std::map<Id, std::string> named;
  const auto add = [&](const auto& items) {
    for (const auto& item : items) {
      if (!item.name.empty() && !holdsWord(item.name, item.id)) named[item.id] = item.name;
    }
  };
  add(plan.vaults);
  add(plan.rooms);
  for (const EquipmentRoom& room : plan.rooms)
    add(room.ports);
  add(plan.buildings);
  add(plan.pavements);
  add(plan.utilities);
  add(plan.wells);
  add(plan.basins);
  add(plan.sewers);
  add(plan.washes);
  add(plan.basis.demand.devices);
  add(plan.basis.wiring.supplies);
  return named;
}

std::set<std::string> needsOf(const Plan& plan) {
  const Review made = reviewed(plan);
  std::set<std::string> needs;
  for (const Finding& finding : made.findings) {
    const auto text = finding.what.arguments.find("needs");
    if (text != finding.what.arguments.end()) needs.insert(text->second);
  }
  for (const Calculation& c : calculations(plan, made.study)) {
    if (!c.decided) needs.insert(c.needs);
  }
  return needs;
}

/// The depot without what is often not known.
Plan bareDepot() {
  Plan plan = depot();
  for (const Building& building : Items(plan.buildings))
    change(plan.buildings, building.id, [](Building& b) { b.footing.reset(); });
  for (const Utility& utility : Items(plan.utilities)) {
    change(plan.utilities, utility.id, [](Utility& u) {
      u.elevation.reset();
      u.diameter.reset();
    });
  }
  for (const SewerConnection& sewer : Items(plan.sewers))
    change(plan.sewers, sewer.id, [](SewerConnection& s) { s.upstreamManholeRim.reset(); });
  for (const EquipmentRoom& room : Items(plan.rooms)) {
    change(plan.rooms, room.id, [](EquipmentRoom& r) {
      r.panel.reset();
      for (Port& port : r.ports)
        port.size = "of the skid";
    });
  }
  for (WashDevice& device : plan.basis.demand.devices)
    device.pressure.reset();
  return plan;
}

Plan withoutWayOut(Plan plan) {
  std::vector<Id> ways;
  for (const Run& run : plan.runs) {
    if (run.service == Service::Overflow) ways.push_back(run.id);
  }
  for (const Id& id : ways)
    plan.runs.erase(id);
  return plan;
}

TEST(NeedsNames, NoNamedObjectIsToldByItsId) {
  const std::map<Id, std::string> named = namedObjects(depot());
  ASSERT_GT(named.size(), 8u);
  std::set<std::string> all = needsOf(bareDepot());
  all.merge(needsOf(withoutWayOut(depot())));
  std::set<std::string> told;
  for (const std::string& needs : all) {
    for (const auto& [id, name] : named) {
      EXPECT_FALSE(holdsWord(needs, id)) << needs << ": " << name;
      if (needs.find(name) != std::string::npos) told.insert(id);
    }
  }
  // A vault, a utility, a building and the sewer at least are asked about by name.
  EXPECT_GE(told.size(), 4u);
}

} // namespace
} // namespace sump::testing
