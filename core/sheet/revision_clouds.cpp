#include "core/sheet/revision_clouds.h"

#include "core/geometry/outline_union.h"
#include "core/geometry/polygon.h"
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
  const int least = distance(a, b) < kChord ? 1 : 2;
  const int arcs = std::max(least, static_cast<int>(std::lround(distance(a, b) / kChord)));
  const Point2 along = (b - a) * (1.0 / arcs), out{along.y, -along.x};
  for (int i = 0; i < arcs; ++i) {
    for (int k = 1; k <= kSteps; ++k) {
      // Half an ellipse over the chord, as high as 0.3 of it.
      const double t = kPi * k / kSteps;
      line.push_back(a + along * (i + (1 - std::cos(t)) / 2) + out * (0.3 * std::sin(t)));
    }
  }
}

/// Corners so that the cloud bulges outward: `ring` as PaperBox::ring goes round.
Polyline cloudLine(const Ring& ring) {
  Polyline line{ring[0]};
  for (std::size_t i = 0; i < ring.size(); ++i)
    addArcs(ring[i], ring[(i + 1) % ring.size()], line);
  return line;
}

/// A strip along a leg that reaches beyond its ends and sides.
Ring stripAround(Point2 a, Point2 b) {
  const double length = distance(a, b);
  const Point2 along = length > 0 ? (b - a) * (kClear / length) : Point2{kClear, 0};
  const Point2 side{-along.y, along.x};
  return {a - along - side, b + along - side, b + along + side, a - along + side};
}

/// The outlines on the paper: a long run is followed leg by leg, since a box round all of it would
/// take in what did not change.
std::vector<Ring> cloudRings(const Cloud& cloud, const SheetView& view) {
  if (cloud.lines.empty()) return {cloudBox(cloud.extent, view).ring()};
  std::vector<Ring> strips;
  for (const Polyline& line : cloud.lines) {
    for (std::size_t i = 0; i + 1 < line.size(); ++i)
      strips.push_back(stripAround(view.toPaper(line[i]), view.toPaper(line[i + 1])));
  }
  if (cloud.rest) strips.push_back(cloudBox(*cloud.rest, view).ring());
  return unionOutlines(strips);
}

bool seenWhole(const Cloud& cloud, const SheetView& view) {
  return view.frame.holds(cloudBox(cloud.extent, view));
}

/// A corner or an end of a run that is in the cloud as a whole adds nothing to it.
bool liesOn(const Box& box, const std::vector<Polyline>& lines) {
  constexpr double kNear = 1e-3; // m
  return std::any_of(lines.begin(), lines.end(), [&](const Polyline& line) {
    return distanceToLine(box.low, line) < kNear && distanceToLine(box.high, line) < kNear;
  });
}

void addTo(Cloud& cloud, const PlanChange& change) {
  cloud.extent = joined(cloud.extent, *change.extent);
  if (change.line.size() < 2) {
    cloud.rest = cloud.rest ? joined(*cloud.rest, *change.extent) : *change.extent;
  } else if (std::find(cloud.lines.begin(), cloud.lines.end(), change.line) == cloud.lines.end()) {
    cloud.lines.push_back(change.line);
  }
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
           !(objects[cloud] == change.object && meet(set.clouds[cloud].extent, *change.extent)))
      ++cloud;
    if (cloud == set.clouds.size()) {
      set.clouds.push_back({*change.extent, {}, {}});
      objects.push_back(change.object);
    }
    addTo(set.clouds[cloud], change);
    set.ofChange.back() = static_cast<int>(cloud) + 1;
  }
  for (Cloud& cloud : set.clouds) {
    if (cloud.rest && liesOn(*cloud.rest, cloud.lines)) cloud.rest.reset();
  }
  return set;
}

std::vector<std::string> drawClouds(const CloudSet& set, const SheetView& view,
                                    const SheetView* enlarged, LabelBoard& board, Page& page) {
  std::vector<std::string> missing;
  for (std::size_t i = 0; i < set.clouds.size(); ++i) {
    if (enlarged != nullptr && seenWhole(set.clouds[i], *enlarged)) continue;
    std::vector<Polyline> parts;
    for (const Ring& ring : cloudRings(set.clouds[i], view)) {
      for (Polyline& part : clipLine(cloudLine(ring), view.frame))
        parts.push_back(std::move(part));
    }
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
