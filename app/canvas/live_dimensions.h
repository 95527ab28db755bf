#pragma once
// Lengths, bearings and distances beside what is being drawn or dragged.

#include "app/canvas/gaps.h"
#include "app/canvas/overlay.h"
#include "core/units/quantity.h"

namespace sump {

/// How far it is east or west and north or south: `12'-0" west  3'-0" north`; `plan west` where the
/// plan's top is not true north, which bearings are told from.
QString stepsBetween(Point2 from, Point2 to, const Plan& plan);
/// `N 45.0° E true`: from true north, which the north arrow shows.
QString bearingText(Point2 from, Point2 to, const Plan& plan);
/// Length and bearing along a leg, and how far it goes east and north.
void paintLegDimensions(Overlay& overlay, Point2 from, Point2 to, const Plan& plan);
/// A dimension between two points with its length.
void paintDimension(Overlay& overlay, Point2 from, Point2 to, UnitSystem units);
void paintGaps(Overlay& overlay, const std::vector<Gap>& gaps, UnitSystem units);

} // namespace sump
