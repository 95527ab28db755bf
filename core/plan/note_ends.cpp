#include "core/plan/note_ends.h"

#include "core/plan/ends.h"

namespace sump {

NoteEnd noteEndAt(const Plan& plan, const Id& object, Point2 site) {
  const std::optional<ObjectPlace> place = Locator(plan).find(object);
  if (!place) return {{}, site};
  const std::size_t i = place->index;
  switch (place->kind) {
  case ObjectKind::Vault:
    return {object, plan.vaults[i].frame().toLocal(site)};
  case ObjectKind::Room:
    return {object, plan.rooms[i].frame().toLocal(site)};
  case ObjectKind::Basin:
    return {object, plan.basins[i].frame().toLocal(site)};
  case ObjectKind::Wash:
    return {object, plan.washes[i].frame().toLocal(site)};
  case ObjectKind::Sewer:
    return {object, site - plan.sewers[i].at};
  default:
    return {object, site};
  }
}

} // namespace sump
