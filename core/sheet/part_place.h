#pragma once
// Where a part stands on its studied run, and the numbers of all parts. Private to core/sheet.

#include "core/sheet/sheet_set.h"
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

/// Plan distance from the run's start to each of its points, m.
std::vector<double> planStations(const RunStudy& run);
/// Nothing when the run could not be worked out or the leg does not exist.
std::optional<PartPlace> partPlace(const RunStudy& run, const InlinePart& part);

/// A valve or another part set in a run or at its end. Its number, counted from 1 in the order of
/// the list, stands in the table of parts and on the plan.
struct ListedPart {
  std::string mark; ///< the part's own, or the end of the run that it is at
  Id run;
  std::string size; ///< as it is printed
  std::optional<PartPlace> where;
  std::string what;
};
/// Run by run from start to end.
std::vector<ListedPart> listedParts(const SheetJob& job);

} // namespace sump
