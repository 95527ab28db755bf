#include "core/sheet/placer.h"

#include "core/geometry/polygon.h"
#include "core/units/quantity.h"

#include <algorithm>

namespace sump {

namespace {

constexpr double kGap = 0.6;             // mm of air kept between two texts
constexpr double kLeaderCrossing = 12;   // dislike of a leader crossing another leader
constexpr double kOverDot = 25;          // of a text on the end of a leader
constexpr double kDotRoom = 1.2;         // mm between a leader and the end of another
constexpr double kSameDot = 1.5;         // mm; a leader cannot keep off what is so close to its end
constexpr double kLeaderOverLine = 0.12; // of a leader crossing a drawn line, by that line's cost

/// False when a line cannot meet a box: asked of every line for every candidate.
bool mayMeet(const PaperBox& box, Point2 a, Point2 b) {
  return std::max(a.x, b.x) >= box.low.x && std::min(a.x, b.x) <= box.high.x &&
         std::max(a.y, b.y) >= box.low.y && std::min(a.y, b.y) <= box.high.y;
}

} // namespace

Point2 leaderStart(const PaperBox& box, Point2 to) {
  const double x = std::clamp(to.x, box.low.x, box.high.x);
  const double middle = box.centre().y;
  if (to.x < box.low.x || to.x > box.high.x) return {x, middle};
  return {x, to.y < middle ? box.low.y : box.high.y};
}

bool LabelPlacer::isFree(const LabelCandidate& candidate) const {
  if (!area_.holds(candidate.box)) return false;
  const PaperBox wide = candidate.box.grown(kGap);
  for (const PaperBox& taken : taken_) {
    if (taken.meets(wide)) return false;
    if (candidate.leaderTo &&
        cutsBox(leaderStart(candidate.box, *candidate.leaderTo), *candidate.leaderTo, taken)) {
      return false; // a leader through a text makes both hard to read
    }
  }
  return std::none_of(leaders_.begin(), leaders_.end(),
                      [&](const Line& l) { return cutsBox(l.a, l.b, wide); });
}

double LabelPlacer::coverCost(const LabelCandidate& candidate, double bound) const {
  double cost = candidate.cost;
  const Point2 from =
      candidate.leaderTo ? leaderStart(candidate.box, *candidate.leaderTo) : Point2{};
  std::vector<Point2> extent = candidate.box.ring();
  if (candidate.leaderTo) extent.push_back(*candidate.leaderTo);
  const PaperBox reach = around(extent).grown(kGap);
  for (const Line& line : lines_) {
    if (cost > bound) return cost;
    if (!mayMeet(reach, line.a, line.b)) continue;
    if (cutsBox(line.a, line.b, candidate.box)) cost += line.cost;
    if (candidate.leaderTo && crossSegments(from, *candidate.leaderTo, line.a, line.b)) {
      cost += line.cost * kLeaderOverLine;
    }
  }
  const PaperBox wide = candidate.box.grown(kGap);
  for (Point2 dot : dots_) {
    if (wide.holds(dot)) cost += kOverDot;
  }
  return candidate.leaderTo ? cost + leaderCost(from, *candidate.leaderTo) : cost;
}

/// What a leader does to those that are there.
double LabelPlacer::leaderCost(Point2 from, Point2 to) const {
  double cost = 0;
  const auto passes = [](Point2 dot, Point2 a, Point2 b) {
    return distance(dot, b) > kSameDot && nearestOnSegment(dot, a, b).distance < kDotRoom;
  };
  for (const Line& leader : leaders_) {
    if (crossSegments(from, to, leader.a, leader.b)) cost += kLeaderCrossing;
    if (passes(to, leader.a, leader.b)) cost += kLeaderOverDot;
  }
  for (Point2 dot : dots_) {
    if (passes(dot, from, to)) cost += kLeaderOverDot;
  }
  return cost;
}

std::optional<LabelCandidate> LabelPlacer::place(std::vector<LabelCandidate> candidates) {
  std::stable_sort(
      candidates.begin(), candidates.end(),
      [](const LabelCandidate& a, const LabelCandidate& b) { return a.cost < b.cost; });
  const LabelCandidate* best = nullptr;
  double least = most_;
  for (const LabelCandidate& candidate : candidates) {
    if (candidate.cost >= least) break; // sorted: none of the rest can be cheaper
    if (!isFree(candidate)) continue;
    const double cost = coverCost(candidate, least);
    if (cost < least) {
      least = cost;
      best = &candidate;
    }
  }
  if (best == nullptr) return std::nullopt;
  taken_.push_back(best->box);
  if (best->leaderTo) {
    leaders_.push_back({leaderStart(best->box, *best->leaderTo), *best->leaderTo, 0});
    dots_.push_back(*best->leaderTo);
  }
  return *best;
}

std::vector<LabelCandidate> aroundPoint(Point2 anchor, double width, double height, double nearest,
                                        double farthest, double extraCost) {
  std::vector<LabelCandidate> found;
  constexpr int kDirections = 24;
  for (double r = nearest; r <= farthest; r *= 1.35) {
    for (int i = 0; i < kDirections; ++i) {
      const double a = 2 * kPi * i / kDirections;
      const Point2 u{std::cos(a), std::sin(a)};
      // The box stands beyond r: its nearest edge or corner about r away.
      const Point2 middle = anchor + Point2{u.x * (r + width / 2), u.y * (r + height / 2)};
      const PaperBox box{{middle.x - width / 2, middle.y - height / 2},
                         {middle.x + width / 2, middle.y + height / 2}};
      found.push_back({box, anchor, extraCost + r * 0.25, false});
    }
  }
  return found;
}

} // namespace sump
