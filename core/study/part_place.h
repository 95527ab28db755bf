#pragma once
// A studied run in plan, and where a part stands on it.

#include "core/study/study.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

struct PartPlace {
  Point3 at;        ///< z is the invert
  double along = 0; ///< plan distance from the run's start, m
  std::string size; ///< nominal there
};

/// The run's points seen from above; those of an upright leg are one place twice.
Polyline planLine(const RunStudy& run);
/// Plan distance from the run's start to each of its points, m.
std::vector<double> planStations(const RunStudy& run);
/// Plan distance from the run's start to its nearest place to `p`, m. The run is worked out.
double stationOf(const RunStudy& run, Point2 p);
/// Nothing when the run could not be worked out or the leg does not exist.
std::optional<PartPlace> partPlace(const RunStudy& run, const InlinePart& part);

} // namespace sump
