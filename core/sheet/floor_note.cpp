#include "core/sheet/floor_note.h"

#include "core/study/object_names.h"
#include "core/units/print_levels.h"

#include <algorithm>

namespace sump {

namespace {

/// A room in a building, its floor told at the same level.
bool shareFloor(const ProfileStructure& building, const ProfileStructure& room, UnitSystem units) {
  return building.kind == StructureKind::Building && room.kind == StructureKind::Room &&
         building.level && room.level && room.from > building.from - kSameLevel &&
         room.to < building.to + kSameLevel &&
         printElevation(*building.level, units) == printElevation(*room.level, units);
}

} // namespace

std::optional<FloorNote> floorNote(const RunProfile& profile, const ProfileStructure& structure,
                                   UnitSystem units) {
  if (!structure.level) return std::nullopt;
  const bool rim = structure.kind == StructureKind::Basin;
  std::string name = called(structure);
  FloorNote note;
  const SectionExtent shown = sectionExtent(profile);
  const auto addLine = [&](const ProfileStructure& s) {
    const double from = std::max(s.from, shown.from), to = std::min(s.to, shown.to);
    if (from < to && !rim) note.lines.push_back({from, to, *s.level, *s.level});
  };
  for (const ProfileStructure& other : profile.structures) {
    if (shareFloor(other, structure, units)) return std::nullopt;
    if (!shareFloor(structure, other, units)) continue;
    if (called(other) != called(structure)) name = called(other) + " and building";
    addLine(other);
  }
  addLine(structure);
  note.text = name + (rim ? ", RIM " : ", FLOOR ") + printElevation(*structure.level, units);
  return note;
}

} // namespace sump
