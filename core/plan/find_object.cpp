#include "core/plan/find_object.h"

#include <algorithm>

namespace sump {

namespace {

template <class Owners, class Parts>
bool holdsPart(const Owners& owners, const Parts& parts, std::string_view id) {
  for (const auto& owner : owners) {
    for (const auto& part : owner.*parts) {
      if (part.id == id) return true;
    }
  }
  return false;
}

std::optional<ObjectKind> kindOfPart(const Plan& plan, std::string_view id) {
  if (holdsPart(plan.rooms, &EquipmentRoom::ports, id)) return ObjectKind::Port;
  if (holdsPart(plan.vaults, &Vault::baffles, id)) return ObjectKind::Baffle;
  if (holdsPart(plan.vaults, &Vault::manways, id)) return ObjectKind::Manway;
  if (holdsPart(plan.runs, &Run::parts, id)) return ObjectKind::Part;
  return std::nullopt;
}

} // namespace

std::optional<ObjectKind> kindOfObject(const Plan& plan, std::string_view id) {
  if (plan.vaults.find(id) != nullptr) return ObjectKind::Vault;
  if (plan.runs.find(id) != nullptr) return ObjectKind::Run;
  if (plan.rooms.find(id) != nullptr) return ObjectKind::Room;
  if (plan.buildings.find(id) != nullptr) return ObjectKind::Building;
  if (plan.pavements.find(id) != nullptr) return ObjectKind::Pavement;
  if (plan.utilities.find(id) != nullptr) return ObjectKind::Utility;
  if (plan.spots.find(id) != nullptr) return ObjectKind::Spot;
  if (plan.wells.find(id) != nullptr) return ObjectKind::Well;
  if (plan.basins.find(id) != nullptr) return ObjectKind::Basin;
  if (plan.sewers.find(id) != nullptr) return ObjectKind::Sewer;
  if (plan.washes.find(id) != nullptr) return ObjectKind::Wash;
  if (plan.notes.find(id) != nullptr) return ObjectKind::Note;
  if (plan.underlays.find(id) != nullptr) return ObjectKind::Underlay;
  return kindOfPart(plan, id);
}

} // namespace sump
