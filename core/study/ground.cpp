#include "core/study/context.h"

namespace sump {

Surface groundOf(const Plan& plan) {
  std::vector<Point3> spots;
  for (const SpotElevation& spot : plan.spots) {
    spots.push_back(raised(spot.at, inMetres(spot.elevation)));
  }
  if (spots.empty() && plan.site.groundDefault) {
    spots.push_back({0, 0, inMetres(*plan.site.groundDefault)});
  }
  return Surface(spots);
}

namespace {

template <class T> void addOutlines(const Items<T>& items, std::vector<Ring>& rings) {
  for (const T& item : items)
    rings.push_back(outline(item));
}

std::vector<Ring> vaultOutlines(const Plan& plan) {
  std::vector<Ring> rings;
  addOutlines(plan.vaults, rings);
  return rings;
}

std::vector<Ring> structureOutlines(const Plan& plan) {
  std::vector<Ring> rings = vaultOutlines(plan);
  addOutlines(plan.rooms, rings);
  addOutlines(plan.basins, rings);
  addOutlines(plan.washes, rings);
  for (const Building& building : plan.buildings)
    rings.push_back(building.outline);
  return rings;
}

std::vector<Ring> shellOutlines(const Plan& plan) {
  std::vector<Ring> rings = vaultOutlines(plan);
  addOutlines(plan.basins, rings);
  return rings;
}

} // namespace

StudyContext::StudyContext(const Plan& p, const Catalog& c, const Limits& l)
    : plan(p), catalog(c), limits(l), locator(p), ground(groundOf(p)), vaults(vaultOutlines(p)),
      structures(structureOutlines(p)), shells(shellOutlines(p)) {
  std::vector<Ring> rings;
  for (const EquipmentRoom& room : plan.rooms) {
    rings.push_back(outline(room));
    floors.push_back(inMetres(room.floor));
  }
  for (const Building& building : plan.buildings) {
    rings.push_back(building.outline);
    floors.push_back(building.floor ? std::optional(inMetres(*building.floor)) : std::nullopt);
  }
  floored = OutlineSet(std::move(rings));
  rings.clear();
  for (const Pavement& pavement : plan.pavements) {
    if (!pavement.traffic) continue;
    rings.push_back(pavement.outline);
    trafficIds.push_back(pavement.id);
  }
  traffic = OutlineSet(std::move(rings));
}

} // namespace sump
