// P-3: the long section through all vaults in flow order, with its levels.

#include "core/sheet/flow.h"
#include "core/sheet/section_block.h"

#include <algorithm>

namespace sump {

namespace {

/// On small paper the drawing fills the page where the tables find no room under one that shows
/// heights as large.
SectionSheet sized(const SheetJob& job, const TrainProfile& profile,
                   const std::vector<Block>& tables, Point2 most) {
  constexpr double kFull = 0.78, kLess = 0.9, kLowest = 0.45, kLarge = 0.55; // of the page
  const auto drawn = [&](double height) {
    SectionSheet section = longSectionBlock(profile, job.units(), most.x, height);
    tellBelow(section.block, section.unplaced);
    return section;
  };
  if (!isSmallPaper(job.paper)) return drawn(most.y * kLarge);
  double wide = 0, high = 0;
  for (const Block& table : tables) {
    wide += table.width + kSheetGap;
    high = std::max(high, table.height() + kSheetGap);
  }
  SectionSheet full = drawn(most.y * kFull);
  for (double share = kFull; wide <= most.x + kSheetGap && share > kLowest; share *= kLess) {
    SectionSheet section = drawn(most.y * share);
    if (section.scale != full.scale || section.stretch != full.stretch) break;
    if (section.block.height() + high <= most.y) return section;
  }
  return full;
}

} // namespace

void trainSectionSheet(const SheetJob& job, PageFlow& flow) {
  const auto profile = trainProfile(job.plan(), job.study(), job.catalog);
  if (!profile) return;
  const Point2 most = flow.largestFigure();
  std::vector<Block> tables = trainTables(*profile, job.units(), most.x);
  SectionSheet section = sized(job, *profile, tables, most);
  flow.add(std::move(section.block));
  flow.addAll(std::move(tables));
}

} // namespace sump
