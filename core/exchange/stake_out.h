#pragma once
// Points for whoever stakes the job out: point, north, east, elevation, description (P,N,E,Z,D; the
// heading says the order), in feet or metres of the plan's own grid: east is the plan's x, north
// its y, elevations on the site datum.

#include "core/exchange/list_table.h"
#include "core/rules/review.h"

namespace sump {

struct StakePoint {
  Point2 at;
  std::optional<Length> elevation; ///< left out: no level is known there
  std::string what;
};

/// Vault corners (underside of the slab), centres (inside floor) and manways (rim), run ends and
/// corners (invert), rooms (floor), basins, sewers, buildings and pavements (ground).
std::vector<StakePoint> stakePoints(const Plan& plan, const Study& study);

ListTable stakeOutTable(const Plan& plan, const Study& study);
std::string stakeOutCsv(const Plan& plan, const Study& study);

} // namespace sump
