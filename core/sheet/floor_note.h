#pragma once
// What a long section tells of the floor of a room or a building, or of the rim of a basin. Private
// to core/sheet.

#include "core/sheet/section_marks.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

struct FloorNote {
  std::string text;
  std::vector<SectionArea> lines; ///< what the section shows of the floor; none of a rim
};

/// A room and its building that have one floor share a text, the building's. Nothing where the
/// other tells it, or where the level is not known.
std::optional<FloorNote> floorNote(const RunProfile& profile, const ProfileStructure& structure,
                                   UnitSystem units);

} // namespace sump
