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

/// A page with its border but without number, title and title block.
struct DraftPage {
  Page page;
  std::vector<std::size_t> kinds;     ///< what stands on it, by the places given to PageFlow::begin
  std::vector<std::string> runs;      ///< tags of those whose sections stand on it
  std::vector<std::string> anchors{}; ///< of what begins on it, for other sheets to refer to
  std::vector<std::string> views{};   ///< marks of the drawings on it, numbered in this order
  std::vector<std::string> parts{};   ///< of a plan over several pages that stand on it: `A2`
  double used = 0;                    ///< share of the drawing space that is filled
  bool filledLater = false;           ///< drawings stand on it that follow on those of a later page
};
using DraftPages = std::vector<DraftPage>;

class PageFlow;

/// A line of the sheet index.
struct IndexLine {
  std::string number;
  std::string title;
  std::string documentType;
  bool operator==(const IndexLine&) const = default;
};

/// An empty page of the job's paper with its border.
Page borderedPage(const SheetJob& job);

void coverSheet(const SheetJob& job, const std::vector<IndexLine>& index, PageFlow& flow);
void coordinationSheet(const SheetJob& job, PageFlow& flow);
void placementSheet(const SheetJob& job, PageFlow& flow);
void excavationSheet(const SheetJob& job, PageFlow& flow);
void settingOutSheet(const SheetJob& job, PageFlow& flow);
void vaultSectionSheet(const SheetJob& job, PageFlow& flow);
void planSheet(const SheetJob& job, PageFlow& flow);
void trainSectionSheet(const SheetJob& job, PageFlow& flow);
void runSectionSheet(const SheetJob& job, PageFlow& flow);
void roomSheet(const SheetJob& job, PageFlow& flow);
void detailSheet(const SheetJob& job, PageFlow& flow);
void plumbingScheduleSheet(const SheetJob& job, PageFlow& flow);
void electricalSheet(const SheetJob& job, PageFlow& flow);
void electricalScheduleSheet(const SheetJob& job, PageFlow& flow);
void findingSheet(const SheetJob& job, PageFlow& flow);
void calculationSummarySheet(const SheetJob& job, PageFlow& flow);

} // namespace sump
