#include "core/geometry/delaunay.h"

#include <boost/polygon/voronoi.hpp>

#include <algorithm>
#include <cmath>
#include <map>

namespace sump {

namespace {

/// Whole tenths of a millimetre from the first point: Boost.Polygon's Voronoi diagram is exact on
/// integers only.
struct Site {
  int x = 0;
  int y = 0;
};
constexpr double kSitesPerMetre = 1e4;

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

namespace {

using EdgeUses = std::map<std::pair<int, int>, int>;

Point2 at(const std::vector<Point3>& points, int i) {
  return flat(points[static_cast<std::size_t>(i)]);
}

std::vector<Site> sitesOf(const std::vector<Point3>& points) {
  const auto whole = [](double metres) { // clamped so that differences still fit an int
    return static_cast<int>(std::lround(std::clamp(metres * kSitesPerMetre, -1e9, 1e9)));
  };
  std::vector<Site> sites;
  sites.reserve(points.size());
  for (const Point3& p : points)
    sites.push_back({whole(p.x - points.front().x), whole(p.y - points.front().y)});
  return sites;
}

/// Twice the signed area, exactly enough for its sign: products of ints in long double.
long double turn(const Site& a, const Site& b, const Site& c) {
  return static_cast<long double>(b.x - a.x) * (c.y - a.y) -
         static_cast<long double>(b.y - a.y) * (c.x - a.x);
}

/// Splits the cells round one Voronoi vertex as a fan; more than three are cocircular points, where
/// every split is as good as another.
template <class Vertex>
void addFan(const Vertex& vertex, const std::vector<Site>& sites, std::vector<Triangle>& found) {
  std::vector<int> fan;
  const auto* edge = vertex.incident_edge();
  do {
    fan.push_back(static_cast<int>(edge->cell()->source_index()));
    edge = edge->rot_next();
  } while (edge != vertex.incident_edge());
  const auto site = [&](int i) { return sites[static_cast<std::size_t>(i)]; };
  for (std::size_t i = 2; i < fan.size(); ++i) {
    const long double way = turn(site(fan[0]), site(fan[i - 1]), site(fan[i]));
    if (way > 0) found.push_back({fan[0], fan[i - 1], fan[i]});
    if (way < 0) found.push_back({fan[0], fan[i], fan[i - 1]});
  }
}

EdgeUses usesOf(const std::vector<Triangle>& triangles) {
  EdgeUses uses;
  for (const Triangle& t : triangles) {
    for (std::size_t i = 0; i < 3; ++i)
      ++uses[std::minmax(t[i], t[(i + 1) % 3])];
  }
  return uses;
}

struct Base {
  std::pair<int, int> edge; ///< the longest, smaller index first
  double height = 0;        ///< of the triangle over it
};

Base baseOf(const Triangle& t, const std::vector<Point3>& points) {
  Base base;
  double longest = 0;
  for (std::size_t i = 0; i < 3; ++i) {
    const double length = distance(at(points, t[i]), at(points, t[(i + 1) % 3]));
    if (length <= longest) continue;
    longest = length;
    base.edge = std::minmax(t[i], t[(i + 1) % 3]);
  }
  const Point2 a = at(points, t[0]);
  base.height = cross(at(points, t[1]) - a, at(points, t[2]) - a) / longest;
  return base;
}

/// A row of spots along a straight side of the site is straight only to rounding, which leaves
/// slivers whose long edge would pass for the hull and hide the spots between. They are peeled off
/// from outside.
std::vector<Triangle> withoutFlatRims(const std::vector<Triangle>& triangles,
                                      const std::vector<Point3>& points) {
  EdgeUses uses = usesOf(triangles);
  std::vector<Triangle> kept, unsure;
  for (const Triangle& t : triangles)
    (baseOf(t, points).height < kSamePlace ? unsure : kept).push_back(t);
  for (std::size_t before = unsure.size() + 1; before > unsure.size();) {
    before = unsure.size();
    std::vector<Triangle> left;
    for (const Triangle& t : unsure) {
      if (uses.at(baseOf(t, points).edge) > 1) {
        left.push_back(t);
        continue;
      }
      for (std::size_t i = 0; i < 3; ++i)
        --uses.at(std::minmax(t[i], t[(i + 1) % 3]));
    }
    unsure = std::move(left);
  }
  kept.insert(kept.end(), unsure.begin(), unsure.end());
  return kept;
}

int farthestFrom(Point2 p, const std::vector<Point3>& points) {
  const auto away = [&](const Point3& q) { return distance(p, flat(q)); };
  return static_cast<int>(std::ranges::max_element(points, {}, away) - points.begin());
}

} // namespace

/// The dual of the Voronoi diagram: each Voronoi vertex joins the points whose cells meet there
/// (de Berg et al., Computational Geometry, 3rd ed., ch. 9).
std::vector<Triangle> delaunay(const std::vector<Point3>& points) {
  const std::vector<Site> sites = sitesOf(points);
  boost::polygon::voronoi_diagram<double> diagram;
  boost::polygon::construct_voronoi(sites.begin(), sites.end(), &diagram);
  std::vector<Triangle> triangles;
  for (const auto& vertex : diagram.vertices())
    addFan(vertex, sites, triangles);
  return withoutFlatRims(triangles, points);
}

std::vector<Edge> hull(const std::vector<Triangle>& triangles) {
  std::vector<Edge> edges;
  for (const auto& [edge, count] : usesOf(triangles)) {
    if (count == 1) edges.push_back({edge.first, edge.second});
  }
  return edges;
}

std::optional<std::vector<int>> orderAlongLine(const std::vector<Point3>& points) {
  if (points.empty()) return std::nullopt;
  const Point2 start = at(points, farthestFrom(flat(points.front()), points));
  const Point2 along = at(points, farthestFrom(start, points)) - start;
  const double length = norm(along);
  std::vector<int> order;
  for (int i = 0; i < static_cast<int>(points.size()); ++i) {
    if (std::abs(cross(along, at(points, i) - start)) > kSamePlace * length) return std::nullopt;
    order.push_back(i);
  }
  std::ranges::sort(order, {}, [&](int i) { return dot(along, at(points, i) - start); });
  return order;
}

} // namespace sump
