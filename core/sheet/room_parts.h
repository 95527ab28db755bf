#pragma once
// What stands in the open in an equipment room: valves and parts in the runs, and pipe that needs
// supports. Private to core/sheet.

#include "core/sheet/block.h"
#include "core/sheet/part_list.h"
#include "core/sheet/sheet_set.h"

#include <vector>

namespace sump {

struct RoomPart {
  const Run* run;
  const InlinePart* part;
  Point2 local;         ///< in the room's frame
  double height = 0;    ///< of the run's invert over the floor, m
  bool upright = false; ///< in a leg that stands
  std::string size, what;
};

/// In the plan's order; of pipe only, above the floor, in the room or not farther than `about` m.
std::vector<RoomPart> partsIn(const SheetJob& job, const EquipmentRoom& room, double about = 0);

Block roomPartTable(const SheetJob& job, const EquipmentRoom& room, double width);
/// Of all rooms together.
Block supportTable(const SheetJob& job, double width);

} // namespace sump
