#include "core/geometry/surface.h"

#include "core/geometry/box_index.h"
#include "core/geometry/delaunay.h"
#include "core/geometry/polygon.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <span>

namespace sump {

namespace {

/// Where the elevation of each spot comes from: the mean of those that were shot at one place.
class Merger {
public:
  void add(const Point3& spot);
  std::vector<Point3> spots() const;

private:
  using Cell = std::pair<long, long>;
  struct Place {
    Point3 first;
    double z = 0;
    int count = 0;
  };
  static Cell cellOf(Point2 p) {
    return {std::lround(p.x / kSamePlace), std::lround(p.y / kSamePlace)};
  }
  Place* placeNear(Point2 p);

  std::vector<Place> places_;
  std::multimap<Cell, std::size_t> byCell_;
};

Merger::Place* Merger::placeNear(Point2 p) {
  const auto [column, row] = cellOf(p);
  for (long c = column - 1; c <= column + 1; ++c) {
    for (long r = row - 1; r <= row + 1; ++r) {
      const auto [first, last] = byCell_.equal_range({c, r});
      for (auto it = first; it != last; ++it) {
        if (distance(flat(places_[it->second].first), p) < kSamePlace) return &places_[it->second];
      }
    }
  }
  return nullptr;
}

void Merger::add(const Point3& spot) {
  Place* place = placeNear(flat(spot));
  if (place == nullptr) {
    byCell_.emplace(cellOf(flat(spot)), places_.size());
    place = &places_.emplace_back(Place{spot});
  }
  place->z += spot.z;
  ++place->count;
}

std::vector<Point3> Merger::spots() const {
  std::vector<Point3> result;
  for (const Place& place : places_)
    result.push_back(raised(flat(place.first), place.z / place.count));
  return result;
}

std::vector<Edge> chain(const std::vector<int>& order) {
  if (order.size() == 1) return {{order[0], order[0]}};
  std::vector<Edge> edges;
  for (std::size_t i = 1; i < order.size(); ++i)
    edges.push_back({order[i - 1], order[i]});
  return edges;
}

std::array<Point3, 3> corners(const Triangle& t, const std::vector<Point3>& spots) {
  const auto spot = [&](int i) { return spots[static_cast<std::size_t>(i)]; };
  return {spot(t[0]), spot(t[1]), spot(t[2])};
}

/// Files each triangle under every cell that its box touches, so that a look-up takes constant time
/// for evenly shot spots.
class Grid {
public:
  Grid() = default;
  Grid(const std::vector<Point3>& spots, const std::vector<Triangle>& triangles);
  /// The triangles that may hold p; none outside the box of all.
  std::span<const int> near(Point2 p) const;

private:
  std::size_t column(double x) const { return index((x - box_.low.x) / cell_.x); }
  std::size_t row(double y) const { return index((y - box_.low.y) / cell_.y); }
  std::size_t index(double cells) const {
    return static_cast<std::size_t>(std::clamp(cells, 0.0, static_cast<double>(side_ - 1)));
  }

  Box box_;
  Point2 cell_;
  std::size_t side_ = 0; ///< cells each way
  std::vector<std::vector<int>> cells_;
};

Grid::Grid(const std::vector<Point3>& spots, const std::vector<Triangle>& triangles) {
  std::vector<Point2> places;
  for (const Point3& spot : spots)
    places.push_back(flat(spot));
  box_ = boxOf(places);
  constexpr std::size_t mostCells = 256;
  side_ =
      std::clamp(static_cast<std::size_t>(std::sqrt(triangles.size())), std::size_t{1}, mostCells);
  const Point2 size = box_.high - box_.low;
  cell_ = Point2{std::max(size.x, kSamePlace), std::max(size.y, kSamePlace)} *
          (1.0 / static_cast<double>(side_));
  cells_.resize(side_ * side_);
  for (int t = 0; t < static_cast<int>(triangles.size()); ++t) {
    const auto [a, b, c] = corners(triangles[static_cast<std::size_t>(t)], spots);
    const Box box = boxOf({flat(a), flat(b), flat(c)});
    for (std::size_t r = row(box.low.y); r <= row(box.high.y); ++r) {
      for (std::size_t k = column(box.low.x); k <= column(box.high.x); ++k)
        cells_[r * side_ + k].push_back(t);
    }
  }
}

std::span<const int> Grid::near(Point2 p) const {
  const bool inside =
      p.x >= box_.low.x && p.x <= box_.high.x && p.y >= box_.low.y && p.y <= box_.high.y;
  if (!inside || side_ == 0) return {};
  return cells_[row(p.y) * side_ + column(p.x)];
}

/// Barycentric interpolation; nothing outside the triangle (with a hair of tolerance on its edges)
/// and nothing in one so flat that rounding would choose the answer: its neighbours or edges serve.
std::optional<double> inTriangle(Point2 p, const Point3& a, const Point3& b, const Point3& c) {
  const Point2 ab = flat(b) - flat(a), ac = flat(c) - flat(a), ap = p - flat(a);
  const double whole = cross(ab, ac);
  constexpr double hair = 1e-9;
  const double v = cross(ap, ac), w = cross(ab, ap);
  if (v < -hair * whole || w < -hair * whole || v + w > whole * (1 + hair)) return std::nullopt;
  if (whole <= kSamePlace / 10 * std::max({norm(ab), norm(ac), norm(ac - ab)})) return std::nullopt;
  return a.z + v / whole * (b.z - a.z) + w / whole * (c.z - a.z);
}

/// The elevation at the nearest of the edges offered.
class NearestEdge {
public:
  explicit NearestEdge(Point2 p) : p_(p) {}
  void offer(const Point3& a, const Point3& b) {
    const Foot foot = nearestOnSegment(p_, flat(a), flat(b));
    if (foot.distance >= distance_) return;
    distance_ = foot.distance;
    elevation_ = lerp(a, b, foot.along).z;
  }
  std::optional<double> elevation() const { return elevation_; }

private:
  Point2 p_;
  double distance_ = std::numeric_limits<double>::infinity();
  std::optional<double> elevation_;
};

} // namespace

struct Surface::Data {
  std::vector<Point3> spots;
  std::vector<Triangle> triangles;
  std::vector<Edge> edges; ///< of the hull; of the chain, when all spots lie in a line
  Grid grid;
};

Surface::Surface() = default;

Surface::Surface(const std::vector<Point3>& spots) {
  if (spots.empty()) return;
  Merger merger;
  for (const Point3& spot : spots)
    merger.add(spot);
  auto data = std::make_shared<Data>();
  data->spots = merger.spots();
  if (const auto order = orderAlongLine(data->spots)) {
    data->edges = chain(*order);
  } else {
    data->triangles = delaunay(data->spots);
    data->edges = hull(data->triangles);
  }
  data->grid = Grid(data->spots, data->triangles);
  data_ = std::move(data);
}

bool Surface::empty() const {
  return data_ == nullptr;
}

std::optional<double> Surface::elevation(Point2 p) const {
  if (empty()) return std::nullopt;
  const auto& [spots, triangles, edges, grid] = *data_;
  const auto near = grid.near(p);
  for (int t : near) {
    const auto [a, b, c] = corners(triangles[static_cast<std::size_t>(t)], spots);
    if (auto z = inTriangle(p, a, b, c)) return z;
  }
  NearestEdge nearest(p);
  for (const Edge& edge : edges)
    nearest.offer(spots[static_cast<std::size_t>(edge[0])],
                  spots[static_cast<std::size_t>(edge[1])]);
  for (int t : near) { // in the crack of a flat triangle inside, where the hull is far away
    const auto [a, b, c] = corners(triangles[static_cast<std::size_t>(t)], spots);
    nearest.offer(a, b);
    nearest.offer(b, c);
    nearest.offer(c, a);
  }
  return nearest.elevation();
}

const std::vector<std::array<int, 3>>& Surface::triangles() const {
  static const std::vector<Triangle> none;
  return empty() ? none : data_->triangles;
}

const std::vector<Point3>& Surface::spots() const {
  static const std::vector<Point3> none;
  return empty() ? none : data_->spots;
}

} // namespace sump
