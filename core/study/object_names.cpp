#include "core/study/object_names.h"

namespace sump {

namespace {

template <class List> bool nameFrom(const List& list, const Id& id, std::string& name) {
  for (const auto& item : list) {
    if (item.id != id) continue;
    if (!item.name.empty()) name = item.name;
    return true;
  }
  return false;
}

} // namespace

std::string spokenName(const Plan& plan, const Id& id) {
  std::string name = id;
  const WiringBasis& wiring = plan.basis.wiring;
  static_cast<void>(nameFrom(plan.rooms, id, name) || nameFrom(plan.buildings, id, name) ||
                    nameFrom(plan.basins, id, name) || nameFrom(plan.washes, id, name) ||
                    nameFrom(plan.pavements, id, name) || nameFrom(plan.utilities, id, name) ||
                    nameFrom(plan.wells, id, name) || nameFrom(wiring.supplies, id, name) ||
                    nameFrom(wiring.signalCircuits, id, name) ||
                    nameFrom(plan.basis.demand.devices, id, name));
  return name;
}

} // namespace sump
