#pragma once
// Long sections for the sheets: the drawing to a true scale with its levels, and the level table
// under it.

#include "core/sheet/block.h"
#include "core/study/profile.h"

#include <string>
#include <vector>

namespace sump {

struct SectionSheet {
  Block block;        ///< the drawing with the table under it; cut only between table rows
  double scale = 0;   ///< denominator along the line
  double stretch = 1; ///< heights are drawn to scale / stretch
  /// Texts that found no room on the drawing. Their levels stand in the table all the same.
  std::vector<std::string> unplaced;
};

/// What stands over a run's section.
struct SectionTitle {
  std::string title;              ///< `WW-1  Wash-water inlet`
  std::vector<std::string> facts; ///< `6" PVC SDR 35, 68.2 ft`
};

/// Most width of the block and most height of the drawing, mm; 120 x 40 at least. The largest
/// standard scale that fits, heights stretched 1, 2, 5 or 10 times.
SectionSheet longSectionBlock(const RunProfile& profile, const SectionTitle& title,
                              UnitSystem units, double width, double height,
                              double leastWidth = 120);
/// The drawing alone, as wide as it needs, at most `width`.
SectionSheet longSectionBlock(const TrainProfile& profile, UnitSystem units, double width,
                              double height);
/// Its levels: of the vaults, and the inverts of the runs.
std::vector<Block> trainTables(const TrainProfile& profile, UnitSystem units, double width);

} // namespace sump
