#pragma once
// Whose work a rule or a finding is, so that each trade can look at its own.

#include <array>
#include <string_view>

namespace sump {

enum class Trade { General, SiteWork, Plumbing, Electrical };

inline constexpr std::array kAllTrades = {Trade::General, Trade::SiteWork, Trade::Plumbing,
                                          Trade::Electrical};

/// As in the take-off: `general`, `site work`, `plumbing`, `electrical`.
std::string_view name(Trade trade);

} // namespace sump
