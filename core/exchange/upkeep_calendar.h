#pragma once
// Start-up and recurring upkeep as a calendar.

#include "core/exchange/calendar.h"
#include "core/study/upkeep.h"

#include <string>
#include <vector>

namespace sump {

/// The day `interval` after `day`. Months keep the day of the month, but never beyond the 28th: a
/// rule that recurs on the 29th to 31st would leave out the months that have no such day.
Date dayAfter(Date day, const UpkeepInterval& interval);

/// Start-up on the day given; each task first one interval after it, then each interval. The
/// events' UIDs come from the table's keys and from the project's identification number, title and
/// site, so that a calendar written anew takes the place of the old one.
std::vector<CalendarEvent> upkeepEvents(const Project& project, const UpkeepPlan& upkeep,
                                        Date start);

/// upkeepEvents() as RFC 5545 text.
std::string upkeepCalendar(const Project& project, const UpkeepPlan& upkeep, Date start,
                           std::chrono::sys_seconds stamp);

} // namespace sump
