#pragma once
// Vaults, baffles, manways and rooms as a run's unrolled section cuts them. Private to core/sheet.

#include "core/sheet/sheet_set.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace sump {

struct CutShape {
  Ring ring; ///< x plan distance along the run, y elevation, m
  std::optional<LineStyle> line;
  std::optional<FillStyle> fill;
};

struct StructureCut {
  Id object;
  double left = 0, right = 0;
  std::vector<CutShape> shapes;
  std::vector<std::pair<double, std::string>> levels; ///< elevation and its name
};

/// The opening of a manway that the section along a run cuts, plan distances along it.
struct CutOpening {
  Id manway;
  double from = 0, to = 0;
};
std::vector<CutOpening> cutOpenings(const SheetJob& job, const RunStudy& run);
/// Where the run crosses outside walls, plan distances along it, rising.
std::vector<double> wallStations(const SheetJob& job, const RunStudy& run);
/// Those of the structures that are met between two plan distances. A structure in which the run
/// begins or ends goes on a little beyond it.
std::vector<StructureCut> structureCuts(const SheetJob& job, const RunStudy& run, double from,
                                        double to);

} // namespace sump
