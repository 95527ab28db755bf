#pragma once
// What can be written besides the plan itself. All of it comes from one Review.

#include "core/rules/review.h"

#include <QDate>
#include <QString>

namespace sump {

/// The plan sheet on the paper that goes with the project's units: ARCH D or A1. Throw InputError
/// or std::runtime_error when nothing can be written.
void exportPdf(const Review& review, const QString& path);
void exportSvg(const Review& review, const QString& path);
/// As a workbook when the path ends in `.xlsx`, else as CSV.
void exportBill(const Review& review, const QString& path);
/// The calculation report as PDF on letter or A4, as goes with the project's units.
void exportCalculations(const Review& review, const QString& path);
/// As a shop sheet when the path ends in `.pdf`, else as CSV.
void exportCuts(const Review& review, const QString& path);
/// Start-up and upkeep sheets as PDF on letter or A4.
void exportUpkeep(const Review& review, const QString& path);
/// The upkeep calendar (RFC 5545) from the day of start-up on.
void exportCalendar(const Review& review, QDate start, const QString& path);
void exportStakes(const Review& review, const QString& path);

} // namespace sump
