#include "core/study/trench_outline.h"

#include "core/geometry/unit.h"

namespace sump {

Ring trenchCorner(const TrenchPoint& before, const TrenchPoint& bend, const TrenchPoint& after) {
  constexpr double kStraight = 1e-6; // sine of a bend that is none
  const Point2 in = unitWay(before.at, bend.at), out = unitWay(bend.at, after.at);
  const double turn = cross(in, out), half = bend.top / 2;
  if (std::abs(turn) < kStraight || half <= 0) return {};
  const double side = turn > 0 ? half : -half; // a turn to the left has its outer corner right
  const Point2 a = Point2{in.y, -in.x} * side, b = Point2{out.y, -out.x} * side;
  constexpr double kSharp = -0.5; // cosine: beyond 120 degrees the point would run far out
  constexpr double kInto = 0.002; // m that it reaches into both pieces, so that no slit is left
  const Point2 inner = bend.at - (a + b) * (kInto / half);
  const Point2 first = bend.at + a - in * kInto, last = bend.at + b + out * kInto;
  if (dot(in, out) < kSharp) return {inner, first, last};
  return {inner, first, bend.at + (a + b) * (1 / (1 + dot(in, out))), last};
}

std::vector<Ring> trenchOutlines(const TrenchStretch& stretch) {
  std::vector<Ring> rings;
  for (std::size_t i = 1; i < stretch.size(); ++i) {
    rings.push_back(trenchOutline(stretch[i - 1], stretch[i]));
    if (i + 1 == stretch.size()) continue;
    Ring corner = trenchCorner(stretch[i - 1], stretch[i], stretch[i + 1]);
    if (!corner.empty()) rings.push_back(std::move(corner));
  }
  return rings;
}

} // namespace sump
