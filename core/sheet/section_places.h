#pragma once
// Where the labels of a long section may stand. Private to core/sheet.

#include "core/sheet/placer.h"
#include "core/sheet/section_marks.h"

#include <utility>
#include <vector>

namespace sump {

inline constexpr double kSectionReach = 45; ///< mm that a label may stand off with a leader

PaperBox boxAbout(Point2 centre, Point2 size);
/// Along a line of the section, its text on the wished side of it, else on the other one.
void addLinePlaces(Point2 a, Point2 b, double wished, Point2 size, bool below, double cost,
                   std::vector<LabelCandidate>& places);
/// The ends of a leg or, where a part stands at its middle, of its longest stretch between parts:
/// words about the pipe point at the middle of that.
std::pair<ProfilePoint, ProfilePoint> plainStretch(const RunProfile& profile, std::size_t leg);
/// Beside its point at its height, under or over it; else with a leader.
std::vector<LabelCandidate> invertPlaces(Point2 at, Point2 size);
/// What the leader to a line would go through: what stands on a lid or a floor is told from over
/// it, and water from beside it.
double fromWrongSide(const SectionNote& note, const LabelCandidate& place, Point2 target);

} // namespace sump
