#pragma once
// The Review as JSON for other programs. Lengths in metres, volumes in cubic metres, slopes as rise
// over run; every finding also carries the text that a person reads.

#include "core/exchange/buy_list.h"
#include "core/rules/review.h"

#include <string>

namespace sump {

/// `{"findings": [...], "errors": n, "warnings": n, "notes": n, "accepted": n, "profile": key,
/// ...}` Accepted findings are listed but count as accepted only.
std::string findingsJson(const Review& review);
/// `{"vaults": [...], "runs": [...], "workingVolume": m3}`
std::string levelsJson(const Review& review);
/// `{"lines": [...], "notes": [...]}`
std::string takeOffJson(const BuyList& buy);

} // namespace sump
