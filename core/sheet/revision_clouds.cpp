#include "core/sheet/revision_clouds.h"

#include "core/sheet/tags.h"
#include "core/units/print.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kClear = 2.5;     // mm between what changed and its cloud
constexpr double kLeastCloud = 9;  // mm, the smallest side
constexpr double kChord = 6;       // mm of a cloud's arc
constexpr double kTriangle = 6;    // mm, height
constexpr double kNumberGap = 0.8; // mm between the triangle and the cloud's number

std::string revisionIndex(const Plan& plan) {
  if (!plan.project.revision.empty()) return plan.project.revision;
  return plan.revisions.empty() || plan.revisions.back().index.empty()
             ? "?"
             : plan.revisions.back().index;
}

bool isClouded(const PlanChange& change) {
  return change.extent && change.noun != "site" && change.noun != "site picture" &&
         change.kind != ChangeKind::Record;
}

bool meet(const Box& a, const Box& b) {
  return a.low.x <= b.high.x && b.low.x <= a.high.x && a.low.y <= b.high.y && b.low.y <= a.high.y;
}

Box joined(const Box& a, const Box& b) {
  return boxOf({a.low, a.high, b.low, b.high});
}

/// The cloud's box on the paper.
PaperBox cloudBox(const Box& extent, const SheetView& view) {
  PaperBox box = around({view.toPaper(extent.low), view.toPaper(extent.high)}).grown(kClear);
  const Point2 middle = box.centre();
  const Point2 half{std::max(box.width(), kLeastCloud) / 2,
                    std::max(box.height(), kLeastCloud) / 2};
  return {middle - half, middle + half};
}

/// Arcs of equal chord from a to b, bulging to the left of the way (out of a box that is gone
/// round with y down from its top left corner over the top right one).
void addArcs(Point2 a, Point2 b, Polyline& line) {
  constexpr int kSteps = 8;
  const int arcs = std::max(2, static_cast<int>(std::lround(distance(a, b) / kChord)));
  const Point2 along = (b - a) * (1.0 / arcs), out{along.y, -along.x};
  for (int i = 0; i < arcs; ++i) {
    for (int k = 1; k <= kSteps; ++k) {
      // Half an ellipse over the chord, as high as 0.3 of it.
      const double t = kPi * k / kSteps;
      line.push_back(a + along * (i + (1 - std::cos(t)) / 2) + out * (0.3 * std::sin(t)));
    }
  }
}

Polyline cloudLine(const PaperBox& box) {
  const Ring corners = box.ring();
  Polyline line{corners[0]};
  for (std::size_t i = 0; i < corners.size(); ++i)
    addArcs(corners[i], corners[(i + 1) % corners.size()], line);
  return line;
}

bool seenWhole(const Box& extent, const SheetView& view) {
  return view.frame.holds(cloudBox(extent, view));
}

struct TriangleSize {
  double width = 0;
  Point2 whole; ///< with the cloud's number
};

TriangleSize triangleSize(const std::string& index, const std::string& number) {
  // At the letters' top the triangle is 0.45 of its width.
  const double width = std::max(7.0, (textWidth(index, kTextHeight, true) + 0.6) / 0.45);
  const double text = textWidth(number, kTextHeight, false);
  return {width, {width + kNumberGap + text + 0.4, kTriangle + 0.8}};
}

void drawTriangle(const std::string& index, const std::string& number, double width,
                  const LabelCandidate& where, Page& page) {
  const LineStyle thin{Ink::Black, 0.25, {}};
  const FillStyle white{Ink::White, Hatch::None};
  const Point2 low = where.box.low;
  if (where.leaderTo) {
    page.items.push_back(PageShape{{leaderStart(where.box, *where.leaderTo), *where.leaderTo},
                                   false,
                                   false,
                                   LineStyle{Ink::Black, 0.18, {}},
                                   {}});
  }
  page.items.push_back(PageShape{where.box.ring(), true, false, {}, white});
  const double foot = low.y + kTriangle + 0.4;
  page.items.push_back(
      PageShape{{{low.x + width / 2, low.y + 0.4}, {low.x + width, foot}, {low.x, foot}},
                true,
                false,
                thin,
                white});
  page.items.push_back(
      words({low.x + width / 2, foot - 0.6}, index, kTextHeight, true, Align::Centre));
  page.items.push_back(words({low.x + width + kNumberGap, foot - 0.6}, number));
}

/// Where a leader may touch the cloud: spread along what of it can be seen.
std::vector<Point2> anchorsOn(const std::vector<Polyline>& parts) {
  constexpr std::size_t kEvery = 8; // points: one an arc
  std::vector<Point2> anchors;
  for (const Polyline& part : parts) {
    for (std::size_t i = 0; i < part.size(); i += kEvery)
      anchors.push_back(part[i]);
  }
  constexpr std::size_t kMost = 24;
  if (anchors.size() <= kMost) return anchors;
  std::vector<Point2> some;
  for (std::size_t i = 0; i < kMost; ++i)
    some.push_back(anchors[i * anchors.size() / kMost]);
  return some;
}

/// A run is called on the sheets by its tag.
PlanChange asOnSheets(PlanChange change, const std::unordered_map<Id, std::string>& tags) {
  const auto tag = tags.find(change.object);
  if (tag == tags.end()) return change;
  change.called = change.called == change.object ? tag->second : tag->second + ", " + change.called;
  return change;
}

std::string number(const std::optional<double>& amount, int decimals) {
  return amount ? grouped(*amount, decimals) : "?";
}

} // namespace

CloudSet revisionClouds(const SheetJob& job) {
  if (job.changes == nullptr) return {};
  CloudSet set{revisionIndex(job.plan()), {}, {}};
  std::vector<Id> objects; // of each cloud
  for (const PlanChange& change : job.changes->changes) {
    set.ofChange.push_back(0);
    if (!isClouded(change)) continue;
    std::size_t cloud = 0;
    while (cloud < set.clouds.size() &&
           !(objects[cloud] == change.object && meet(set.clouds[cloud], *change.extent)))
      ++cloud;
    if (cloud == set.clouds.size()) {
      set.clouds.push_back(*change.extent);
      objects.push_back(change.object);
    }
    set.clouds[cloud] = joined(set.clouds[cloud], *change.extent);
    set.ofChange.back() = static_cast<int>(cloud) + 1;
  }
  return set;
}

std::vector<std::string> drawClouds(const CloudSet& set, const SheetView& view,
                                    const SheetView* enlarged, LabelBoard& board, Page& page) {
  std::vector<std::string> missing;
  for (std::size_t i = 0; i < set.clouds.size(); ++i) {
    if (enlarged != nullptr && seenWhole(set.clouds[i], *enlarged)) continue;
    const auto parts = clipLine(cloudLine(cloudBox(set.clouds[i], view)), view.frame);
    if (parts.empty()) continue;
    for (const Polyline& part : parts)
      page.items.push_back(PageShape{part, false, false, LineStyle{Ink::Black, 0.5, {}}, {}});
    const std::string called = std::to_string(i + 1);
    const TriangleSize size = triangleSize(set.revision, called);
    if (const auto where = board.reserve(size.whole, anchorsOn(parts))) {
      drawTriangle(set.revision, called, size.width, *where, page);
    } else {
      missing.push_back("cloud " + called);
    }
  }
  return missing;
}

Block planChangeBlock(const SheetJob& job, double width) {
  const CloudSet set = revisionClouds(job);
  const auto tags = runTags(job.plan());
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = 0; i < job.changes->changes.size(); ++i) {
    const PlanChange change = asOnSheets(job.changes->changes[i], tags);
    rows.push_back({set.ofChange[i] > 0 ? std::to_string(set.ofChange[i]) : "",
                    std::string(name(change.kind)), told(change)});
  }
  if (rows.empty()) rows.push_back({"", "none", "The plan is as it was."});
  return table("CHANGES SINCE " + job.changes->earlier + ", REVISION " + set.revision,
               {{"Cloud", Align::Centre}, {"Change"}, {"What, before and after"}}, rows, width);
}

Block billChangeBlock(const SheetJob& job, double width) {
  std::vector<std::vector<std::string>> rows;
  for (const BillChange& change : job.changes->bill) {
    const auto by = change.difference();
    rows.push_back({number(change.before, change.decimals), number(change.after, change.decimals),
                    (by && *by > 0 ? "+" : "") + number(by, change.decimals), change.unit,
                    change.size, change.description});
  }
  if (rows.empty()) rows.push_back({"", "", "", "", "", "Nothing to buy changed."});
  return table("CHANGE IN THE BILL OF MATERIALS",
               {{"Before", Align::Right},
                {"After", Align::Right},
                {"Difference", Align::Right},
                {"Unit"},
                {"Size"},
                {"Item"}},
               rows, width);
}

} // namespace sump
