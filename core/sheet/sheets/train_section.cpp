// P-3: the long section through all vaults in flow order, with its levels.

#include "core/sheet/flow.h"
#include "core/sheet/section_block.h"

#include <algorithm>

namespace sump {

namespace {

/// What a page must take at least: the head and the highest strip.
double tallest(const Block& block) {
  double head = 0, body = 0;
  for (const PaperStrip& strip : block.head)
    head += strip.height;
  for (const PaperStrip& strip : block.body)
    body = std::max(body, strip.height);
  return head + body;
}

} // namespace

void trainSectionSheet(const SheetJob& job, PageFlow& flow) {
  const auto profile = trainProfile(job.plan(), job.study(), job.catalog);
  if (!profile) return;
  const Point2 most = flow.largestFigure();
  // On small paper the drawing fills the page and the table goes on over the next ones.
  const double share = isSmallPaper(job.paper) ? 0.78 : 0.55;
  double height = most.y * share;
  SectionSheet section = longSectionBlock(*profile, job.units(), most.x, height);
  constexpr double kLeast = 45; // mm; a lower drawing shows nothing
  while (tallest(section.block) > most.y && height > kLeast) {
    height *= 0.85;
    section = longSectionBlock(*profile, job.units(), most.x, height);
  }
  const std::vector<std::string> unplaced = std::move(section.unplaced);
  flow.add(std::move(section.block));
  if (!unplaced.empty()) {
    flow.add(paragraphs("NOT LABELLED ON THE SECTION", unplaced, flow.columnWidth(), false));
  }
}

} // namespace sump
