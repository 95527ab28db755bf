#pragma once
// The bubbles that name a view and its sheet. Private to core/sheet.

#include "core/sheet/page.h"

#include <string>

namespace sump {

inline constexpr double kBubble = 5.5;  ///< mm, radius: takes the longest sheet number
inline constexpr double kPointer = 2.6; ///< by which an elevation's triangle stands out of it

/// The view's number over that of its sheet. `sight`, on the paper, is where an elevation looks to;
/// zero: it is no elevation.
void drawReference(Point2 centre, const std::string& view, const std::string& sheet, Point2 sight,
                   Page& page);

} // namespace sump
