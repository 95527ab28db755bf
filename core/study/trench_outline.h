#pragma once
// The ground that a trench takes up, its bends with it.

#include "core/study/earth.h"

#include <optional>

namespace sump {

/// So far on the way from a to b, as a share of it.
TrenchPoint trenchBetween(const TrenchPoint& a, const TrenchPoint& b, double t);
/// At a bend the sides of both pieces go on until they meet; without this outer corner the outline
/// of the pieces has a notch there. Empty where the line goes straight on.
Ring trenchCorner(const TrenchPoint& before, const TrenchPoint& bend, const TrenchPoint& after);
/// Of a stretch: its pieces and its corners.
std::vector<Ring> trenchOutlines(const TrenchStretch& stretch);
std::vector<Ring> trenchOutlines(const TrenchStudy& trench);
/// Do two trenches lie side by side for a while, or does one end at the other, with so little
/// ground between them that it would not stand? There they are dug as one. Trenches that only cross
/// are not.
bool dugTogether(const TrenchStudy& a, const TrenchStudy& b);
/// Where a trench runs along a side of an outline that it lies outside of.
struct PlaceBeside {
  TrenchPoint point;
  double toSide = 0; ///< from the trench's line, m
};
/// Give or take 30 degrees; the middles of short steps, as far off as the trench is deep at most.
/// None where it does so for no longer than a corner takes.
std::vector<PlaceBeside> placesBeside(const TrenchStudy& trench, const Ring& outline);
/// The ground that stands between a trench and a pit which it runs along, give or take 30 degrees,
/// with less than `within` metres between.
struct TrenchBerm {
  double least = 0; ///< m; 0 where the trench takes ground from the pit's side
  Point2 at;        ///< on the trench's line, where it is least
};
/// Nothing where it does so for no longer than a corner takes.
std::optional<TrenchBerm> bermBeside(const TrenchStudy& trench, const Ring& pitTop, double within);
/// The longest piece of the trench's line that lies under none of the roofs and in none of the
/// others; where there is hardly any, the longest under no roof, then that in none of the others,
/// then that without a break.
Polyline lineAlone(const TrenchStudy& trench, const std::vector<TrenchStudy>& others,
                   const std::vector<Ring>& roofs);

} // namespace sump
