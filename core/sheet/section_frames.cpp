#include "core/sheet/section_frames.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace sump {

namespace {

ProfilePoint between(const ProfilePoint& a, const ProfilePoint& b, double station) {
  if (station <= a.station) return a;
  if (station >= b.station) return b;
  const double t = (station - a.station) / (b.station - a.station);
  ProfilePoint cut;
  cut.station = station;
  cut.at = lerp(a.at, b.at, t);
  cut.invert = a.invert + t * (b.invert - a.invert);
  return cut;
}

/// The run itself. Returns the whole's leg that the part begins with.
std::size_t cutLine(const RunProfile& whole, RunProfile& part) {
  std::size_t first = whole.legs.size();
  part.points.clear();
  part.legs.clear();
  for (std::size_t i = 0; i < whole.legs.size(); ++i) {
    const ProfilePoint &a = whole.points[i], &b = whole.points[i + 1];
    if (b.station < part.from || a.station > part.to) continue;
    if (part.legs.empty()) {
      first = i;
      part.points.push_back(between(a, b, part.from));
    }
    part.legs.push_back(whole.legs[i]);
    part.points.push_back(between(a, b, part.to));
  }
  if (part.points.empty() || part.points.front().station > whole.points.front().station) {
    part.startFitting = EndFitting::Plain;
    part.startLeg.reset();
    part.startsAt.clear();
  }
  if (part.points.empty() || part.points.back().station < whole.points.back().station) {
    part.endFitting = EndFitting::Plain;
    part.endLeg.reset();
    part.endsAt.clear();
  }
  return first;
}

std::vector<ProfileGround> cutGround(const std::vector<ProfileGround>& whole, double from,
                                     double to) {
  std::vector<ProfileGround> part;
  for (std::size_t i = 0; i + 1 < whole.size(); ++i) {
    const ProfileGround &a = whole[i], &b = whole[i + 1];
    const auto at = [&](double station) {
      const double t = b.station > a.station
                           ? std::clamp((station - a.station) / (b.station - a.station), 0.0, 1.0)
                           : 0;
      return ProfileGround{std::lerp(a.station, b.station, t), lerp(a.at, b.at, t),
                           a.level + t * (b.level - a.level)};
    };
    if (b.station < from || a.station > to) continue;
    if (part.empty()) part.push_back(at(from));
    part.push_back(at(to));
  }
  return part;
}

/// How far the station is from everything that had better not be cut; below 0 in a vault.
double clearance(const RunProfile& whole, double station) {
  double least = 2; // m; more is no better
  const auto off = [&](double other) { least = std::min(least, std::abs(other - station)); };
  for (const ProfilePoint& p : whole.points)
    off(p.station);
  for (const ProfilePart& p : whole.parts)
    off(p.station);
  for (const ProfileBranch& b : whole.branches)
    off(b.station);
  for (const ProfileCrossing& c : whole.crossings)
    off(c.station);
  for (const ProfileStructure& s : whole.structures) {
    off(s.from);
    off(s.to);
  }
  if (whole.leastCover) off(whole.leastCover->station);
  for (const ProfileVault& v : whole.vaults) {
    off(v.from);
    off(v.to);
    if (station > v.from && station < v.to) return -1;
  }
  return least;
}

} // namespace

double clearOfWalls(const RunProfile& profile, double station) {
  constexpr double kClearShare = 0.012; // of the section's length: some 3 mm on paper
  const double clear = kClearShare * (profile.to - profile.from);
  const auto isClear = [&](double at) {
    return at > profile.from && at < profile.to &&
           std::ranges::none_of(profile.structures,
                                [&](const ProfileStructure& s) {
                                  return at > s.from - 0.9 * clear && at < s.to + 0.9 * clear;
                                }) &&
           std::ranges::none_of(profile.vaults,
                                [&](const ProfileVault& v) { return at > v.from && at < v.to; });
  };
  if (isClear(station)) return station;
  for (const ProfileStructure& s : profile.structures) {
    for (const auto& [wall, beside] :
         {std::pair{s.from, s.from - clear}, std::pair{s.to, s.to + clear}}) {
      if (std::abs(wall - station) < clear && isClear(beside)) return beside;
    }
  }
  return station;
}

RunProfile sectionPart(const RunProfile& whole, double from, double to) {
  RunProfile part = whole;
  part.from = from;
  part.to = to;
  const std::size_t first = cutLine(whole, part);
  const auto gone = [&](const auto& leg) { return leg < first || leg >= first + part.legs.size(); };
  const auto outside = [&](double a, double b) { return b < from || a > to; };
  std::erase_if(part.parts,
                [&](const ProfilePart& p) { return gone(p.leg) || outside(p.station, p.station); });
  std::erase_if(part.drops, [&](const ProfileDrop& d) { return gone(d.leg); });
  for (ProfilePart& p : part.parts)
    p.leg -= first;
  for (ProfileDrop& d : part.drops)
    d.leg -= first;
  std::erase_if(part.crossings, [&](const auto& c) { return outside(c.station, c.station); });
  std::erase_if(part.branches, [&](const auto& b) { return outside(b.station, b.station); });
  if (outside(0, 0)) part.floatLevel.reset();
  std::erase_if(part.vaults, [&](const auto& v) { return outside(v.from, v.to); });
  std::erase_if(part.structures, [&](const auto& s) { return outside(s.from, s.to); });
  for (ProfileStructure& s : part.structures) {
    s.from = std::max(s.from, from);
    s.to = std::min(s.to, to);
  }
  part.ground = cutGround(whole.ground, from, to);
  if (part.leastCover && outside(part.leastCover->station, part.leastCover->station))
    part.leastCover.reset();
  return part;
}

std::vector<double> sectionCuts(const RunProfile& whole, int count) {
  constexpr double kReach = 0.2; // of a frame, to either side
  constexpr int kSteps = 40;
  const double each = (whole.to - whole.from) / count;
  std::vector<double> cuts;
  for (int n = 1; n < count; ++n) {
    const double wished = whole.from + n * each;
    double best = wished, most = -1e9;
    for (int i = -kSteps; i <= kSteps; ++i) {
      const double off = i * kReach * each / kSteps;
      const double worth = clearance(whole, wished + off) - 0.5 * std::abs(off);
      if (worth <= most) continue;
      most = worth;
      best = wished + off;
    }
    cuts.push_back(best);
  }
  return cuts;
}

} // namespace sump
