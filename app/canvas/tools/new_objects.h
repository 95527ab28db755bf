#pragma once
// New objects with usual sizes and levels, for the user to change. Common practice, no source,
// unless a line says otherwise.

#include "core/catalog/catalog.h"
#include "core/geometry/surface.h"
#include "core/plan/plan.h"

namespace sump {

/// A vault of this model with its baffles and one manway a chamber, not yet in the plan. Its floor
/// is level with the plan's last vault, or else leaves `cover` 1 ft of earth over the lid.
Vault newVault(const Plan& plan, const Surface& ground, const VaultModel& model, Point2 centre,
               Angle angle);
/// A room of this inside clear size with skid, plumbing area and the ports of every line.
EquipmentRoom newRoom(const Plan& plan, const Surface& ground, Length length, Length width,
                      Point2 corner, Angle angle);
Basin newBasin(const Plan& plan, const Surface& ground, BasinKind kind, Point2 at, Angle angle);
SewerConnection newSewer(const Plan& plan, const Surface& ground, Point2 at);
WashEquipment newWash(const Plan& plan, const Surface& ground, Point2 at, Angle angle);
SpotElevation newSpot(const Plan& plan, const Surface& ground, Point2 at);

/// The plan with the item at the end of its list; `made` becomes the item's id.
template <class T> Plan withAdded(Plan plan, Items<T> Plan::*list, T item, Id& made) {
  made = item.id;
  (plan.*list).append(std::move(item));
  return plan;
}

/// Grade at a place: surveyed, or the site's default, or 0.
Length gradeAt(const Plan& plan, const Surface& ground, Point2 at);

/// What a run of the service is usually made of.
struct UsualPipe {
  const char* pipe;
  const char* size;
};
UsualPipe usualPipe(Service service);
/// Level of a run's end in a chamber or in the open, where nothing else tells it.
Length usualInvert(const Plan& plan, const Surface& ground, Service service, const RunEnd& end,
                   bool atStart);
EndFitting usualFitting(Service service, const RunEnd& end, bool atStart);

} // namespace sump
