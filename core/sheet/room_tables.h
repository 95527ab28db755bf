#pragma once
// Where pipes and conduits rise in an equipment room, in words and as a table. Private to
// core/sheet.

#include "core/sheet/block.h"
#include "core/sheet/sheet_set.h"

#include <string>
#include <vector>

namespace sump {

/// One wall seen from inside.
struct WallView {
  Side side;
  double length;
  /// Distance to the right from the wall's left end, of a place in the room.
  double right(const EquipmentRoom& room, Point2 p) const;
  /// How far off the wall it is.
  double off(const EquipmentRoom& room, Point2 p) const;
};

/// The wall that the rising pipes stand nearest to; of no plumbing area the skid's.
WallView wallOf(const EquipmentRoom& room);

/// The runs that end at a port, by their tags.
std::string runAt(const SheetJob& job, const Id& port);

/// The run that ends at a port stands upright there, so that the port's height is that of its open
/// end; else it is the invert's.
bool endsUpright(const SheetJob& job, const Id& port);

/// Pipe runs that come up through the room's floor outside the area for it, by their tags.
std::string risersOutside(const SheetJob& job, const EquipmentRoom& room);

Block portTable(const SheetJob& job, const EquipmentRoom& room, double width);

std::vector<std::string> roomNotes(const SheetJob& job);

} // namespace sump
