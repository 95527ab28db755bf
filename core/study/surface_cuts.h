#pragma once
// What trenches and digs take out of pavements and floors: the lengths that are saw cut round them,
// and the areas that are broken out and made good.

#include "core/study/study.h"

namespace sump {

/// Cut along both sides of each trench and at its ends, where these lie in the pavement or under
/// the floor. Where digs run into each other there is one opening. The edge of the pavement itself
/// and the wall over a trench are not cut; a floor hides the pavement that is drawn under it.
struct SurfaceCuts {
  Length pavementCut, floorCut;
  Area pavement, floor;
};
/// Needs the tops of all digs. Buildings, and rooms that stand for themselves, have floors.
Decided<SurfaceCuts> surfaceCuts(const Plan& plan, const EarthStudy& earth);

} // namespace sump
