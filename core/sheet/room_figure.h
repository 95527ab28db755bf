#pragma once
// What the plans of an equipment room share, the plumber's and the electrician's. Private to
// core/sheet.

#include "core/sheet/figure.h"
#include "core/sheet/sheet_set.h"

#include <string>
#include <vector>

namespace sump {

inline constexpr double kAboutRoom = 0.6; ///< m of what is outside

/// The marks in and near the room, in its own frame and for a figure no larger than `most` mm; its
/// door's swing whole.
std::vector<Mark> roomMarks(const std::vector<Mark>& marks, const EquipmentRoom& room, Point2 most,
                            UnitSystem units);

/// The room's inside, in its own frame.
PaperBox insideOf(const EquipmentRoom& room);

/// A plan of the room with its title, marks and measures, and nothing told yet.
Drawing roomDrawing(const SheetJob& job, const EquipmentRoom& room, std::string anchor,
                    std::string title, std::vector<Mark> marks);

/// The room from wall to wall, what stands along its walls, and its door. On small paper closer.
void measureRoom(const SheetJob& job, const EquipmentRoom& room, Drawing& d);

/// The outlines of the walls' inside faces and of the boxes in the room, which words should not
/// cut.
std::vector<Polyline> roomLines(const EquipmentRoom& room);

/// The name of a box with its sizes in plan and, where it stands as high as that, its height.
Callout boxCallout(const EquipmentRoom& room, const RoomBox& box, const std::string& name,
                   UnitSystem units);

/// The place nearest to the box's middle that no port is near.
Point2 freePlace(const PaperBox& box, const std::vector<Point2>& ports);

/// Working spaces at the panels and disconnects, on the site.
void markPowerSpaces(const SheetJob& job, bool hatched, std::vector<Mark>& marks);

/// `WORKING SPACE, KEEP CLEAR` and the depth, width and height that it needs.
std::vector<std::string> spaceLines(const WorkingSpaceStudy& space, UnitSystem units);

/// `Disconnect` and whose.
std::vector<std::string> disconnectLines(const Supply& supply);

} // namespace sump
