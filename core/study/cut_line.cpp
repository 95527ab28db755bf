#include "core/study/cut_line.h"

#include "core/geometry/polygon.h"
#include "core/study/hole_gaps.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace sump {

namespace {

constexpr double kSamePlace = 1e-6; // m
/// The ground is looked at this often at least, and followed where it breaks by more than
/// kFlatDrop, down to stretches of kShortHop (as study/cover.cpp does).
constexpr double kWalk = 1.0, kFlatDrop = 0.0005, kShortHop = 0.01;

Point2 unit(Point2 v) {
  return v * (1 / norm(v));
}

/// Fractions of a-b where it crosses the outline, with 0 and 1, sorted.
std::vector<double> cutsBy(const Ring& outline, Point2 a, Point2 b) {
  std::vector<double> cuts = {0, 1};
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const auto hit = crossSegments(a, b, outline[i], outline[(i + 1) % outline.size()]);
    if (hit) cuts.push_back(std::clamp(hit->alongFirst, 0.0, 1.0));
  }
  std::ranges::sort(cuts);
  return cuts;
}

void addSpan(std::vector<CutSpan>& spans, CutSpan span) {
  if (span.to - span.from < kSamePlace) return;
  if (!spans.empty() && span.from - spans.back().to < kSamePlace) {
    spans.back().to = span.to;
  } else {
    spans.push_back(span);
  }
}

} // namespace

CutLine::CutLine(const Polyline& line, double before, double after, Point2 axis) {
  for (Point2 p : line) {
    if (points_.empty() || distance(points_.back(), p) > kSamePlace) points_.push_back(p);
  }
  if (points_.empty()) points_.push_back({});
  const bool point = points_.size() < 2;
  const Point2 first = point ? unit(axis) : unit(points_[1] - points_[0]);
  const Point2 last = point ? first : unit(points_.back() - points_[points_.size() - 2]);
  if (after > 0 || point) points_.push_back(points_.back() + last * std::max(after, kSamePlace));
  if (before > 0) points_.insert(points_.begin(), points_.front() - first * before);
  stations_ = {before > 0 ? -before : 0};
  for (std::size_t i = 1; i < points_.size(); ++i)
    stations_.push_back(stations_.back() + distance(points_[i - 1], points_[i]));
}

Point2 CutLine::at(double station) const {
  const auto next = std::ranges::upper_bound(stations_, station);
  const auto count = static_cast<std::ptrdiff_t>(stations_.size());
  const auto i =
      static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(next - stations_.begin(), 1, count - 1));
  const double t = (station - stations_[i - 1]) / (stations_[i] - stations_[i - 1]);
  return lerp(points_[i - 1], points_[i], t);
}

std::vector<CutSpan> CutLine::within(const Ring& outline) const {
  std::vector<CutSpan> spans;
  for (std::size_t i = 1; i < points_.size(); ++i) {
    const Point2 a = points_[i - 1], b = points_[i];
    const std::vector<double> cuts = cutsBy(outline, a, b);
    for (std::size_t k = 1; k < cuts.size(); ++k) {
      if (!contains(outline, lerp(a, b, (cuts[k - 1] + cuts[k]) / 2))) continue;
      const double start = stations_[i - 1], length = stations_[i] - start;
      addSpan(spans, {start + cuts[k - 1] * length, start + cuts[k] * length});
    }
  }
  return spans;
}

std::pair<double, double> CutLine::nearest(Point2 p) const {
  std::pair<double, double> best{0, 1e300};
  for (std::size_t i = 1; i < points_.size(); ++i) {
    const Foot foot = nearestOnSegment(p, points_[i - 1], points_[i]);
    if (foot.distance >= best.second) continue;
    best = {stations_[i - 1] + foot.along * (stations_[i] - stations_[i - 1]), foot.distance};
  }
  return best;
}

namespace {

class GroundFollower {
public:
  GroundFollower(const Surface& ground, const CutLine& line) : ground_(ground), line_(line) {}

  std::vector<ProfileGround> follow(double from, double to) {
    found_ = {at(from)};
    std::vector<double> stops = {to};
    for (std::size_t i = 0; i < line_.points().size(); ++i) {
      if (line_.station(i) > from && line_.station(i) < to) stops.push_back(line_.station(i));
    }
    std::ranges::sort(stops);
    for (double stop : stops) {
      const double start = found_.back().station;
      const int steps = std::max(1, static_cast<int>(std::ceil((stop - start) / kWalk)));
      for (int step = 1; step <= steps; ++step)
        between(found_.back(), at(start + (stop - start) * step / steps));
    }
    return std::move(found_);
  }

private:
  ProfileGround at(double station) const {
    const Point2 p = line_.at(station);
    return {station, p, metres(ground_.elevation(p).value_or(0))};
  }
  /// Up to and with `b`. By value: `a` is often the last one found, which moves as more are added.
  void between(ProfileGround a, ProfileGround b) { // NOLINT
    const ProfileGround middle = at((a.station + b.station) / 2);
    const double bow = std::abs(inMetres(middle.level - (a.level + b.level) / 2.0));
    if (bow > kFlatDrop && b.station - a.station > kShortHop) {
      between(a, middle);
      between(middle, b);
    } else {
      found_.push_back(b);
    }
  }

  const Surface& ground_;
  const CutLine& line_;
  std::vector<ProfileGround> found_;
};

} // namespace

std::vector<ProfileGround> groundAlong(const Surface& ground, const CutLine& line, double from,
                                       double to) {
  if (ground.empty()) return {};
  return GroundFollower(ground, line).follow(from, to);
}

ProfileVault profileShell(const Vault& vault, const VaultStudy& study) {
  ProfileVault shell;
  shell.id = vault.id;
  shell.name = vault.name;
  shell.underside = study.underside;
  shell.floor = study.floor;
  shell.lidUnderside = study.lidUnderside;
  shell.lidTop = study.lidTop;
  return shell;
}

ProfileChamber profileChamber(const Study& study, const Id& vault, int number, CutSpan span) {
  ProfileChamber chamber;
  chamber.number = number;
  chamber.from = span.from;
  chamber.to = span.to;
  if (const VaultStudy* found = study.vault(vault)) chamber.rest = found->waterLevel;
  chamber.peak = study.train.highest(vault, number);
  if (study.train.lowWater) {
    for (const ChamberLow& low : *study.train.lowWater)
      if (low.vault == vault && low.chamber == number) chamber.low = low.level;
  }
  return chamber;
}

ProfileManway profileManway(const Manway& manway, const VaultStudy& study, double station) {
  ProfileManway profile{manway.id, station, manway.diameter, manway.rim, std::nullopt};
  for (const ManwayStudy& found : study.manways) {
    if (found.id != manway.id) continue;
    profile.rim = found.rim;
    profile.grade = found.grade;
  }
  return profile;
}

std::vector<ProfileManway> profileManways(const Vault& vault, const VaultStudy& study,
                                          const CutLine& line, const ProfileVault& cut) {
  std::vector<ProfileManway> found;
  for (std::size_t i = 0; i < vault.manways.size(); ++i) {
    const Manway& manway = vault.manways[i];
    const auto [station, away] = line.nearest(vault.frame().toSite(manway.at));
    if (station < cut.from || station > cut.to) continue;
    const int chamber = study.manways[i].chamber;
    const bool beyond = away > inMetres(manway.diameter) / 2;
    if (beyond &&
        std::ranges::find(cut.chambers, chamber, &ProfileChamber::number) == cut.chambers.end())
      continue;
    found.push_back(profileManway(manway, study, station));
    found.back().beyond = beyond;
  }
  // One that is cut hides what stands behind it.
  const auto isHidden = [&](const ProfileManway& m) {
    return m.beyond && std::ranges::any_of(found, [&](const ProfileManway& other) {
             return !other.beyond &&
                    std::abs(other.station - m.station) < inMetres(other.diameter + m.diameter) / 2;
           });
  };
  std::vector<ProfileManway> seen;
  std::ranges::remove_copy_if(found, std::back_inserter(seen), isHidden);
  return seen;
}

std::optional<ProfileBore> profileBore(const Catalog& catalog, const std::string& pipe,
                                       const std::string& size) {
  const PipeSize* found = catalog.pipeSize(pipe, size);
  if (found == nullptr) return std::nullopt;
  // Where no fitting is known it is drawn about as long as fittings are.
  const Length arm = armLength(catalog, pipe, size, EndFitting::Tee)
                         .value_or(found->inside / 2.0 + found->outside);
  return ProfileBore{found->inside, found->outside, arm};
}

} // namespace sump
