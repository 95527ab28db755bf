#include "core/study/object_names.h"

namespace sump {

std::string spokenName(const Plan& plan, const Id& id) {
  std::string name = id;
  const auto look = [&](const auto& items) {
    for (const auto& item : items) {
      if (item.id == id) name = called(item);
    }
  };
  look(plan.vaults);
  look(plan.rooms);
  for (const EquipmentRoom& room : plan.rooms)
    look(room.ports);
  look(plan.buildings);
  look(plan.pavements);
  look(plan.utilities);
  look(plan.wells);
  look(plan.basins);
  look(plan.sewers);
  look(plan.washes);
  look(plan.basis.wiring.supplies);
  look(plan.basis.wiring.signalCircuits);
  look(plan.basis.demand.devices);
  return name;
}

std::string spokenNames(const Plan& plan, const std::vector<Id>& ids) {
  std::string names;
  for (const Id& id : ids)
    names += (names.empty() ? "" : ", ") + spokenName(plan, id);
  return names;
}

} // namespace sump
