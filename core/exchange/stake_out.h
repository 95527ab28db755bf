#pragma once
// Points for whoever stakes the job out: point, north, east, elevation, description (P,N,E,Z,D; the
// heading says the order), in feet or metres of the plan's own grid: east is the plan's x, north
// its y, elevations on the site datum.

#include "core/exchange/list_table.h"
#include "core/rules/review.h"
#include "core/study/stake_points.h"

namespace sump {

ListTable stakeOutTable(const Plan& plan, const Study& study);
std::string stakeOutCsv(const Plan& plan, const Study& study);

} // namespace sump
