#pragma once
// How far objects stand from their nearest neighbours.

#include "core/plan/plan.h"

#include <set>
#include <vector>

namespace sump {

/// The shortest way between an object and a neighbour.
struct Gap {
  Id object;
  Id neighbour;
  Point2 from, to;
  double distance = 0; ///< metres
};

/// For each of the objects (vaults, rooms, drains, wash equipment) its nearest neighbours, at most
/// `most` in all, nearest first; those that overlap have no gap. Vaults, rooms, drains, wash
/// equipment and buildings are neighbours.
std::vector<Gap> nearestGaps(const Plan& plan, const std::set<Id>& objects, std::size_t most);
/// The shortest way between two outlines that do not overlap.
Gap gapBetween(const Ring& a, const Ring& b);

} // namespace sump
