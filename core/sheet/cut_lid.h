#pragma once
// The lid of a vault in a long section. Private to core/sheet.

#include "core/sheet/section_marks.h"

#include <vector>

namespace sump {

/// The top of the lid without the openings that the section cuts, its longest piece first.
std::vector<SectionArea> lidPieces(const ProfileVault& vault);

} // namespace sump
