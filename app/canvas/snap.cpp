#include "app/canvas/snap.h"

#include "core/geometry/polygon.h"
#include "core/units/quantity.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kSame = 1e-6; // metres
/// Among so many edges at one spot a crossing tells nothing.
constexpr std::size_t kMostEdges = 40;
/// Points further away than this many reaches line up with everything and mean nothing.
constexpr double kAlignReaches = 25;
/// An alignment holds less far than a thing itself, so that it does not get in the way.
constexpr double kAlignShare = 0.55;

bool left(const SnapQuery& query, const Id& owner) {
  return query.without != nullptr && query.without->contains(owner);
}

double onStep(double v, double step) {
  return step > 0 ? std::round(v / step) * step : v;
}

/// An end weighs more than what lies equally near: corners are meant most often.
double felt(SnapKind kind, double distance) {
  switch (kind) {
  case SnapKind::End:
    return distance * 0.6;
  case SnapKind::Crossing:
    return distance * 0.75;
  case SnapKind::Middle:
    return distance * 0.9;
  default:
    return distance;
  }
}

/// Keeps the best of what is offered.
class Best {
public:
  explicit Best(const SnapQuery& query) : query_(query) {}
  void offer(Point2 at, SnapKind kind, const Id& owner) {
    const double d = distance(at, query_.at);
    if (d > query_.reach || felt(kind, d) >= least_) return;
    least_ = felt(kind, d);
    found_ = Snapped{at, kind, owner, {}};
  }
  const std::optional<Snapped>& found() const { return found_; }

private:
  const SnapQuery& query_;
  double least_ = 1e300;
  std::optional<Snapped> found_;
};

/// Where the upright or level line through `through` meets an edge.
std::optional<Point2> meet(const SnapEdge& edge, Point2 through, double Point2::*along) {
  const double da = edge.a.*along - through.*along, db = edge.b.*along - through.*along;
  if (da * db > 0 || std::abs(da - db) < kSame) return std::nullopt;
  return lerp(edge.a, edge.b, da / (da - db));
}

} // namespace

Point2 onEighth(Point2 from, Point2 p) {
  const Point2 d = p - from;
  const double step = kPi / 4;
  const double angle = std::round(std::atan2(d.y, d.x) / step) * step;
  const Point2 u{std::cos(angle), std::sin(angle)};
  return from + u * dot(d, u);
}

SnapField::SnapField(std::vector<SnapPoint> points, std::vector<SnapEdge> edges)
    : points_(std::move(points)), edges_(std::move(edges)) {
  std::vector<Box> boxes;
  boxes.reserve(points_.size());
  for (const SnapPoint& p : points_)
    boxes.push_back({p.at, p.at});
  pointIndex_ = BoxIndex(boxes);
  boxes.clear();
  for (const SnapEdge& e : edges_)
    boxes.push_back(boxOf({e.a, e.b}));
  edgeIndex_ = BoxIndex(boxes);
}

SnapField::Near SnapField::near(const SnapQuery& query) const {
  Near found;
  const Box box = grown(boxOf({query.at}), query.reach);
  for (std::size_t i : pointIndex_.touching(box)) {
    if (!left(query, points_[i].owner)) found.points.push_back(&points_[i]);
  }
  for (std::size_t i : edgeIndex_.touching(box)) {
    const SnapEdge& e = edges_[i];
    if (left(query, e.owner) || found.edges.size() >= kMostEdges) continue;
    if (nearestOnSegment(query.at, e.a, e.b).distance <= query.reach) found.edges.push_back(&e);
  }
  return found;
}

std::optional<Snapped> SnapField::exact(const Near& near, const SnapQuery& query) const {
  Best best(query);
  for (const SnapPoint* p : near.points)
    best.offer(p->at, p->kind, p->owner);
  for (std::size_t i = 0; i < near.edges.size(); ++i) {
    const SnapEdge& e = *near.edges[i];
    for (std::size_t k = i + 1; k < near.edges.size(); ++k) {
      const SnapEdge& other = *near.edges[k];
      if (const auto cut = crossSegments(e.a, e.b, other.a, other.b)) {
        best.offer(lerp(e.a, e.b, cut->alongFirst), SnapKind::Crossing, e.owner);
      }
    }
    if (!query.last) continue;
    const Foot foot = nearestOnSegment(*query.last, e.a, e.b);
    const bool inside = foot.along > 0 && foot.along < 1;
    if (inside && foot.distance > kSame) best.offer(foot.at, SnapKind::Perpendicular, e.owner);
  }
  return best.found();
}

/// The point whose `across` coordinate is nearest to the pointer's, so that both stand in one line.
std::optional<SnapPoint> SnapField::alignment(const SnapQuery& query, double Point2::*along,
                                              double Point2::*across) const {
  const double reach = query.reach * kAlignShare, far = query.reach * kAlignReaches;
  Box strip = boxOf({query.at});
  strip.low.*across -= reach;
  strip.high.*across += reach;
  strip.low.*along -= far;
  strip.high.*along += far;
  std::optional<SnapPoint> best;
  double least = 1e300;
  const auto offer = [&](const SnapPoint& p) {
    const double off = std::abs(p.at.*across - query.at.*across);
    // Of equally good ones the nearest, whose guide is the shortest.
    const double value = off + std::abs(p.at.*along - query.at.*along) * 1e-3;
    if (off > reach || value >= least) return;
    least = value;
    best = p;
  };
  for (std::size_t i : pointIndex_.touching(strip)) {
    const SnapPoint& p = points_[i];
    if (p.kind != SnapKind::Middle && !left(query, p.owner)) offer(p);
  }
  if (query.last) offer({*query.last, SnapKind::End, {}});
  if (query.beforeLast) offer({*query.beforeLast, SnapKind::End, {}});
  return best;
}

std::optional<Snapped> SnapField::aligned(const Near& near, const SnapQuery& query) const {
  const std::optional<SnapPoint> upright = alignment(query, &Point2::y, &Point2::x);
  const std::optional<SnapPoint> level = alignment(query, &Point2::x, &Point2::y);
  if (upright && level && !(upright->at == level->at)) {
    return Snapped{{upright->at.x, level->at.y}, SnapKind::Aligned, {}, {*upright, *level}};
  }
  for (const SnapEdge* e : near.edges) {
    std::optional<Point2> at;
    if (upright) at = meet(*e, upright->at, &Point2::x);
    if (!at && level) at = meet(*e, level->at, &Point2::y);
    if (at && distance(*at, query.at) <= query.reach) {
      return Snapped{*at, SnapKind::Face, e->owner, {upright ? *upright : *level}};
    }
  }
  for (const SnapEdge* e : near.edges) {
    const Foot foot = nearestOnSegment(query.at, e->a, e->b);
    if (foot.distance <= query.reach * kAlignShare)
      return Snapped{foot.at, SnapKind::Face, e->owner, {}};
  }
  if (upright)
    return Snapped{
        {upright->at.x, onStep(query.at.y, query.grid)}, SnapKind::Aligned, {}, {*upright}};
  if (level)
    return Snapped{{onStep(query.at.x, query.grid), level->at.y}, SnapKind::Aligned, {}, {*level}};
  if (query.last && query.beforeLast) {
    // Straight on from the last leg, or square to it.
    const Point2 d = *query.last - *query.beforeLast;
    const double length = norm(d);
    for (const Point2 u : {d, Point2{-d.y, d.x}}) {
      if (length < kSame) break;
      const Point2 on = *query.last + u * (dot(query.at - *query.last, u) / (length * length));
      if (distance(on, query.at) <= query.reach * kAlignShare)
        return Snapped{on, SnapKind::Aligned, {}, {{*query.last, SnapKind::End, {}}}};
    }
  }
  return std::nullopt;
}

Snapped SnapField::straight(const SnapQuery& query) const {
  const Point2 from = *query.last, base = onEighth(from, query.at);
  const Point2 d = base - from;
  const double length = norm(d);
  if (length < kSame) return {base, SnapKind::None, {}, {}};
  const Point2 u = d * (1 / length);
  SnapQuery there = query;
  there.at = base;
  Best best(there);
  const Near near = this->near(there);
  for (const SnapPoint* p : near.points) {
    if (distance(from + u * dot(p->at - from, u), p->at) < kSame)
      best.offer(p->at, p->kind, p->owner);
  }
  for (const SnapEdge* e : near.edges) {
    const auto cut = crossSegments(from, base + u * query.reach, e->a, e->b);
    if (cut) best.offer(lerp(e->a, e->b, cut->alongSecond), SnapKind::Face, e->owner);
  }
  if (best.found()) return *best.found();
  for (const auto& [along, across] :
       {std::pair{&Point2::y, &Point2::x}, std::pair{&Point2::x, &Point2::y}}) {
    const std::optional<SnapPoint> other = alignment(there, along, across);
    if (!other || other->at == from || std::abs(u.*across) < 0.1) continue;
    const Point2 at = from + u * ((other->at.*across - from.*across) / (u.*across));
    if (distance(at, base) <= query.reach) return {at, SnapKind::Aligned, {}, {*other}};
  }
  return {from + u * onStep(length, query.grid), SnapKind::Grid, {}, {}};
}

Snapped SnapField::snap(const SnapQuery& query) const {
  if (query.straight && query.last) return straight(query);
  const Near near = this->near(query);
  if (const auto found = exact(near, query)) return *found;
  if (const auto found = aligned(near, query)) return *found;
  if (query.grid <= 0) return {query.at, SnapKind::None, {}, {}};
  return {{onStep(query.at.x, query.grid), onStep(query.at.y, query.grid)}, SnapKind::Grid, {}, {}};
}

std::optional<Snapped> SnapField::snapAny(const std::vector<Point2>& points, const SnapQuery& query,
                                          Point2& shift) const {
  std::optional<Snapped> best;
  double least = 1e300;
  for (const bool alignments : {false, true}) {
    for (Point2 p : points) {
      SnapQuery each = query;
      each.at = p;
      each.grid = 0;
      const Near near = this->near(each);
      const std::optional<Snapped> found = alignments ? aligned(near, each) : exact(near, each);
      if (!found || felt(found->kind, distance(found->at, p)) >= least) continue;
      least = felt(found->kind, distance(found->at, p));
      best = found;
      shift = found->at - p;
    }
    if (best) return best;
  }
  return std::nullopt;
}

} // namespace sump
