#include "core/study/manway_way.h"

#include "core/geometry/polygon.h"
#include "core/study/part_place.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <queue>

namespace sump {

namespace {

/// Gathers what one line takes up between the floor and the rim.
class ShaftFinder {
public:
  ShaftFinder(const VaultStudy& vault, const ManwayStudy& manway, Length diameter,
              const RunStudy& run)
      : centre_(manway.at), opening_(inMetres(diameter) / 2),
        pipe_(inMetres(run.outsideDiameter) / 2), run_(run), floor_(inMetres(vault.floor)),
        rim_(manway.rim ? std::optional(inMetres(*manway.rim)) : std::nullopt) {}

  std::optional<ManwayLine> find() {
    for (std::size_t i = 0; i + 1 < run_.points.size(); ++i)
      goAlong(run_.points[i].at, run_.points[i + 1].at);
    if (line_.pipes.empty()) return std::nullopt;
    line_.run = run_.id;
    return line_;
  }
  bool holds(Point2 p) const { return distance(p, centre_) < opening_ + pipe_; }

private:
  void goAlong(Point3 a, Point3 b) {
    const double over = inMetres(run_.outsideDiameter + run_.insideDiameter) / 2;
    // Only where its top is over the floor and its invert under the rim.
    double from = 0, to = 1;
    const auto cut = [&](double heightA, double heightB) { // keeps where it is positive
      if (heightA <= 0 && heightB <= 0) to = -1;
      if ((heightA > 0) == (heightB > 0)) return;
      const double t = heightA / (heightA - heightB);
      (heightA > 0 ? to : from) = heightA > 0 ? std::min(to, t) : std::max(from, t);
    };
    cut(a.z + over - floor_, b.z + over - floor_);
    if (rim_) cut(*rim_ - a.z, *rim_ - b.z);
    if (to < from) return;
    const Point2 p = flat(lerp(a, b, from)), q = flat(lerp(a, b, to));
    const Point2 foot = lerp(p, q, nearestOnSegment(centre_, p, q).along);
    if (!holds(foot)) return;
    if (line_.pipes.empty() || distance(foot, centre_) < distance(line_.at, centre_))
      line_.at = foot;
    line_.pipes.push_back({p - centre_, q - centre_, pipe_});
  }

  Point2 centre_;
  double opening_, pipe_;
  const RunStudy& run_;
  double floor_;
  std::optional<double> rim_;
  ManwayLine line_;
};

/// A square in which the circle's centre is looked for.
struct Cell {
  Point2 centre;
  double half = 0;
  double radius = 0; ///< of the largest circle round `centre`
  double most = 0;   ///< no circle round a place in the cell is larger
  bool operator<(const Cell& other) const { return most < other.most; }
};

Cell cellAt(Point2 centre, double half, double opening, const std::vector<ShaftPipe>& pipes) {
  double radius = opening - norm(centre);
  for (const ShaftPipe& pipe : pipes) {
    const Foot foot = nearestOnSegment(centre, pipe.a, pipe.b);
    radius = std::min(radius, foot.distance - pipe.radius);
  }
  return {centre, half, radius, radius + half * std::numbers::sqrt2};
}

} // namespace

ManwayWays::ManwayWays(const Plan& plan, const Study& study) : plan_(plan), study_(study) {
  std::vector<Box> boxes;
  for (std::size_t i = 0; i < study.runs.size(); ++i) {
    const RunStudy& run = study.runs[i];
    if (!run.resolved) continue;
    boxes.push_back(grown(boxOf(planLine(run)), inMetres(run.outsideDiameter) / 2));
    resolved_.push_back(i);
  }
  boxes_ = BoxIndex(boxes);
}

std::vector<ManwayLine> ManwayWays::lines(const VaultStudy& vault, std::size_t manway) const {
  const ManwayStudy& place = vault.manways[manway];
  const Length diameter = plan_.vaults.find(vault.id)->manways[manway].diameter;
  std::vector<ManwayLine> lines;
  for (std::size_t box : boxes_.touching(grown({place.at, place.at}, inMetres(diameter) / 2))) {
    const Run& run = plan_.runs[resolved_[box]];
    const RunStudy& studied = study_.runs[resolved_[box]];
    ShaftFinder finder(vault, place, diameter, studied);
    auto line = finder.find();
    if (!line) continue;
    const auto endsHere = [&](const RunEnd& end, const RunPoint& point) {
      return end.kind == EndKind::Chamber && end.target == vault.id && finder.holds(flat(point.at));
    };
    line->ends =
        endsHere(run.from, studied.points.front()) || endsHere(run.to, studied.points.back());
    line->hangs = run.eductor && run.eductor->manway == place.id;
    lines.push_back(std::move(*line));
  }
  return lines;
}

/// The pole of inaccessibility by quartering squares, the most promising first: the distance to
/// what stands in the way changes no faster than the place does, so a square's middle bounds it
/// all.
Length clearWay(Length diameter, const std::vector<ShaftPipe>& pipes) {
  constexpr double kClose = 0.00025; // m, of the radius
  const double opening = inMetres(diameter) / 2;
  std::priority_queue<Cell> open;
  open.push(cellAt({0, 0}, opening, opening, pipes));
  double best = std::max(0.0, open.top().radius);
  while (!open.empty() && open.top().most > best + kClose) {
    const Cell cell = open.top();
    open.pop();
    const double half = cell.half / 2;
    for (Point2 way : {Point2{-half, -half}, {half, -half}, {half, half}, {-half, half}}) {
      const Cell part = cellAt(cell.centre + way, half, opening, pipes);
      best = std::max(best, part.radius);
      if (part.most > best + kClose) open.push(part);
    }
  }
  return metres(2 * best);
}

} // namespace sump
