#include "core/sheet/obstacles.h"

#include "core/geometry/polygon.h"
#include "core/sheet/placer.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace sump {

namespace {

constexpr double kCell = 8;               // mm
constexpr double kOverSymbol = 180;       // dislike of a label on a symbol, mm of distance
constexpr double kLeaderOverSymbol = 900; // of a leader through one: it would seem to mean it
constexpr double kAlongLine = 15;         // of a leader that runs along a line and looks like it
constexpr double kDotOnCrossing = 15;     // of a leader that ends where another line crosses
constexpr double kSlant = 0.12;           // sine under which two lines look parallel
constexpr double kLineAir = 0.3;          // mm between a label and a line, which has a width

/// a and b lie on one side of the way: they cannot cross it.
bool sameSide(Point2 from, Point2 to, Point2 a, Point2 b) {
  const Point2 way = to - from;
  return cross(way, a - from) * cross(way, b - from) > 0;
}

/// The leader and the line run side by side for a while.
bool runsAlong(Point2 from, Point2 to, Point2 a, Point2 b) {
  constexpr double kBeside = 1, kLeast = 3; // mm
  const Point2 way = to - from, line = b - a;
  // Asked of every line for every candidate: no roots before it is needed.
  const double square = dot(way, way) * dot(line, line), sine = cross(way, line);
  if (sine * sine > kSlant * kSlant * square) return false;
  const double length = norm(way), other = norm(line);
  if (length < kLeast || other < kLeast) return false;
  const Point2 u = line * (1 / other);
  double low = dot(from - a, u), high = dot(to - a, u);
  if (low > high) std::swap(low, high);
  low = std::max(low, 0.0);
  high = std::min(high, other);
  if (high - low < kLeast) return false;
  const Point2 middle = a + u * ((low + high) / 2);
  return std::abs(cross(way, middle - from)) < kBeside * length;
}

/// The line passes the leader's dot, but as another than the one that it points at.
bool passesDot(Point2 dot, Point2 a, Point2 b) {
  constexpr double kOwn = 0.05, kNear = 0.9; // mm
  if (!spanned(a, b).grown(kNear).holds(dot)) return false;
  const double off = nearestOnSegment(dot, a, b).distance;
  return off > kOwn && off < kNear;
}

bool isOver(Point2 from, Point2 to, Point2 dot) {
  return distance(dot, to) > kSameEnd && nearestOnSegment(dot, from, to).distance < kDotAir;
}

} // namespace

bool runsOverDot(Point2 from, Point2 to, Point2 dot) {
  return spanned(from, to).grown(kDotAir).holds(dot) && isOver(from, to, dot);
}

PaperBox reachOf(const LabelCandidate& candidate) {
  const PaperBox& reach = candidate.box;
  if (!candidate.leaderTo) return reach;
  const Point2 to = *candidate.leaderTo;
  return {{std::min(reach.low.x, to.x), std::min(reach.low.y, to.y)},
          {std::max(reach.high.x, to.x), std::max(reach.high.y, to.y)}};
}

Obstacles::Obstacles(PaperBox area)
    : area_(area), columns_(std::max(1, static_cast<int>(area.width() / kCell) + 1)),
      rows_(std::max(1, static_cast<int>(area.height() / kCell) + 1)),
      cells_(static_cast<std::size_t>(columns_ * rows_)) {}

int Obstacles::columnOf(double x) const {
  return std::clamp(static_cast<int>((x - area_.low.x) / kCell), 0, columns_ - 1);
}

int Obstacles::rowOf(double y) const {
  return std::clamp(static_cast<int>((y - area_.low.y) / kCell), 0, rows_ - 1);
}

void Obstacles::addLine(Point2 a, Point2 b, double cost, double leader) {
  const auto index = static_cast<std::uint32_t>(lines_.size());
  const PaperBox box = spanned(a, b);
  lines_.push_back({a, b, box, cost, leader});
  for (int row = rowOf(box.low.y); row <= rowOf(box.high.y); ++row) {
    for (int column = columnOf(box.low.x); column <= columnOf(box.high.x); ++column) {
      const Point2 low = area_.low + Point2{column * kCell, row * kCell};
      // Cells at the rim also hold what lies beyond it.
      const bool rim = row == 0 || column == 0 || row == rows_ - 1 || column == columns_ - 1;
      if (rim || cutsBox(a, b, PaperBox{low, low + Point2{kCell, kCell}}.grown(1e-6)))
        cell(column, row).push_back(index);
    }
  }
}

/// Each line once.
template <typename Use> void Obstacles::forEachNear(const PaperBox& box, Use use) const {
  seen_.resize(lines_.size(), 0);
  ++look_;
  for (int row = rowOf(box.low.y); row <= rowOf(box.high.y); ++row) {
    for (int column = columnOf(box.low.x); column <= columnOf(box.high.x); ++column) {
      for (const std::uint32_t i : cells_[static_cast<std::size_t>(row * columns_ + column)]) {
        if (std::exchange(seen_[i], look_) == look_) continue;
        if (!use(lines_[i])) return;
      }
    }
  }
}

bool Obstacles::inSymbol(Point2 p) const {
  return std::ranges::any_of(symbols_, [&](const PaperBox& box) { return box.holds(p); });
}

bool Obstacles::allows(const LabelCandidate& candidate) const {
  if (!area_.holds(candidate.box)) return false;
  const PaperBox wide = candidate.box.grown(kLabelGap);
  for (const PaperBox& taken : taken_) {
    if (taken.meets(wide)) return false;
    // A leader through a text makes both hard to read.
    if (candidate.leaderTo && cutsBox(leaderStart(candidate), *candidate.leaderTo, taken))
      return false;
  }
  return true;
}

double Obstacles::lineCost(const LabelCandidate& candidate, Point2 from, const Line& line) const {
  const PaperBox wide = candidate.box.grown(kLineAir);
  const bool covers = wide.touches(line.box) && cutsBox(line.a, line.b, wide);
  double cost = covers ? line.cost : 0;
  if (!candidate.leaderTo) return cost;
  const Point2 to = *candidate.leaderTo;
  if (!spanned(from, to).grown(1).touches(line.box)) return cost;
  if (!sameSide(from, to, line.a, line.b) && crossSegments(from, to, line.a, line.b))
    cost += line.leader;
  if (line.leader > 0 && runsAlong(from, to, line.a, line.b)) cost += kAlongLine;
  if (line.leader > 0 && passesDot(to, line.a, line.b)) cost += kDotOnCrossing;
  return cost;
}

double Obstacles::symbolCost(const LabelCandidate& candidate, Point2 from) const {
  constexpr double kAir = 0.4; // mm about a symbol
  double cost = 0;
  const PaperBox reach = reachOf(candidate);
  for (const PaperBox& symbol : symbols_) {
    const PaperBox wide = symbol.grown(kAir);
    if (!wide.touches(reach)) continue;
    if (wide.meets(candidate.box)) cost += kOverSymbol;
    if (!candidate.leaderTo || wide.holds(*candidate.leaderTo)) continue;
    if (cutsBox(from, *candidate.leaderTo, wide)) cost += kLeaderOverSymbol;
  }
  return cost;
}

bool Obstacles::leaderOverDot(const LabelCandidate& candidate) const {
  if (!candidate.leaderTo) return false;
  const Point2 to = *candidate.leaderTo, from = leaderStart(candidate);
  const PaperBox about = spanned(from, to).grown(kDotAir);
  return std::ranges::any_of(dots_,
                             [&](Point2 dot) { return about.holds(dot) && isOver(from, to, dot); });
}

double Obstacles::dotCost(const LabelCandidate& candidate) const {
  constexpr double kOn = 25; // of a text on the end of a leader
  const PaperBox wide = candidate.box.grown(kLabelGap);
  double cost = leaderOverDot(candidate) ? kOverSymbol : 0;
  for (Point2 dot : dots_)
    cost += wide.holds(dot) ? kOn : 0;
  return cost;
}

double Obstacles::cost(const LabelCandidate& candidate, double bound) const {
  const Point2 from = candidate.leaderTo ? leaderStart(candidate) : Point2{};
  double cost = candidate.cost + symbolCost(candidate, from) + dotCost(candidate);
  if (cost > bound) return cost;
  const PaperBox reach = reachOf(candidate).grown(1);
  forEachNear(reach, [&](const Line& line) {
    if (reach.touches(line.box)) cost += lineCost(candidate, from, line);
    return cost <= bound;
  });
  return cost;
}

} // namespace sump
