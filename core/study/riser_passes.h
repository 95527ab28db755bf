#pragma once
// Where a run goes through the side of a manway's riser, over the lid.

#include "core/study/study.h"

#include <vector>

namespace sump {

struct RiserPass {
  Point3 at; ///< on the riser's inside face; z is the invert there
  std::string size;
  Angle slant; ///< of the line in plan, off the riser's radius there; never negative
};

/// In the order of flow. `diameter` is the riser's clear opening.
std::vector<RiserPass> riserPasses(const RunStudy& run, const VaultStudy& vault,
                                   const ManwayStudy& manway, Length diameter);

/// Where the way from a to b crosses the circle, as shares of the way.
std::vector<double> circleCrossings(Point2 a, Point2 b, Point2 centre, double radius);

} // namespace sump
