// G-0: the cover with the sheet index, what is built, the site at small scale and the revisions.

#include "core/plan/ends.h"
#include "core/sheet/labels.h"
#include "core/sheet/plan_views.h"
#include "core/sheet/schedules.h"
#include "core/sheet/set_tables.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/survey_notes.h"
#include "core/sheet/undecided.h"
#include "core/units/earth.h"
#include "core/units/print.h"

#include <algorithm>

namespace sump {

namespace {

Block projectBlock(const SheetJob& job, double width) {
  const Project& p = job.plan().project;
  Block block{width, {}, {}};
  const auto line = [&](const std::string& text, double height, bool bold) {
    if (text.empty()) return;
    for (const std::string& part : wrapped(text, width, height, bold)) {
      block.head.push_back({height * 1.8, {words({0, height * 1.3}, part, height, bold)}});
    }
  };
  line(p.title, 7, true);
  line(p.supplementaryTitle, 5, false);
  line(p.siteAddress, 3.5, false);
  line(p.legalOwner, 3.5, false);
  line(p.documentStatus, 3.5, true);
  block.body.push_back({2, {rule({0, 1}, {width, 1}, 0.7)}});
  return block;
}

Block indexBlock(const std::vector<IndexLine>& index, double width) {
  std::vector<std::vector<std::string>> rows;
  for (const IndexLine& line : index)
    rows.push_back({line.number, line.documentType, line.title});
  return table("SHEET INDEX", {{"Sheet"}, {"Document"}, {"Title"}}, rows, width);
}

Block factBlock(const SheetJob& job, double width) {
  const UnitSystem units = job.units();
  const Study& study = job.study();
  std::vector<std::vector<std::string>> rows = {
      {"Vaults", std::to_string(study.vaults.size())},
      {"Working storage at rest", printVolume(study.workingVolume, units)},
      {"Runs of pipe and conduit", std::to_string(study.runs.size())},
      {"Digs for vaults", std::to_string(study.earth.pits.size())},
      {"Bank volume to dig, each dig as if alone",
       decidedText(study.earth.dug, [&](Volume v) { return earthText(v, units); })},
      {"Findings open",
       std::to_string(std::count_if(
           job.review.findings.begin(), job.review.findings.end(),
           [](const Finding& f) { return f.severity != Severity::Note && !f.accepted; }))},
      {"Not decided", undecidedSummary(undecidedOf(job.review))}};
  return table("WHAT IS BUILT", {{"What"}, {"How much"}}, rows, width);
}

/// Runs that are long enough on the paper for it by their marks.
RunLabel coverLabel(const SheetJob& job, const SheetView& view, const Run& run) {
  constexpr double kLong = 30; // mm
  const auto line = Locator(job.plan()).centreline(run);
  const bool clear = line && view.shownLength(*line) * 1000 / view.scale > kLong;
  return clear ? RunLabel::Tag : RunLabel::None;
}

/// The whole site at the largest scale that `most` takes, with the origin of the coordinates where
/// that is not far off and there is room.
SheetView siteView(const SheetJob& job, Point2 most) {
  constexpr double kMargin = 9, kOriginMargin = 5; // mm
  constexpr double kFar = 0.1;                     // of the site
  constexpr double kTitleRoom = 150;               // mm
  constexpr double kNames = 35; // mm; a small site has its names beside it, not on it
  const PaperBox site = extents(job.plan(), job.marks).site;
  const double scale =
      fittedScale(site, {{0, 0}, {most.x, most.y - kViewTitle}}, kMargin, job.units());
  const double k = 1000 / scale;
  PaperBox shown = site.grown(kMargin / k);
  const PaperBox origin = PaperBox{}.grown(kOriginMargin / k);
  const PaperBox both = around({shown.low, shown.high, origin.low, origin.high});
  const bool near = site.grown(kFar * std::max(site.width(), site.height())).holds(Point2{});
  if (near && both.width() * k <= most.x && both.height() * k <= most.y - kViewTitle) shown = both;
  const double beside = isSmallPaper(job.paper) ? 2 * (kNames - kMargin) : 0;
  const double width = std::min(most.x, std::max(shown.width() * k + beside, kTitleRoom));
  return {"1", "SITE", {{0, 0}, {width, shown.height() * k}}, shown.centre(), scale};
}

/// The site with buildings, drains and the longer runs named, and where coordinates begin.
Block siteBlock(const SheetJob& job, Point2 most) {
  const SheetView view = siteView(job, most);
  Page page;
  std::vector<Mark> marks =
      marksOf(job.marks, [](const Mark& mark) { return mark.layer != Layer::Note; });
  markOrigin(marks);
  const auto label = [&](const SheetView& v, const std::vector<Mark>& seen, Page& p) {
    LabelRequest request{job.review, job.catalog, seen,
                         [&](const Run& run) { return coverLabel(job, v, run); }};
    request.first = [&](LabelBoard& board) { labelOrigin(v, board); };
    request.notes = false;
    request.levels = false; // the plans tell them
    drawLabels(v, request, p);
  };
  drawSiteView(job, view, marks, label, page);
  Block block{
      view.frame.width(), {}, {{view.frame.height() + kViewTitle, std::move(page.items)}}, true};
  if (view.shows({})) block.anchor = originAnchor();
  return block;
}

} // namespace

void coverSheet(const SheetJob& job, const std::vector<IndexLine>& index, PageFlow& flow) {
  const double width = flow.columnWidth();
  flow.add(projectBlock(job, std::min(flow.fullWidth(), 2 * width)));
  flow.add(indexBlock(index, width));
  flow.add(factBlock(job, width));
  flow.add(revisionTable(job, width));
  if (!job.marks.empty()) {
    const Point2 most = flow.largestFigure();
    // Beside the column of tables where the sheet has one, else on a page of its own.
    const double beside = isSmallPaper(job.paper) ? 0 : width * flow.letters() + kSheetGap;
    flow.add(siteBlock(job, {most.x - beside, most.y - (beside > 0 ? 50 : 0)}));
  }
}

} // namespace sump
