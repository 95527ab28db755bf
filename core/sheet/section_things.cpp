#include "core/sheet/section_things.h"

#include "core/geometry/polygon.h"
#include "core/sheet/mark_shape.h"

#include <algorithm>

namespace sump {

namespace {

/// The ground's line.
bool isSurface(const Mark& mark) {
  return mark.layer == Layer::Ground && !mark.closed && mark.line;
}

} // namespace

SectionThings::SectionThings(const SheetView& view, const std::vector<Mark>& marks) {
  constexpr double kHair = 1e-6; // mm, so that what touches an edge is looked at
  for (const Mark& mark : marks) {
    Ring points = mark.points;
    for (Point2& p : points)
      p = view.toPaper(p);
    if ((mark.layer == Layer::Run || mark.layer == Layer::Utility) && mark.closed)
      pipes_.push_back({mark.object, points, around(points).grown(kHair)});
    if (mark.layer == Layer::Baffle && mark.fill) baffles_.push_back(around(points));
    if (mark.layer == Layer::Part) fittings_.push_back(extentOf(mark, view));
    if (isSurface(mark)) surfaces_.push_back(points);
  }
}

/// A plate there would break a pipe's line or hide the sign of one that crosses.
bool SectionThings::hidesPipe(const PaperBox& plate) const {
  constexpr double kHair = 0.15; // mm
  const PaperBox box = plate.grown(-kHair);
  return std::ranges::any_of(pipes_, [&](const DrawnPipe& pipe) {
    if (!box.meets(pipe.extent)) return false;
    if (contains(pipe.outline, box.centre())) return true;
    for (std::size_t i = 0; i < pipe.outline.size(); ++i) {
      if (cutsBox(pipe.outline[i], pipe.outline[(i + 1) % pipe.outline.size()], box)) return true;
    }
    return false;
  });
}

bool SectionThings::hidesSurface(const PaperBox& plate) const {
  return std::ranges::any_of(surfaces_, [&](const Polyline& line) {
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
      if (cutsBox(line[i], line[i + 1], plate)) return true;
    }
    return false;
  });
}

/// On the dark of a baffle a leader is not seen.
bool SectionThings::isHidden(Point2 p) const {
  return std::ranges::any_of(baffles_, [&](const PaperBox& baffle) { return baffle.holds(p); });
}

/// What a plate costs that takes a baffle, the gap over it or a fitting away.
double SectionThings::onFittings(const PaperBox& plate) const {
  constexpr double kOnFitting = 450;       // mm that it is disliked
  constexpr double kHair = 0.15, kGap = 2; // mm: of air; over a baffle
  const PaperBox box = plate.grown(-kHair);
  const auto hides = [&](const PaperBox& fitting) { return box.touches(fitting); };
  const bool onBaffle = std::ranges::any_of(baffles_, [&](const PaperBox& baffle) {
    return hides({{baffle.low.x, baffle.low.y - kGap}, baffle.high});
  });
  return onBaffle || std::ranges::any_of(fittings_, hides) ? kOnFitting : 0;
}

/// A leader to a level that ends in a pipe or a fitting would tell that one's.
bool SectionThings::isOnOther(Point2 target) const {
  constexpr double kAir = 0.5; // mm
  const auto holds = [&](const PaperBox& box) { return box.grown(kAir).holds(target); };
  return std::ranges::any_of(fittings_, holds) ||
         std::ranges::any_of(pipes_, [&](const DrawnPipe& pipe) {
           return pipe.extent.holds(target) && contains(pipe.outline, target);
         });
}

/// A leader through another's pipe would seem to point at that. A plate takes the ground's line
/// away only where there is hardly another place.
std::vector<LabelCandidate> SectionThings::roundPipes(std::vector<LabelCandidate> places,
                                                      const Id& own) const {
  constexpr double kThroughPipe = 80, kOnSurface = 600; // mm that it is disliked
  constexpr double kOwnEnd = 0.02;                      // of a leader, which may end on a pipe
  std::erase_if(places, [&](const LabelCandidate& place) { return hidesPipe(place.box); });
  for (LabelCandidate& place : places) {
    if (hidesSurface(place.box)) place.cost += kOnSurface;
    place.cost += onFittings(place.box);
    if (!place.leaderTo) continue;
    const Point2 from = leaderStart(place), to = lerp(*place.leaderTo, from, kOwnEnd);
    if (isHidden(lerp(from, to, 0.5))) place.cost += kThroughPipe;
    for (const DrawnPipe& pipe : pipes_) {
      if (pipe.run != own && cutsBox(from, to, pipe.extent) && cutsRing(pipe.outline, from, to))
        place.cost += kThroughPipe;
    }
  }
  return places;
}

/// At a baffle's foot, where a dot would not be seen.
bool SectionThings::isUnderBaffle(Point2 p) const {
  constexpr double kAir = 0.8; // mm
  return std::ranges::any_of(baffles_,
                             [&](const PaperBox& baffle) { return baffle.grown(kAir).holds(p); });
}

} // namespace sump
