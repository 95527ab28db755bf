#pragma once
// The wall of an equipment room with the rising pipes, seen from inside. Private to core/sheet.

#include "core/sheet/figure.h"
#include "core/sheet/sheet_set.h"

namespace sump {

/// `All pipes rise in here`
std::string areaLabel(const SheetJob& job, const EquipmentRoom& room);
/// What a port is and how high it stands; on small paper its run is enough, since a table tells
/// all.
Callout portCallout(const SheetJob& job, const Port& port, Point2 at);

/// For a figure no larger than `most` mm.
Drawing wallElevation(const SheetJob& job, const EquipmentRoom& room, Point2 most);
/// Its pipes with their valves, enlarged.
Drawing riserElevation(const SheetJob& job, const EquipmentRoom& room, Point2 most);

} // namespace sump
