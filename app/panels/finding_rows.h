#pragma once
// 'What is wrong' as rows: made with each review on its own thread, since their texts take longer
// than a frame where a large plan has hundreds.

#include "app/panels/table_row.h"
#include "core/rules/review.h"

#include <vector>

namespace sump {

/// One a finding, in their order.
std::vector<TableRow> findingRows(const Review& review);

} // namespace sump
