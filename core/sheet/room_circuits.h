#pragma once
// The circuits inside an equipment room as lines. Their way is the electrician's; they are drawn so
// that they can be told apart. Private to core/sheet.

#include "core/sheet/clip.h"
#include "core/sheet/figure.h"
#include "core/sheet/sheet_set.h"

#include <string>
#include <vector>

namespace sump {

/// Places in a room as seen along the wall that a box stands nearest to: x along it, y off it.
class WallFrame {
public:
  WallFrame(const EquipmentRoom& room, const RoomBox& box);
  Point2 toWall(Point2 local) const;
  Point2 toRoom(Point2 wall) const;
  /// Is the wall on the right of one who walks along it in the direction of x?
  bool onTheRight() const { return side_ == Side::South || side_ == Side::East; }

private:
  Side side_;
  double length_, width_;
};

/// What the box covers, along and off the wall.
PaperBox onWall(const WallFrame& wall, const RoomBox& box);

struct CircuitLine {
  Id of;
  std::string name; ///< `circuit 3`, as the schedule numbers it
  Polyline way;     ///< in the room's frame
};

/// From the panel to each disconnect in the room, from there to the skid, and to solenoid valves.
std::vector<CircuitLine> circuitLines(const SheetJob& job, const EquipmentRoom& room);

/// With their numbers, under what stands in the room and over its boxes.
void drawCircuits(const std::vector<CircuitLine>& lines, Drawing& d);

/// `circuits 1, 2`: those in a conduit; empty when there are none.
std::string circuitsIn(const SheetJob& job, const std::string& conduit);

/// Disconnects in the room, in its frame.
struct RoomDisconnect {
  const Supply* supply;
  Point2 local;
};
std::vector<RoomDisconnect> disconnectsIn(const SheetJob& job, const EquipmentRoom& room);

/// Does one hang beside the panel, on its wall? Of a room that has a panel.
bool isBesidePanel(const EquipmentRoom& room, Point2 local);

} // namespace sump
