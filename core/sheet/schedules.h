#pragma once
// Schedules, notes and legends of a Review as blocks. Private to core/sheet.

#include "core/rules/review.h"
#include "core/sheet/block.h"

#include <vector>

namespace sump {

Block runSchedule(const Review& review, const Catalog& catalog, double width);
Block chamberSchedule(const Review& review, double width);
Block manwaySchedule(const Review& review, double width);
/// How the axes of the plan lie to true north.
std::string northStatement(const Plan& plan);
Block generalNotes(const Review& review, double width);
/// Does a run of the plan have an air gap?
bool hasAirGap(const Plan& plan);
Block cautions(const Plan& plan, double width);
/// What the finding's rule asks for, in words.
std::string ruleTitle(const Finding& finding);
/// Warnings and errors by number; no body when there are none.
Block findingList(const Review& review, double width);
/// The services, existing utilities and symbols that the plan uses.
Block legend(const Review& review, double width);
Block symbolKey(const Review& review, double width);
/// Signs of what stands in the plan's rooms.
std::vector<PaperStrip> roomSamples(const Plan& plan);
/// Those of the tankage's symbols that an electrical plan shows, and the existing lines.
void addElectricalSigns(const Plan& drawn, const Study& study, Block& block);

} // namespace sump
