// How a name finds its place along a line: of a run, or of a utility.

#include "app/canvas/label_placer.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace sump {

namespace {

constexpr double kEndRoom = 6; ///< between a name and the end of its leg, pixels

/// Distances along a leg at which the middle of a text of this width may stand.
std::vector<double> steps(double length, double width) {
  constexpr double kStep = 10; // pixels
  constexpr int kMost = 24;
  const double low = width / 2 + kEndRoom, high = length - low;
  std::vector<double> all;
  if (high < low) return all;
  const int count = std::clamp(static_cast<int>((high - low) / kStep), 1, kMost);
  for (int i = 0; i <= count; ++i)
    all.push_back(low + (high - low) * i / count);
  return all;
}

/// Of the places that are free the middle of the longest unbroken row, and how long that is.
struct Stretch {
  double middle = 0;
  double length = -1;
};
Stretch longestRow(const std::vector<double>& places, const std::vector<bool>& free) {
  Stretch best;
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (!free[i]) continue;
    std::size_t end = i;
    while (end + 1 < places.size() && free[end + 1])
      ++end;
    if (places[end] - places[i] > best.length)
      best = {places[(i + end) / 2], places[end] - places[i]};
    i = end;
  }
  return best;
}

} // namespace

/// Longest first.
std::vector<QLineF> Placer::legsInSight(const Polyline& line) const {
  std::vector<QLineF> legs;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const QLineF leg = clipped({view_.toScreen(line[i - 1]), view_.toScreen(line[i])}, window_);
    if (leg.length() > 1) legs.push_back(leg);
  }
  std::ranges::stable_sort(legs, std::ranges::greater(), &QLineF::length);
  return legs;
}

/// On the line itself, which shows at both ends of the name; on no other leg of it.
bool Placer::onLeg(Label& label, const std::vector<QLineF>& legs, QSizeF size) const {
  Label best;
  double longest = -1;
  for (const QLineF& leg : legs) {
    if (leg.length() - size.width() <= std::max(longest, 2 * kEndRoom)) break;
    Label here = label;
    here.centre = {};
    here.angle = uprightAngle(leg);
    const QPolygonF shape = boxOf(here, size);
    const auto isFree = [&](double at) {
      if (!sits(here, leg.pointAt(at / leg.length()), shape)) return false;
      const auto onOther = [&](const QLineF& other) {
        return &other != &leg && convexOverlap(here.box, asShape(other));
      };
      return std::ranges::none_of(legs, onOther) && !lines_.cross(here.box, {label.object});
    };
    const std::vector<double> places = steps(leg.length(), size.width());
    std::vector<bool> free;
    for (double at : places)
      free.push_back(isFree(at));
    const Stretch stretch = longestRow(places, free);
    if (stretch.length <= longest) continue;
    longest = stretch.length;
    sits(here, leg.pointAt(stretch.middle / leg.length()), shape);
    best = here;
  }
  if (longest >= 0) label = best;
  return longest >= 0;
}

/// Close to a leg and along it, above rather than below.
bool Placer::besideLeg(Label& label, const std::vector<QLineF>& legs, QSizeF size) const {
  constexpr double kOff = 2, kLeastShare = 0.6;
  for (const QLineF& leg : legs) {
    if (leg.length() < size.width() * kLeastShare) break;
    label.centre = {};
    label.angle = uprightAngle(leg);
    const QPolygonF shape = boxOf(label, size);
    const double a = qDegreesToRadians(label.angle), off = size.height() / 2 + kOff;
    const QPointF up(-std::sin(a) * off, -std::cos(a) * off);
    for (const QPointF aside : {up, -up}) {
      for (double at : {0.5, 0.3, 0.7, 0.15, 0.85}) {
        if (sits(label, leg.pointAt(at) + aside, shape) && isClear(label)) return true;
      }
    }
  }
  return false;
}

/// A little off, its leader across no other line.
bool Placer::ledTo(Label& label, const std::vector<QLineF>& legs) {
  constexpr std::size_t kMostLegs = 3;
  constexpr double kDiagonal = 0.7;
  static constexpr std::array<std::pair<double, double>, 8> kWays = {{{0, -1},
                                                                      {0, 1},
                                                                      {1, 0},
                                                                      {-1, 0},
                                                                      {kDiagonal, -kDiagonal},
                                                                      {-kDiagonal, -kDiagonal},
                                                                      {kDiagonal, kDiagonal},
                                                                      {-kDiagonal, kDiagonal}}};
  label.angle = 0;
  const QPolygonF shape = shapeOf(label);
  const QSizeF half = shape.boundingRect().size() / 2;
  for (double away : {kLeaderFrom + 3, kFarthestName * 0.6, kFarthestName * 0.9}) {
    for (std::size_t i = 0; i < std::min(legs.size(), kMostLegs); ++i) {
      for (double at : {0.5, 0.25, 0.75}) {
        const QPointF on = legs[i].pointAt(at);
        for (const auto& [x, y] : kWays) {
          const QPointF centre =
              on + QPointF(x * (away + half.width()), y * (away + half.height()));
          if (!sits(label, centre, shape) || !isClear(label)) continue;
          const QLineF way = wayTo(QPolygonF({on, on}), label.box.boundingRect());
          const QPolygonF leader({way.p1(), way.p2()});
          if (way.length() > kFarthestName || !taken_.isFree(leader)) continue;
          if (lines_.cross(leader, {label.object})) continue;
          label.leader = way;
          return true;
        }
      }
    }
  }
  return false;
}

bool Placer::along(Label label, const Polyline& line) {
  constexpr double kLeastLed = 24; // pixels: shorter lines are hardly seen
  constexpr double kLeastLetter = 4;
  if (label.text.isEmpty() || !shows(label.object)) return false;
  const std::vector<QLineF> legs = legsInSight(line);
  if (legs.empty() || legs.front().length() < kLeastLed) return false;
  // Texts are measured only where they may fit.
  const double least = kLeastLetter * static_cast<double>(label.text.size());
  if (legs.front().length() > least && onLeg(label, legs, sizes_.of(label))) return keep(label);
  if (++searched_ > kMostSearched) return false;
  return (besideLeg(label, legs, sizes_.of(label)) || ledTo(label, legs)) && keep(label);
}

} // namespace sump
