#pragma once
// What the plans of an equipment room share, the plumber's and the electrician's. Private to
// core/sheet.

#include "core/sheet/figure.h"
#include "core/sheet/sheet_set.h"

#include <string>
#include <vector>

namespace sump {

inline constexpr double kAboutRoom = 0.6; ///< m of what is outside

/// The room's inside, in its own frame.
PaperBox insideOf(const EquipmentRoom& room);

/// What of the runs is over the room's floor in full lines, what lies under it as hidden.
std::vector<Mark> tellHidden(const SheetJob& job, const EquipmentRoom& room,
                             const std::vector<Mark>& marks);

/// The marks in the box, in the room's own frame and for a figure no larger than `most` mm; where
/// the box holds all of the room, its door's swing whole.
std::vector<Mark> roomMarks(const std::vector<Mark>& marks, const EquipmentRoom& room,
                            const PaperBox& box, Point2 most, UnitSystem units);

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

/// The outlines of what is to be kept clear at the room's panel and disconnects, on the site:
/// working spaces may overlap.
std::vector<Ring> clearSpaces(const SheetJob& job, const Id& room);

/// Working spaces at the panels and disconnects, on the site.
void markPowerSpaces(const SheetJob& job, bool hatched, std::vector<Mark>& marks);

/// `WORKING SPACE, KEEP CLEAR` and the depth, width and height that it needs at the panel and at
/// each disconnect.
std::vector<std::string> spaceLines(const SheetJob& job, const Id& room);

/// `Disconnect` and whose.
std::vector<std::string> disconnectLines(const Supply& supply);

} // namespace sump
