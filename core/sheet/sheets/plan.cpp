// P-1: the plan of the reclaim tankage with all runs labelled, the legend and the notes.

#include "core/geometry/polygon.h"
#include "core/plan/ends.h"
#include "core/sheet/continuations.h"
#include "core/sheet/label_board.h"
#include "core/sheet/part_list.h"
#include "core/sheet/plan_views.h"
#include "core/sheet/revision_clouds.h"
#include "core/sheet/sample_strip.h"
#include "core/sheet/schedules.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"

#include <algorithm>
#include <set>

namespace sump {

namespace {

/// Only an end of it is seen on the enlarged view: the site view names it in full.
bool isOnSite(const Polyline& line, const SheetView& enlarged) {
  const double outside = planLength(line) - enlarged.shownLength(line);
  // 3 m: a stub that only just leaves the enlarged view is still labelled there.
  return outside > 3 && outside > 0.25 * planLength(line) && isStub(enlarged, line);
}

/// Of the others those that can be seen to leave the enlarged view by their marks.
RunLabel siteRunLabel(const Polyline& line, const SheetView& enlarged, const SheetView& site) {
  if (isOnSite(line, enlarged)) return RunLabel::Full;
  constexpr double kSeen = 4; // mm on the paper
  const double outside = planLength(line) - enlarged.shownLength(line);
  return outside * 1000 / site.scale >= kSeen ? RunLabel::Tag : RunLabel::None;
}

/// Parts in one place, as in a riser, whose numbers stand together.
struct PartGroup {
  Point2 at; ///< site
  std::vector<std::size_t> numbers;
};

std::vector<PartGroup> partGroups(const std::vector<ListedPart>& parts, double scale) {
  constexpr double kTogether = 1.2; // mm on the paper
  std::vector<PartGroup> groups;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (!parts[i].where) continue;
    const Point2 at = flat(parts[i].where->at);
    const auto same = std::ranges::find_if(groups, [&](const PartGroup& group) {
      return distance(group.at, at) * 1000 / scale < kTogether;
    });
    if (same == groups.end()) {
      groups.push_back({at, {i + 1}});
    } else {
      same->numbers.push_back(i + 1);
    }
  }
  return groups;
}

/// `4, 5`
template <class Numbers> std::string numbersText(const Numbers& numbers) {
  std::string text;
  for (std::size_t number : numbers)
    text += (text.empty() ? "" : ", ") + std::to_string(number);
  return text;
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
      : job_(job), locator_(job.plan()), clouds_(revisionClouds(job)), details_(detailPlaces(job)),
        parts_(listedParts(job)) {}

  /// `enlarged` is the view that shows the tankage larger; null: there is none.
  void draw(const SheetView& view, const SheetView* enlarged, bool site, Page& page) {
    const auto kind = [&](const Run& run) {
      if (!site) return RunLabel::Full;
      const auto line = locator_.centreline(run);
      return line ? siteRunLabel(*line, *enlarged, view) : RunLabel::None;
    };
    const std::string elsewhere = enlarged != nullptr && !site ? "see view 1" : "";
    const auto label = [&](const SheetView& v, const std::vector<Mark>& seen, Page& p) {
      if (site) drawExtent(v, *enlarged, p);
      keepLabels(v, seen, kind, site ? enlarged : nullptr, elsewhere, p);
      if (!v.hidden) return;
      p.items.push_back(PageShape{v.hidden->ring(), true, false, LineStyle{Ink::Black, 0.35, {}},
                                  FillStyle{Ink::White, Hatch::None}});
    };
    drawSiteView(job_, view, job_.marks, label, page);
  }

  const std::vector<std::string>& unplaced() const { return unplaced_; }
  /// The parts that no view numbers.
  std::vector<std::size_t> unnumbered() const {
    std::vector<std::size_t> numbers;
    for (std::size_t number = 1; number <= parts_.size(); ++number) {
      if (!numbered_.contains(number)) numbers.push_back(number);
    }
    return numbers;
  }
  /// For the parts of a view over several pages. `enlarged`: that view; null: it shows the site.
  DrawLabels partLabels(const SheetView* enlarged) {
    return [this, enlarged](const SheetView& v, const std::vector<Mark>& seen, Page& p) {
      const auto kind = [&](const Run& run) {
        const auto line = locator_.centreline(run);
        const bool there = enlarged != nullptr && line && isOnSite(*line, *enlarged);
        return there ? RunLabel::Tag : RunLabel::Full;
      };
      const std::string elsewhere =
          enlarged != nullptr ? "see sheet " + sheetOf(planAnchor()) : std::string();
      keepLabels(v, seen, kind, nullptr, elsewhere, p);
    };
  }

private:
  /// Clouds first, so that the labels keep clear of their triangles. `enlarged`: shows its part.
  void keepLabels(const SheetView& view, const std::vector<Mark>& seen,
                  const std::function<RunLabel(const Run&)>& runs, const SheetView* enlarged,
                  const std::string& elsewhere, Page& page) {
    LabelRequest request{job_.review, job_.catalog, seen, runs, enlarged};
    std::vector<std::string> missing;
    const bool small = isSmallPaper(job_.paper);
    request.references = true;
    request.first = [&](LabelBoard& board) {
      missing = drawClouds(clouds_, view, enlarged, board, page);
      labelDetails(view, enlarged, board);
      if (!small) labelMarks(view, enlarged, elsewhere, board);
    };
    request.last = [&](LabelBoard& board) {
      if (small) labelMarks(view, enlarged, elsewhere, board);
    };
    keep(drawLabels(view, request, page));
    keep(missing);
  }
  /// What may be left out on small paper: it gets what room the rest leaves there.
  void labelMarks(const SheetView& view, const SheetView* enlarged, const std::string& elsewhere,
                  LabelBoard& board) {
    labelStarts(job_.review, view, enlarged, board);
    if (enlarged == nullptr)
      labelContinuations(job_.review, view, elsewhere, isSmallPaper(job_.paper), board);
    labelParts(view, enlarged, board);
    if (enlarged != nullptr) return;
    labelCorners(view, board);
    labelChambers(job_.plan(), view, board);
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
  /// On small paper only where they are in nobody's way, and not in rooms.
  void labelParts(const SheetView& view, const SheetView* enlarged, LabelBoard& board) {
    constexpr double kNear = 1.5, kReach = 110; // mm
    const bool small = isSmallPaper(job_.paper);
    for (const PartGroup& group : partGroups(parts_, view.scale)) {
      if (!view.shows(group.at) || (enlarged != nullptr && enlarged->shows(group.at))) continue;
      if (small && inRoom(group.at)) continue;
      const SheetLabel label{{numbersText(group.numbers)}, true};
      const Point2 size = board.size(label), at = view.toPaper(group.at);
      const bool placed =
          small ? board.whereFree(label, aroundPoint(at, size.x, size.y, kNear, kReach, 0))
                : board.withLeader(label, group.at, kNear, kReach);
      if (placed) numbered_.insert(group.numbers.begin(), group.numbers.end());
    }
  }
  bool inRoom(Point2 at) const {
    for (const EquipmentRoom& room : job_.plan().rooms) {
      if (contains(outline(room), at)) return true;
    }
    return false;
  }
  /// Diagonally off it, or with a leader, where that covers nothing: the plan of the placement has
  /// them all.
  void labelCorners(const SheetView& view, LabelBoard& board) {
    constexpr double kOff = 0.8, kNear = 2, kReach = 14, kLed = 5; // mm; that a leader is disliked
    for (const VaultStudy& vault : job_.study().vaults) {
      for (std::size_t i = 0; i < vault.outline.size(); ++i) {
        if (!view.shows(vault.outline[i])) continue;
        const SheetLabel label{{cornerName(vault.id, i)}};
        const Point2 half = board.size(label) * 0.5 + Point2{kOff, kOff};
        const Point2 corner = view.toPaper(vault.outline[i]);
        std::vector<LabelCandidate> places;
        if (!isSmallPaper(job_.paper))
          places =
              aroundPoint(corner, 2 * (half.x - kOff), 2 * (half.y - kOff), kNear, kReach, kLed);
        std::erase_if(places, [&](const LabelCandidate& place) {
          return contains(vault.outline, view.toSite(place.box.centre()));
        });
        for (const Point2 u : {Point2{1, 1}, Point2{1, -1}, Point2{-1, 1}, Point2{-1, -1}}) {
          const Point2 middle = corner + Point2{u.x * half.x, u.y * half.y};
          const PaperBox box = PaperBox{middle - half, middle + half}.grown(-kOff);
          if (!contains(vault.outline, view.toSite(middle))) places.push_back({box, {}, 0, false});
        }
        board.whereFree(label, std::move(places));
      }
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
  std::vector<ListedPart> parts_;
  std::set<std::size_t> numbered_;
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

/// What the marks of parts, corners and chambers mean.
void addMarks(const SheetJob& job, double width, Block& block) {
  std::vector<PaperStrip> samples;
  const auto lettered = [](const std::string& text) {
    return std::vector<PageItem>{words({8, 4}, text, kTextHeight, false, Align::Centre)};
  };
  if (!listedParts(job).empty()) {
    std::vector<PageItem> boxed = lettered("12");
    boxed.insert(
        boxed.begin(),
        PageShape{
            PaperBox{{5, 0.6}, {11, 5}}.ring(), true, false, LineStyle{Ink::Black, 0.18, {}}, {}});
    samples.push_back(
        sampleStrip(std::move(boxed), "Valve or part, listed on " + sheetOf(partTableAnchor())));
  }
  if (!job.study().vaults.empty()) {
    samples.push_back(sampleStrip(lettered(cornerName(job.study().vaults.front().id, 0)),
                                  "Vault's outside corner, as on " + sheetOf(placementAnchor())));
    samples.push_back(sampleStrip(lettered("ch. 1"), "Chamber, counted from the inlet"));
  }
  addInPairs(std::move(samples), width, block);
}

} // namespace

void planSheet(const SheetJob& job, PageFlow& flow) {
  PlanViews drawn(job);
  flow.announce(planAnchor());
  if (!job.marks.empty()) drawPlan(job, drawn, flow);
  const double width = flow.columnWidth();
  Block symbols = symbolKey(job.review, width);
  addMarks(job, width, symbols);
  flow.addAll({legend(job.review, width), std::move(symbols), generalNotes(job.review, width)});
  flow.add(viewTable(job, width));
  std::vector<std::string> missing;
  if (!drawn.unplaced().empty()) {
    missing.emplace_back("For lack of room on the plan these runs are only in the schedule:");
    for (const std::string& tag : drawn.unplaced())
      missing.back() += " " + tag;
  }
  if (const auto numbers = drawn.unnumbered(); !numbers.empty()) {
    missing.push_back("For lack of room on the plan these valves and parts are only in the table "
                      "on sheet " +
                      sheetOf(partTableAnchor()) +
                      ", with their coordinates: " + numbersText(numbers));
  }
  flow.add(paragraphs("NOT LABELLED", missing, width, false));
}

} // namespace sump
