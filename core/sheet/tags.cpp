#include "core/sheet/tags.h"

#include "core/plan/ends.h"
#include "core/plan/keys.h"
#include "core/units/print.h"

#include <algorithm>

namespace sump {

std::unordered_map<Id, std::string> runTags(const Plan& plan) {
  std::unordered_map<Id, std::string> tags;
  std::array<int, kServiceCount> count{};
  for (const Run& run : plan.runs) {
    const int n = ++count[static_cast<std::size_t>(run.service)];
    tags[run.id] = std::string(facts(run.service).code) + "-" + std::to_string(n);
  }
  return tags;
}

std::string sizeText(const std::string& nominal) {
  return nominal.empty() ? "-" : nominal + "\"";
}

std::string sizeAndMaterial(const Run& run, const Catalog& catalog) {
  const PipeProduct* product = catalog.pipe(run.pipe);
  return sizeText(run.size) + " " + (product != nullptr ? product->name : run.pipe);
}

std::string lengthText(const RunStudy& run, UnitSystem units) {
  return run.resolved ? printRunLength(run.developed, units) : "?";
}

bool isLevel(double slope) {
  // A millimetre in a metre, 1/8 in in 10 ft: nobody sets pipe closer. Common practice, no source.
  constexpr double kLevel = 1e-3;
  return std::abs(slope) < kLevel;
}

namespace {

std::string sloping(double slope, UnitSystem units) {
  return printSlope(std::abs(slope), units) + (slope > 0 ? "" : " rising");
}

/// Do its legs slope alike, as the section tells them leg by leg?
bool slopesAlike(const RunStudy& run, UnitSystem units) {
  return std::ranges::all_of(run.legs, [&](const Leg& leg) {
    return leg.vertical || sloping(leg.slope, units) == sloping(run.slope, units);
  });
}

} // namespace

std::string slopeText(const RunStudy& run, UnitSystem units) {
  const Drive drive = facts(run.service).drive;
  if (!run.resolved || drive == Drive::Pressure || drive == Drive::Conduit) return {};
  if (isLevel(run.slope)) return {};
  return (slopesAlike(run, units) ? "" : "mean ") + sloping(run.slope, units);
}

std::string runName(const std::string& name, Service service) {
  return name.empty() ? std::string(facts(service).name) : name;
}

std::string levelText(const std::optional<Length>& level, UnitSystem units) {
  return level ? printElevation(*level, units) : "-";
}

std::string outletName(const VaultStudy& vault, const Plan& plan) {
  const Run* run = plan.runs.find(vault.overflowRun);
  if (run == nullptr) return "Outlet inv.";
  if (run->service == Service::Overflow) return "Overflow inv.";
  return "Outlet inv. (" + runTags(plan).at(run->id) + ")";
}

std::string supplyName(const Supply& supply) {
  if (!supply.name.empty()) return supply.name;
  return supply.kind == SupplyKind::Motor3Phase ? "Motor supply" : "Control supply";
}

std::string cornerName(const Id& vault, std::size_t corner) {
  return vault + "-" + std::to_string(corner + 1);
}

std::string objectName(const Id& id, const Plan& plan) {
  const auto tags = runTags(plan);
  if (const auto tag = tags.find(id); tag != tags.end()) return tag->second;
  if (const Vault* vault = plan.vaults.find(id)) return called(*vault);
  for (const Supply& supply : plan.basis.wiring.supplies) {
    if (supply.id == id) return supplyName(supply);
  }
  return spokenName(plan, id);
}

std::string endText(const RunEnd& end, const Plan& plan) {
  const auto named = [&](const auto& items) {
    const auto* item = items.find(end.target);
    return item != nullptr ? called(*item) : end.target;
  };
  switch (end.kind) {
  case EndKind::Free:
    return end.fitting == EndFitting::ScreenedVent ? "open air" : "stub";
  case EndKind::Chamber:
    return named(plan.vaults) + ", ch. " + std::to_string(end.chamber);
  case EndKind::Basin:
    return named(plan.basins);
  case EndKind::Sewer:
    return named(plan.sewers);
  case EndKind::Wash:
    return named(plan.washes);
  case EndKind::Run:
    return objectName(end.target, plan);
  case EndKind::Port:
    break;
  }
  for (const EquipmentRoom& room : plan.rooms) {
    for (const Port& port : room.ports) {
      if (port.id == end.target) return "Port " + called(port);
    }
  }
  return end.target;
}

std::string endWords(EndFitting fitting) {
  const auto* known =
      std::ranges::find(kEndWords, fitting, &std::pair<EndFitting, const char*>::first);
  return known == std::end(kEndWords) ? std::string(key(fitting)) : known->second;
}

} // namespace sump
