#pragma once
// What every maker of a sheet is given and gives back. Private to core/sheet. One file a sheet in
// core/sheet/sheets; compose.cpp lists them, numbers their pages and adds the title blocks.

#include "core/rules/review.h"
#include "core/sheet/marks.h"
#include "core/sheet/page.h"
#include "core/study/plan_changes.h"

#include <string>
#include <vector>

namespace sump {

struct SheetJob {
  const Review& review;
  const Catalog& catalog;
  const PaperSize& paper;
  double scale = 0;                        ///< of the plans; 0: fitted
  std::vector<Mark> marks;                 ///< planMarks of the review
  const PlanComparison* changes = nullptr; ///< since an earlier plan; null: none are shown
  const Plan& plan() const { return review.plan; }
  const Study& study() const { return review.study; }
  UnitSystem units() const { return review.plan.project.units; }
};

/// A page with its border but without number and title block.
struct DraftPage {
  Page page;
  std::string documentType; ///< ISO 7200: `Plan`, `Schedule`
  std::string scale;        ///< `As shown`, `None`
};
using DraftPages = std::vector<DraftPage>;

/// A line of the sheet index.
struct IndexLine {
  std::string number;
  std::string title;
  std::string documentType;
};

/// An empty page of the job's paper with its border.
Page borderedPage(const SheetJob& job, std::string title);

DraftPages coverSheet(const SheetJob& job, const std::vector<IndexLine>& index);
DraftPages coordinationSheet(const SheetJob& job);
DraftPages placementSheet(const SheetJob& job);
DraftPages excavationSheet(const SheetJob& job);
DraftPages vaultSectionSheet(const SheetJob& job);
DraftPages planSheet(const SheetJob& job);
DraftPages trainSectionSheet(const SheetJob& job);
DraftPages runSectionSheet(const SheetJob& job);
DraftPages roomSheet(const SheetJob& job);
DraftPages detailSheet(const SheetJob& job);
DraftPages plumbingScheduleSheet(const SheetJob& job);
DraftPages electricalSheet(const SheetJob& job);
DraftPages electricalScheduleSheet(const SheetJob& job);
DraftPages findingSheet(const SheetJob& job);
DraftPages calculationSummarySheet(const SheetJob& job);

} // namespace sump
