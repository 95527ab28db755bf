// P-1: the plan of the reclaim tankage with all runs labelled, the legend and the notes.

#include "core/geometry/polygon.h"
#include "core/plan/ends.h"
#include "core/sheet/plan_views.h"
#include "core/sheet/revision_clouds.h"
#include "core/sheet/schedules.h"
#include "core/sheet/sheet_refs.h"

#include <algorithm>

namespace sump {

namespace {

RunLabel siteRunLabel(const Polyline& line, const SheetView& enlarged) {
  const double outside = planLength(line) - enlarged.shownLength(line);
  // 3 m: a stub that only just leaves the enlarged view is still labelled there.
  return outside > 3 && outside > 0.25 * planLength(line) ? RunLabel::Full : RunLabel::None;
}

/// The enlarged view's extent on the site view.
void drawExtent(const SheetView& site, const SheetView& enlarged, Page& page) {
  const PaperBox extent =
      around({site.toPaper(enlarged.site().low), site.toPaper(enlarged.site().high)});
  Polyline edge = extent.ring();
  edge.push_back(edge.front());
  for (Polyline& part : clipLine(edge, site.frame)) {
    page.items.push_back(
        PageShape{std::move(part), false, false, LineStyle{Ink::Black, 0.5, {4, 1.5}}, {}});
  }
}

/// Draws the plan's views and keeps the runs that no view had room to name.
class PlanViews {
public:
  explicit PlanViews(const SheetJob& job)
      : job_(job), locator_(job.plan()), clouds_(revisionClouds(job)), details_(detailPlaces(job)) {
  }

  /// `enlarged` is the view that shows the tankage larger; null: there is none.
  void draw(const SheetView& view, const SheetView* enlarged, bool site, Page& page) {
    const auto kind = [&](const Run& run) {
      if (enlarged == nullptr) return RunLabel::Full;
      const auto line = locator_.centreline(run);
      const RunLabel there = line ? siteRunLabel(*line, *enlarged) : RunLabel::None;
      if (site) return there;
      return there == RunLabel::Full ? RunLabel::Tag : RunLabel::Full;
    };
    const auto label = [&](const SheetView& v, const std::vector<Mark>& seen, Page& p) {
      if (site) drawExtent(v, *enlarged, p);
      keepLabels(v, seen, kind, site ? enlarged : nullptr, p);
      if (!v.hidden) return;
      p.items.push_back(PageShape{v.hidden->ring(), true, false, LineStyle{Ink::Black, 0.35, {}},
                                  FillStyle{Ink::White, Hatch::None}});
    };
    drawSiteView(job_, view, job_.marks, label, page);
  }

  const std::vector<std::string>& unplaced() const { return unplaced_; }
  /// For the parts of a view over several pages. `enlarged`: that view; null: it shows the site.
  DrawLabels partLabels(const SheetView* enlarged) {
    return [this, enlarged](const SheetView& v, const std::vector<Mark>& seen, Page& p) {
      const auto kind = [&](const Run& run) {
        const auto line = locator_.centreline(run);
        const bool there =
            enlarged != nullptr && line && siteRunLabel(*line, *enlarged) == RunLabel::Full;
        return there ? RunLabel::Tag : RunLabel::Full;
      };
      keepLabels(v, seen, kind, nullptr, p);
    };
  }

private:
  /// Clouds first, so that the labels keep clear of their triangles. `enlarged`: shows its part.
  void keepLabels(const SheetView& view, const std::vector<Mark>& seen,
                  const std::function<RunLabel(const Run&)>& runs, const SheetView* enlarged,
                  Page& page) {
    LabelRequest request{job_.review, job_.catalog, seen, runs, enlarged};
    std::vector<std::string> missing;
    request.references = true;
    request.first = [&](LabelBoard& board) {
      missing = drawClouds(clouds_, view, enlarged, board, page);
      labelDetails(view, enlarged, board);
    };
    keep(drawLabels(view, request, page));
    keep(missing);
  }
  /// On paper that has no room for bubbles as words.
  void labelDetails(const SheetView& view, const SheetView* enlarged, LabelBoard& board) {
    constexpr double kNear = 3, kReach = 90; // mm
    for (const DetailPlace& place : details_) {
      if (!view.shows(place.at) || (enlarged != nullptr && enlarged->shows(place.at))) continue;
      SheetLabel label{{viewOf(place.anchor), sheetOf(place.anchor)}};
      label.bubble = !isSmallPaper(job_.paper);
      if (!label.bubble) label = {{viewAndSheet(place.anchor)}, true};
      board.withLeader(label, place.at, kNear, kReach);
    }
  }
  void keep(const std::vector<std::string>& missing) {
    for (const std::string& tag : missing) {
      if (std::find(unplaced_.begin(), unplaced_.end(), tag) == unplaced_.end()) {
        unplaced_.push_back(tag);
      }
    }
  }

  const SheetJob& job_;
  Locator locator_;
  CloudSet clouds_;
  std::vector<DetailPlace> details_;
  std::vector<std::string> unplaced_;
};

/// Legible: of two views the enlarged one counts.
bool legible(const std::vector<SheetView>& views, UnitSystem units) {
  return views.back().scale <= leastLegibleScale(units);
}

/// All on one page: one view, or the site beside the enlarged tankage.
void drawTogether(const std::vector<SheetView>& views, PlanViews& drawn, Page& page) {
  const SheetView* enlarged = views.size() == 2 ? &views[1] : nullptr;
  // The enlarged view first: the site view may lie over a corner of it.
  for (auto view = views.rbegin(); view != views.rend(); ++view)
    drawn.draw(*view, enlarged, enlarged != nullptr && &*view != enlarged, page);
}

/// The site on one page, the tankage on the next ones.
void drawApart(const SheetJob& job, const Extents& e, PlanViews& drawn, PageFlow& flow) {
  constexpr double kMargin = 9;
  PaperBox region = flow.beginDrawing();
  region.high.y -= kViewTitle;
  const SheetView site{"1", "SITE PLAN", region, e.site.centre(),
                       fittedScale(e.site, region, kMargin, job.units())};
  // What the tankage's pages show together, as one view at their scale.
  PaperBox frame = region;
  const double scale =
      std::min(fittedScale(*e.tankage, frame, 30, job.units()), leastLegibleScale(job.units()));
  const PaperBox shown = e.tankage->grown(30 * scale / 1000);
  const Point2 half{std::max(frame.width(), shown.width() * 1000 / scale) / 2,
                    std::max(frame.height(), shown.height() * 1000 / scale) / 2};
  const SheetView enlarged{"1, sheet " + sheetOf(partAnchor("A1")),
                           "ENLARGED PLAN OF TANKAGE",
                           {frame.centre() - half, frame.centre() + half},
                           shown.centre(),
                           scale};
  drawn.draw(site, &enlarged, true, flow.page());
  drawTiledView(job, enlarged.title, *e.tankage, job.marks, drawn.partLabels(&enlarged), flow);
}

void drawPlan(const SheetJob& job, PlanViews& drawn, PageFlow& flow) {
  const Extents e = extents(job.plan(), job.marks);
  PaperBox region{{}, flow.largestFigure()};
  PaperBox frame = region;
  frame.high.y -= kViewTitle;
  if (job.scale > 0 && fittedScale(e.site, frame, 0, job.units()) > job.scale) {
    drawTiledView(job, "PLAN", e.site, job.marks, drawn.partLabels(nullptr), flow);
    return;
  }
  const auto views = arrangeViews(e, region, job.units(), job.scale);
  // Two views would crowd small paper.
  const bool crowded = isSmallPaper(job.paper) && views.size() > 1;
  if (job.scale > 0 || !e.tankage || (legible(views, job.units()) && !crowded)) {
    const PaperBox where = flow.beginDrawing();
    drawTogether(arrangeViews(e, where, job.units(), job.scale), drawn, flow.page());
    return;
  }
  drawApart(job, e, drawn, flow);
}

} // namespace

void planSheet(const SheetJob& job, PageFlow& flow) {
  PlanViews drawn(job);
  if (!job.marks.empty()) drawPlan(job, drawn, flow);
  const double width = flow.columnWidth();
  flow.addAll(
      {legend(job.review, width), symbolKey(job.review, width), generalNotes(job.review, width)});
  flow.add(viewTable(job, width));
  if (!drawn.unplaced().empty()) {
    std::string text = "For lack of room on the plan these runs are only in the schedule:";
    for (const std::string& tag : drawn.unplaced())
      text += " " + tag;
    flow.add(paragraphs("NOT LABELLED", {text}, width, false));
  }
}

} // namespace sump
