#pragma once
// Live load on a buried lid: a screening by cover for one HS-20 truck, unfactored, after the AASHTO
// Standard Specifications for Highway Bridges, 17th edition (2002), 3.8.2.3, 6.4 (from memory).
// Never a slab design: that is a licensed engineer's.

#include "core/units/quantity.h"

#include <optional>

namespace sump {

/// Cover at which the spread through the earth may be reckoned at all: 2 ft (AASHTO 6.4.1).
inline constexpr double kLeastCoverForSpread = 2 * kMetresPerFoot;

/// Impact allowance as a share of the load: 30 % to 1 ft of cover, 20 % to 2 ft, 10 % to less than
/// 3 ft, then none (AASHTO 3.8.2.3).
double impactShare(Length cover);
/// Pressure of one HS-20 axle on the lid, with impact: each 16,000 lb wheel spread over a square
/// whose side is 1.75 times the cover, the two squares 6 ft apart merged where they overlap.
/// Nothing under 2 ft of cover: the slab itself must be analysed.
std::optional<Pressure> livePressure(Length cover);

} // namespace sump
