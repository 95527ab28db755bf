#pragma once
// The points that a job is staked out by, for the list of them and for the sheets alike.

#include "core/study/study.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

struct StakePoint {
  Point2 at;
  std::optional<Length> elevation; ///< left out: no level is known there
  std::string what;
  Id object{};         ///< of runs, basins and sewers; else empty
  std::string place{}; ///< `start`, `corner 2`; of these only
};

/// Vault corners (underside of the slab), centres (inside floor) and manways (rim), run ends and
/// corners (invert), rooms (floor), basins, sewers, buildings and pavements (ground). A point's
/// number on the list is its place here, counted from 1.
std::vector<StakePoint> stakePoints(const Plan& plan, const Study& study);

} // namespace sump
