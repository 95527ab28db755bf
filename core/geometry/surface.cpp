#include "core/geometry/surface.h"

#include "core/geometry/polygon.h"

#include <boost/polygon/voronoi.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

namespace sump {

namespace {

using Triangle = std::array<int, 3>;

struct Site {
  int x = 0; ///< millimetres from the first spot
  int y = 0;
};

} // namespace

} // namespace sump

template <> struct boost::polygon::geometry_concept<sump::Site> {
  using type = boost::polygon::point_concept;
};
template <> struct boost::polygon::point_traits<sump::Site> {
  using coordinate_type = int;
  static int get(const sump::Site& site, boost::polygon::orientation_2d orientation) {
    return orientation == boost::polygon::HORIZONTAL ? site.x : site.y;
  }
};

namespace sump {

struct Surface::Data {
  std::vector<Point3> spots;
  std::vector<Triangle> triangles;
  std::vector<std::array<int, 2>> edges; ///< of the hull; of the chain, when all lie in a line
  // A square grid of triangle indices makes each look-up constant time for evenly shot spots.
  Point2 low, cell;
  int columns = 0, rows = 0;
  std::vector<std::vector<int>> buckets;
};

namespace {

/// One spot for each millimetre; the mean elevation where several were shot.
std::vector<std::pair<Site, Point3>> merged(const std::vector<Point3>& spots) {
  struct Sum {
    Point3 first;
    double z = 0;
    int count = 0;
  };
  std::map<std::pair<int, int>, Sum> sums;
  for (const Point3& spot : spots) {
    const auto key = std::pair(static_cast<int>(std::lround((spot.x - spots.front().x) * 1000)),
                               static_cast<int>(std::lround((spot.y - spots.front().y) * 1000)));
    Sum& sum = sums[key];
    if (sum.count == 0) sum.first = spot;
    sum.z += spot.z;
    ++sum.count;
  }
  std::vector<std::pair<Site, Point3>> result;
  for (const auto& [key, sum] : sums) {
    result.push_back({{key.first, key.second}, {sum.first.x, sum.first.y, sum.z / sum.count}});
  }
  return result;
}

/// The Delaunay triangulation is the dual of the Voronoi diagram: each Voronoi vertex joins the
/// sites of the cells round it; more than three cells (cocircular spots) are split as a fan.
std::vector<Triangle> delaunay(const std::vector<Site>& sites) {
  boost::polygon::voronoi_diagram<double> diagram;
  boost::polygon::construct_voronoi(sites.begin(), sites.end(), &diagram);
  std::vector<Triangle> triangles;
  const auto twice = [&](int a, int b, int c) {
    const Site &p = sites[static_cast<std::size_t>(a)], &q = sites[static_cast<std::size_t>(b)],
               &r = sites[static_cast<std::size_t>(c)];
    return static_cast<double>(q.x - p.x) * (r.y - p.y) -
           static_cast<double>(q.y - p.y) * (r.x - p.x);
  };
  for (const auto& vertex : diagram.vertices()) {
    std::vector<int> fan;
    const auto* edge = vertex.incident_edge();
    do {
      fan.push_back(static_cast<int>(edge->cell()->source_index()));
      edge = edge->rot_next();
    } while (edge != vertex.incident_edge());
    for (std::size_t i = 2; i < fan.size(); ++i) {
      const double turn = twice(fan[0], fan[i - 1], fan[i]);
      if (turn > 0) triangles.push_back({fan[0], fan[i - 1], fan[i]});
      if (turn < 0) triangles.push_back({fan[0], fan[i], fan[i - 1]});
    }
  }
  return triangles;
}

/// Edges that belong to one triangle only.
std::vector<std::array<int, 2>> hull(const std::vector<Triangle>& triangles) {
  std::map<std::pair<int, int>, int> uses;
  for (const Triangle& t : triangles) {
    for (std::size_t i = 0; i < 3; ++i) {
      ++uses[std::minmax(t[i], t[(i + 1) % 3])];
    }
  }
  std::vector<std::array<int, 2>> edges;
  for (const auto& [edge, count] : uses) {
    if (count == 1) edges.push_back({edge.first, edge.second});
  }
  return edges;
}

/// Spots in one line: joined in order along it. merged() has sorted them by x, then y.
std::vector<std::array<int, 2>> chain(std::size_t count) {
  std::vector<std::array<int, 2>> edges;
  for (int i = 1; i < static_cast<int>(count); ++i)
    edges.push_back({i - 1, i});
  if (count == 1) edges.push_back({0, 0});
  return edges;
}

} // namespace

/// Lays the grid over the triangles and files each triangle under every cell its box touches.
static void fillGrid(std::vector<Point3> const& spots, std::vector<Triangle> const& triangles,
                     Point2& low, Point2& cell, int& columns, int& rows,
                     std::vector<std::vector<int>>& buckets) {
  Point2 high{-std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
  low = {-high.x, -high.y};
  for (const Point3& p : spots) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  const int side = std::clamp(static_cast<int>(std::sqrt(triangles.size())), 1, 256);
  columns = rows = side;
  cell = {std::max(high.x - low.x, 1e-6) / side, std::max(high.y - low.y, 1e-6) / side};
  buckets.assign(static_cast<std::size_t>(side) * static_cast<std::size_t>(side), {});
  const auto index = [&](double v, double start, double size) {
    return std::clamp(static_cast<int>((v - start) / size), 0, side - 1);
  };
  for (int t = 0; t < static_cast<int>(triangles.size()); ++t) {
    const Triangle& corner = triangles[static_cast<std::size_t>(t)];
    const Point3 &a = spots[static_cast<std::size_t>(corner[0])],
                 &b = spots[static_cast<std::size_t>(corner[1])],
                 &c = spots[static_cast<std::size_t>(corner[2])];
    const auto [x0, x1] = std::minmax({a.x, b.x, c.x});
    const auto [y0, y1] = std::minmax({a.y, b.y, c.y});
    for (int row = index(y0, low.y, cell.y); row <= index(y1, low.y, cell.y); ++row) {
      for (int column = index(x0, low.x, cell.x); column <= index(x1, low.x, cell.x); ++column) {
        buckets[static_cast<std::size_t>(row * side + column)].push_back(t);
      }
    }
  }
}

namespace {

/// Barycentric interpolation; nothing outside the triangle (with a hair of tolerance on its edges).
std::optional<double> inTriangle(Point2 p, const Point3& a, const Point3& b, const Point3& c) {
  const Point2 ab = flat(b) - flat(a), ac = flat(c) - flat(a), ap = p - flat(a);
  const double whole = cross(ab, ac);
  const double v = cross(ap, ac) / whole, w = cross(ab, ap) / whole;
  constexpr double hair = 1e-9;
  if (v < -hair || w < -hair || v + w > 1 + hair) return std::nullopt;
  return a.z + v * (b.z - a.z) + w * (c.z - a.z);
}

} // namespace

Surface::Surface() = default;

Surface::Surface(const std::vector<Point3>& spots) {
  if (spots.empty()) return;
  auto data = std::make_shared<Data>();
  std::vector<Site> sites;
  for (const auto& [site, spot] : merged(spots)) {
    sites.push_back(site);
    data->spots.push_back(spot);
  }
  if (sites.size() >= 3) data->triangles = delaunay(sites);
  data->edges = data->triangles.empty() ? chain(sites.size()) : hull(data->triangles);
  fillGrid(data->spots, data->triangles, data->low, data->cell, data->columns, data->rows,
           data->buckets);
  data_ = std::move(data);
}

bool Surface::empty() const {
  return data_ == nullptr;
}

std::optional<double> Surface::elevation(Point2 p) const {
  if (empty()) return std::nullopt;
  const Data& d = *data_;
  const auto spot = [&](int i) -> const Point3& { return d.spots[static_cast<std::size_t>(i)]; };
  const double column = std::floor((p.x - d.low.x) / d.cell.x);
  const double row = std::floor((p.y - d.low.y) / d.cell.y);
  if (column >= 0 && row >= 0 && column <= d.columns && row <= d.rows) {
    const int c = std::min(static_cast<int>(column), d.columns - 1);
    const int r = std::min(static_cast<int>(row), d.rows - 1);
    for (int t : d.buckets[static_cast<std::size_t>(r * d.columns + c)]) {
      const Triangle& corner = d.triangles[static_cast<std::size_t>(t)];
      if (auto z = inTriangle(p, spot(corner[0]), spot(corner[1]), spot(corner[2]))) return z;
    }
  }
  double best = std::numeric_limits<double>::infinity(), z = 0;
  for (const auto& edge : d.edges) {
    const Foot foot = nearestOnSegment(p, flat(spot(edge[0])), flat(spot(edge[1])));
    if (foot.distance >= best) continue;
    best = foot.distance;
    z = lerp(spot(edge[0]), spot(edge[1]), foot.along).z;
  }
  return z;
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
