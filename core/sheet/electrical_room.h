#pragma once
// The equipment room as the electrician builds it: panel, disconnects, what they feed, conduits and
// the working space. Private to core/sheet.

#include "core/sheet/block.h"
#include "core/sheet/sheet_set.h"

#include <set>

namespace sump {

Block electricalRoom(const SheetJob& job, const EquipmentRoom& room, Point2 most);
/// What stands at the panel of a room that has one, enlarged.
Block panelPlan(const SheetJob& job, const EquipmentRoom& room, Point2 most);

/// The drawing without these pipes and without notes, with disconnects and working spaces.
std::vector<Mark> electricalMarks(const SheetJob& job, const std::set<Id>& pipes);

/// Runs other than conduits, and their parts.
std::set<Id> pipeIds(const Plan& plan);

} // namespace sump
