#pragma once
// The section of a run as it fits a sheet best. Private to core/sheet.

#include "core/sheet/section_block.h"

namespace sump {

/// At the largest scale that leaves room for its levels: in a band under the drawing, in a list
/// under or beside it, or the drawing cut into frames one below the other where it would be small.
/// No larger than `most` mm; `fills`: it takes what that leaves free.
Block runSectionBlock(const RunProfile& profile, const SectionTitle& title, UnitSystem units,
                      Point2 most, bool fills);

} // namespace sump
