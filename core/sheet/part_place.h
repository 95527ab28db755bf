#pragma once
// Where a part stands on its studied run. Private to core/sheet.

#include "core/study/study.h"

#include <optional>
#include <string>

namespace sump {

struct PartPlace {
  Point3 at;        ///< z is the invert
  double along = 0; ///< plan distance from the run's start, m
  std::string size; ///< nominal there
};

/// Plan distance from the run's start to each of its points, m.
std::vector<double> planStations(const RunStudy& run);
/// Nothing when the run could not be worked out or the leg does not exist.
std::optional<PartPlace> partPlace(const RunStudy& run, const InlinePart& part);

} // namespace sump
