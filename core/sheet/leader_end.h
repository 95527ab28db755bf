#pragma once
// Where leaders to symbols end. Private to core/sheet.

#include "core/sheet/clip.h"

#include <vector>

namespace sump {

/// Of a leader to this place: short of the symbols (their boxes on the paper) whose middle it is,
/// since a dot in a symbol would make another of it. As it is where too little of it would be left.
Point2 leaderEnd(Point2 from, Point2 to, const std::vector<PaperBox>& symbols);

} // namespace sump
