#pragma once
// Small edits: a Plan in, a Plan out. None of them judges the result (the caller asks
// plan/consistency.h); an id, leg or corner that is not there leaves the plan as it is.
// Moving, erasing and copying whole objects stands in plan/edits_objects.h.

#include "core/plan/plan.h"

#include <string_view>
#include <vector>

namespace sump {

/// The list of the plan that holds objects of this type.
template <class T> Items<T>& listOf(Plan& plan);

/// With the object added at the end of its list, or in place of the one of the same id.
template <class T> Plan withObject(Plan plan, T object) {
  listOf<T>(plan).put(std::move(object));
  return plan;
}

/// Turns one object counter-clockwise about its own centre. Run ends that hang on it stay where
/// they are on it; of a run, only its corners and free ends turn. Wells, spot elevations and sewer
/// connections have no direction and do not change.
Plan rotateObject(const Plan& plan, std::string_view id, Angle by);

/// Puts a vault at another place in the flow order; 0 is the first. Past the end means last.
Plan placeVaultInFlow(const Plan& plan, std::string_view vault, std::size_t position);

/// Puts a corner into leg `leg` of a run. Parts on that leg stay where they stand along the run.
Plan insertVertex(const Plan& plan, std::string_view run, std::size_t leg, const Vertex& vertex);
Plan moveVertex(const Plan& plan, std::string_view run, std::size_t vertex, Point2 to);
/// Takes a corner out; the parts of its two legs move to the joined leg in proportion.
Plan eraseVertex(const Plan& plan, std::string_view run, std::size_t vertex);

/// Runs that hung on something in `before` by an end that is free in `after`, in the plan's order:
/// what to tell a person after erasing.
std::vector<Id> freedRuns(const Plan& before, const Plan& after);

/// The same direction within (-180, 180] degrees, as the plan file keeps it.
Angle normalized(Angle angle);

template <> inline Items<Building>& listOf(Plan& plan) {
  return plan.buildings;
}
template <> inline Items<Pavement>& listOf(Plan& plan) {
  return plan.pavements;
}
template <> inline Items<Utility>& listOf(Plan& plan) {
  return plan.utilities;
}
template <> inline Items<SpotElevation>& listOf(Plan& plan) {
  return plan.spots;
}
template <> inline Items<Well>& listOf(Plan& plan) {
  return plan.wells;
}
template <> inline Items<Basin>& listOf(Plan& plan) {
  return plan.basins;
}
template <> inline Items<SewerConnection>& listOf(Plan& plan) {
  return plan.sewers;
}
template <> inline Items<WashEquipment>& listOf(Plan& plan) {
  return plan.washes;
}
template <> inline Items<EquipmentRoom>& listOf(Plan& plan) {
  return plan.rooms;
}
template <> inline Items<Vault>& listOf(Plan& plan) {
  return plan.vaults;
}
template <> inline Items<DimensionNote>& listOf(Plan& plan) {
  return plan.notes;
}
template <> inline Items<Underlay>& listOf(Plan& plan) {
  return plan.underlays;
}
template <> inline Items<Run>& listOf(Plan& plan) {
  return plan.runs;
}

} // namespace sump
