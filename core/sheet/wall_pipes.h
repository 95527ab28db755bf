#pragma once
// Pipe and conduit in an equipment room as seen on a wall's plane: x to the right, y over the
// floor. Private to core/sheet.

#include "core/sheet/marks.h"
#include "core/sheet/room_tables.h"

#include <string>
#include <vector>

namespace sump {

/// A stretch of a run parallel to the wall; one that goes toward the wall is seen end on, as one
/// place.
struct WallPipe {
  Id run;
  std::string tag;
  Service service;
  Polyline line; ///< centreline
  double radius;
  double off; ///< the wall; what stands farther off stands before the others
  bool endOn() const { return line.size() < 2; }
  bool covers(Point2 p) const;
};

/// Where a port's pipe ends, and as far off the wall; upright pipe ends open.
struct WallPort {
  const Port* port;
  bool upright;
  Point2 centre;
  double radius, off;
};

/// Those at the wall first, so that what stands before them is drawn over them. As far below the
/// floor as is worth drawing.
std::vector<WallPipe> wallPipes(const SheetJob& job, const EquipmentRoom& room,
                                const WallView& wall);
std::vector<WallPort> wallPorts(const SheetJob& job, const EquipmentRoom& room,
                                const WallView& wall);

/// The tags of what stands before this place in a run, off the wall by so much.
std::string standsBefore(const std::vector<WallPipe>& pipes, const std::string& run, Point2 at,
                         double off);

/// Of what lies under a floor or behind something else: dashed and narrow, as hidden edges are
/// (ISO 128-2, from memory), whatever the pattern of the service.
LineStyle hiddenLine(Service service);

/// A line's stretches over the floor and under it; a leg that has no length in it is left out.
struct FloorStretch {
  Polyline line;
  bool under = false;
};
std::vector<FloorStretch> stretchesByFloor(const Polyline& line,
                                           const std::vector<double>& overFloor);

/// With a gap in what they cross; hidden under the floor.
void drawWallPipes(const std::vector<WallPipe>& pipes, const std::vector<WallPort>& ports,
                   std::vector<Mark>& marks);

} // namespace sump
