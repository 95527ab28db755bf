#pragma once
// The points that a job is staked out by, for the list of them and for the sheets alike.

#include "core/study/study.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

enum class StakeKind { Vault, Run, Room, Drain, Building, Pavement };

struct StakePoint {
  Point2 at;
  std::optional<Length> elevation; ///< left out: no level is known there
  std::string what;
  Id object{};         ///< of runs, basins and sewers; else empty
  std::string place{}; ///< `start`, `corner 2`; of these only
  StakeKind kind = StakeKind::Vault;
};

/// Vault corners (underside of the slab), centres (inside floor) and manways (rim), run ends and
/// corners (invert), rooms and their floor drains (floor), basins, sewers, buildings and pavements
/// (ground). A point's number on the list is its place here, counted from 1. A corner at the place
/// and level of the next point is left out.
std::vector<StakePoint> stakePoints(const Plan& plan, const Study& study);

} // namespace sump
