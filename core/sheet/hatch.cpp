#include "core/sheet/hatch.h"

#include <algorithm>

namespace sump {

namespace {

using Segments = std::vector<std::pair<Point2, Point2>>;

constexpr int kMostLines = 4000; // a hatch is decoration: coarsen it before it costs seconds

/// Where the line `dot(p, normal) = at` crosses the ring, as positions along `along`, sorted.
std::vector<double> cuts(const Ring& ring, Point2 normal, Point2 along, double at) {
  std::vector<double> found;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point2 a = ring[i], b = ring[(i + 1) % ring.size()];
    const double da = dot(a, normal) - at, db = dot(b, normal) - at;
    if ((da >= 0) != (db >= 0)) found.push_back(dot(lerp(a, b, da / (da - db)), along));
  }
  std::sort(found.begin(), found.end());
  return found;
}

void addFamily(const Ring& ring, Point2 along, double spacing, Segments& out) {
  const Point2 normal{-along.y, along.x};
  double low = dot(ring.front(), normal), high = low;
  for (Point2 p : ring) {
    low = std::min(low, dot(p, normal));
    high = std::max(high, dot(p, normal));
  }
  spacing = std::max(spacing, (high - low) / kMostLines);
  for (double at = std::ceil(low / spacing) * spacing; at < high; at += spacing) {
    const std::vector<double> found = cuts(ring, normal, along, at);
    for (std::size_t i = 0; i + 1 < found.size(); i += 2) {
      out.push_back({along * found[i] + normal * at, along * found[i + 1] + normal * at});
    }
  }
}

/// Dots along level lines, every other row shifted by half a step.
Segments dots(const Ring& ring, double spacing) {
  Segments rows, result;
  addFamily(ring, {1, 0}, spacing, rows);
  for (const auto& [a, b] : rows) {
    const bool odd = std::lround(a.y / spacing) % 2 != 0;
    const double shift = odd ? spacing / 2 : 0;
    for (double x = std::ceil((a.x - shift) / spacing) * spacing + shift; x < b.x; x += spacing) {
      result.push_back({{x, a.y}, {x + spacing / 20, a.y}});
    }
  }
  return result;
}

} // namespace

std::vector<std::pair<Point2, Point2>> hatchLines(const Ring& ring, Hatch hatch, double spacing) {
  Segments result;
  if (ring.size() < 3 || !(spacing > 0) || hatch == Hatch::None) return result;
  if (hatch == Hatch::Dots) return dots(ring, spacing);
  const double half = std::sqrt(0.5);
  addFamily(ring, {half, -half}, spacing, result);
  if (hatch == Hatch::Cross) addFamily(ring, {half, half}, spacing, result);
  return result;
}

} // namespace sump
