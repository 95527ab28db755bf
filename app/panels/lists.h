#pragma once
// 'What to buy' and 'How deep': the take-off and the levels of the newest review as rows.

#include "app/panels/tables.h"
#include "core/rules/review.h"

#include <QStringList>

namespace sump {

QStringList takeOffHeadings();
std::vector<TableRow> takeOffRows(const Review& review);

QStringList vaultLevelHeadings();
std::vector<TableRow> vaultLevelRows(const Review& review);

QStringList runLevelHeadings();
std::vector<TableRow> runLevelRows(const Review& review);

} // namespace sump
