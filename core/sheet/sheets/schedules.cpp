// x-6: schedules of runs, vaults, fittings, valves, levels, conduits, findings and revisions.

#include "core/sheet/schedules.h"
#include "core/sheet/circuits.h"
#include "core/sheet/flow.h"
#include "core/sheet/revision_clouds.h"
#include "core/sheet/set_tables.h"
#include "core/sheet/undecided.h"

#include <algorithm>

namespace sump {

void plumbingScheduleSheet(const SheetJob& job, PageFlow& flow) {
  const double wide = flow.fullWidth();
  const double half = isSmallPaper(job.paper) ? wide : (wide - kSheetGap) / 2;
  const double column = flow.columnWidth();
  flow.addAll({runSchedule(job.review, job.catalog, std::min(wide, 430.0)),
               chamberSchedule(job.review, half), manwaySchedule(job.review, column),
               connectionNotes(job, false, column), partTable(job, column),
               accessTable(job, column), fittingTable(job, isSmallPaper(job.paper) ? column : half),
               levelTable(job, half), ventTable(job, column)});
}

void electricalScheduleSheet(const SheetJob& job, PageFlow& flow) {
  if (job.study().wiring.conduits.empty() && job.plan().basis.wiring.supplies.empty()) return;
  const double column = flow.columnWidth();
  // On small paper its cells would be broken in half a page while the other half is free.
  const double wide =
      isSmallPaper(job.paper) ? flow.fullWidth() : std::min(flow.fullWidth(), 1.5 * column);
  flow.add(circuitTable(job, std::min(flow.fullWidth(), 2 * column + kSheetGap)));
  flow.addAll({conduitTable(job, wide), supplyTable(job, column), signalTable(job, column),
               connectionNotes(job, true, column)});
}

void findingSheet(const SheetJob& job, PageFlow& flow) {
  const double wide = std::min(flow.fullWidth(), 2 * flow.columnWidth() + kSheetGap);
  Block open = findingList(job.review, flow.columnWidth());
  if (open.body.empty()) {
    open = paragraphs("OPEN FINDINGS OF THE CHECK", {"None."}, flow.columnWidth(), false);
  }
  std::vector<std::string> undecided;
  for (const Undecided& item : undecidedOf(job.review))
    undecided.push_back(undecidedText(item));
  if (undecided.empty()) undecided.push_back("Nothing.");
  flow.addAll({std::move(open),
               paragraphs("NOT DECIDED FOR WANT OF AN INPUT", undecided, flow.columnWidth(), true),
               acceptedTable(job, wide), revisionTable(job, flow.columnWidth())});
  if (job.changes != nullptr) {
    const double read = std::min(flow.fullWidth(), 1.6 * flow.columnWidth());
    flow.addAll({planChangeBlock(job, read), billChangeBlock(job, read)});
  }
}

} // namespace sump
