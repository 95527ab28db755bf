#pragma once
// Random outlines and lines as a site plan has them: vault-like rectangles at any angle, irregular
// outlines, and pairs that touch, nest or coincide.

#include "core/geometry/frame.h"
#include "core/geometry/polygon.h"

#include <algorithm>
#include <random>
#include <vector>

namespace sump::random_shapes {

class Source {
public:
  explicit Source(unsigned seed) : engine_(seed) {}
  double real(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine_);
  }
  int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(engine_); }
  bool coin() { return whole(0, 1) == 1; }
  Point2 within(Point2 centre, double reach) {
    return centre + Point2{real(-reach, reach), real(-reach, reach)};
  }

  /// Square to the site, at a multiple of 15 degrees, or at any angle.
  Angle angle() {
    const int kind = whole(0, 2);
    if (kind == 0) return degrees(90.0 * whole(0, 3));
    return kind == 1 ? degrees(15.0 * whole(0, 23)) : degrees(real(0, 360));
  }
  Frame frame(Point2 centre, double reach) { return {within(centre, reach), angle()}; }

  Ring eitherWay(Ring ring) {
    if (coin()) std::ranges::reverse(ring);
    return ring;
  }
  Ring rectangle(const Frame& frame) {
    return eitherWay(frame.rectangle({0, 0}, {real(0.5, 6), real(0.5, 4)}));
  }
  /// Corners at rising angles round a centre, so it never crosses itself; often not convex.
  Ring star(Point2 centre, double reach) {
    const int count = whole(3, 12);
    Ring ring;
    for (int i = 0; i < count; ++i) {
      const double turn = 2 * kPi * (i + real(0, 0.8)) / count, radius = real(0.3, 1) * reach;
      ring.push_back(centre + Point2{std::cos(turn), std::sin(turn)} * radius);
    }
    return eitherWay(ring);
  }
  Ring outline(Point2 centre, double reach) {
    return coin() ? rectangle(frame(centre, reach)) : star(within(centre, reach), real(1, 5));
  }
  Polyline line(Point2 centre, double reach) {
    Polyline points;
    for (int i = whole(2, 6); i > 0; --i)
      points.push_back(within(centre, reach));
    return points;
  }

private:
  std::mt19937_64 engine_;
};

struct Pair {
  Ring a;
  Ring b;
};

/// Two rectangles in one frame that share an edge, part of one, a corner, or all.
inline Pair touching(Source& random, Point2 centre) {
  const Frame frame = random.frame(centre, 5);
  const Point2 size{random.real(1, 6), random.real(1, 4)};
  const Ring a = frame.rectangle({0, 0}, size);
  const double shift = random.whole(0, 2) * size.y / 2; // whole edge, half of it, a corner
  const Point2 low{size.x, shift}, high{size.x + random.real(1, 6), shift + size.y};
  const bool same = random.whole(0, 5) == 0;
  return {random.eitherWay(a), random.eitherWay(same ? a : frame.rectangle(low, high))};
}

/// One rectangle inside the other, sometimes sharing part of its edge.
inline Pair nested(Source& random, Point2 centre) {
  const Frame frame = random.frame(centre, 5);
  const Point2 size{random.real(2, 6), random.real(2, 4)};
  const double inset = random.coin() ? 0 : 0.25;
  Pair pair{random.eitherWay(frame.rectangle({0, 0}, size)),
            random.eitherWay(frame.rectangle({inset, 0.5}, {size.x - 0.5, size.y - 0.5}))};
  if (random.coin()) std::swap(pair.a, pair.b);
  return pair;
}

inline Pair pair(Source& random, Point2 centre) {
  switch (random.whole(0, 3)) {
  case 0:
    return touching(random, centre);
  case 1:
    return nested(random, centre);
  default:
    return {random.outline(centre, 6), random.outline(centre, 6)};
  }
}

/// The plan's own origin, or a survey grid's far-off one.
inline Point2 anySite(Source& random) {
  return random.whole(0, 3) == 0 ? Point2{random.real(4e5, 6e5), random.real(3.9e6, 4.1e6)}
                                 : Point2{random.real(-100, 100), random.real(-100, 100)};
}

} // namespace sump::random_shapes
