#include "core/sheet/section_places.h"

#include <algorithm>
#include <cmath>

namespace sump {

PaperBox boxAbout(Point2 centre, Point2 size) {
  return {centre - size * 0.5, centre + size * 0.5};
}

void addLinePlaces(Point2 a, Point2 b, double wished, Point2 size, bool below, double cost,
                   std::vector<LabelCandidate>& places) {
  constexpr double kOff = 0.35, kEnd = 0.4; // mm of air to the line, and at its ends
  constexpr double kOtherSide = 5;
  constexpr int kSteps = 40;
  const double low = a.x + kEnd + size.x / 2, high = b.x - kEnd - size.x / 2;
  if (high < low) return;
  for (int i = 0; i <= kSteps; ++i) {
    const double x = low + (high - low) * i / kSteps;
    const double off = size.y / 2 + kOff, aside = cost + 0.06 * std::abs(x - wished);
    const Point2 on{x, a.y}, down{0, off};
    places.push_back({boxAbout(below ? on + down : on - down, size), {}, aside, false});
    places.push_back(
        {boxAbout(below ? on - down : on + down, size), {}, aside + kOtherSide, false});
  }
}

std::pair<ProfilePoint, ProfilePoint> plainStretch(const RunProfile& profile, std::size_t leg) {
  constexpr double kAtMiddle = 0.1; // of the leg
  const ProfilePoint &a = profile.points[leg], &b = profile.points[leg + 1];
  const double length = b.station - a.station, middle = (a.station + b.station) / 2;
  std::vector<double> stops{a.station, b.station};
  bool atMiddle = false;
  for (const ProfilePart& part : profile.parts) {
    if (part.leg != leg) continue;
    stops.push_back(part.station);
    atMiddle = atMiddle || std::abs(part.station - middle) < kAtMiddle * length;
  }
  if (!atMiddle || !(length > 0)) return {a, b};
  std::ranges::sort(stops);
  std::size_t longest = 0;
  for (std::size_t i = 0; i + 1 < stops.size(); ++i)
    if (stops[i + 1] - stops[i] > stops[longest + 1] - stops[longest]) longest = i;
  const auto at = [&](double station) {
    ProfilePoint point = a;
    point.station = station;
    point.invert = a.invert + (station - a.station) / length * (b.invert - a.invert);
    return point;
  };
  return {at(stops[longest]), at(stops[longest + 1])};
}

std::vector<LabelCandidate> invertPlaces(Point2 at, Point2 size) {
  constexpr double kOff = 1;
  const double x = size.x / 2, y = size.y / 2 + kOff;
  std::vector<LabelCandidate> places;
  const auto add = [&](Point2 off, double cost) {
    places.push_back({boxAbout(at + off, size), {}, cost, false});
  };
  for (double shift : {0.0, 0.4, -0.4, 0.8, -0.8}) {
    const double cost = std::abs(shift);
    add({shift * x, y}, cost);
    add({shift * x, -y}, cost + 0.8);
  }
  for (double side : {1.0, -1.0})
    add({side * (x + kOff), 0}, 0.6);
  const auto more = aroundPoint(at, size.x, size.y, 4, kSectionReach, 4);
  places.insert(places.end(), more.begin(), more.end());
  return places;
}

double fromWrongSide(const SectionNote& note, const LabelCandidate& place, Point2 target) {
  constexpr double kFromBelow = 150, kOffWater = 2; // mm that it is disliked; for each mm
  const double below = place.box.centre().y - target.y;
  if (note.ink == Ink::ServiceBlue) return kOffWater * std::abs(below);
  return note.side == NoteSide::Above && below > 0 ? kFromBelow : 0;
}

} // namespace sump
