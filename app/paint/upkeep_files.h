#pragma once
// Start-up and upkeep of one review as files.

#include "core/exchange/calendar.h"
#include "core/rules/review.h"
#include "core/study/upkeep_table.h"

#include <filesystem>
#include <string>

namespace sump {

/// The operations sheets as PDF; `paper` as composeUpkeepSheets takes it. Throws InputError.
void writeUpkeepPdf(const Review& review, const UpkeepTable& table,
                    const std::filesystem::path& file, const std::string& paper = {});
/// The calendar from the day of start-up on, stamped with the present. Throws InputError.
void writeUpkeepCalendar(const Review& review, const UpkeepTable& table, Date start,
                         const std::filesystem::path& file);

} // namespace sump
