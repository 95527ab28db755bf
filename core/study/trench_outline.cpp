#include "core/study/trench_outline.h"

#include "core/geometry/box_index.h"
#include "core/geometry/polygon.h"
#include "core/geometry/unit.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>

namespace sump {

TrenchPoint trenchBetween(const TrenchPoint& a, const TrenchPoint& b, double t) {
  return {lerp(a.at, b.at, t), std::lerp(a.bottom, b.bottom, t), std::lerp(a.depth, b.depth, t),
          std::lerp(a.top, b.top, t)};
}

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

std::vector<Ring> trenchOutlines(const TrenchStudy& trench) {
  std::vector<Ring> rings;
  for (const TrenchStretch& stretch : trench.stretches) {
    std::vector<Ring> more = trenchOutlines(stretch);
    std::ranges::move(more, std::back_inserter(rings));
  }
  return rings;
}

namespace {

constexpr double kTrenchStep = 0.1; // m
constexpr double kStands = 0.3; // m of ground that stands between two; common practice, no source
constexpr double kWhile = 0.5;  // m; less is the corner where one turns to the other
constexpr double kSlant = 0.5;  // sine of what still runs along

/// Holds its outlines, whose corners reach no farther than the trench is wide.
Box extentOf(const TrenchStudy& trench) {
  std::vector<Point2> points;
  double widest = 0;
  for (const TrenchStretch& stretch : trench.stretches) {
    for (const TrenchPoint& p : stretch) {
      points.push_back(p.at);
      widest = std::max(widest, p.top);
    }
  }
  return points.empty() ? Box{} : grown(boxOf(points), widest);
}

bool meet(const Box& one, const Box& other) {
  return one.low.x <= other.high.x && other.low.x <= one.high.x && one.low.y <= other.high.y &&
         other.low.y <= one.high.y;
}

/// Of many trenches only few lie near each other: what tells the others needs no outlines.
bool mayMeet(const TrenchStudy& a, const TrenchStudy& b, double within) {
  return meet(grown(extentOf(a), within), extentOf(b));
}

/// Calls `use` with places along the trench, a step apart at most, and its width there.
template <class Use> void alongTrench(const TrenchStretch& stretch, Use use) {
  for (std::size_t i = 1; i < stretch.size(); ++i) {
    const TrenchPoint &a = stretch[i - 1], &b = stretch[i];
    const int steps = 1 + static_cast<int>(distance(a.at, b.at) / kTrenchStep);
    for (int k = i == 1 ? 0 : 1; k <= steps; ++k) {
      const double t = static_cast<double>(k) / steps;
      use(lerp(a.at, b.at, t), std::lerp(a.top, b.top, t));
    }
  }
}

double farFrom(const std::vector<Ring>& rings, Point2 p) {
  double least = 1e9;
  for (const Ring& ring : rings)
    least = std::min(least, distance(p, ring));
  return least;
}

/// Does it go the same way, give or take 30 degrees, with ground that would not stand between them?
bool runsAlong(const TrenchStretch& stretch, Point2 p, Point2 way, double width) {
  for (std::size_t i = 1; i < stretch.size(); ++i) {
    const TrenchPoint &a = stretch[i - 1], &b = stretch[i];
    const Point2 other = b.at - a.at;
    if (std::abs(cross(way, other)) > kSlant * norm(way) * norm(other)) continue;
    const Foot foot = nearestOnSegment(p, a.at, b.at);
    const double half = (width + std::lerp(a.top, b.top, foot.along)) / 2;
    if (foot.along > 0 && foot.along < 1 && foot.distance < half + kStands) return true;
  }
  return false;
}

/// Calls with the middle of each short step between two points, which way it goes there and how
/// long the step is.
template <typename Call> void stepsOf(const TrenchPoint& a, const TrenchPoint& b, Call call) {
  const double length = distance(a.at, b.at);
  const int steps = 1 + static_cast<int>(length / kTrenchStep);
  for (int k = 0; k < steps; ++k)
    call(trenchBetween(a, b, (k + 0.5) / steps), b.at - a.at, length / steps);
}
template <typename Call> void stepsOf(const TrenchStudy& trench, Call call) {
  for (const TrenchStretch& stretch : trench.stretches) {
    for (std::size_t i = 1; i < stretch.size(); ++i)
      stepsOf(stretch[i - 1], stretch[i], call);
  }
}

/// How far a trench runs so along another, m.
double alongside(const TrenchStudy& trench, const TrenchStudy& other) {
  double sum = 0;
  stepsOf(trench, [&](const TrenchPoint& p, Point2 way, double step) {
    const bool along = std::ranges::any_of(
        other.stretches, [&](const TrenchStretch& s) { return runsAlong(s, p.at, way, p.top); });
    sum += along ? step : 0;
  });
  return sum;
}

/// From a place outside of the pit to that side of it which the way runs along.
std::optional<double> wayToSide(const Ring& pitTop, Point2 p, Point2 way) {
  std::optional<double> least;
  for (std::size_t i = 0; i < pitTop.size(); ++i) {
    const Point2 a = pitTop[i], b = pitTop[(i + 1) % pitTop.size()], side = b - a;
    if (std::abs(cross(way, side)) > kSlant * norm(way) * norm(side)) continue;
    const Foot foot = nearestOnSegment(p, a, b);
    if (foot.along <= 0 || foot.along >= 1) continue;
    if (!least || foot.distance < *least) least = foot.distance;
  }
  return least;
}

/// The side of a trench that is dug square across its end.
Polyline endFace(const TrenchPoint& end, const TrenchPoint& before) {
  const Point2 way = unitWay(before.at, end.at), left{-way.y, way.x};
  return {end.at - left * (end.top / 2), end.at + left * (end.top / 2)};
}

std::array<Polyline, 2> endFaces(const TrenchStudy& trench) {
  const TrenchStretch &first = trench.stretches.front(), &last = trench.stretches.back();
  return {endFace(first[0], first[1]), endFace(last[last.size() - 1], last[last.size() - 2])};
}

/// Does no ground that would stand lie between an end of the trench and the other one: its end, or
/// its side, where a branch comes to it?
bool endsAt(const TrenchStudy& trench, const std::vector<Ring>& other) {
  return std::ranges::any_of(endFaces(trench), [&](const Polyline& face) {
    return std::ranges::any_of(
        other, [&](const Ring& ring) { return distanceLineToRing(face, ring) < kStands; });
  });
}

/// Straight on, it has no corner there.
void goOn(Polyline& line, Point2 to) {
  constexpr double kStraight = 1e-9; // m2
  const std::size_t n = line.size();
  if (n > 1 && std::abs(cross(line[n - 1] - line[n - 2], to - line[n - 1])) < kStraight)
    line.pop_back();
  line.push_back(to);
}

/// Of the trench's line, where `holds` holds all along it.
template <class Test> Polyline longestPiece(const TrenchStudy& trench, Test holds) {
  Polyline longest, piece;
  for (const TrenchStretch& stretch : trench.stretches) {
    piece.clear();
    alongTrench(stretch, [&](Point2 p, double) {
      if (holds(p)) {
        goOn(piece, p);
      } else {
        piece.clear();
      }
      if (piece.size() > 1 && planLength(piece) > planLength(longest)) longest = piece;
    });
  }
  return longest;
}

} // namespace

bool dugTogether(const TrenchStudy& a, const TrenchStudy& b) {
  constexpr double kShare = 0.5; // of the shorter one's length; one that crosses shares less
  if (!mayMeet(a, b, kStands)) return false;
  const bool isShorter = a.length <= b.length;
  const TrenchStudy &shorter = isShorter ? a : b, &longer = isShorter ? b : a;
  const std::vector<Ring> other = trenchOutlines(longer);
  int all = 0, beside = 0;
  for (const TrenchStretch& stretch : shorter.stretches) {
    alongTrench(stretch, [&](Point2 p, double width) {
      ++all;
      beside += farFrom(other, p) < width / 2 + kStands ? 1 : 0;
    });
  }
  return beside > kShare * all || alongside(shorter, longer) > kWhile || endsAt(shorter, other) ||
         endsAt(longer, trenchOutlines(shorter));
}

std::optional<TrenchBerm> bermBeside(const TrenchStudy& trench, const Ring& pitTop, double within) {
  double along = 0;
  std::optional<TrenchBerm> thinnest;
  stepsOf(trench, [&](const TrenchPoint& p, Point2 way, double step) {
    if (contains(pitTop, p.at)) return;
    const auto toSide = wayToSide(pitTop, p.at, way);
    const double berm = toSide ? *toSide - p.top / 2 : within;
    if (berm >= within) return;
    along += step;
    if (!thinnest || berm < thinnest->least) thinnest = {std::max(berm, 0.0), p.at};
  });
  return along > kWhile ? thinnest : std::nullopt;
}

std::vector<PlaceBeside> placesBeside(const TrenchStudy& trench, const Ring& outline) {
  const double half = inMetres(trench.bottomWidth) / 2;
  const Box box = boxOf(outline);
  std::vector<PlaceBeside> places;
  double along = 0;
  const auto look = [&](const TrenchPoint& p, Point2 way, double step) {
    if (contains(outline, p.at)) return;
    const auto toSide = wayToSide(outline, p.at, way);
    if (!toSide || *toSide - half >= p.depth) return;
    places.push_back({p, *toSide});
    along += step;
  };
  for (const TrenchStretch& stretch : trench.stretches) {
    for (std::size_t i = 1; i < stretch.size(); ++i) {
      const TrenchPoint &a = stretch[i - 1], &b = stretch[i];
      const double reach = std::max(a.depth, b.depth) + half;
      if (meet(grown(boxOf({a.at, b.at}), reach), box)) stepsOf(a, b, look);
    }
  }
  if (along <= kWhile) places.clear();
  return places;
}

Polyline lineAlone(const TrenchStudy& trench, const std::vector<TrenchStudy>& others,
                   const std::vector<Ring>& roofs) {
  std::vector<Ring> rings;
  for (const TrenchStudy& other : others) {
    if (other.run == trench.run || !mayMeet(trench, other, 0)) continue;
    std::vector<Ring> more = trenchOutlines(other);
    std::ranges::move(more, std::back_inserter(rings));
  }
  const auto isAlone = [&](Point2 p) { return farFrom(rings, p) > 0; };
  const auto isOutdoors = [&](Point2 p) {
    return std::ranges::none_of(roofs, [p](const Ring& roof) { return contains(roof, p); });
  };
  constexpr double kLeast = 0.5; // m; what is shorter is hardly seen on a plan
  const auto isLong = [](const Polyline& line) { return planLength(line) >= kLeast; };
  Polyline line = longestPiece(trench, [&](Point2 p) { return isOutdoors(p) && isAlone(p); });
  if (!isLong(line)) line = longestPiece(trench, isOutdoors);
  if (!isLong(line)) line = longestPiece(trench, isAlone);
  return isLong(line) ? line : longestPiece(trench, [](Point2) { return true; });
}

} // namespace sump
