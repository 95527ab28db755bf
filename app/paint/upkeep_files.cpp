#include "app/paint/upkeep_files.h"

#include "app/paint/paint.h"

#include "core/exchange/plan_file.h"
#include "core/exchange/upkeep_calendar.h"
#include "core/sheet/upkeep_sheets.h"

namespace sump {

void writeUpkeepPdf(const Review& review, const UpkeepTable& table,
                    const std::filesystem::path& file, const std::string& paper) {
  const UpkeepPlan filled = upkeep(review.plan, review.study, table);
  writePdf(composeUpkeepSheets(review.plan, filled, paper), file, review.plan.project);
}

void writeUpkeepCalendar(const Review& review, const UpkeepTable& table, Date start,
                         const std::filesystem::path& file) {
  const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
  writeFileAtomically(file, upkeepCalendar(review.plan.project,
                                           upkeep(review.plan, review.study, table), start, now));
}

} // namespace sump
